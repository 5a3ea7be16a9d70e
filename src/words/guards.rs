//! Words for the reasons that forbid a feed now.

use crate::domain::instruction::guards::Guard;
use crate::words::Language;

/// What a person reads about one guard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct GuardWords {
    /// The reason.
    pub why: &'static str,
    /// What to do instead of feeding.
    pub act: &'static str,
}

/// The line above all guards.
pub const fn title(language: Language) -> &'static str {
    language.pick("Do not feed now", "No dé de comer ahora")
}

/// What to read about a guard.
#[expect(clippy::too_many_lines, reason = "a table of one row a guard")]
pub const fn guard(language: Language, guard: Guard) -> GuardWords {
    match guard {
        Guard::Breathing => GuardWords {
            why: language.pick("It does not breathe well", "No respira bien"),
            act: language.pick(
                "Ring an avian vet. Keep it upright and quiet.",
                "Llame a un veterinario de aves. Manténgalo erguido y tranquilo.",
            ),
        },
        Guard::Clicked => GuardWords {
            why: language.pick(
                "It clicked or coughed at a feed",
                "Chasqueó o tosió al comer",
            ),
            act: language.pick(
                "Ring the breeder before the next feed. When it breathes quietly, note the sign \
                 as gone.",
                "Llame al criador antes de la próxima toma. Cuando respire tranquilo, anote que \
                 la señal pasó.",
            ),
        },
        Guard::CannotSwallow => GuardWords {
            why: language.pick(
                "It is too weak to swallow safely",
                "Está demasiado débil para tragar sin peligro",
            ),
            act: language.pick(
                "Ring an avian vet now and keep it warm on the way.",
                "Llame ahora a un veterinario de aves y llévelo caliente.",
            ),
        },
        Guard::Cold => GuardWords {
            why: language.pick("It is cold", "Está frío"),
            act: language.pick(
                "Ring an avian vet and warm it slowly. A cold chick is not fed, even if it begs. \
                 When it is warm, note the sign as gone.",
                "Llame a un veterinario de aves y caliéntelo poco a poco. A un pollo frío no se \
                 le da de comer aunque pida. Cuando esté caliente, anote que la señal pasó.",
            ),
        },
        Guard::Vomiting => GuardWords {
            why: language.pick("It has vomited", "Ha vomitado"),
            act: language.pick(
                "Ring an avian vet before any feed. When the vet allows food, note the sign as \
                 gone.",
                "Llame a un veterinario de aves antes de cualquier toma. Cuando permita comer, \
                 anote que la señal pasó.",
            ),
        },
        Guard::CropStill => GuardWords {
            why: language.pick("The crop does not move", "El buche no se mueve"),
            act: language.pick(
                "Ring the breeder. Leave this feed out, keep the chick warm and note the crop \
                 again in two hours.",
                "Llame al criador. No dé esta toma, mantenga al pollo caliente y anote el buche \
                 otra vez en dos horas.",
            ),
        },
        Guard::CropPatch => GuardWords {
            why: language.pick(
                "The skin over the crop is hurt",
                "La piel sobre el buche está dañada",
            ),
            act: language.pick(
                "Ring an avian vet now.",
                "Llame ahora a un veterinario de aves.",
            ),
        },
        Guard::CropNotEmpty => GuardWords {
            why: language.pick(
                "There is still food in the crop",
                "Todavía hay comida en el buche",
            ),
            act: language.pick(
                "Wait. Look again in half an hour and note the crop when it is empty.",
                "Espere. Mire otra vez en media hora y anote el buche cuando esté vacío.",
            ),
        },
        Guard::FedLately => GuardWords {
            why: language.pick("It was fed a short while ago", "Comió hace poco"),
            act: language.pick(
                "Wait for the next feed of the plan. If somebody else fed it, that was this \
                 feed.",
                "Espere a la siguiente toma del plan. Si otra persona la dio, era esta toma.",
            ),
        },
        Guard::JustArrived => GuardWords {
            why: language.pick("It has just arrived", "Acaba de llegar"),
            act: language.pick(
                "Half an hour of warmth and quiet first. Look at the droppings and the crop.",
                "Primero media hora de calor y calma. Mire los excrementos y el buche.",
            ),
        },
        Guard::Overheated => GuardWords {
            why: language.pick("It is overheated", "Está acalorado"),
            act: language.pick(
                "Cool, shade and air first. When it is calm again, note the sign as gone.",
                "Primero fresco, sombra y aire. Cuando esté tranquilo, anote que la señal pasó.",
            ),
        },
        Guard::TooHot => GuardWords {
            why: language.pick(
                "The formula is too hot",
                "La papilla está demasiado caliente",
            ),
            act: language.pick(
                "Let it cool, stir, and measure again.",
                "Deje que se enfríe, remueva y mida otra vez.",
            ),
        },
        Guard::TooCool => GuardWords {
            why: language.pick("The formula is too cool", "La papilla está demasiado fría"),
            act: language.pick(
                "Put the cup back into the warm bath within this feed, stir, and measure again. \
                 Later: mix fresh.",
                "Vuelva a poner el vaso al baño maría dentro de esta toma, remueva y mida otra \
                 vez. Más tarde: mezcla nueva.",
            ),
        },
    }
}
