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
        SignGroup::Crop => language.pick("Crop and swallowing", "Buche y tragar"),
        SignGroup::Droppings => language.pick("Droppings", "Excrementos"),
        SignGroup::Behaviour => language.pick("Behaviour and warmth", "Comportamiento y calor"),
        SignGroup::FeedingAccident => {
            language.pick("A feed that went wrong", "Una toma que salió mal")
        }
        SignGroup::Injury => language.pick("Injury and poison", "Heridas y venenos"),
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
            "Breathes with open beak or bobbing tail at rest, not hot and not after flapping",
            "Respira con el pico abierto o moviendo la cola en reposo, sin calor ni aleteo previo",
        ),
        Sign::ClickCleared => language.pick(
            "Clicked, wheezed or coughed at a feed, now clear",
            "Chasqueó, silbó o tosió al comer; ya está bien",
        ),
        Sign::ClickStays => language.pick(
            "Clicks or wheezes for more than 5 minutes, or again",
            "Chasquea o silba más de 5 minutos, o de nuevo",
        ),
        Sign::SourCrop => language.pick(
            "Crop smells sour, feels like gas, or does not move",
            "El buche huele agrio, tiene gas o no se mueve",
        ),
        Sign::Vomiting => language.pick(
            "Brings food up away from a feed, or flung, sour or slimy",
            "Devuelve comida lejos de la toma, o la lanza, agria o con moco",
        ),
        Sign::BroughtBackOnce => language.pick(
            "Food came back just after a feed; bright, head clean",
            "Devolvió justo tras la toma; despierto y con la cabeza limpia",
        ),
        Sign::CropPatch => language.pick(
            "Raw, weeping or leaking patch over the crop (not wet from a bath)",
            "Herida que supura o pierde comida sobre el buche (no mojado del baño)",
        ),
        Sign::NoDroppingFourHours => language.pick(
            "No dropping for 4 waking hours after a feed",
            "Sin excrementos 4 horas despierto tras una toma",
        ),
        Sign::NoDroppingEightHours => language.pick(
            "No dropping for 8 waking hours",
            "Sin excrementos 8 horas despierto",
        ),
        Sign::BadDroppingsOverADay => language.pick(
            "Green, black or watery droppings for more than a day",
            "Excrementos verdes, negros o aguados más de un día",
        ),
        Sign::UndigestedFood => language.pick(
            "Undigested food in the droppings",
            "Comida sin digerir en los excrementos",
        ),
        Sign::BloodInDroppings => {
            language.pick("Blood in the droppings", "Sangre en los excrementos")
        }
        Sign::Dull => language.pick(
            "Fluffed and dull; voice or food does not rouse it (not a nap)",
            "Embolado y decaído; ni la voz ni la comida lo despiertan (no una siesta)",
        ),
        Sign::Limp => language.pick(
            "Limp, or too weak to hold itself up",
            "Flojo, o tan débil que no se sostiene",
        ),
        Sign::Cold => language.pick(
            "Feet and body cold, or shivering while dry (not after a bath)",
            "Patas y cuerpo fríos, o tirita estando seco (no tras un baño)",
        ),
        Sign::Overheated => language.pick(
            "Panting with the wings held out (not a blush)",
            "Jadea con las alas abiertas (no un simple rubor)",
        ),
        Sign::StaysOverheated => language.pick(
            "Still overheated after 20 minutes of cooling",
            "Sigue acalorado tras 20 minutos al fresco",
        ),
        Sign::Dehydrated => language.pick(
            "Skin wrinkled, mouth sticky, eyes sunken",
            "Piel arrugada, boca pegajosa, ojos hundidos",
        ),
        Sign::BegsAllDay => language.pick("Begs all day", "Pide comida todo el día"),
        Sign::WentDownWrong => language.pick(
            "Formula went down wrong: gasping or blue",
            "La papilla se fue por mal sitio: boquea o está azul",
        ),
        Sign::FedTooHot => language.pick(
            "Was fed formula of 43.3 °C (110 °F) or more",
            "Comió papilla de 43,3 °C (110 °F) o más",
        ),
        Sign::Lame => language.pick(
            "Lame, splayed leg, swollen toe or tight ring",
            "Cojea, pata abierta, dedo hinchado o anilla apretada",
        ),
        Sign::SwallowedObject => language.pick(
            "Swallowed bedding, a toy or metal",
            "Tragó lecho, un juguete o metal",
        ),
        Sign::Bleeding => language.pick("Bleeding that goes on", "Sangra y no para"),
        Sign::SeizureOrTrauma => language.pick(
            "Seizure, unconscious, dazed after a fall or window, bite of cat or dog, fumes or bleach",
            "Convulsión, sin conocimiento, aturdido por caída o cristal, mordisco de gato o perro, humos o lejía",
        ),
        Sign::Prolapse => language.pick(
            "Tissue hangs out of the vent",
            "Le asoma tejido por la cloaca",
        ),
        Sign::Wobbles => language.pick(
            "Wobbles, falls off the perch or tilts its head",
            "Se tambalea, se cae de la percha o ladea la cabeza",
        ),
        Sign::Discharge => language.pick(
            "Discharge from nose or eyes, or an eye swollen or shut",
            "Secreción en nariz u ojos, o un ojo hinchado o cerrado",
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
            "Moratón o bulto bajo la piel",
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
            "Keep it upright, warm and quiet, handle it as little as you can, and go.",
            "Manténgalo erguido, caliente y tranquilo, tóquelo lo menos posible y salga.",
        ),
        Sign::ClickCleared => language.pick(
            "Stop this feed. Wipe beak and nostrils. Look at the breathing at 10, 30 and 60 minutes, at each feed for 3 days, and weigh daily. Eats less or fluffs up in these days: call the vet.",
            "Pare esta toma. Limpie pico y narinas. Mire la respiración a los 10, 30 y 60 minutos y en cada toma 3 días, y pese a diario. Si en esos días come menos o se embola, llame al veterinario.",
        ),
        Sign::ClickStays => language.pick(
            "Keep it upright, warm, dim and quiet, and go. Tell the vet when and how much it was fed, and how it breathed at 10, 30 and 60 minutes.",
            "Manténgalo erguido, caliente, en penumbra y tranquilo, y salga. Diga al veterinario cuándo y cuánto comió y cómo respiraba a los 10, 30 y 60 minutos.",
        ),
        Sign::SourCrop => language.pick(
            "Keep the chick warm and upright. Note when it was last fed and go.",
            "Mantenga al pollo caliente y erguido. Anote cuándo comió por última vez y \
                 salga.",
        ),
        Sign::Vomiting => language.pick(
            "No more at this sitting, and no next feed until you have spoken to the vet. Listen to the breathing. Keep the chick warm; keep a sample or picture and note the time after the feed.",
            "Nada más en esta toma, ni la próxima hasta hablar con el veterinario. Escuche la respiración. Mantenga al pollo caliente; guarde muestra o foto y anote cuánto después de la toma fue.",
        ),
        Sign::BroughtBackOnce => language.pick(
            "No more at this sitting. Listen to the breathing and feel the crop. Near its peak weight the feed is often too much: ask the breeder whether each feed should be 10 to 20 % smaller. Twice in a day or two days running is a call.",
            "Nada más en esta toma. Escuche la respiración y palpe el buche. Cerca del peso máximo la toma suele ser excesiva: pregunte al criador si conviene un 10 a 20 % menos en cada una. Dos veces en un día o dos días seguidos: llame.",
        ),
        Sign::CropPatch => language.pick(
            "Cover it with clean gauze, keep the chick warm and go.",
            "Cúbralo con una gasa limpia, mantenga al pollo caliente y salga.",
        ),
        Sign::NoDroppingFourHours => language.pick(
            "Put fresh paper down, check warmth and crop, and look again in an hour.",
            "Ponga papel limpio, compruebe el calor y el buche y mire otra vez en una hora.",
        ),
        Sign::NoDroppingEightHours => language.pick(
            "Keep the chick warm. Note the last feed, the crop and the last dropping for the \
                 vet.",
            "Mantenga al pollo caliente. Anote la última toma, el buche y las últimos \
                 excrementos para el veterinario.",
        ),
        Sign::BadDroppingsOverADay => language.pick(
            "Keep a fresh sample or a picture for the vet. Keep the chick warm.",
            "Guarde una muestra fresca o una foto para el veterinario. Mantenga al pollo \
                 caliente.",
        ),
        Sign::UndigestedFood => language.pick(
            "Keep a picture and look again tomorrow. On two days it is for the vet.",
            "Guarde una foto y mire otra vez mañana. Dos días es asunto del veterinario.",
        ),
        Sign::BloodInDroppings => language.pick(
            "Keep the dropping or a picture. Keep the chick warm and quiet.",
            "Guarde la muestra o una foto. Mantenga al pollo caliente y tranquilo.",
        ),
        Sign::Dull => language.pick(
            "Warm, dim and quiet. Look at crop, droppings and breathing while you call.",
            "Calor, penumbra y calma. Mire buche, excrementos y respiración mientras llama.",
        ),
        Sign::Limp => language.pick(
            "Wrap it loosely, keep it warm and go.",
            "Envuélvalo sin apretar, manténgalo caliente y salga.",
        ),
        Sign::Cold => language.pick(
            "Warm it slowly in a warm box or against your body, and keep it warm on the way.",
            "Caliéntelo poco a poco en una caja tibia o contra su cuerpo, y llévelo \
                 caliente.",
        ),
        Sign::Overheated => language.pick(
            "Move it to a cooler, shaded, airy place. Look again in 20 minutes.",
            "Llévelo a un sitio más fresco, a la sombra y ventilado. Mire otra vez en 20 \
                 minutos.",
        ),
        Sign::StaysOverheated => language.pick(
            "Keep it in the cool, airy place while you call, and on the way.",
            "Manténgalo en un sitio fresco y ventilado mientras llama y durante el viaje.",
        ),
        Sign::Dehydrated => language.pick(
            "Keep it warm. Tell the vet the last feeds and how thick the mix was.",
            "Manténgalo caliente. Diga al veterinario las últimas tomas y el espesor de la \
                 mezcla.",
        ),
        Sign::BegsAllDay => language.pick(
            "Look at weight, crop and room. Drop no feed; ask the breeder whether a dropped \
                 one should come back.",
            "Mire peso, buche y habitación. No quite tomas; pregunte al criador si debe \
                 volver una quitada.",
        ),
        Sign::WentDownWrong => language.pick(
            "Stop. Take spoon or syringe away and let go of the beak. Head slightly lower, body supported; let it shake and cough. Wipe nostrils and beak, and go. The vet will want its breathing at 10, 30 and 60 minutes.",
            "Pare. Retire cuchara o jeringa y suelte el pico. Cabeza algo más baja, cuerpo apoyado; deje que sacuda y tosa. Limpie narinas y pico, y salga. El veterinario querrá saber cómo respira a los 10, 30 y 60 minutos.",
        ),
        Sign::FedTooHot => language.pick(
            "Ring now, also when the chick looks well: the burn shows in days. Note \
                 temperature and time.",
            "Llame ya, aunque el pollo parezca bien: la quemadura sale en días. Anote \
                 temperatura y hora.",
        ),
        Sign::Lame => language.pick(
            "Put it on a soft floor with grip, low down. Bones are still growing: be seen \
                 today.",
            "Póngalo bajo, en suelo blando con agarre. Los huesos aún crecen: vaya hoy.",
        ),
        Sign::SwallowedObject => language.pick(
            "Note what and when, and take a piece of it along.",
            "Anote qué y cuándo, y lleve un trozo.",
        ),
        Sign::Bleeding => language.pick(
            "Press gently with clean gauze and keep pressing on the way.",
            "Presione suavemente con gasa limpia y siga durante el viaje.",
        ),
        Sign::SeizureOrTrauma => language.pick(
            "Out of fumes into fresh air. A dark, padded, warm box, and go. A bite is an \
                 emergency also without a wound.",
            "Fuera de los humos, al aire fresco. Caja oscura, acolchada y tibia, y salga. Un \
                 mordisco es emergencia aunque no haya herida.",
        ),
        Sign::Prolapse => language.pick(
            "Keep it moist with gauze wet with lukewarm clean water, keep the chick warm, and go.",
            "Manténgalo húmedo con una gasa mojada en agua limpia tibia, el pollo caliente, y salga.",
        ),
        Sign::Wobbles => language.pick(
            "Put it on a soft floor without perch, dim and warm. Think of chewed metal, and tell the vet.",
            "Póngalo en suelo blando sin percha, en penumbra y caliente. Piense si mordió metal y dígaselo al veterinario.",
        ),
        Sign::Discharge => language.pick(
            "Keep it warm and apart from other birds. Wipe the nostrils with a damp cloth. Tell the vet whether formula came out of the nose.",
            "Manténgalo caliente y lejos de otras aves. Limpie las narinas con un paño húmedo. Diga al veterinario si salió papilla por la nariz.",
        ),
        Sign::MouthPlaques => language.pick(
            "Take a picture. Keep its spoon and cup apart from those of other birds.",
            "Haga una foto. Separe su cuchara y su vaso de los de otras aves.",
        ),
        Sign::Shock => language.pick(
            "A dark, quiet, warm box; handle it as little as you can, and go. After a blow to the head add no heat.",
            "Caja oscura, tranquila y tibia; tóquelo lo menos posible y salga. Tras un golpe en la cabeza, sin calor añadido.",
        ),
        Sign::Bruised => language.pick(
            "Keep it low on a soft floor. A bruise turns green in a day or two: take a picture and say what it hit.",
            "Téngalo bajo, en suelo blando. Un moratón se pone verde en uno o dos días: haga una foto y diga contra qué chocó.",
        ),
        Sign::FeatherBleeds => language.pick(
            "Press gently with clean gauze or cornflour where the feather is broken, keep it dim and quiet, and keep pressing on the way.",
            "Presione suavemente con gasa limpia o maicena donde se rompió la pluma, en penumbra y calma, y siga durante el viaje.",
        ),
    }
}

