//! The signs of trouble by what a person sees: a plain sentence, the first action, what not to do.

use crate::domain::journal::signs::{Sign, SignGroup};
use crate::domain::warnings::level::Level;
use crate::domain::warnings::rules::sign_seen;
use crate::words::Language;

/// What a person reads about one sign.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SignWords {
    /// What is seen.
    pub seen: &'static str,
    /// What to do first, after the call if there is one to make.
    pub first: &'static str,
    /// What not to do.
    pub avoid: &'static str,
    /// How worried to be about it by itself.
    pub level: Level,
}

/// The title of a group of signs.
pub const fn group(language: Language, group: SignGroup) -> &'static str {
    match group {
        SignGroup::Breathing => language.pick("Breathing", "Respiración"),
        SignGroup::Crop => language.pick("Crop and swallowing", "Buche y deglución"),
        SignGroup::Droppings => language.pick("Droppings", "Heces"),
        SignGroup::Behaviour => language.pick("Behaviour and warmth", "Comportamiento y calor"),
        SignGroup::FeedingAccident => {
            language.pick("A feed that went wrong", "Una toma que salió mal")
        }
        SignGroup::Injury => language.pick("Injury and poison", "Heridas y venenos"),
    }
}

/// What is found in a group of signs, in a few words.
pub const fn group_hint(language: Language, group: SignGroup) -> &'static str {
    match group {
        SignGroup::Breathing => language.pick(
            "open beak, clicks, tail bobbing",
            "pico abierto, ruidos, mueve la cola",
        ),
        SignGroup::Crop => language.pick(
            "sour, not moving, vomits, leaks",
            "agrio, no se vacía, vomita, gotea",
        ),
        SignGroup::Droppings => language.pick(
            "none, green, black, watery, blood",
            "ninguna, verdes, negras, líquidas, sangre",
        ),
        SignGroup::Behaviour => language.pick(
            "sleepy, weak, cold, too hot, begging",
            "adormilado, débil, frío, calor, pide comida",
        ),
        SignGroup::FeedingAccident => language.pick(
            "windpipe, too hot",
            "vías respiratorias, demasiado caliente",
        ),
        SignGroup::Injury => language.pick(
            "fall, bite, bleeding, fumes, metal",
            "caída, mordedura, sangra, humos, metal",
        ),
    }
}

/// What to read about a sign.
pub const fn sign(language: Language, sign: Sign) -> SignWords {
    SignWords {
        seen: seen(language, sign),
        first: first(language, sign),
        avoid: avoid(language, sign),
        level: sign_seen::level(sign),
    }
}

