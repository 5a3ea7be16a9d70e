//! The first days in the new home, powder and hygiene.

use crate::domain::formula::stock::Stock;
use crate::domain::homecoming::first_days::FirstDays;
use crate::domain::time::moment::Day;
use crate::words::Language;
use crate::words::format::Writing;

texts! {
    home_title: "First days, powder, hygiene", "Primeros días, polvo, higiene";
    home_arrival: "The new home", "El nuevo hogar";
    home_arrived: "It has arrived", "Ha llegado";
    home_not_arrived: "Note the arrival: settle-in, vet visit and quarantine count from it.", "Anote la llegada: desde ella cuentan la adaptación, el veterinario y la cuarentena.";
    home_order: "On arrival, in this order: warm and quiet for 30 to 60 minutes, look at it and its droppings, weigh, feel the crop, feed. Never feed a cold chick.", "Al llegar, en este orden: calor y calma 30 a 60 minutos, mirarlo a él y sus excrementos, pesar, palpar el buche, dar de comer. Nunca alimente a un pollo frío.";
    home_first_feed: "First feed: the breeder's own powder, half to three quarters of the usual volume, a little thinner. Weigh it first.", "Primera toma: el polvo del criador, de la mitad a tres cuartos del volumen habitual, algo más clara. Pese antes.";
    home_same: "Apart from the first feed, change nothing of powder, thickness, tool and hours in the settle-in days.", "Salvo en la primera toma, no cambie polvo, espesor, utensilio ni horas en los días de adaptación.";
    home_room: "Room temperature", "Temperatura de la sala";
    home_powder: "Powder", "Polvo";
    home_powder_field: "Powder opened or weighed now", "Polvo abierto o pesado ahora";
    home_powder_none: "Weigh the powder once: the days left follow from what you mix in the guide.", "Pese el polvo una vez: los días que quedan salen de lo que mezcle en la guía.";
    home_powder_order: "Order more today.", "Pida más hoy.";
    home_hygiene: "Cleaning, after each feed", "Limpieza, tras cada toma";
    home_clean_throw: "Throw away what is left in the cup. Never keep or re-heat mixed food.", "Tire lo que quede en la taza. Nunca guarde ni recaliente la mezcla.";
    home_clean_wash: "Wash syringe and cup hot, with soap, apart; rinse.", "Lave jeringa y taza con agua caliente y jabón, desmontadas; aclare.";
    home_clean_bleach: "Lay them for 10 to 30 minutes in household bleach 1 : 32, that is 30 ml in 1 litre of water, made fresh each day. Never mix bleach with soap or acid.", "Déjelas de 10 a 30 minutos en lejía doméstica 1 : 32, es decir 30 ml en 1 litro de agua, hecha cada día. Nunca mezcle lejía con jabón ni ácido.";
    home_clean_rinse: "Rinse well and let them dry in the air.", "Aclare bien y deje secar al aire.";
    home_clean_replace: "Replace a syringe that drags. One set for each bird.", "Cambie la jeringa que se atasque. Un juego por ave.";
    home_clean_source: "1 : 32 from a bird-safety page; other pages give 1 : 16. Your vet's word comes first.", "1 : 32 de una página de seguridad de aves; otras dan 1 : 16. Manda su veterinario.";
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
                format!("Settling in, {days} left: no feed is dropped before {date}.")
            }
            (Language::English, false) => format!("Settled in since {date}."),
            (Language::Spanish, true) => {
                format!("Adaptación, quedan {days}: no se quita ninguna toma antes del {date}.")
            }
            (Language::Spanish, false) => format!("Adaptado desde el {date}."),
        }
    }

    fn vet_by(self, day: Day, left: i32) -> String {
        let (date, days) = (self.day(day), self.days(left));
        match (self.language, left >= 0) {
            (Language::English, true) => {
                format!("Avian vet, {days} left: first visit by {date}.")
            }
            (Language::English, false) => format!("Avian vet: first visit was due by {date}."),
            (Language::Spanish, true) => {
                format!("Veterinario de aves, quedan {days}: primera visita hasta el {date}.")
            }
            (Language::Spanish, false) => {
                format!("Veterinario de aves: la primera visita era hasta el {date}.")
            }
        }
    }

    fn apart_until(self, day: Day, left: i32) -> String {
        let (date, days) = (self.day(day), self.days(left));
        match (self.language, left > 0) {
            (Language::English, true) => format!(
                "Apart from other birds, {days} left: until {date} (30 to 90 days; 45 is ours)."
            ),
            (Language::English, false) => format!("Apart from other birds: over since {date}."),
            (Language::Spanish, true) => format!(
                "Separado de otras aves, quedan {days}: hasta el {date} (30 a 90 días; 45 es \
                 nuestro)."
            ),
            (Language::Spanish, false) => {
                format!("Separado de otras aves: terminó el {date}.")
            }
        }
    }

    /// What is left and how long it lasts.
    pub fn powder_left(self, stock: &Stock) -> String {
        let left = self.mass(stock.left);
        let lasts = stock.days_left.map(|days| self.days(days));
        match (self.language, lasts) {
            (Language::English, Some(days)) => {
                format!("About {left} left: {days} at the pace of the last week.")
            }
            (Language::English, None) => format!("About {left} left."),
            (Language::Spanish, Some(days)) => {
                format!("Quedan unos {left}: {days} al ritmo de la última semana.")
            }
            (Language::Spanish, None) => format!("Quedan unos {left}."),
        }
    }

    /// When to order.
    pub fn order_in(self, days: i32) -> String {
        match self.language {
            Language::English => format!(
                "Order more in {} (7 days in hand for shipping, ours).",
                self.days(days)
            ),
            Language::Spanish => format!(
                "Pida más en {} (7 días de margen para el envío, nuestro).",
                self.days(days)
            ),
        }
    }
}
