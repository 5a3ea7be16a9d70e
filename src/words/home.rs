//! The first days in the new home, powder and hygiene.

use crate::domain::formula::stock::Stock;
use crate::domain::homecoming::first_days::FirstDays;
use crate::domain::time::moment::Day;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    home_title: "First days", "Primeros días";
    home_arrival: "Arrival", "Llegada";
    home_arrived: "It is home now", "Ya está en casa";
    home_not_arrived: "Tap when it is home: settling in, vet visit and quarantine count from then.", "Toque cuando esté en casa: desde ahí cuentan la adaptación, la visita al veterinario y la cuarentena.";
    home_order: "When it arrives, in this order: 30 to 60 minutes of warmth and quiet; look at it and its droppings; weigh it; feel the crop; feed. Never feed a cold chick.", "Cuando llegue, en este orden: de 30 a 60 minutos al calor y tranquilo; mírelo y mire las heces; péselo; palpe el buche; dé la toma. Nunca dé de comer a un polluelo frío.";
    home_first_feed: "First feed: weigh it first. Use the breeder's own powder, a little thinner, half to three quarters of the usual amount.", "Primera toma: péselo primero. Use la misma papilla que el criador, algo más líquida, de la mitad a tres cuartos de la cantidad habitual.";
    home_same: "While it settles in, change nothing else: same powder, same thickness, same tool, same hours.", "Mientras se adapta, no cambie nada más: la misma papilla, la misma consistencia, el mismo utensilio, las mismas horas.";
    home_room: "Room temperature", "Temperatura de la habitación";
    home_powder: "Powder", "Papilla en polvo";
    home_powder_field: "Powder you have now", "Papilla en polvo que hay ahora";
    home_powder_none: "Weigh the powder once. From what you mix in the guide, the app tells how many days are left.", "Pese la papilla en polvo una vez. Con lo que prepare en la guía, la app dirá para cuántos días queda.";
    home_powder_order: "Order more powder today.", "Pida hoy más papilla.";
    home_hygiene: "Clean after each feed", "Limpie después de cada toma";
    home_clean_throw: "Throw away what is left in the cup. Never keep or reheat mixed food.", "Tire lo que quede en el vaso. Nunca guarde ni recaliente la papilla preparada.";
    home_clean_wash: "Take the syringe apart. Wash syringe and cup with hot water and soap. Rinse.", "Desmonte la jeringa. Lave jeringa y vaso con agua caliente y jabón. Enjuague.";
    home_clean_bleach: "Leave them for 10 to 30 minutes in water with household bleach: 30 ml in 1 litre (1:32), made fresh each day. Never mix bleach with soap or acid. Keep the bird out of the room: bleach fumes harm it.", "Déjelos de 10 a 30 minutos en agua con lejía (cloro, lavandina): 30 ml por litro (1:32), preparada ese día. Nunca mezcle lejía (cloro, lavandina) con jabón ni ácido. Tenga al ave en otra habitación: los vapores le hacen daño.";
    home_clean_rinse: "Rinse well until nothing smells of bleach. Let them dry in the air.", "Enjuague bien hasta que no huela a lejía (cloro, lavandina). Deje secar al aire.";
    home_clean_replace: "Replace a syringe whose plunger sticks. One set for each bird.", "Cambie la jeringa si el émbolo se atasca. Un juego para cada ave.";
    home_clean_source: "Your vet's word comes first. 1:32 is from a bird-safety page; other pages give 1:16.", "Primero, lo que diga su veterinario. 1:32 es de una página sobre seguridad de las aves; otras dan 1:16.";
}

impl Language {
    /// The steps of cleaning, in order.
    pub const fn cleaning(self) -> [&'static str; 5] {
        [
            self.home_clean_throw(),
            self.home_clean_wash(),
            self.home_clean_bleach(),
            self.home_clean_rinse(),
            self.home_clean_replace(),
        ]
    }
}

impl Writing {
    /// The dates that count from the arrival, each with the days left to it.
    pub fn first_dates(self, dates: FirstDays, today: Day) -> [String; 3] {
        [
            self.settled_on(dates.settled_on, dates.settled_on.since(today)),
            self.vet_by(dates.vet_by, dates.vet_by.since(today)),
            self.apart_until(dates.apart_until, dates.apart_until.since(today)),
        ]
    }

    fn settled_on(self, day: Day, left: i32) -> String {
        let (date, days) = (self.day(day), self.days(left));
        match (self.language, left > 0) {
            (Language::English, true) => {
                format!("Settling in, {days} more: drop no feed before {date}.")
            }
            (Language::English, false) => format!("Settled in since {date}."),
            (Language::Spanish, true) => {
                format!("Adaptación, {days} más: no quite ninguna toma antes del {date}.")
            }
            (Language::Spanish, false) => format!("Adaptado desde el {date}."),
        }
    }

    fn vet_by(self, day: Day, left: i32) -> String {
        let (date, days) = (self.day(day), self.days(left));
        match (self.language, left >= 0) {
            (Language::English, true) => {
                format!("Go to an avian vet by {date}: {days} left.")
            }
            (Language::English, false) => {
                format!("Make an appointment with an avian vet: the first visit was due by {date}.")
            }
            (Language::Spanish, true) => {
                format!("Primera visita al veterinario de aves antes del {date}: {days} más.")
            }
            (Language::Spanish, false) => {
                format!(
                    "Pida cita con un veterinario de aves: la primera visita debía ser antes del {date}."
                )
            }
        }
    }

    fn apart_until(self, day: Day, left: i32) -> String {
        let (date, days) = (self.day(day), self.days(left));
        match (self.language, left > 0) {
            (Language::English, true) => format!(
                "Keep it apart from other birds, {days} more: until {date} (30 to 90 days are advised; here 45, our own limit)."
            ),
            (Language::English, false) => {
                format!("The time apart from other birds is over since {date}.")
            }
            (Language::Spanish, true) => format!(
                "Téngalo separado de otras aves, {days} más: hasta el {date} (se aconsejan de 30 a 90 días; aquí, 45)."
            ),
            (Language::Spanish, false) => {
                format!("La separación de otras aves terminó el {date}.")
            }
        }
    }

    /// What is left and how long it lasts.
    pub fn powder_left(self, stock: &Stock) -> String {
        let left = self.mass(stock.left);
        let lasts = stock.days_left.map(|days| self.days(days));
        match (self.language, lasts) {
            (Language::English, Some(days)) => {
                format!(
                    "About {left} of powder left: enough for {days} at the pace of the last week."
                )
            }
            (Language::English, None) => format!("About {left} of powder left."),
            (Language::Spanish, Some(days)) => {
                format!(
                    "Papilla en polvo que queda: {left} aprox., para {days} al ritmo de la última semana."
                )
            }
            (Language::Spanish, None) => format!("Papilla en polvo que queda: {left} aprox."),
        }
    }

    /// When to order.
    pub fn order_in(self, days: i32) -> String {
        match self.language {
            Language::English => format!(
                "Order more powder in {}: shipping may take 7 days (our own limit).",
                self.days(days)
            ),
            Language::Spanish => format!(
                "Pida más papilla dentro de {}: el envío puede tardar 7 días (valor propio).",
                self.days(days)
            ),
        }
    }
}