#[expect(clippy::too_many_lines, reason = "a table of one row a sign")]
const fn seen(language: Language, sign: Sign) -> &'static str {
    match sign {
        Sign::LabouredBreathing => language.pick(
            "At rest, breathes with open beak or a bobbing tail (not hot, not after flapping)",
            "En reposo, pico abierto o la cola sube y baja al respirar (sin calor, sin haber aleteado)",
        ),
        Sign::ClickCleared => language.pick(
            "Clicked, wheezed or coughed at a feed, now breathes quietly",
            "Hizo ruidos al respirar (chasquidos, pitidos) o tosió al comer, ya no",
        ),
        Sign::ClickStays => language.pick(
            "Clicks or wheezes for more than 5 minutes, or it comes back",
            "Hace ruidos al respirar más de 5 minutos, o le vuelven",
        ),
        Sign::SourCrop => language.pick(
            "Crop smells sour, is full of air, or does not empty",
            "El buche huele agrio, está lleno de aire o no se vacía",
        ),
        Sign::Vomiting => language.pick(
            "Vomits: food comes up between feeds, or is flung out, sour or slimy",
            "Vomita: le sube comida entre tomas, o la lanza, agria o con moco",
        ),
        Sign::BroughtBackOnce => language.pick(
            "Brought food back just after a feed, is bright, head clean",
            "Regurgitó papilla justo después de la toma, sigue activo y con la cabeza limpia",
        ),
        Sign::CropPatch => language.pick(
            "Over the crop: raw, weeping skin, a scab, or formula leaks out (not wet from a bath)",
            "Sobre el buche: piel en carne viva o que supura, costra, o sale papilla (no mojada del baño)",
        ),
        Sign::NoDroppingFourHours => language.pick(
            "No dropping for 4 waking hours after a feed",
            "Despierto, lleva 4 horas sin defecar después de una toma",
        ),
        Sign::NoDroppingEightHours => language.pick(
            "No dropping for 8 waking hours",
            "Despierto, lleva 8 horas sin defecar",
        ),
        Sign::BadDroppingsOverADay => language.pick(
            "Green, black or watery droppings for more than a day",
            "Heces verdes, negras o muy líquidas más de un día",
        ),
        Sign::UndigestedFood => language.pick(
            "Undigested food in the droppings",
            "Comida sin digerir en las heces",
        ),
        Sign::BloodInDroppings => {
            language.pick("Blood in the droppings", "Sangre en las heces")
        }
        Sign::Dull => language.pick(
            "Fluffed up and sleepy for over an hour, does not perk up for your voice or food (not a nap)",
            "Plumas infladas y adormilado más de una hora, no se anima si le habla ni con comida (no es una siesta)",
        ),
        Sign::Limp => language.pick(
            "Cannot stand, or cannot hold its head up",
            "No se tiene en pie o no sostiene la cabeza",
        ),
        Sign::Cold => language.pick(
            "Feet and body cold, or shivering while dry (not after a bath)",
            "Patas y cuerpo fríos, o tiembla estando seco (no después de un baño)",
        ),
        Sign::Overheated => language.pick(
            "Too hot: pants and holds the wings out (not a blush)",
            "Tiene demasiado calor: jadea, alas separadas (no solo la cara roja)",
        ),
        Sign::StaysOverheated => language.pick(
            "Still too hot after 20 minutes of cooling",
            "Sigue con demasiado calor después de 20 minutos al fresco",
        ),
        Sign::Dehydrated => language.pick(
            "Dehydrated: wrinkled skin, sticky mouth, sunken eyes",
            "Deshidratado: piel arrugada, boca pegajosa, ojos hundidos",
        ),
        Sign::BegsAllDay => language.pick("Begs all day", "Pide comida todo el día"),
        Sign::WentDownWrong => language.pick(
            "Food may have gone into the windpipe (aspiration): gasping or blue",
            "Papilla en las vías respiratorias (aspiración): boquea o se pone azul",
        ),
        Sign::FedTooHot => language.pick(
            "Was fed formula at 43.3 °C (110 °F) or more",
            "Comió papilla de 43,3 °C (110 °F) o más",
        ),
        Sign::Lame => language.pick(
            "Lame, splayed leg, swollen toe or tight ring",
            "Cojea, pata abierta hacia fuera, dedo hinchado o anilla que aprieta",
        ),
        Sign::SwallowedObject => language.pick(
            "Swallowed bedding, a toy or metal",
            "Se tragó viruta o sustrato, un juguete o metal",
        ),
        Sign::Bleeding => language.pick("Bleeds and does not stop", "Sangra y no para"),
        Sign::SeizureOrTrauma => language.pick(
            "Seizure, unconscious, dazed after a fall or a window, bite by cat or dog, fumes or bleach",
            "Convulsión, inconsciente, aturdido por una caída o un cristal, mordedura de gato o perro, humo, vapores o lejía (cloro, lavandina)",
        ),
        Sign::Prolapse => language.pick(
            "Red tissue hangs out of the vent",
            "Le sale tejido rojo por la cloaca",
        ),
        Sign::Wobbles => language.pick(
            "Wobbles, falls off the perch or tilts its head",
            "Se tambalea, se cae de la percha o ladea la cabeza",
        ),
        Sign::Discharge => language.pick(
            "Discharge from nose or eyes, or an eye swollen or shut",
            "Secreción en la nariz o los ojos, o un ojo hinchado o cerrado",
        ),
        Sign::MouthPlaques => language.pick(
            "White or yellow plaques or sores in the mouth",
            "Placas blancas o amarillas o llagas en la boca",
        ),
        Sign::Shock => language.pick(
            "Pale, weak, breathing fast after a fright or accident",
            "Pálido, débil, respira deprisa tras un susto o accidente",
        ),
        Sign::Bruised => language.pick(
            "Bruise or swelling under the skin",
            "Moretón (moratón) o bulto bajo la piel",
        ),
        Sign::FeatherBleeds => language.pick(
            "A broken blood feather bleeds",
            "Sangra una pluma en crecimiento rota",
        ),
    }
}

