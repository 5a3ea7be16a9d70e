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
                "Chicks lose weight while they are weaned. 15 % and more is common in large parrots, but it can also be illness. Have it checked.",
                "Los polluelos pierden peso al destetarse. A partir de un 15 % es frecuente en loros grandes, pero también puede ser una enfermedad. Hay que revisarlo.",
            ),
            act: language.pick(
                "Weigh it again with an empty crop on the same scale. Feel the breastbone: hollow beside it means the vet, at any weight. Drop no further feed. Have the highest weight, the target and the last weights ready.",
                "Pese otra vez con el buche vacío y la misma báscula. Palpe la quilla: si está hundido a los lados, al veterinario, pese lo que pese. No quite más tomas. Tenga a mano el peso máximo, el objetivo y los últimos pesos.",
            ),
            avoid: language.pick(
                "Give no larger and no extra feeds unless your breeder or vet says so.",
                "No dé tomas mayores ni de más, salvo que lo diga el criador o el veterinario.",
            ),
        },
        RuleId::OneDayLoss => Advice {
            why: language.pick(
                "For one day this is more than the scale can be wrong and more than weaning takes.",
                "En un solo día es más que el error de la báscula y más de lo que se pierde en el destete.",
            ),
            act: language.pick(
                "Weigh it a second time now, with an empty crop, after the first dropping: the average of both counts. Drop no further feed. Look at crop, droppings and breathing.",
                "Pese ahora una segunda vez, con el buche vacío y después de la primera deposición: cuenta la media. No quite más tomas. Mire el buche, las heces y cómo respira.",
            ),
            avoid: language.pick(
                "Do not wait until tomorrow to weigh again.",
                "No espere a mañana para volver a pesar.",
            ),
        },
        RuleId::HandoverLoss => Advice {
            why: language.pick(
                "A chick that loses this much eats too little or is ill, and it has little to lose.",
                "Un polluelo que pierde tanto come poco o está enfermo, y no tiene mucho que perder.",
            ),
            act: language.pick(
                "Weigh it again with an empty crop on the same scale. Drop no further feed. For the call, have the last weights, feeds, crop and droppings ready.",
                "Pese otra vez con el buche vacío y la misma báscula. No quite más tomas. Para la llamada, tenga a mano los últimos pesos, las tomas, cómo está el buche y las heces.",
            ),
            avoid: language.pick(
                "Give no larger and no extra feeds unless your breeder or vet says so.",
                "No dé tomas mayores ni de más, salvo que lo diga el criador o el veterinario.",
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
                "Weigh it tomorrow morning on the same scale, then daily until it is steady. Look at what it really swallows and at the droppings. Feel the breastbone.",
                "Pese mañana por la mañana en la misma báscula, y luego a diario hasta que esté estable. Mire qué traga de verdad y cómo son las heces. Palpe la quilla.",
            ),
            avoid: language.pick(
                "Do not start formula again on your own. Do not wait for the next weekly weighing.",
                "No vuelva a la papilla por su cuenta. No espere a la próxima pesada semanal.",
            ),
        },
        RuleId::FallingWeight => Advice {
            why: language.pick(
                "It loses weight faster than weaning takes. If this goes on, the limit is days away.",
                "Pierde peso más deprisa de lo normal en el destete. Si sigue así, faltan días para el límite.",
            ),
            act: language.pick(
                "Weigh every morning with an empty crop on the same scale. Drop no further feed. \
                 Look at what it takes of each feed, at the crop and at the droppings.",
                "Pese cada mañana con el buche vacío y la misma báscula. No quite más tomas. Mire cuánto acepta de cada toma, el buche y las heces.",
            ),
            avoid: language.pick(
                "Do not wait for the limit. Give no larger feeds unless your breeder or vet says so.",
                "No espere a llegar al límite. No dé tomas mayores, salvo que lo diga el criador o el veterinario.",
            ),
        },
        RuleId::ArrivalLoss => Advice {
            why: language.pick(
                "2 to 4 % below the breeder's last weight is common: an empty crop and another scale. More than that so soon can mean cold, thirst or illness.",
                "Es común que pese entre un 2 y un 4 % menos que con el criador: buche vacío y otra báscula. Más que eso tan pronto puede ser frío, sed o enfermedad.",
            ),
            act: language.pick(
                "Check that chick and room are warm. Look at the droppings. Keep to the breeder's feeds. Tell the breeder which scale you used.",
                "Compruebe que está tibio y que la habitación está templada. Mire las heces. Siga las tomas del criador. Dígale qué báscula usó.",
            ),
            avoid: language.pick(
                "Do not change powder, thickness or hours. Do not make up for it with a larger \
                 feed.",
                "No cambie la papilla, la consistencia ni las horas. No lo compense con una toma mayor.",
            ),
        },
        RuleId::DullLoss => Advice {
            why: language.pick(
                "Dull and lighter together mean that the chick can no longer hide an illness.",
                "Decaído y con menos peso a la vez: el polluelo ya no puede ocultar una enfermedad.",
            ),
            act: language.pick(
                "Keep it warm, dim and quiet while you call. Have the last weights, feeds and \
                 droppings ready.",
                "Mientras llama, manténgalo al calor, en penumbra y tranquilo. Tenga a mano los últimos pesos, las tomas y cómo son las heces.",
            ),
            avoid: language.pick(
                "Do not feed it if it is cold or does not swallow well. Do not wait until tomorrow.",
                "No le dé de comer si está frío o no traga bien. No espere a mañana.",
            ),
        },
        RuleId::GrowthStalled => Advice {
            why: language.pick(
                "A growing chick gains every day. When it stops, it may be ill, cold or eating too little.",
                "Un polluelo que crece gana peso cada día. Si deja de hacerlo, puede estar enfermo, tener frío o comer poco.",
            ),
            act: language.pick(
                "Check that chick and room are warm, how thick the formula is and how the crop empties. Have these ready for the call. Weigh again tomorrow with an empty crop.",
                "Compruebe que está tibio y que la habitación está templada, la consistencia de la papilla y cómo se vacía el buche. Téngalo a mano para la llamada. Pese otra vez mañana con el buche vacío.",
            ),
            avoid: language.pick(
                "Give no larger or extra feeds unless your breeder or vet says so.",
                "No dé tomas mayores ni de más, salvo que lo diga el criador o el veterinario.",
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
                "Pese mañana por la mañana con el buche vacío, antes de la primera toma. La misma báscula, la misma percha o caja.",
            ),
            avoid: language.pick(
                "Do not judge by a weight taken after a feed.",
                "No se fíe de un peso tomado después de una toma.",
            ),
        },
        RuleId::MissedFeeds => Advice {
            why: language.pick(
                "A part-weaned chick cannot yet make up for a missed feed by itself.",
                "Un polluelo a medio destetar aún no puede compensar por sí solo una toma que falta.",
            ),
            act: language.pick(
                "Is the crop empty and the chick warm? Give the next feed when the app says, in the plan's amount.",
                "¿Está vacío el buche y el polluelo tibio? Dé la siguiente toma cuando lo diga la app, en la cantidad del plan.",
            ),
            avoid: language.pick(
                "Never double a feed. Never give two close together.",
                "Nunca doble una toma. Nunca dé dos muy seguidas.",
            ),
        },
        RuleId::DayIntake => Advice {
            why: language.pick(
                "It eats too little, even if it takes a few millilitres of each feed. An ill chick eats less before it weighs less.",
                "Come demasiado poco, aunque tome unos mililitros de cada toma. Un polluelo enfermo come menos antes de pesar menos.",
            ),
            act: language.pick(
                "Note what it swallowed of each feed and of solids. Check the temperature of the formula. Check that chick and room are warm. Look at crop and droppings. Weigh it tomorrow morning with an empty crop.",
                "Anote lo que tragó de cada toma y de alimento sólido. Compruebe la temperatura de la papilla. Compruebe que está tibio y que la habitación está templada. Mire el buche y las heces. Pese mañana por la mañana con el buche vacío.",
            ),
            avoid: language.pick(
                "Do not force it. Do not add what is missing to the next feed. Drop no feed now.",
                "No lo fuerce. No añada lo que falta a la siguiente toma. No quite ninguna toma ahora.",
            ),
        },
        RuleId::NoFoodNoted => Advice {
            why: language.pick(
                "Most feeds without a note were given. But if nobody fed it, it gets weaker quietly.",
                "Casi todas las tomas sin anotar se dieron. Pero si nadie le dio de comer, se debilita sin avisar.",
            ),
            act: language.pick(
                "Was it given? Ask everybody who feeds it, and note it. Not given, crop empty, chick warm and bright? The app says when you may give it. Nobody knows? Look at the crop and weigh it before the next feed.",
                "¿Se dio? Pregunte a quienes le dan de comer y anótelo. ¿No se dio, el buche está vacío y el polluelo tibio y activo? La app dice cuándo puede darla. ¿Nadie lo sabe? Mire el buche y péselo antes de la siguiente toma.",
            ),
            avoid: language.pick(
                "Do not feed twice because a note is missing.",
                "No le dé de comer dos veces porque falte una nota.",
            ),
        },
        RuleId::RefusedFeeds => Advice {
            why: language.pick(
                "One refusal is often cool formula or a tired chick. Several can mean illness, \
                 heat or cold.",
                "Si no quiere una vez, suele ser papilla fría o cansancio. Varias veces puede ser enfermedad, calor o frío.",
            ),
            act: language.pick(
                "Check the temperature of the formula. Check that chick and room are warm. Look at the crop and the droppings. Mix fresh and offer it again when the app says.",
                "Compruebe la temperatura de la papilla. Compruebe que está tibio y que la habitación está templada. Mire el buche y las heces. Prepare papilla nueva y vuelva a ofrecerla cuando lo diga la app.",
            ),
            avoid: language.pick(
                "Never push food into a chick that does not swallow. Do not make the next feed larger.",
                "Nunca empuje papilla si no traga. No aumente la toma siguiente.",
            ),
        },
        RuleId::TransitGap => Advice {
            why: language.pick(
                "A feathered chick can wait about as long as over a night. After that it \
                 weakens.",
                "Un polluelo emplumado aguanta más o menos lo que dura una noche. Después se debilita.",
            ),
            act: language.pick(
                "First give it warmth and quiet for half an hour. Then look at droppings and crop. Warm, and the crop empty? Give the first feed as the breeder says. Fed on the way? Note it.",
                "Primero déjelo media hora al calor y tranquilo. Luego mire las heces y el buche. ¿Está tibio y el buche vacío? Dé la primera toma como diga el criador. ¿Comió por el camino? Anótelo.",
            ),
            avoid: language.pick(
                "Do not feed a cold chick, even if it begs. Do not give more than the plan to \
                 make up for the journey.",
                "No le dé de comer si está frío, aunque pida. No dé más de lo que dice el plan para compensar el viaje.",
            ),
        },
        RuleId::GapTooShort => Advice {
            why: language.pick(
                "Food on top of food stretches the crop, and it empties more slowly.",
                "Si se da comida sobre comida, el buche se estira y se vacía más despacio.",
            ),
            act: language.pick(
                "Feel the crop before the next feed. Wait until it is empty. More than one carer? Agree who notes the feeds.",
                "Palpe el buche antes de la siguiente toma. Espere a que esté vacío. ¿Le dan de comer dos personas? Acuerden quién anota.",
            ),
            avoid: language.pick(
                "Do not feed just because it is time while there is food in the crop. Do not press on the crop.",
                "No le dé de comer solo porque sea la hora si queda comida en el buche. No apriete el buche.",
            ),
        },
        RuleId::VolumeOverCeiling => Advice {
            why: language.pick(
                "An overstretched crop empties slowly and can stop.",
                "Un buche demasiado lleno se vacía despacio y puede dejar de vaciarse.",
            ),
            act: language.pick(
                "Ask the breeder about the amount before the next feed. In two hours, look at the crop and note it.",
                "Pregunte al criador por la cantidad antes de la siguiente toma. Dentro de dos horas, mire el buche y anótelo.",
            ),
            avoid: language.pick(
                "Do not give more than this limit unless your breeder or vet says so. Do not press on a full crop.",
                "No pase de este límite, salvo que lo diga el criador o el veterinario. No apriete un buche lleno.",
            ),
        },
        RuleId::ServedHot => Advice {
            why: language.pick(
                "Hot formula burns the crop from inside. The mark can show up to two weeks later.",
                "La papilla demasiado caliente quema el buche por dentro. La marca puede verse hasta dos semanas después.",
            ),
            act: language.pick(
                "43.3 °C (110 °F) or more? Call the vet now, even if the chick looks well. Look at the skin over the crop every day for two weeks. Check the thermometer. Next time stir and measure twice.",
                "¿43,3 °C (110 °F) o más? Llame ya al veterinario, aunque el polluelo parezca estar bien. Mire la piel sobre el buche cada día durante dos semanas. Compruebe el termómetro. La próxima vez remueva y mida dos veces.",
            ),
            avoid: language.pick(
                "Do not wait for marks on the skin. Put nothing on the skin or into the crop.",
                "No espere a ver marcas en la piel. No ponga nada sobre la piel ni en el buche.",
            ),
        },
        RuleId::ServedCold => Advice {
            why: language.pick(
                "Cool formula chills the chick; the crop empties slowly or stops.",
                "La papilla fría enfría al polluelo; el buche se vacía despacio o deja de vaciarse.",
            ),
            act: language.pick(
                "Look at the crop in two hours. At the next feed, stand the cup in warm water and measure again just before you give it.",
                "Mire el buche dentro de dos horas. En la próxima toma, tenga el vaso al baño maría y mida otra vez justo antes de dar la papilla.",
            ),
            avoid: language.pick(
                "Do not warm leftovers again: throw them away. No microwave.",
                "No recaliente lo que sobró: tírelo. No use microondas.",
            ),
        },
        RuleId::CropSlow => Advice {
            why: language.pick(
                "A crop that empties more slowly is an early sign of illness, of cool or thick formula, or of a cool room.",
                "Un buche que se vacía más despacio es una señal temprana de enfermedad, de papilla fría o espesa, o de una habitación fría.",
            ),
            act: language.pick(
                "Check that chick and room are warm. Was the last formula too thick or too cool? Look at the crop again before the next feed.",
                "Compruebe que está tibio y que la habitación está templada. ¿Estaba la última papilla muy espesa o fría? Mire otra vez el buche antes de la siguiente toma.",
            ),
            avoid: language.pick(
                "Do not feed until the crop is empty. Do not massage it.",
                "No le dé de comer hasta que el buche esté vacío. No lo masajee.",
            ),
        },
        RuleId::CropLate => Advice {
            why: language.pick(
                "Food that stays goes sour, and food on top of it can stop the crop.",
                "La comida que se queda se agria, y con más comida encima el buche puede dejar de vaciarse.",
            ),
            act: language.pick(
                "Do not give this feed. Keep chick and room warm. While you wait for an answer, look at the crop again.",
                "No dé esta toma. Mantenga al polluelo al calor y la habitación templada. Mientras espera respuesta, mire otra vez el buche.",
            ),
            avoid: language.pick(
                "Do not add food. Do not massage the crop. Do not turn the chick upside down. No home remedies.",
                "No añada comida. No masajee el buche. No ponga al polluelo boca abajo. Nada de remedios caseros.",
            ),
        },
        RuleId::CropOvernight => Advice {
            why: language.pick(
                "The crop must empty once a day. Food left in the morning goes sour, or the crop is infected.",
                "El buche debe vaciarse una vez al día. La comida que queda por la mañana se agria, o el buche está infectado.",
            ),
            act: language.pick(
                "Do not feed. Keep the chick warm. For the call, note the crop, the droppings and any smell. Was a dish with food left in overnight? Say so too, and take dishes out at night until the mornings are flat again.",
                "No dé la toma. Mantenga al polluelo al calor. Para la llamada, anote cómo está el buche, las heces y cualquier olor. ¿Quedó un plato con comida por la noche? Dígalo también, y retire los platos de noche hasta que por la mañana el buche esté plano.",
            ),
            avoid: language.pick(
                "Do not add food or water. Do not massage the crop or try to empty it.",
                "No añada comida ni agua. No masajee el buche ni intente vaciarlo.",
            ),
        },
        RuleId::CropStatic => Advice {
            why: language.pick(
                "When the crop does not empty and there is this sign, the blood can be poisoned. It needs a vet within hours.",
                "Si el buche no se vacía y hay esta señal, la sangre puede intoxicarse. Tiene que verlo un veterinario en pocas horas.",
            ),
            act: language.pick(
                "Set off. Keep the chick warm and upright on the way. Tell the vet when it was last fed, how much, and what you saw.",
                "Póngase en camino. Lleve al polluelo al calor y derecho. Diga al veterinario cuándo comió, cuánto y qué vio usted.",
            ),
            avoid: language.pick(
                "Give nothing by mouth. Do not massage or empty the crop. Do not turn the chick over.",
                "No le dé nada por la boca. No masajee ni vacíe el buche. No ponga al polluelo boca abajo.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Normal) => Advice {
            why: language.pick(
                "Droppings as usual are a good sign.",
                "Unas heces como siempre son buena señal.",
            ),
            act: language.pick("Nothing to do.", "Nada que hacer."),
            avoid: language.pick(
                "Do not change anything because of them.",
                "No cambie nada por esto.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::SmallOrFew) => Advice {
            why: language.pick(
                "Few droppings: it eats little, food does not pass, or it is dehydrated.",
                "Pocas heces: come poco, la comida no le pasa o está deshidratado.",
            ),
            act: language.pick(
                "Put fresh paper down. Count the droppings for a few hours. Look at the crop. Check that the formula is not too thick.",
                "Ponga papel limpio. Cuente las heces unas horas. Mire el buche. Compruebe que la papilla no es demasiado espesa.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Do not give water by syringe.",
                "No quite ninguna toma ahora. No le dé agua con jeringa.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Watery | Droppings::GreenOrBlack) => Advice {
            why: language.pick(
                "Once, it can be what it ate. For more than a day, it can be the gut, the liver or an infection.",
                "Una vez, puede ser lo que comió. Más de un día, puede ser el intestino, el hígado o una infección.",
            ),
            act: language.pick(
                "Put fresh paper down. Look again in a few hours. Keep a picture for the vet. Did it eat coloured or wet food?",
                "Ponga papel limpio. Mire otra vez dentro de unas horas. Guarde una foto para el veterinario. ¿Comió algo de color o con mucha agua?",
            ),
            avoid: language.pick(
                "Give no remedy. Do not change the formula.",
                "No dé ningún remedio. No cambie la papilla.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::LiquidStool) => Advice {
            why: language.pick(
                "Stool without any form is diarrhoea: the gut is upset or ill, and the chick loses water.",
                "Si todo es líquido, sin forma, es diarrea: el intestino está mal y el polluelo pierde agua.",
            ),
            act: language.pick(
                "Put fresh white paper down, look at each dropping and note it: the app counts the hours. Is it dull? Call the vet now. Keep a fresh dropping or a picture.",
                "Ponga papel blanco limpio, mire cada deposición y anótela: la app cuenta las horas. ¿Está decaído? Llame ya al veterinario. Guarde una muestra fresca o una foto.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Give no remedy, and no water by syringe.",
                "No quite ninguna toma ahora. No dé ningún remedio ni agua con jeringa.",
            ),
        },
        RuleId::FewDroppings => Advice {
            why: language.pick(
                "Fewer droppings than it usually makes: less food goes in, or it does not pass. This shows before the weight does.",
                "Menos heces que de costumbre: come menos o la comida no le pasa. Se nota antes que en el peso.",
            ),
            act: language.pick(
                "Put fresh paper down and count again. Look at what it took of each feed, at the crop and at the weight. Was the paper changed in between? Note that count too.",
                "Ponga papel limpio y cuente otra vez. Mire cuánto aceptó de cada toma, el buche y el peso. ¿Se cambió el papel antes? Anote también esas.",
            ),
            avoid: language.pick(
                "Give no remedy, and no water by syringe.",
                "No dé ningún remedio ni agua con jeringa.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Undigested) => Advice {
            why: language.pick(
                "Food that passes through undigested does not feed the chick; the stomach may be \
                 ill.",
                "La comida que pasa sin digerir no alimenta al polluelo; el estómago puede estar enfermo.",
            ),
            act: language.pick(
                "Keep a fresh dropping or a picture for the vet. Look again tomorrow.",
                "Guarde una muestra fresca o una foto para el veterinario. Mire otra vez mañana.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Give no grit.",
                "No quite ninguna toma ahora. No dé arenilla.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::EmeraldGreen) => Advice {
            why: language.pick(
                "Bright green with hardly any solid part is bile: almost no food passes through.",
                "El verde vivo casi sin parte sólida es bilis: apenas pasa comida.",
            ),
            act: language.pick(
                "Weigh it with an empty crop. Look at what it took of each feed. Lighter than yesterday? Call the vet today.",
                "Péselo con el buche vacío. Mire cuánto aceptó de cada toma. ¿Pesa menos que ayer? Llame hoy al veterinario.",
            ),
            avoid: language.pick(
                "Do not drop a feed now. Give no remedy.",
                "No quite ninguna toma ahora. No dé ningún remedio.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::TarBlack) => Advice {
            why: language.pick(
                "Droppings like tar are blood from high up in the gut, or come after about a day without solid food.",
                "Las heces como alquitrán son sangre de la parte alta del intestino, o salen tras un día sin alimento sólido.",
            ),
            act: language.pick(
                "Keep the dropping on its paper for the vet. Keep the chick warm and quiet.",
                "Guarde la muestra en su papel para el veterinario. Mantenga al polluelo al calor y tranquilo.",
            ),
            avoid: language.pick(
                "Do not wait until tomorrow. Give no remedy.",
                "No espere a mañana. No dé ningún remedio.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::LimeUrates) => Advice {
            why: language.pick(
                "The white part turns yellow-green when the liver is ill.",
                "La parte blanca se pone amarillo verdosa cuando el hígado está enfermo.",
            ),
            act: language.pick(
                "Keep a fresh dropping on white paper and a picture for the vet. Wash your hands: some causes infect people.",
                "Guarde una muestra fresca en papel blanco y una foto para el veterinario. Lávese las manos: algunas causas se contagian a personas.",
            ),
            avoid: language.pick(
                "Do not wait a day to see whether it passes. Give no remedy.",
                "No espere un día a ver si pasa. No dé ningún remedio.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::WetAfterFruit) => Advice {
            why: language.pick(
                "After fruit or a fright, wet droppings with a solid part are normal for some hours.",
                "Tras comer fruta o un susto, unas heces muy húmedas con parte sólida son normales unas horas.",
            ),
            act: language.pick(
                "Look again in a few hours. Still wet tomorrow without fruit? Note it as much clear water.",
                "Mire otra vez dentro de unas horas. ¿Mañana siguen así sin fruta? Anote mucha agua clara.",
            ),
            avoid: language.pick(
                "Do not take the water away. Do not make the formula thicker.",
                "No le quite el agua. No haga la papilla más espesa.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::RedAfterFood) => Advice {
            why: language.pick(
                "Beetroot, berries, red palm and coloured pellets colour the droppings for some hours.",
                "La remolacha (betabel), las bayas, la palma roja y los pellets de color tiñen las heces unas horas.",
            ),
            act: language.pick(
                "Give no red food and look again on white paper. Still red tomorrow? Note red again and answer no: it may be blood.",
                "No le dé comida roja y mire otra vez sobre papel blanco. ¿Mañana siguen rojas? Anótelas otra vez y responda que no: puede ser sangre.",
            ),
            avoid: language.pick(
                "Do not blame food that it ate days ago.",
                "No lo atribuya a comida de hace días.",
            ),
        },
        RuleId::DroppingsSeen(Droppings::Bloody) => Advice {
            why: language.pick(
                "Blood comes from the gut or the vent and cannot be judged at home.",
                "La sangre viene del intestino o de la cloaca y no se puede valorar en casa.",
            ),
            act: language.pick(
                "Keep the dropping or a picture. Keep the chick warm and quiet. If it goes on bleeding, it is an emergency: go to the vet now.",
                "Guarde la muestra o una foto. Mantenga al polluelo al calor y tranquilo. Si sigue sangrando, es una emergencia: vaya ya al veterinario.",
            ),
            avoid: language.pick(
                "Do not wait until it happens again. Give no remedy.",
                "No espere a que pase otra vez. No dé ningún remedio.",
            ),
        },
        RuleId::RoomTemperature => Advice {
            why: language.pick(
                "In a cool room the crop empties slowly; in a hot one the chick dehydrates.",
                "En una habitación fría el buche se vacía más despacio; en una demasiado cálida el polluelo se deshidrata.",
            ),
            act: language.pick(
                "Slowly warm or cool the room to the plan's range. Leave one warm spot and one cooler one. Measure again in half an hour, at the chick's height.",
                "Lleve la habitación poco a poco a la temperatura del plan. Deje un sitio cálido y otro más fresco. Mida otra vez dentro de media hora, a la altura del polluelo.",
            ),
            avoid: language.pick(
                "No draught, and no heater close to the chick. Do not feed it if it feels cold.",
                "Sin corrientes de aire ni calefactor pegado al polluelo. No le dé de comer si lo nota frío.",
            ),
        },
        RuleId::VetVisitDue => Advice {
            why: language.pick(
                "A first visit finds what is easy to miss, and the vet knows the chick if it falls ill.",
                "Una primera visita descubre lo que se pasa por alto, y el veterinario ya conocerá al polluelo si enferma.",
            ),
            act: language.pick(
                "Make an appointment with an avian vet and note it. Been there already? Note the visit.",
                "Pida cita con un veterinario que trate loros y anótela. ¿Ya fue? Anote la visita.",
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
            RuleId::FewDroppings,
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
