//! For each rule: why it matters, what to do, what not to do.
//!
//! **Invariants.** No text calls for more food than the plan, for a missed feed to be made up, or for a
//! feed to a cold chick or on a full crop. The call comes before these words, from
//! [`crate::words::rules::call_first`].

use crate::domain::journal::entries::Droppings;
use crate::domain::warnings::level::RuleId;
use crate::words::{Language, signs};

/// What a person reads about one rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Advice {
    /// Why it matters.
    pub why: &'static str,
    /// What to do, after the call if there is one to make.
    pub act: &'static str,
    /// What not to do.
    pub avoid: &'static str,
}

/// Why a rule's finding matters, what to do and what not to do.
#[expect(clippy::too_many_lines, reason = "a table of one row a rule")]
pub const fn advice(language: Language, rule: RuleId) -> Advice {
    match rule {
        RuleId::PeakLoss => Advice {
            why: language.pick(
                "Chicks lose weight while they are weaned; from 15 % on that is common in large parrots, but it \
                 can be illness as well. Have it checked.",
                "Los pollos pierden peso al destetarse; desde un 15 % es frecuente en loros grandes, pero \
                 también puede ser enfermedad. Que lo revisen.",
            ),
            act: language.pick(
                "Weigh once more with an empty crop on the same scale and feel the breastbone: hollow beside it is \
                 for the vet at any weight. Drop no further feed. Have the peak, the target and the last \
                 weights ready.",
                "Pese otra vez con el buche vacío y la misma balanza y palpe el esternón: hundido a los lados, \
                 al veterinario con cualquier peso. No quite más tomas. Tenga a mano el máximo, el \
                 objetivo y los últimos pesos.",
            ),
            avoid: language.pick(
                "Do not give more per feed than the plan, and no extra feed, unless breeder or \
                 vet say so.",
                "No dé más por toma que el plan, ni tomas de más, si no lo dicen el criador o el \
                 veterinario.",
            ),
        },
        RuleId::OneDayLoss => Advice {
            why: language.pick(
                "In one day this is more than the scale's noise and more than weaning takes.",
                "En un día es más que el error de la balanza y más de lo que cuesta el destete.",
            ),
            act: language.pick(
                "Weigh a second time now, with an empty crop, after the first dropping: the mean of both counts. Drop no \
                 further feed. Look at crop, droppings and breathing.",
                "Pese ahora una segunda vez, con el buche vacío y tras el primer excremento: cuenta la media. No \
                 quite más tomas. Mire buche, excrementos y respiración.",
            ),
            avoid: language.pick(
                "Do not wait until tomorrow to weigh again.",
                "No espere a mañana para volver a pesar.",
            ),
        },
        RuleId::HandoverLoss => Advice {
            why: language.pick(
                "A chick that loses this much takes in too little or is ill, and it has little \
                 to lose.",
                "Un pollo que pierde tanto come poco o está enfermo, y no tiene mucho que \
                 perder.",
            ),
            act: language.pick(
                "Weigh once more with an empty crop on the same scale. Drop no further feed. \
                 Have the last weights, feeds, crop and droppings ready for the call.",
                "Pese otra vez con el buche vacío y la misma balanza. No quite más tomas. Tenga \
                 a mano los últimos pesos, tomas, buche y excrementos para la llamada.",
            ),
            avoid: language.pick(
                "Do not give more per feed than the plan, and no extra feed, unless breeder or \
                 vet say so.",
                "No dé más por toma que el plan, ni tomas de más, si no lo dicen el criador o el \
                 veterinario.",
            ),
        },
        RuleId::StableLoss => Advice {
            why: language.pick(
                "A weaned bird keeps its weight. One that loses this much eats too little or is ill, \
                 and feathers hide it.",
                "Un ave destetada mantiene su peso. La que pierde tanto come poco o está enferma, y \
                 las plumas lo ocultan.",
            ),
            act: language.pick(
                "Weigh once more tomorrow morning on the same scale, then daily until it is steady. \
                 Look at what it really swallows, at the droppings, and feel the breastbone.",
                "Pese otra vez mañana por la mañana en la misma balanza, y luego a diario hasta que \
                 esté estable. Mire qué traga de verdad y los excrementos, y palpe el esternón.",
            ),
            avoid: language.pick(
                "Do not start formula again on your own. Do not wait for the next weekly weighing.",
                "No vuelva a la papilla por su cuenta. No espere al próximo pesaje semanal.",
            ),
        },
        RuleId::FallingWeight => Advice {
            why: language.pick(
                "It loses faster than weaning takes, whatever a single reading says. If this goes \
                 on, the limit is days away.",
                "Pierde más deprisa de lo que cuesta el destete, diga lo que diga una sola \
                 pesada. Si sigue así, faltan días para el límite.",
            ),
            act: language.pick(
                "Weigh every morning with an empty crop on the same scale. Drop no further feed. \
                 Look at what it takes of each feed, at the crop and at the droppings.",
                "Pese cada mañana con el buche vacío y la misma balanza. No quite más tomas. \
                 Mire cuánto acepta de cada toma, el buche y los excrementos.",
            ),
            avoid: language.pick(
                "Do not wait for the limit. Do not give more per feed than the plan unless \
                 breeder or vet say so.",
                "No espere a llegar al límite. No dé más por toma que el plan si no lo dicen el \
                 criador o el veterinario.",
            ),
        },
        RuleId::ArrivalLoss => Advice {
            why: language.pick(
                "2 to 4 % under the breeder's last figure is common: an empty crop and another scale. More so \
                 soon can mean cold, thirst or illness.",
                "Entre 2 y 4 % menos que lo último del criador es común: buche vacío y otra balanza. Más tan \
                 pronto puede ser frío, sed o enfermedad.",
            ),
            act: language.pick(
                "Check that chick and room are warm, look at the droppings, and keep to the \
                 breeder's feeds. Tell the breeder which scale you used.",
                "Compruebe que el pollo y la habitación están calientes, mire los excrementos y \
                 siga las tomas del criador. Dígale qué balanza usó.",
            ),
            avoid: language.pick(
                "Do not change powder, thickness or hours. Do not make up for it with a larger \
                 feed.",
                "No cambie la papilla, el espesor ni las horas. No lo compense con una toma \
                 mayor.",
            ),
        },
        RuleId::DullLoss => Advice {
            why: language.pick(
                "Dull and lighter together mean that the chick can no longer hide an illness.",
                "Decaído y más ligero a la vez: el pollo ya no puede ocultar una enfermedad.",
            ),
            act: language.pick(
                "Keep it warm, dim and quiet while you call. Have the last weights, feeds and \
                 droppings ready.",
                "Manténgalo caliente, en penumbra y tranquilo mientras llama. Tenga a mano los \
                 últimos pesos, tomas y excrementos.",
            ),
            avoid: language.pick(
                "Do not feed a chick that is cold or does not swallow well. Do not wait until \
                 tomorrow.",
                "No dé de comer a un pollo frío o que no traga bien. No espere a mañana.",
            ),
        },
        RuleId::GrowthStalled => Advice {
            why: language.pick(
                "A growing chick gains every day. When it stops, it may be ill, cold or taking \
                 in too little.",
                "Un pollo que crece gana peso cada día. Si deja de hacerlo, puede estar enfermo, \
                 tener frío o comer poco.",
            ),
            act: language.pick(
                "Check the warmth of chick and room, the thickness of the mix and how the crop \
                 empties, and have these ready for the call. Weigh again tomorrow with an empty \
                 crop.",
                "Compruebe el calor del pollo y de la habitación, el espesor de la mezcla y cómo \
                 se vacía el buche, y téngalo a mano para la llamada. Pese otra vez mañana con \
                 el buche vacío.",
            ),
            avoid: language.pick(
                "Do not give larger or extra feeds unless breeder or vet say so.",
                "No dé tomas mayores ni de más si no lo dicen el criador o el veterinario.",
            ),
        },
        RuleId::NoWeighing => Advice {
            why: language.pick(
                "Weight shows trouble days before you can see it.",
                "El peso avisa de un problema días antes de que se vea.",
            ),
            act: language.pick(
                "Weigh tomorrow morning with an empty crop, before the first feed. Same scale, \
                 same perch or tub.",
                "Pese mañana por la mañana con el buche vacío, antes de la primera toma. Misma \
                 balanza, misma percha o recipiente.",
            ),
            avoid: language.pick(
                "Do not judge by a weight taken after a feed.",
                "No juzgue por un peso tomado después de una toma.",
            ),
        },
        RuleId::MissedFeeds => Advice {
            why: language.pick(
                "A part-weaned chick cannot yet make up for feeds by itself.",
                "Un pollo a medio destetar aún no puede suplir las tomas por sí solo.",
            ),
            act: language.pick(
                "Give the next one when Perchlight says, in the plan's amount, once the crop is \
                 empty and the chick is warm.",
                "Dé la siguiente cuando lo diga Perchlight y en la cantidad del plan, con el buche \
                 vacío y el pollo caliente.",
            ),
            avoid: language.pick(
                "Never double a feed and never squeeze two close together.",
                "Nunca doble una toma ni dé dos muy seguidas.",
            ),
        },
        RuleId::DayIntake => Advice {
            why: language.pick(
                "Feeds of a few millilitres look like feeding. An ill chick eats less before it weighs less.",
                "Tomas de pocos mililitros parecen comida. Un pollo enfermo come menos antes de pesar menos.",
            ),
            act: language.pick(
                "Note what it swallowed of each feed and of solids. Check the temperature of the formula, the warmth \
                 of chick and room, crop and droppings. Weigh tomorrow morning with an empty crop.",
                "Anote lo que tragó de cada toma y de sólidos. Compruebe la temperatura de la papilla, el calor del \
                 pollo y de la habitación, el buche y los excrementos. Pese mañana por la mañana con el \
                 buche vacío.",
            ),
            avoid: language.pick(
                "Do not force it and do not add what is lacking to the next feed. Drop no feed now.",
                "No lo fuerce ni añada lo que falta a la toma siguiente. No quite ninguna toma ahora.",
            ),
        },
        RuleId::NoFoodNoted => Advice {
            why: language.pick(
                "Feeds without a note were mostly given. A chick that nobody has fed tells nothing.",
                "Una toma sin anotar casi siempre se dio. Un pollo que nadie alimentó no avisa.",
            ),
            act: language.pick(
                "Ask everybody who feeds it, and note what was given. If nobody knows, look at the \
                 crop and weigh it before the next feed.",
                "Pregunte a quienes le dan de comer y anote lo que se dio. Si nadie lo sabe, mire \
                 el buche y péselo antes de la siguiente toma.",
            ),
            avoid: language.pick(
                "Do not feed twice because a note is missing.",
                "No dé de comer dos veces porque falte una nota.",
            ),
        },
        RuleId::RefusedFeeds => Advice {
            why: language.pick(
                "One refusal is often cool formula or a tired chick. Several can mean illness, \
                 heat or cold.",
                "Un rechazo suele ser papilla fría o un pollo cansado. Varios pueden ser \
                 enfermedad, calor o frío.",
            ),
            act: language.pick(
                "Check the temperature of the formula, the warmth of chick and room, the crop \
                 and the droppings. Offer it again when Perchlight says, freshly mixed.",
                "Compruebe la temperatura de la papilla, el calor del pollo y de la habitación, \
                 el buche y los excrementos. Ofrézcala otra vez cuando lo diga Perchlight, recién \
                 mezclada.",
            ),
            avoid: language.pick(
                "Never force food into a chick that does not swallow. Do not make the next feed \
                 larger.",
                "Nunca fuerce comida en un pollo que no traga. No aumente la toma siguiente.",
            ),
        },
        RuleId::TransitGap => Advice {
            why: language.pick(
                "A feathered chick can wait about as long as over a night. After that it \
                 weakens.",
                "Un pollo emplumado aguanta más o menos lo que dura una noche. Después se \
                 debilita.",
            ),
            act: language.pick(
                "First warmth and quiet for half an hour, then a look at droppings and crop. The \
                 first feed as the breeder says, once the chick is warm and the crop is empty. \
                 If it was fed on the way, note it.",
                "Primero calor y calma media hora, luego mire excrementos y buche. La primera \
                 toma como diga el criador, con el pollo caliente y el buche vacío. Si comió por \
                 el camino, anótelo.",
            ),
            avoid: language.pick(
                "Do not feed a cold chick, even if it begs. Do not give more than the plan to \
                 make up for the journey.",
                "No dé de comer a un pollo frío aunque pida. No dé más que el plan para \
                 compensar el viaje.",
            ),
        },
        RuleId::GapTooShort => Advice {
            why: language.pick(
                "Food on top of food stretches the crop and slows it.",
                "Comida sobre comida estira el buche y lo frena.",
            ),
            act: language.pick(
                "Feel the crop before the next feed and wait until it is empty. If two people \
                 feed, agree who notes it.",
                "Palpe el buche antes de la toma siguiente y espere a que esté vacío. Si \
                 alimentan dos personas, acuerden quién anota.",
            ),
            avoid: language.pick(
                "Do not feed by the clock while there is food in the crop. Do not press on the \
                 crop.",
                "No dé de comer por el reloj mientras haya comida en el buche. No apriete el \
                 buche.",
            ),
        },
        RuleId::VolumeOverCeiling => Advice {
            why: language.pick(
                "A stretched crop empties slowly and can stop.",
                "Un buche estirado se vacía despacio y puede pararse.",
            ),
            act: language.pick(
                "Ask the breeder about the amount before the next feed. Look at the crop in two \
                 hours and note it.",
                "Pregunte al criador por la cantidad antes de la toma siguiente. Mire el buche \
                 en dos horas y anótelo.",
            ),
            avoid: language.pick(
                "Do not give more than this limit unless breeder or vet say so. Do not press on \
                 a full crop.",
                "No pase de este límite si no lo dicen el criador o el veterinario. No apriete \
                 un buche lleno.",
            ),
        },
        RuleId::ServedHot => Advice {
            why: language.pick(
                "Hot formula burns the crop from inside. The mark can show as late as two weeks \
                 afterwards.",
                "La papilla caliente quema el buche por dentro. La marca puede salir hasta dos \
                 semanas después.",
            ),
            act: language.pick(
                "At 43.3 °C (110 °F) or more ring the vet even if the chick looks well. Look at \
                 the skin over the crop every day for two weeks. Check the thermometer, stir, \
                 and measure twice.",
                "Con 43,3 °C (110 °F) o más llame al veterinario aunque el pollo parezca bien. \
                 Mire la piel sobre el buche cada día durante dos semanas. Compruebe el \
                 termómetro, remueva y mida dos veces.",
            ),
            avoid: language.pick(
                "Do not wait for marks. Do not put anything on the skin or into the crop \
                 yourself.",
                "No espere a ver marcas. No ponga nada sobre la piel ni en el buche por su \
                 cuenta.",
            ),
        },
        RuleId::ServedCold => Advice {
            why: language.pick(
                "Cool formula chills the chick and slows or stops the crop.",
                "La papilla fría enfría al pollo y frena o para el buche.",
            ),
            act: language.pick(
                "Look at the crop in two hours. At the next feed keep the cup in a warm bath and \
                 measure again just before giving.",
                "Mire el buche en dos horas. En la próxima toma tenga el vaso al baño maría y \
                 mida otra vez justo antes de dar.",
            ),
            avoid: language.pick(
                "Do not warm leftovers again; throw them away. No microwave.",
                "No recaliente los restos; tírelos. Sin microondas.",
            ),
        },
        RuleId::CropSlow => Advice {
            why: language.pick(
                "A crop that slows down is an early sign: illness, cool or thick formula, or a \
                 cool room.",
                "Un buche que se frena es una señal temprana: enfermedad, papilla fría o espesa, \
                 o habitación fría.",
            ),
            act: language.pick(
                "Check the warmth of chick and room, and the thickness and temperature of the \
                 last mix. Look at the crop again before the next feed.",
                "Compruebe el calor del pollo y de la habitación, y el espesor y la temperatura \
                 de la última mezcla. Mire el buche otra vez antes de la toma siguiente.",
            ),
            avoid: language.pick(
                "Do not feed until the crop is empty. Do not massage it.",
                "No dé de comer hasta que el buche esté vacío. No lo masajee.",
            ),
        },
        RuleId::CropLate => Advice {
            why: language.pick(
                "Food that stays ferments, and food on top of it can stop the crop.",
                "La comida que se queda fermenta, y más comida encima puede parar el buche.",
            ),
            act: language.pick(
                "Leave this feed out. Keep chick and room warm, and look at the crop again while \
                 you wait for an answer.",
                "No dé esta toma. Mantenga calientes al pollo y la habitación, y mire el buche \
                 otra vez mientras espera respuesta.",
            ),
            avoid: language.pick(
                "Do not add food. Do not massage the crop or turn the chick upside down. No home \
                 remedies.",
                "No añada comida. No masajee el buche ni ponga al pollo boca abajo. Sin remedios \
                 caseros.",
            ),
        },
        RuleId::CropOvernight => Advice {
            why: language.pick(
                "The crop must be empty once a day. Food left in the morning ferments or the \
                 crop is infected.",
                "El buche debe vaciarse una vez al día. La comida que queda por la mañana \
                 fermenta, o el buche está infectado.",
            ),
            act: language.pick(
                "Leave the feed out. Keep the chick warm and note the crop, the droppings and \
                 any smell for the vet.",
                "No dé la toma. Mantenga caliente al pollo y anote el buche, los excrementos y \
                 cualquier olor para el veterinario.",
            ),
            avoid: language.pick(
                "Do not add food or water. Do not massage the crop or try to empty it.",
                "No añada comida ni agua. No masajee el buche ni intente vaciarlo.",
            ),
        },
        RuleId::CropStatic => Advice {
            why: language.pick(
                "A standing crop with this sign can poison the blood. It needs a vet within \
                 hours.",
                "Un buche parado con esta señal puede envenenar la sangre. Necesita un \
                 veterinario en horas.",
            ),
            act: language.pick(
                "Keep the chick warm and upright on the way. Tell the vet when it was last fed, \
                 how much, and what you saw.",
                "Lleve al pollo caliente y erguido. Diga al veterinario cuándo comió, cuánto y \
                 qué vio.",
            ),
            avoid: language.pick(
                "Give nothing by mouth. Do not massage, turn over or empty the crop.",
                "No dé nada por la boca. No masajee, voltee ni vacíe el buche.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Normal) => Advice {
            why: language.pick(
                "Droppings as usual are a good sign.",
                "Unos excrementos como siempre son buena señal.",
            ),
            act: language.pick("Nothing to do.", "Nada que hacer."),
            avoid: language.pick(
                "Do not change anything because of them.",
                "No cambie nada por ello.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::SmallOrFew) => Advice {
            why: language.pick(
                "Few droppings mean that little goes in or through, or that the chick is dry.",
                "Pocos excrementos indican que entra o pasa poco, o que el pollo está seco.",
            ),
            act: language.pick(
                "Put fresh paper down, count the droppings for a few hours, and look at the \
                 crop. Check that the mix is not too thick.",
                "Ponga papel limpio, cuente los excrementos unas horas y mire el buche. \
                 Compruebe que la mezcla no es demasiado espesa.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Do not give water by syringe.",
                "No quite ninguna toma ahora. No dé agua con jeringa.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Watery | Droppings::GreenOrBlack) => Advice {
            why: language.pick(
                "Once it can be what it ate. Over a day it can be the gut, the liver or an \
                 infection.",
                "Una vez puede ser lo que comió. Más de un día puede ser el intestino, el hígado \
                 o una infección.",
            ),
            act: language.pick(
                "Put fresh paper down, look again in a few hours, and keep a picture for the \
                 vet. Think of coloured or wet food.",
                "Ponga papel limpio, mire otra vez en unas horas y guarde una foto para el \
                 veterinario. Piense en comida con color o muy húmeda.",
            ),
            avoid: language.pick(
                "Do not give any remedy. Do not change the formula.",
                "No dé ningún remedio. No cambie la papilla.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Undigested) => Advice {
            why: language.pick(
                "Food that passes through undigested does not feed the chick; the stomach may be \
                 ill.",
                "La comida que pasa sin digerir no alimenta al pollo; el estómago puede estar \
                 enfermo.",
            ),
            act: language.pick(
                "Keep a fresh dropping or a picture for the vet. Look again tomorrow.",
                "Guarde una muestra fresca o una foto para el veterinario. Mire otra vez mañana.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Do not give grit.",
                "No quite ninguna toma ahora. No dé arenilla.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::EmeraldGreen) => Advice {
            why: language.pick(
                "Bright green with little stool is bile: hardly any food passes through.",
                "El verde vivo con poca materia es bilis: apenas pasa comida.",
            ),
            act: language.pick(
                "Weigh it with an empty crop and look at what it took of each feed. Lighter than                  yesterday: call the vet today.",
                "Péselo con el buche vacío y mire cuánto aceptó de cada toma. Si pesa menos que                  ayer, llame hoy al veterinario.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Do not give any remedy.",
                "No quite ninguna toma ahora. No dé ningún remedio.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::TarBlack) => Advice {
            why: language.pick(
                "Droppings like tar are blood from high up in the gut, or about a day without                  solid food.",
                "Los excrementos como alquitrán son sangre de la parte alta del intestino, o un                  día sin comida sólida.",
            ),
            act: language.pick(
                "Keep the dropping on its paper for the vet. Keep the chick warm and quiet.",
                "Guarde el excremento en su papel para el veterinario. Mantenga al pollo caliente                  y tranquilo.",
            ),
            avoid: language.pick(
                "Do not wait for tomorrow. Do not give any remedy.",
                "No espere a mañana. No dé ningún remedio.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::LimeUrates) => Advice {
            why: language.pick(
                "The white part turns yellow-green when the liver is ill.",
                "La parte blanca se pone amarillo verdosa cuando el hígado está enfermo.",
            ),
            act: language.pick(
                "Keep a fresh dropping on white paper and a picture for the vet. Wash your hands;                  some causes infect people.",
                "Guarde un excremento fresco en papel blanco y una foto para el veterinario.                  Lávese las manos; algunas causas contagian a personas.",
            ),
            avoid: language.pick(
                "Do not wait a day to see whether it passes. Do not give any remedy.",
                "No espere un día a ver si pasa. No dé ningún remedio.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::WetAfterFruit) => Advice {
            why: language.pick(
                "After fruit or a fright wet droppings with formed stool are normal for hours.",
                "Tras fruta o un susto, los excrementos muy húmedos con materia formada son                  normales unas horas.",
            ),
            act: language.pick(
                "Look again in a few hours. Still wet tomorrow without fruit: note them as                  watery.",
                "Mire otra vez en unas horas. Si mañana siguen así sin fruta, anótelos como                  aguados.",
            ),
            avoid: language.pick(
                "Do not take the water away. Do not thicken the mix.",
                "No quite el agua. No espese la mezcla.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::RedAfterFood) => Advice {
            why: language.pick(
                "Beet, berries and dyed pellets colour the droppings for some hours.",
                "La remolacha, las bayas y el pienso teñido colorean los excrementos unas horas.",
            ),
            act: language.pick(
                "Leave the red food out and look again on white paper. Still red tomorrow: note                  it as blood.",
                "Quite la comida roja y mire otra vez sobre papel blanco. Si mañana sigue rojo,                  anótelo como sangre.",
            ),
            avoid: language.pick(
                "Do not explain red droppings by food that it ate days ago.",
                "No lo explique con comida de hace días.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Bloody) => Advice {
            why: language.pick(
                "Blood comes from the gut or the vent and cannot be judged at home.",
                "La sangre viene del intestino o de la cloaca y no se puede valorar en casa.",
            ),
            act: language.pick(
                "Keep the dropping or a picture. Keep the chick warm and quiet. If it bleeds on, \
                 it is an emergency: go now.",
                "Guarde la muestra o una foto. Mantenga al pollo caliente y tranquilo. Si sigue \
                 sangrando es una emergencia: salga ya.",
            ),
            avoid: language.pick(
                "Do not wait for a second one. Do not give any remedy.",
                "No espere a una segunda. No dé ningún remedio.",
            ),
        },
        RuleId::RoomTemperature => Advice {
            why: language.pick(
                "In a cool room the crop slows down; in a hot one the chick dries out.",
                "En una habitación fría el buche va más lento; en una caliente el pollo se \
                 deshidrata.",
            ),
            act: language.pick(
                "Bring the room slowly back into the plan's range. Keep one warm spot and one \
                 cooler one. Measure again in half an hour, at the chick's height.",
                "Lleve la habitación poco a poco al margen del plan. Deje un sitio cálido y otro \
                 más fresco. Mida otra vez en media hora, a la altura del pollo.",
            ),
            avoid: language.pick(
                "No draught, no heater right at the chick. Do not feed a chick that feels cold.",
                "Sin corrientes ni estufa pegada al pollo. No dé de comer a un pollo que se note \
                 frío.",
            ),
        },
        RuleId::VetVisitDue => Advice {
            why: language.pick(
                "A first look finds what is easy to miss, and the vet knows the chick if it \
                 falls ill.",
                "Una primera visita encuentra lo que se escapa, y el veterinario ya conocerá al \
                 pollo si enferma.",
            ),
            act: language.pick(
                "Make an appointment with an avian vet. If it was done, note it as a call to the \
                 vet.",
                "Pida cita con un veterinario de aves. Si ya fue, anótelo como llamada al \
                 veterinario.",
            ),
            avoid: language.pick(
                "Do not go without the breeder's card and your notes of feeds and weights.",
                "No vaya sin la ficha del criador ni sus notas de tomas y pesos.",
            ),
        },
        RuleId::SignSeen(sign) => {
            let words = signs::sign(language, sign);
            Advice {
                why: language.pick(
                    "A bird hides illness as long as it can. What you see has often begun earlier.",
                    "Un ave oculta la enfermedad mientras puede. Lo que se ve suele haber empezado \
                     antes.",
                ),
                act: words.first,
                avoid: words.avoid,
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::signs::{Sign, SignGroup};
    use crate::domain::warnings::rules::RULES;
    use crate::words::advice::*;
    use crate::words::sources::source;

    /// Every rule id: one a rule, and one more for each sign and each look at the droppings.
    fn every_rule() -> Vec<RuleId> {
        let plain = [
            RuleId::CropStatic,
            RuleId::ServedHot,
            RuleId::DullLoss,
            RuleId::TransitGap,
            RuleId::CropOvernight,
            RuleId::CropLate,
            RuleId::RefusedFeeds,
            RuleId::MissedFeeds,
            RuleId::NoFoodNoted,
            RuleId::DayIntake,
            RuleId::PeakLoss,
            RuleId::HandoverLoss,
            RuleId::StableLoss,
            RuleId::FallingWeight,
            RuleId::ArrivalLoss,
            RuleId::OneDayLoss,
            RuleId::GrowthStalled,
            RuleId::CropSlow,
            RuleId::VolumeOverCeiling,
            RuleId::GapTooShort,
            RuleId::ServedCold,
            RuleId::RoomTemperature,
            RuleId::NoWeighing,
            RuleId::VetVisitDue,
        ];
        assert_eq!(plain.len() + 2, RULES.len());
        let looks = Droppings::ALL.into_iter().map(RuleId::DroppingsSeen);
        let signs = Sign::ALL.into_iter().map(RuleId::SignSeen);
        plain.into_iter().chain(looks).chain(signs).collect()
    }

    #[test]
    fn every_rule_and_sign_says_what_to_do_in_both_languages() {
        let [english, spanish] = Language::ALL;
        for rule in every_rule() {
            let (first, second) = (advice(english, rule), advice(spanish, rule));
            for (first, second) in [
                (first.why, second.why),
                (first.act, second.act),
                (first.avoid, second.avoid),
                (source(english, rule), source(spanish, rule)),
            ] {
                assert!(!first.is_empty() && !second.is_empty(), "{rule:?}");
                assert_ne!(first, second, "{rule:?}");
            }
        }
        for sign in Sign::ALL {
            let (first, second) = (signs::sign(english, sign), signs::sign(spanish, sign));
            assert_ne!(first.seen, second.seen, "{sign:?}");
            assert_eq!(first.level, second.level);
            let group = sign.group();
            assert_ne!(signs::group(english, group), signs::group(spanish, group));
        }
        assert_eq!(
            signs::group(english, SignGroup::Crop),
            "Crop and swallowing"
        );
    }

    /// Rule 2 of the design: nothing to be done is ever more food, a doubled feed or a forced one.
    #[test]
    fn no_action_calls_for_more_food() {
        let texts = |language: Language| {
            every_rule()
                .into_iter()
                .map(move |rule| advice(language, rule).act)
        };
        let more = [
            "more food",
            "extra",
            "larger",
            "double",
            "twice as",
            "catch up",
            "make up",
            "force",
            "more formula",
            "feed more",
            "feed it",
        ];
        for text in texts(Language::English) {
            let lower = text.to_lowercase();
            assert!(!more.iter().any(|word| lower.contains(word)), "{text}");
        }
        let more = [
            "más comida",
            "extra",
            "mayor",
            "doble",
            "compens",
            "fuerce",
            "aliméntelo",
        ];
        for text in texts(Language::Spanish) {
            let lower = text.to_lowercase();
            assert!(!more.iter().any(|word| lower.contains(word)), "{text}");
        }
    }
}