#[expect(clippy::too_many_lines, reason = "a table of one row a sign")]
const fn first(language: Language, sign: Sign) -> &'static str {
    match sign {
        Sign::LabouredBreathing => language.pick(
            "Go to the vet now. Keep it upright, warm and quiet. Touch it as little as you can.",
            "Vaya ya al veterinario. Manténgalo derecho, al calor y tranquilo. Tóquelo lo menos posible.",
        ),
        Sign::ClickCleared => language.pick(
            "Stop this feed. Wipe beak and nostrils. Look at its breathing after 10, 30 and 60 minutes, then at each feed for 3 days. Weigh it daily. If it eats less or fluffs up in these days, call the vet.",
            "Pare esta toma. Limpie el pico y la nariz. Mire cómo respira a los 10, 30 y 60 minutos, y luego en cada toma durante 3 días. Péselo a diario. Si en esos días come menos o infla las plumas, llame al veterinario.",
        ),
        Sign::ClickStays => language.pick(
            "Go to the vet now. Keep it upright, warm, dim and quiet. Tell the vet when and how much it was fed, and how it breathes.",
            "Vaya ya al veterinario. Manténgalo derecho, al calor, en penumbra y tranquilo. Diga al veterinario cuándo y cuánto comió y cómo respira.",
        ),
        Sign::SourCrop => language.pick(
            "Go to the vet now. Keep the chick warm and upright. Tell the vet when it was last fed.",
            "Vaya ya al veterinario. Mantenga al polluelo al calor y derecho. Diga al veterinario cuándo comió por última vez.",
        ),
        Sign::Vomiting => language.pick(
            "Stop this feed. Give no other until you have spoken to the vet. Listen to its breathing. Keep the chick warm. Keep a sample or a picture, and note how long after the feed that was.",
            "Pare la toma. No dé la próxima hasta hablar con el veterinario. Escuche cómo respira. Mantenga al polluelo al calor. Guarde una muestra o una foto y anote cuánto tiempo después de la toma fue.",
        ),
        Sign::BroughtBackOnce => language.pick(
            "Stop this feed. Listen to its breathing and feel the crop. If it happens twice in a day or two days running, call the breeder. Near its highest weight a feed is often too much: ask whether each feed should be 10 to 20 % smaller.",
            "Pare esta toma. Escuche cómo respira y palpe el buche. Si pasa dos veces en un día o dos días seguidos, llame al criador. Cerca del peso máximo la toma suele ser demasiada: pregunte si conviene dar un 10 a 20 % menos en cada una.",
        ),
        Sign::CropPatch => language.pick(
            "Go to the vet. Cover the skin with clean gauze. Keep the chick warm.",
            "Vaya ya al veterinario. Cubra la piel con una gasa limpia. Mantenga al polluelo al calor.",
        ),
        Sign::NoDroppingFourHours => language.pick(
            "Put fresh paper down. Check that it is warm, and look at the crop. Look again in an hour.",
            "Ponga papel limpio. Compruebe que está tibio y mire el buche. Mire otra vez dentro de una hora.",
        ),
        Sign::NoDroppingEightHours => language.pick(
            "Keep the chick warm. Note the last feed, the crop and the last dropping for the \
                 vet.",
            "Mantenga al polluelo al calor. Anote para el veterinario la última toma, cómo está el buche y las últimas heces.",
        ),
        Sign::BadDroppingsOverADay => language.pick(
            "Keep a fresh sample or a picture for the vet. Keep the chick warm.",
            "Guarde una muestra fresca o una foto para el veterinario. Mantenga al polluelo al calor.",
        ),
        Sign::UndigestedFood => language.pick(
            "Keep a picture. Look again tomorrow: if you see it on two days, go to the vet.",
            "Guarde una foto. Mire otra vez mañana: si lo ve dos días, vaya al veterinario.",
        ),
        Sign::BloodInDroppings => language.pick(
            "Keep the dropping or a picture. Keep the chick warm and quiet.",
            "Guarde la muestra o una foto. Mantenga al polluelo al calor y tranquilo.",
        ),
        Sign::Dull => language.pick(
            "Keep it warm, dim and quiet. Look at its crop, droppings and breathing while you call.",
            "Manténgalo al calor, en penumbra y tranquilo. Mientras llama, mire el buche, las heces y cómo respira.",
        ),
        Sign::Limp => language.pick(
            "Go to the vet now. Wrap it loosely and keep it warm.",
            "Vaya ya al veterinario. Envuélvalo sin apretar y manténgalo al calor.",
        ),
        Sign::Cold => language.pick(
            "Warm it slowly in a warm box or against your body. Keep it warm on the way.",
            "Dele calor poco a poco en una caja tibia o contra su cuerpo. Llévelo abrigado.",
        ),
        Sign::Overheated => language.pick(
            "Move it to a cooler, shaded, airy place. Look again in 20 minutes.",
            "Llévelo a un sitio más fresco, a la sombra y ventilado. Mire otra vez dentro de 20 minutos.",
        ),
        Sign::StaysOverheated => language.pick(
            "Keep it in the cool, airy place while you call, and on the way.",
            "Manténgalo en un sitio fresco y ventilado mientras llama y por el camino.",
        ),
        Sign::Dehydrated => language.pick(
            "Keep it warm. Tell the vet about the last feeds and how thick the formula was.",
            "Manténgalo al calor. Diga al veterinario las últimas tomas y la consistencia de la papilla.",
        ),
        Sign::BegsAllDay => language.pick(
            "Check its weight, the crop and how warm the room is. Drop no feed. Ask the breeder whether a dropped feed should come back.",
            "Mire el peso, el buche y la temperatura de la habitación. No quite tomas. Pregunte al criador si hay que volver a ofrecer una quitada.",
        ),
        Sign::WentDownWrong => language.pick(
            "Stop. Take spoon or syringe away and let go of the beak. Support its body, head slightly lower; let it shake and cough. Wipe nostrils and beak. Go to the vet now. Look at its breathing after 10, 30 and 60 minutes and tell the vet.",
            "Pare. Aparte la cuchara o la jeringa y suelte el pico. Sujételo con la cabeza algo más baja; deje que la sacuda y tosa. Limpie la nariz y el pico. Vaya ya al veterinario. Mire cómo respira a los 10, 30 y 60 minutos y dígaselo.",
        ),
        Sign::FedTooHot => language.pick(
            "Call now, even if the chick looks well: the burn shows days later. Note the temperature and the time.",
            "Llame ya, aunque el polluelo parezca estar bien: la quemadura se ve días después. Anote la temperatura y la hora.",
        ),
        Sign::Lame => language.pick(
            "Have it seen today: its bones are still growing. Until then keep it low down, on a soft floor with grip.",
            "Vaya hoy al veterinario: los huesos aún crecen. Hasta entonces, téngalo abajo, en suelo blando que no resbale.",
        ),
        Sign::SwallowedObject => language.pick(
            "Note what it swallowed and when. Take a piece of it to the vet.",
            "Anote qué se tragó y cuándo. Lleve un trozo al veterinario.",
        ),
        Sign::Bleeding => language.pick(
            "Press gently with clean gauze. Keep pressing on the way to the vet.",
            "Presione suavemente con una gasa limpia. Siga presionando de camino al veterinario.",
        ),
        Sign::SeizureOrTrauma => language.pick(
            "Take it out of the fumes into fresh air. Put it in a dark, padded, warm box. Go to the vet now. A bite is an emergency even without a wound.",
            "Sáquelo del humo o los vapores, al aire fresco. Póngalo en una caja oscura, acolchada y tibia. Vaya ya al veterinario. Una mordedura es una emergencia aunque no haya herida.",
        ),
        Sign::Prolapse => language.pick(
            "Go to the vet now. Cover the tissue with gauze wet with clean lukewarm water. Keep the chick warm.",
            "Vaya ya al veterinario. Cubra el tejido con una gasa mojada en agua limpia y tibia. Mantenga al polluelo al calor.",
        ),
        Sign::Wobbles => language.pick(
            "Put it on a soft floor without a perch, dim and warm. Could it have chewed metal? Tell the vet.",
            "Póngalo en suelo blando sin percha, en penumbra y al calor. ¿Pudo morder metal? Dígaselo al veterinario.",
        ),
        Sign::Discharge => language.pick(
            "Keep it warm and apart from other birds. Wipe the nostrils with a damp cloth. Tell the vet whether formula came out of the nose.",
            "Manténgalo al calor y lejos de otras aves. Limpie los orificios nasales con un paño húmedo. Diga al veterinario si salió papilla por la nariz.",
        ),
        Sign::MouthPlaques => language.pick(
            "Take a picture. Keep its spoon and cup apart from those of other birds.",
            "Haga una foto. Separe su cuchara y su vaso de los de otras aves.",
        ),
        Sign::Shock => language.pick(
            "Go to the vet now. Put it in a dark, quiet, warm box. Touch it as little as you can. After a blow to the head, add no heat.",
            "Vaya ya al veterinario. Póngalo en una caja oscura, tranquila y tibia. Tóquelo lo menos posible. Después de un golpe en la cabeza, no le dé calor añadido.",
        ),
        Sign::Bruised => language.pick(
            "Keep it low on a soft floor. Take a picture and note what it hit. A bruise turns green in a day or two.",
            "Téngalo abajo, en suelo blando. Haga una foto y anote contra qué chocó. Un moretón (moratón) se pone verde en uno o dos días.",
        ),
        Sign::FeatherBleeds => language.pick(
            "Press gently with clean gauze or cornflour where the feather is broken. Keep it dim and quiet. Keep pressing on the way to the vet.",
            "Presione suavemente con gasa limpia o maicena donde se rompió la pluma. Téngalo en penumbra y tranquilo. Siga presionando de camino al veterinario.",
        ),
    }
}

