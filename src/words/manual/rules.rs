//! Each rule of the ladder for the page "Where the numbers come from": its name, its limits, when it is
//! wrong. `{0}`, `{1}` … stand for the rule's own limits that are numbers, in the rule's order.

use crate::domain::warnings::level::RuleId;
use crate::words::Language;

/// What a rule is called, what it does at which limit, and when it is wrong.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct RuleText {
    /// Its name.
    pub name: &'static str,
    /// Its limits, with a place for each number.
    pub limits: &'static str,
    /// When it is wrong.
    pub wrong_when: &'static str,
}

/// A rule's texts: the English three, then the Spanish three.
const fn texts(
    language: Language,
    english: [&'static str; 3],
    spanish: [&'static str; 3],
) -> RuleText {
    let [name, limits, wrong_when] = match language {
        Language::English => english,
        Language::Spanish => spanish,
    };
    RuleText {
        name,
        limits,
        wrong_when,
    }
}

/// The texts of a rule.
#[expect(clippy::too_many_lines, reason = "a table of one entry a rule")]
pub const fn rule_text(say: Language, rule: RuleId) -> RuleText {
    match rule {
        RuleId::HandoverLoss => texts(
            say,
            [
                "Loss against the handover weight",
                "Watch at {0} the plan's limit ({1}), call the breeder at the limit ({2}; a plan may say {3} to {4}), vet today at {5} ({6} at most, below {7} at {8}), emergency at {9} ({10} at most).",
                "The handover weight was taken with food in the crop, or on another scale.",
            ],
            [
                "Pérdida desde el peso de entrega",
                "Vigile a {0} el límite del plan ({1}), llame al criador en el límite ({2}; un plan puede decir de {3} a {4}), veterinario hoy a {5} ({6} como mucho, por debajo de {7} a {8}), emergencia a {9} ({10} como mucho).",
                "El peso de entrega se tomó con comida en el buche o en otra báscula.",
            ],
        ),
        RuleId::PeakLoss => texts(
            say,
            [
                "Loss against the peak weight",
                "The peak is the card's, or the highest median of {0} where that is higher. Call the breeder at {1} (watch while the other readings speak against it, or when {2} were level within {3} a day without any sign), vet today at {4} (below {5} at {6}), emergency at {7} (vet today when level without any sign) and at {8}.",
                "A large macaw loses more than usual and is well, or three mornings in a row had food in the crop.",
            ],
            [
                "Pérdida desde el peso máximo",
                "El máximo es el de la ficha, o la mediana más alta de {0} si es mayor. Llame al criador a {1} (vigile si las otras pesadas lo desmienten, o si {2} fueron parejos dentro de {3} al día sin ninguna señal), veterinario hoy a {4} (por debajo de {5} a {6}), emergencia a {7} (veterinario hoy si es parejo y sin señales) y a {8}.",
                "Un guacamayo grande pierde más de lo usual y está bien, o tres mañanas seguidas había comida en el buche.",
            ],
        ),
        RuleId::FallingWeight => texts(
            say,
            [
                "Weight falling day after day",
                "Watch when the loss is above {0} a day with a chance of {1}. Call the breeder when that chance is {2} and the chance of passing the plan's limit within {3} days is {4} or more, or when the means of {5} show a loss above {6} a day.",
                "Two or three mornings had food in the crop and the next ones had not, or the scale is coarse.",
            ],
            [
                "Peso que baja día tras día",
                "Vigile si pierde más de {0} al día con una probabilidad de {1}. Llame al criador si es de {2} y la de pasar el límite del plan en {3} días es de {4} o más, o si las medias de {5} bajan más de {6} al día.",
                "Dos o tres mañanas había comida en el buche y las siguientes no, o la báscula es poco fina.",
            ],
        ),
        RuleId::ArrivalLoss => texts(
            say,
            [
                "Loss over the journey",
                "In the first {0} at home: watch above {1} of the handover weight, call the breeder at {2}.",
                "The breeder's scale and yours differ.",
            ],
            [
                "Pérdida por el viaje",
                "En las primeras {0} en casa: vigile por encima de {1} del peso de entrega, llame al criador a {2}.",
                "La báscula del criador y la suya no marcan igual.",
            ],
        ),
        RuleId::OneDayLoss => texts(
            say,
            [
                "Loss in one day",
                "From one morning to the next: watch at {0}, call the breeder at {1} once a second weighing confirms it (vet today with any sign), vet today at {2}.",
                "The first of the two crops was not empty and there are few readings.",
            ],
            [
                "Pérdida en un día",
                "De una mañana a la siguiente: vigile a {0}, llame al criador a {1} si una segunda pesada lo confirma (veterinario hoy con cualquier señal), veterinario hoy a {2}.",
                "El primero de los dos buches no estaba vacío y hay pocas pesadas.",
            ],
        ),
        RuleId::DullLoss => texts(
            say,
            [
                "Lighter and dull",
                "Any loss in a chick that is dull or limp: vet today.",
                "It was only sleepy, or the loss is no more than the scale's noise.",
            ],
            [
                "Más ligero y decaído",
                "Cualquier pérdida en un polluelo decaído o sin fuerzas: veterinario hoy.",
                "Solo tenía sueño, o la pérdida no pasa del error de la báscula.",
            ],
        ),
        RuleId::StableLoss => texts(
            say,
            [
                "Loss once weaned",
                "Against the median of {0}, or up to the weaning where that is higher: watch at {1}, call the breeder at {2} (vet today below {3}), vet today at {4}, emergency at {5}.",
                "Two weighings of those days had food in the crop.",
            ],
            [
                "Pérdida ya destetado",
                "Frente a la mediana de {0}, o hasta el destete si es más alta: vigile a {1}, llame al criador a {2} (veterinario hoy por debajo de {3}), veterinario hoy a {4}, emergencia a {5}.",
                "Dos pesadas de esos días tenían comida en el buche.",
            ],
        ),
        RuleId::GrowthStalled => texts(
            say,
            [
                "No gain in a growing chick",
                "Up to {0} of its species' first weaning age, {1} at most: watch after {2} day without gain, call the breeder after {3} days.",
                "It reached its peak early and falls as it should.",
            ],
            [
                "No gana peso y aún crece",
                "Hasta {0} de la primera edad de destete de su especie, {1} como mucho: vigile tras {2} día sin ganar, llame al criador tras {3} días.",
                "Llegó pronto a su máximo y baja como debe.",
            ],
        ),
        RuleId::NoWeighing => texts(
            say,
            [
                "Not weighed",
                "No weighing with an empty crop: watch after {0}, call the breeder after {1}. Once weaned: watch after {2}, never a call.",
                "It was weighed and nobody noted it.",
            ],
            [
                "Sin pesar",
                "Sin pesada con el buche vacío: vigile tras {0}, llame al criador tras {1}. Ya destetado: vigile tras {2}, nunca una llamada.",
                "Se pesó y nadie lo anotó.",
            ],
        ),
        RuleId::MissedFeeds => texts(
            say,
            [
                "Feeds not given",
                "In a row and known not to have been given: past the peak watch at {0}, call the breeder at {1}, vet today at {2}; in a growing chick one feed earlier. Without food: call the breeder after {3}, vet today after {4}, in pin feathers after {5}, the first and the last not before the plan's longest gap and {6}.",
                "Somebody fed it and noted that it was not fed.",
            ],
            [
                "Tomas sin dar",
                "Seguidas, y se sabe que no se dieron: pasado el máximo vigile con {0}, llame al criador con {1}, veterinario hoy con {2}; si aún crece, una toma antes. Sin comer: llame al criador tras {3}, veterinario hoy tras {4}, con cañones tras {5}, la primera y la última no antes del intervalo más largo del plan y {6}.",
                "Alguien le dio de comer y anotó que no.",
            ],
        ),
        RuleId::RefusedFeeds => texts(
            say,
            [
                "Feeds refused",
                "In a row: watch at {0} while it is offered again. After the last try it counts as not given: call the breeder at {1}, vet today at {2}. Watch only while weaning above {3} of its peak and handover weight.",
                "Food was taken and not noted.",
            ],
            [
                "Tomas rechazadas",
                "Seguidas: vigile con {0} mientras se vuelve a ofrecer. Tras el último intento cuenta como no dada: llame al criador con {1}, veterinario hoy con {2}. Solo vigile si se está destetando y pesa más de {3} de su máximo y de su peso de entrega.",
                "Comió y nadie lo anotó.",
            ],
        ),
        RuleId::DayIntake => texts(
            say,
            [
                "Too little eaten in a day",
                "On a day on which every feed is answered: watch below {0} of what was asked for, call the breeder below {1} (neither while weaning with solids noted). Below {2} of its weight and no solids for {3}: call the breeder.",
                "It ate more than was noted, or ate solids that nobody saw.",
            ],
            [
                "Come demasiado poco en un día",
                "Un día en que cada toma tiene respuesta: vigile por debajo de {0} de lo pedido, llame al criador por debajo de {1} (ninguno de los dos en el destete con sólidos anotados). Por debajo de {2} de su peso y sin sólidos durante {3}: llame al criador.",
                "Comió más de lo anotado, o comió sólidos que nadie vio.",
            ],
        ),
        RuleId::NoFoodNoted => texts(
            say,
            [
                "No food noted",
                "Nothing noted as given or not given: watch after the plan's longest gap and {0}, call the breeder after {1}.",
                "The feeds were given and not noted.",
            ],
            [
                "Sin comida anotada",
                "Nada anotado, ni dado ni sin dar: vigile tras el intervalo más largo del plan y {0}, llame al criador tras {1}.",
                "Las tomas se dieron y no se anotaron.",
            ],
        ),
        RuleId::TransitGap => texts(
            say,
            [
                "Hours without food on the journey",
                "Since the last feed before it: watch above {0} or the plan's night, call the breeder at {1}, emergency at {2}. Younger than {3}: watch above {4}, call the breeder at {5}, emergency at {6}. A large species from {7} to {8}: {9}, {10} and {11}.",
                "It was fed on the way and nobody noted it.",
            ],
            [
                "Horas sin comer en el viaje",
                "Desde la última toma: vigile por encima de {0} o de la noche del plan, llame al criador a {1}, emergencia a {2}. Con menos de {3}: vigile por encima de {4}, llame al criador a {5}, emergencia a {6}. Una especie grande de {7} a {8}: {9}, {10} y {11}.",
                "Comió por el camino y nadie lo anotó.",
            ],
        ),
        RuleId::GapTooShort => texts(
            say,
            [
                "Two feeds too close",
                "Watch below the plan's own gap (at most {0} by day, {1} at night), call the breeder below {2} of it.",
                "One feed was split into parts more than an hour apart.",
            ],
            [
                "Dos tomas demasiado seguidas",
                "Vigile por debajo del intervalo del plan (como mucho {0} de día, {1} de noche), llame al criador por debajo de {2} de él.",
                "Una toma se partió en partes con más de una hora entre ellas.",
            ],
        ),
        RuleId::VolumeOverCeiling => texts(
            say,
            [
                "Too much in one feed",
                "Of the empty-crop weight: watch above {0}, call the breeder above {1}, or above {2} in a large macaw and {3} in a hyacinth.",
                "The last weight is old or was read wrongly.",
            ],
            [
                "Demasiado en una toma",
                "Del peso con el buche vacío: vigile por encima de {0}, llame al criador por encima de {1}, o de {2} en un guacamayo grande y {3} en un jacinto.",
                "El último peso es viejo o se leyó mal.",
            ],
        ),
        RuleId::ServedHot => texts(
            say,
            [
                "Formula too hot",
                "Served above {0}: watch. Above {1}: call the breeder. At {2} ({3}) or more: vet today, then watch for {4}.",
                "The thermometer was still in the hot water, or reads high.",
            ],
            [
                "Papilla demasiado caliente",
                "Dada a más de {0}: vigile. A más de {1}: llame al criador. A {2} ({3}) o más: veterinario hoy; después, vigile durante {4}.",
                "El termómetro aún estaba en el agua caliente o marca de más.",
            ],
        ),
        RuleId::ServedCold => texts(
            say,
            [
                "Formula too cool",
                "Served below {0}, or below the plan's window where that is lower: watch. {1} feeds in a row: call the breeder.",
                "The breeder's plan serves cooler on purpose and does not say so.",
            ],
            [
                "Papilla demasiado fría",
                "Dada a menos de {0}, o por debajo de la ventana del plan si es más baja: vigile. {1} tomas seguidas: llame al criador.",
                "El criador la da más fresca a propósito y el plan no lo dice.",
            ],
        ),
        RuleId::CropSlow => texts(
            say,
            [
                "Crop slower than usual",
                "Food still there at {0} the chick's own median time: watch.",
                "The last feed was larger than usual, or the last before the night.",
            ],
            [
                "Buche más lento que de costumbre",
                "Aún hay comida a {0} su tiempo habitual: vigile.",
                "La última toma fue mayor que de costumbre, o la última antes de la noche.",
            ],
        ),
        RuleId::CropLate => texts(
            say,
            [
                "Food left in the crop by day",
                "A quarter or more {0} after the last feed: call the breeder, no feed. Fuller: vet today when it is no smaller {1} later, emergency at {2}.",
                "Solid food was eaten since the feed.",
            ],
            [
                "Comida en el buche durante el día",
                "Un cuarto o más {0} después de la última toma: llame al criador, sin toma. Más lleno: veterinario hoy si no ha bajado {1} después, emergencia a {2}.",
                "Comió alimento sólido después de la toma.",
            ],
        ),
        RuleId::CropOvernight => texts(
            say,
            [
                "Food left in the crop after the night",
                "A quarter: call the breeder at {0}, vet today at {1}. Fuller: call the breeder at {2}, vet today when it is no smaller {3} later, emergency at {4}. A trace: watch at {5}, vet today when it is still there at {6}.",
                "It ate from its dish at dawn.",
            ],
            [
                "Comida en el buche tras la noche",
                "Un cuarto: llame al criador a las {0}, veterinario hoy a las {1}. Más lleno: llame al criador a las {2}, veterinario hoy si no ha bajado {3} después, emergencia a las {4}. Un resto: vigile a las {5}, veterinario hoy si sigue ahí a las {6}.",
                "Comió de su plato al amanecer.",
            ],
        ),
        RuleId::CropStatic => texts(
            say,
            [
                "A crop that stands still, with a bad sign",
                "Food left after the night, or a quarter or more {0} after a feed, with a sour smell, air, food coming up, a dull or cold chick; or a hard or doughy crop: emergency.",
                "Solid food was just eaten and feels hard.",
            ],
            [
                "Buche que no se vacía, con una mala señal",
                "Comida tras la noche, o un cuarto o más {0} después de una toma, con olor agrio, aire, comida que sube, decaído o frío; o un buche duro o pastoso: emergencia.",
                "Acaba de comer alimento sólido y se nota duro.",
            ],
        ),
        RuleId::DroppingsSeen(_) => texts(
            say,
            [
                "Droppings",
                "Red without red food, tar-like, or yellow-green urates: vet today. Emerald green: call the breeder, with a falling weight vet today. Undigested food: watch, on {0} days vet today. Watery: watch, over more than {1} vet today (after fruit: watch only). Small, dark or few: watch, over more than {2} call the breeder.",
                "Coloured or wet food was eaten.",
            ],
            [
                "Heces",
                "Rojas sin haber comido nada rojo, como alquitrán, o con uratos verde amarillos: veterinario hoy. Verde esmeralda: llame al criador, con el peso a la baja veterinario hoy. Con comida sin digerir: vigile, {0} días veterinario hoy. Muy líquidas: vigile, más de {1} veterinario hoy (tras comer fruta: solo vigile). Pequeñas, oscuras o pocas: vigile, más de {2} llame al criador.",
                "Comió algo de color o con mucha agua.",
            ],
        ),
        RuleId::SignSeen(_) => texts(
            say,
            [
                "A sign that was seen",
                "Each sign has its own level: watch, call the breeder, vet today or emergency (list below). It counts until it is noted as gone, at the longest for {0}. Food back just after a feed {1} times in a day or on days running: call the breeder. For {2} when it is one for the vet or food may have gone down wrong.",
                "A sign was mistaken: note it as gone.",
            ],
            [
                "Una señal que alguien vio",
                "Cada señal tiene su nivel: vigile, llame al criador, veterinario hoy o emergencia (lista abajo). Cuenta hasta que se anota que pasó, como mucho {0}. Papilla que vuelve justo después de una toma {1} veces en un día o días seguidos: llame al criador. Durante {2} si es para el veterinario o pudo entrar papilla en las vías respiratorias.",
                "Fue un error: anote que pasó.",
            ],
        ),
        RuleId::RoomTemperature => texts(
            say,
            [
                "Room too cool or too warm",
                "Outside the plan's range ({0} to {1}; once it is being weaned from {2}): watch. Also below {3} or above {4}: call the breeder.",
                "The thermometer hangs away from the chick's own warm spot.",
            ],
            [
                "Habitación demasiado fría o caliente",
                "Fuera de los límites del plan ({0} a {1}; en pleno destete desde {2}): vigile. Además por debajo de {3} o por encima de {4}: llame al criador.",
                "El termómetro está lejos del rincón cálido del polluelo.",
            ],
        ),
        RuleId::VetVisitDue => texts(
            say,
            [
                "First vet visit",
                "No call or visit to a vet noted {0} after the arrival: watch, for {1}.",
                "The visit took place and was not noted.",
            ],
            [
                "Primera visita al veterinario",
                "Sin llamada ni visita al veterinario anotada {0} después de la llegada: vigile, durante {1}.",
                "La visita se hizo y no se anotó.",
            ],
        ),
    }
}
