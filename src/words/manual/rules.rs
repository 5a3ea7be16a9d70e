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
                "Loss from the handover weight",
                "Watch at {0} the plan's limit ({1}). Call the breeder at the limit ({2}; a plan may say {3} to {4}). Vet today at {5} ({6} at most; below {7}, at {8}). Emergency at {9} ({10} at most).",
                "The handover weight was taken with food in the crop, or on another scale.",
            ],
            [
                "Pérdida desde el peso de entrega",
                "Vigile a {0} el límite del plan ({1}). Llame al criador en el límite ({2}; un plan puede decir de {3} a {4}). Al veterinario hoy a {5} ({6} como máximo; por debajo de {7}, a {8}). Emergencia a {9} ({10} como máximo).",
                "El peso de entrega se tomó con comida en el buche o en otra báscula.",
            ],
        ),
        RuleId::PeakLoss => texts(
            say,
            [
                "Loss from the highest weight",
                "The peak is the card's, or the highest level that the readings tell (from {0} of them on) if that is higher. Call the breeder at {1} (only watch if the other readings do not agree, or if {2} were level within {3} a day and there is no sign of illness). Vet today at {4} (below {5}, at {6}). Emergency at {7} (vet today if level and without a sign), and always at {8}.",
                "A large macaw loses more than usual and is well, or three mornings in a row there was food in the crop.",
            ],
            [
                "Pérdida desde el peso máximo",
                "El máximo es el de la ficha, o el nivel más alto que dan las pesadas (a partir de {0}) si es mayor. Llame al criador a {1} (solo vigile si las otras pesadas no lo confirman, o si {2} fueron estables dentro de {3} al día y no hay ninguna señal). Al veterinario hoy a {4} (por debajo de {5}, a {6}). Emergencia a {7} (al veterinario hoy si es estable y sin señales), y siempre a {8}.",
                "Un guacamayo grande pierde más de lo usual y está bien, o tres mañanas seguidas había comida en el buche.",
            ],
        ),
        RuleId::FallingWeight => texts(
            say,
            [
                "Weight falling day after day",
                "Looks for a loss of at least {0} a day beyond that of a healthy chick. Watch when the readings are {1} times as likely with it as without; call the breeder when they are {2} times as likely.",
                "Two or three mornings there was food in the crop and the next ones not, or the scale is coarse.",
            ],
            [
                "Peso que baja día tras día",
                "Busca una pérdida de al menos {0} al día por encima de la de un polluelo sano. Vigile si las pesadas son {1} veces más probables con ella que sin ella; llame al criador si lo son {2} veces más.",
                "Dos o tres mañanas había comida en el buche y las siguientes no, o la báscula es poco fina.",
            ],
        ),
        RuleId::ArrivalLoss => texts(
            say,
            [
                "Loss over the journey",
                "In the first {0} at home: watch above {1} of the handover weight, call the breeder at {2}.",
                "The breeder's scale and yours do not read the same.",
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
                "De una mañana a la siguiente: vigile a {0}, llame al criador a {1} si una segunda pesada lo confirma (al veterinario hoy con cualquier señal), al veterinario hoy a {2}.",
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
                "Cualquier pérdida en un polluelo decaído o sin fuerzas: al veterinario hoy.",
                "Solo tenía sueño, o la pérdida no pasa del error de la báscula.",
            ],
        ),
        RuleId::StableLoss => texts(
            say,
            [
                "Loss once weaned",
                "Compared with the median of {0}, or with the one up to the weaning if that is higher: watch at {1}, call the breeder at {2} (vet today if it weighs less than {3}), vet today at {4}, emergency at {5}.",
                "Two weighings of those days had food in the crop.",
            ],
            [
                "Pérdida ya destetado",
                "Frente a la mediana de {0}, o la de hasta el destete si es más alta: vigile a {1}, llame al criador a {2} (al veterinario hoy si pesa menos de {3}), al veterinario hoy a {4}, emergencia a {5}.",
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
                "It was fed, but somebody noted that it was not.",
            ],
            [
                "Tomas sin dar",
                "Seguidas, y se sabe que no se dieron: pasado el máximo vigile con {0}, llame al criador con {1}, al veterinario hoy con {2}; si aún crece, una toma antes. Sin comer: llame al criador tras {3}, al veterinario hoy tras {4}, con cañones tras {5}, la primera y la última no antes del intervalo más largo del plan y {6}.",
                "Alguien le dio de comer y anotó que no.",
            ],
        ),
        RuleId::RefusedFeeds => texts(
            say,
            [
                "Feeds refused",
                "In a row: watch at {0} while it is offered again. After the last try it counts as not given: call the breeder at {1}, vet today at {2}. Only watch while it is being weaned and swallows solids.",
                "It ate and nobody noted it.",
            ],
            [
                "Tomas rechazadas",
                "Seguidas: vigile con {0} mientras se vuelve a ofrecer. Tras el último intento cuenta como no dada: llame al criador con {1}, al veterinario hoy con {2}. Solo vigile si se está destetando y come alimento sólido.",
                "Comió y nadie lo anotó.",
            ],
        ),
        RuleId::DayIntake => texts(
            say,
            [
                "Too little food in a day",
                "On a day on which every feed is answered: watch when less than {0} was taken, call the breeder below {1} (neither while weaning with solids noted). Less than {2} of its weight a day for {3}, and no solids: call the breeder.",
                "It ate solids, or took food that nobody noted.",
            ],
            [
                "Poca comida en un día",
                "Un día en que cada toma tiene respuesta: vigile si tomó menos de {0}, llame al criador si tomó menos de {1} (no en el destete, si comió alimento sólido). Menos de {2} de su peso al día durante {3}, y nada sólido: llame al criador.",
                "Comió alimento sólido, o tomó algo que nadie anotó.",
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
                "Since the last feed before it: watch above {0} or the plan's night, call the breeder after {1}, emergency after {2}. Younger than {3}: watch above {4}, call the breeder after {5}, emergency after {6}. In a large species from {7} to {8} old: watch above {9}, call the breeder after {10}, emergency after {11}.",
                "It was fed on the way and nobody noted it.",
            ],
            [
                "Horas sin comer en el viaje",
                "Desde la última toma: vigile por encima de {0} o de la noche del plan, llame al criador si pasan {1}, emergencia si pasan {2}. Con menos de {3}: vigile por encima de {4}, llame al criador si pasan {5}, emergencia si pasan {6}. En una especie grande de {7} a {8} de edad: vigile por encima de {9}, llame al criador si pasan {10}, emergencia si pasan {11}.",
                "Comió por el camino y nadie lo anotó.",
            ],
        ),
        RuleId::GapTooShort => texts(
            say,
            [
                "Two feeds too close",
                "Watch below the shortest gap ({0} by day, less where the plan's feeds are closer together; {1} at night), call the breeder below {2} of it.",
                "One feed was split into parts more than an hour apart.",
            ],
            [
                "Dos tomas demasiado seguidas",
                "Vigile por debajo del intervalo mínimo ({0} de día, menos si las tomas del plan van más seguidas; {1} de noche), llame al criador por debajo de {2} de él.",
                "Una toma se partió en partes con más de una hora entre ellas.",
            ],
        ),
        RuleId::VolumeOverCeiling => texts(
            say,
            [
                "Too much in one feed",
                "Share of the empty-crop weight: watch above {0}, call the breeder above {1}, or above {2} in a large macaw and {3} in a hyacinth macaw.",
                "The last weight is old or was read wrongly.",
            ],
            [
                "Demasiado en una toma",
                "Parte del peso con el buche vacío: vigile por encima de {0}, llame al criador por encima de {1}, o de {2} en un guacamayo grande y {3} en un guacamayo jacinto.",
                "El último peso es antiguo o se leyó mal.",
            ],
        ),
        RuleId::ServedHot => texts(
            say,
            [
                "Formula too hot",
                "Given above {0}: watch. Above {1}: call the breeder. At {2} or more: vet today. After a feed of {3} or more: watch the crop for {4}.",
                "The thermometer was still in the hot water, or reads high.",
            ],
            [
                "Papilla demasiado caliente",
                "Dada a más de {0}: vigile. A más de {1}: llame al criador. A {2} o más: al veterinario hoy. Después de una toma a {3} o más: vigile el buche durante {4}.",
                "El termómetro aún estaba en el agua caliente o marca de más.",
            ],
        ),
        RuleId::ServedCold => texts(
            say,
            [
                "Formula too cool",
                "Given below {0}, or below the plan's lowest temperature where that is lower: watch. {1} feeds in a row: call the breeder.",
                "The breeder feeds cooler on purpose and the plan does not say so.",
            ],
            [
                "Papilla demasiado fría",
                "Dada a menos de {0}, o por debajo de la temperatura mínima del plan si es más baja: vigile. {1} tomas seguidas: llame al criador.",
                "El criador la da menos caliente a propósito y el plan no lo dice.",
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
                "Aún hay comida al llegar a {0} su tiempo habitual: vigile.",
                "La última toma fue mayor que de costumbre, o la última antes de la noche.",
            ],
        ),
        RuleId::CropLate => texts(
            say,
            [
                "Food left in the crop by day",
                "A quarter or more {0} after the last feed: call the breeder, do not feed. Fuller: vet today when it is no smaller {1} later, emergency after {2}.",
                "It has eaten solid food since the feed.",
            ],
            [
                "Comida en el buche durante el día",
                "Un cuarto o más {0} después de la última toma: llame al criador, no dé la toma. Más lleno: al veterinario hoy si no ha bajado {1} después, emergencia si pasan {2}.",
                "Comió alimento sólido después de la toma.",
            ],
        ),
        RuleId::CropOvernight => texts(
            say,
            [
                "Food left in the crop after the night",
                "Time after the last feed. A quarter: call the breeder after {0}, vet today after {1}. Fuller: call the breeder after {2}, vet today when it is no smaller {3} later, emergency after {4}. A trace: watch after {5}, vet today when it is still there after {6}.",
                "It ate from its dish at dawn.",
            ],
            [
                "Comida en el buche tras la noche",
                "Tiempo desde la última toma. Un cuarto: llame al criador si pasan {0}, al veterinario hoy si pasan {1}. Más lleno: llame al criador si pasan {2}, al veterinario hoy si no ha bajado {3} después, emergencia si pasan {4}. Un resto: vigile si pasan {5}, al veterinario hoy si sigue ahí cuando pasan {6}.",
                "Comió de su plato al amanecer.",
            ],
        ),
        RuleId::CropStatic => texts(
            say,
            [
                "The crop does not empty, and there is a bad sign",
                "Emergency: food left after the night, or a quarter or more {0} after a feed, together with a sour smell, air in the crop, food coming up, or a dull or cold chick; or a hard or doughy crop.",
                "Solid food was just eaten and feels hard.",
            ],
            [
                "El buche no se vacía y hay otra señal grave",
                "Emergencia: comida tras la noche, o un cuarto o más {0} después de una toma, junto con olor agrio, aire en el buche, regurgitación, decaído o frío; o un buche duro o pastoso.",
                "Acaba de comer alimento sólido y se nota duro.",
            ],
        ),
        RuleId::DroppingsSeen(_) => texts(
            say,
            [
                "Droppings",
                "Red without red food, like tar, or with a yellow-green white part: vet today. Emerald green: call the breeder; with a falling weight, vet today. Undigested food: watch; on {0} days, vet today. The stool itself liquid: watch; for more than {1}, vet today. Much water around a formed stool: watch; for more than {2}, vet today (after fruit: only watch). Small, dark or few: watch; for more than {3}, call the breeder.",
                "Coloured or wet food was eaten.",
            ],
            [
                "Heces",
                "Rojas sin haber comido nada rojo, como alquitrán, o con la parte blanca amarillo verdosa: al veterinario hoy. Verde esmeralda: llame al criador; si además baja de peso, al veterinario hoy. Con comida sin digerir: vigile; {0} días, al veterinario hoy. Todo líquido, sin forma: vigile; más de {1}, al veterinario hoy. Mucha agua alrededor de una parte sólida con forma: vigile; más de {2}, al veterinario hoy (tras comer fruta: solo vigile). Pequeñas, oscuras o pocas: vigile; más de {3}, llame al criador.",
                "Comió algo de color o con mucha agua.",
            ],
        ),
        RuleId::FewDroppings => texts(
            say,
            [
                "Few droppings in a day",
                "Waking hours only. At {0} its own usual number in a day, or less: call the breeder, once {1} days were counted. None in a whole day: vet today, until one is seen.",
                "The paper was changed in between and not counted, or two people noted the same count.",
            ],
            [
                "Pocas heces en un día",
                "Solo cuentan las horas despierto. Con {0} su número habitual de un día, o menos: llame al criador, cuando ya se contaron {1} días. Ninguna en todo un día: al veterinario hoy, hasta que se vea una.",
                "Se cambió el papel sin contar, o dos personas anotaron las mismas.",
            ],
        ),
        RuleId::SignSeen(_) => texts(
            say,
            [
                "A sign that was seen",
                "Each sign has its own level: watch, call the breeder, vet today or emergency (list below). It counts until it is noted as gone, at most for {0}. Food brought back just after a feed {1} times in a day, or on days running: call the breeder. A sign for the vet, or food that may be in the windpipe, counts for {2}.",
                "It was a mistake: note it as gone.",
            ],
            [
                "Una señal que alguien vio",
                "Cada señal tiene su nivel: vigile, llame al criador, al veterinario hoy o emergencia (lista abajo). Cuenta hasta que se anota que ya no la tiene, como máximo {0}. Papilla regurgitada justo después de una toma {1} veces en un día o en días seguidos: llame al criador. Cuenta {2} si es para el veterinario o pudo entrar papilla en las vías respiratorias.",
                "Fue un error: anote que ya no la tiene.",
            ],
        ),
        RuleId::RoomTemperature => texts(
            say,
            [
                "Room too cool or too warm",
                "Outside the plan's range ({0} to {1}; once it is being weaned, from {2}): watch. If also below {3} or above {4}: call the breeder. In down or pin feathers, where the breeder named no range: {5} to {6}, call below {7} or above {8}.",
                "The thermometer hangs away from the chick's own warm spot.",
            ],
            [
                "Habitación demasiado fría o demasiado cálida",
                "Fuera de los límites del plan ({0} a {1}; durante el destete, desde {2}): vigile. Y por debajo de {3} o por encima de {4}: llame al criador. Con plumón o cañones, si el criador no dio límites: {5} a {6}; llame por debajo de {7} o por encima de {8}.",
                "El termómetro está lejos del rincón cálido del polluelo.",
            ],
        ),
        RuleId::VetVisitDue => texts(
            say,
            [
                "First vet visit",
                "No visit to a vet noted {0} after the arrival, and no appointment to come: watch, for {1}.",
                "The visit took place and was not noted.",
            ],
            [
                "Primera visita al veterinario",
                "Sin visita al veterinario anotada {0} después de la llegada y sin cita pendiente: vigile, durante {1}.",
                "La visita se hizo y no se anotó.",
            ],
        ),
    }
}