#[expect(clippy::too_many_lines, reason = "a table of one row a sign")]
const fn avoid(language: Language, sign: Sign) -> &'static str {
    match sign {
        Sign::LabouredBreathing => language.pick(
            "Give nothing by mouth. Do not hold the chest.",
            "No le dé nada por la boca. No le sujete el pecho.",
        ),
        Sign::ClickCleared => language.pick(
            "Do not go on with the feed. Do not turn it upside down. Give no water.",
            "No siga con la toma. No lo ponga boca abajo. No le dé agua.",
        ),
        Sign::ClickStays => language.pick(
            "Give nothing by mouth. Do not wait for it to clear.",
            "No le dé nada por la boca. No espere a que se le pase.",
        ),
        Sign::SourCrop => language.pick(
            "Give nothing by mouth. Do not massage or empty the crop.",
            "No le dé nada por la boca. No masajee ni vacíe el buche.",
        ),
        Sign::Vomiting => language.pick(
            "Do not feed again to replace what came up. No home remedies.",
            "No le dé más para reponer lo que vomitó. Nada de remedios caseros.",
        ),
        Sign::BroughtBackOnce => {
            language.pick("Do not feed again to replace what came up.", "No le dé más para reponer lo que regurgitó.")
        }
        Sign::CropPatch => language.pick(
            "Do not feed. Do not pull the scab or put anything on it.",
            "No le dé de comer. No quite la costra ni ponga nada encima.",
        ),
        Sign::NoDroppingFourHours => language.pick(
            "Do not feed on a crop that holds food. Do not press the belly.",
            "No le dé de comer si queda comida en el buche. No le apriete el vientre.",
        ),
        Sign::NoDroppingEightHours => language.pick(
            "Do not press the belly. Give no oil and no water.",
            "No le apriete el vientre. No le dé aceite ni agua.",
        ),
        Sign::BadDroppingsOverADay => language.pick(
            "Do not give any remedy or change the formula.",
            "No dé remedios ni cambie la papilla.",
        ),
        Sign::UndigestedFood => language.pick(
            "Do not drop a feed now. Give no grit.",
            "No quite ninguna toma ahora. No dé arenilla.",
        ),
        Sign::BloodInDroppings => {
            language.pick("Do not wait until it happens again.", "No espere a que pase otra vez.")
        }
        Sign::Dull => language.pick(
            "Do not feed it if it is cold or swallows badly. Do not wait until tomorrow.",
            "No le dé de comer si está frío o traga mal. No espere a mañana.",
        ),
        Sign::Limp => language.pick("Give nothing by mouth.", "No le dé nada por la boca."),
        Sign::Cold => language.pick(
            "Do not feed it until it is warm, even if it begs. No hot-water bottle against the skin.",
            "No le dé de comer hasta que esté tibio, aunque pida. No ponga una bolsa de agua caliente contra la piel.",
        ),
        Sign::Overheated => language.pick(
            "No cold bath, no ice. Do not feed it until it is calm.",
            "Nada de agua fría ni hielo. No le dé de comer hasta que esté tranquilo.",
        ),
        Sign::StaysOverheated => language.pick("No ice. Do not feed.", "Nada de hielo. No le dé de comer."),
        Sign::Dehydrated => language.pick(
            "Do not give water by syringe. Do not make the formula thicker.",
            "No le dé agua con jeringa. No haga la papilla más espesa.",
        ),
        Sign::BegsAllDay => language.pick(
            "Do not give more at a feed than the plan says.",
            "No dé más por toma de lo que dice el plan.",
        ),
        Sign::WentDownWrong => language.pick(
            "Do not turn it upside down. No water, no blows on the back, no finger in the beak, no sucking with a syringe. Do not press the crop.",
            "No lo ponga boca abajo. No le dé agua ni golpes en la espalda. No meta el dedo en el pico ni aspire con la jeringa. No apriete el buche.",
        ),
        Sign::FedTooHot => language.pick(
            "Do not wait for marks on the skin. Do not try to empty the crop.",
            "No espere a ver marcas en la piel. No intente vaciar el buche.",
        ),
        Sign::Lame => language.pick(
            "Do not splint the leg. Do not pull or cut a leg ring yourself.",
            "No entablille la pata. No tire de la anilla ni la corte por su cuenta.",
        ),
        Sign::SwallowedObject => language.pick(
            "Do not try to make it come up or wash it down.",
            "No intente que lo vomite ni que lo baje con agua.",
        ),
        Sign::Bleeding => language.pick(
            "Do not lift the gauze to look. Do not pull feathers.",
            "No levante la gasa para mirar. No arranque plumas.",
        ),
        Sign::SeizureOrTrauma => language.pick(
            "Give nothing by mouth. Do not hold a chick in a seizure.",
            "No le dé nada por la boca. No sujete a un polluelo que convulsiona.",
        ),
        Sign::Prolapse => language.pick(
            "Do not push it back. Give nothing by mouth.",
            "No lo empuje hacia dentro. No le dé nada por la boca.",
        ),
        Sign::Wobbles => language.pick(
            "Do not feed it if it cannot hold its head. Do not let it climb.",
            "No le dé de comer si no sostiene la cabeza. No lo deje trepar.",
        ),
        Sign::Discharge => language.pick(
            "No eye drops and no remedies of your own. Leave what is in the eye for the vet to see.",
            "Nada de gotas ni remedios caseros. Deje lo que haya en el ojo para que lo vea el veterinario.",
        ),
        Sign::MouthPlaques => language.pick(
            "Do not scrape the plaques off. No mouthwash, no remedies.",
            "No raspe las placas. Nada de enjuagues ni remedios.",
        ),
        Sign::Shock => language.pick(
            "Give nothing by mouth. Do not hold or cuddle it to comfort it.",
            "No le dé nada por la boca. No lo sujete ni lo abrace para calmarlo.",
        ),
        Sign::Bruised => language.pick(
            "No ice, no ointment, no human medicine.",
            "Nada de hielo, pomadas ni medicinas de personas.",
        ),
        Sign::FeatherBleeds => language.pick(
            "Do not pull the feather. Give nothing by mouth.",
            "No arranque la pluma. No le dé nada por la boca.",
        ),
    }
}