#[expect(clippy::too_many_lines, reason = "a table of one row a sign")]
const fn avoid(language: Language, sign: Sign) -> &'static str {
    match sign {
        Sign::LabouredBreathing => language.pick(
            "Give nothing by mouth. Do not hold the chest.",
            "No dé nada por la boca. No sujete el pecho.",
        ),
        Sign::ClickCleared => language.pick(
            "Do not go on with the feed. Not upside down, no water.",
            "No siga con la toma. Ni boca abajo ni agua.",
        ),
        Sign::ClickStays => language.pick(
            "Give nothing by mouth. Do not wait for it to clear.",
            "No dé nada por la boca. No espere a que se pase.",
        ),
        Sign::SourCrop => language.pick(
            "Give nothing by mouth. Do not massage or empty the crop.",
            "No dé nada por la boca. No masajee ni vacíe el buche.",
        ),
        Sign::Vomiting => language.pick(
            "Do not replace what came up. No home remedies.",
            "No reponga lo vomitado. Sin remedios caseros.",
        ),
        Sign::BroughtBackOnce => {
            language.pick("Do not replace what came up.", "No reponga lo devuelto.")
        }
        Sign::CropPatch => language.pick(
            "Do not feed. Do not pull the scab or put anything on it.",
            "No dé de comer. No quite la costra ni ponga nada encima.",
        ),
        Sign::NoDroppingFourHours => language.pick(
            "Do not feed on a crop that holds food. Do not press the belly.",
            "No dé de comer con comida en el buche. No apriete el vientre.",
        ),
        Sign::NoDroppingEightHours => language.pick(
            "Do not press the belly or give oil or water.",
            "No apriete el vientre ni dé aceite o agua.",
        ),
        Sign::BadDroppingsOverADay => language.pick(
            "Do not give any remedy or change the formula.",
            "No dé remedios ni cambie la papilla.",
        ),
        Sign::UndigestedFood => language.pick(
            "Do not drop a feed now. Do not give grit.",
            "No quite ninguna toma ahora. No dé arenilla.",
        ),
        Sign::BloodInDroppings => {
            language.pick("Do not wait for a second one.", "No espere a una segunda.")
        }
        Sign::Dull => language.pick(
            "Do not feed it if it is cold or swallows badly. Do not wait until tomorrow.",
            "No le dé de comer si está frío o traga mal. No espere a mañana.",
        ),
        Sign::Limp => language.pick("Give nothing by mouth.", "No dé nada por la boca."),
        Sign::Cold => language.pick(
            "No food until it is warm, even if it begs. No hot water bottle against the \
                 skin.",
            "Nada de comida hasta que esté caliente, aunque pida. Sin bolsa de agua caliente \
                 contra la piel.",
        ),
        Sign::Overheated => language.pick(
            "No cold bath, no ice, no feed until it is calm.",
            "Sin baño frío ni hielo, y sin toma hasta que esté tranquilo.",
        ),
        Sign::StaysOverheated => language.pick("No ice, no feed.", "Sin hielo ni comida."),
        Sign::Dehydrated => language.pick(
            "Do not give water by syringe. Do not thicken the mix.",
            "No dé agua con jeringa. No espese la mezcla.",
        ),
        Sign::BegsAllDay => language.pick(
            "Do not give more per feed than the plan.",
            "No dé más por toma que el plan.",
        ),
        Sign::WentDownWrong => language.pick(
            "Not upside down. No water, no blows on the back, no finger in the beak, no sucking with a syringe. Do not press the crop.",
            "No lo ponga boca abajo. Ni agua, ni golpes en la espalda, ni el dedo en el pico, ni aspirar con jeringa. No apriete el buche.",
        ),
        Sign::FedTooHot => language.pick(
            "Do not wait for marks. Do not try to empty the crop.",
            "No espere a ver marcas. No intente vaciar el buche.",
        ),
        Sign::Lame => language.pick(
            "Do not splint, pull or cut a ring yourself.",
            "No entablille, tire ni corte una anilla por su cuenta.",
        ),
        Sign::SwallowedObject => language.pick(
            "Do not try to bring it up or flush it down.",
            "No intente que lo devuelva ni empujarlo.",
        ),
        Sign::Bleeding => language.pick(
            "Do not keep lifting the gauze. Do not pull feathers.",
            "No levante la gasa. No arranque plumas.",
        ),
        Sign::SeizureOrTrauma => language.pick(
            "Give nothing by mouth. Do not hold a chick in a seizure.",
            "No dé nada por la boca. No sujete a un pollo que convulsiona.",
        ),
        Sign::Prolapse => language.pick(
            "Do not push it back. Give nothing by mouth.",
            "No lo empuje hacia dentro. No dé nada por la boca.",
        ),
        Sign::Wobbles => language.pick(
            "Do not feed a chick that cannot hold its head. Do not let it climb.",
            "No dé de comer a un pollo que no sostiene la cabeza. No lo deje trepar.",
        ),
        Sign::Discharge => language.pick(
            "No drops and no remedies of your own. Do not wipe off what the vet should see in the eye.",
            "Sin gotas ni remedios propios. No quite del ojo lo que debe ver el veterinario.",
        ),
        Sign::MouthPlaques => language.pick(
            "Do not scrape the plaques off. No mouthwash, no remedies.",
            "No raspe las placas. Sin enjuagues ni remedios.",
        ),
        Sign::Shock => language.pick(
            "Give nothing by mouth. Do not hold or cuddle it to comfort it.",
            "No dé nada por la boca. No lo sujete ni lo abrace para calmarlo.",
        ),
        Sign::Bruised => language.pick(
            "No ice, no ointment, no human medicine.",
            "Sin hielo, pomadas ni medicinas de personas.",
        ),
        Sign::FeatherBleeds => language.pick(
            "Do not pull the feather. Give nothing by mouth.",
            "No arranque la pluma. No dé nada por la boca.",
        ),
    }
}
