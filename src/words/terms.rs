//! Names of things of the trade: species, feeds of the day, levels, people, outcomes.

use crate::domain::journal::chick::DroppingsCount;
use crate::domain::journal::entries::{
    CropAtWeighing, CropFeel, CropState, Droppings, Paper, Response, SolidsEaten, WhyPassedOver,
};
use crate::domain::plan::care_plan::{Role, Slot, Tool};
use crate::domain::plan::species::Species;
use crate::domain::plan::topic::Topic;
use crate::domain::quantity::evidence::Standing;
use crate::domain::warnings::level::Level;
use crate::words::Language;

impl Language {
    /// A species' common name.
    pub const fn species(self, species: Species) -> &'static str {
        match species {
            Species::GreenWingedMacaw => self.pick("Green-winged macaw", "Guacamayo aliverde"),
            Species::BlueAndYellowMacaw => {
                self.pick("Blue-and-yellow macaw", "Guacamayo azulamarillo")
            }
            Species::ScarletMacaw => self.pick("Scarlet macaw", "Guacamayo macao (guacamaya roja)"),
            Species::MilitaryMacaw => self.pick("Military macaw", "Guacamayo militar"),
            Species::GreatGreenMacaw => self.pick("Great green macaw", "Guacamayo ambiguo"),
            Species::HyacinthMacaw => self.pick("Hyacinth macaw", "Guacamayo jacinto"),
            Species::ChestnutFrontedMacaw => {
                self.pick("Chestnut-fronted macaw", "Guacamayo severo")
            }
            Species::BlueFrontedAmazon => self.pick("Blue-fronted amazon", "Amazona frentiazul"),
            Species::YellowCrownedAmazon => self.pick("Yellow-crowned amazon", "Amazona real"),
            Species::SouthernMealyAmazon => self.pick("Southern mealy amazon", "Amazona harinosa"),
            Species::GreyParrot => self.pick("Grey parrot", "Loro yaco (loro gris)"),
            Species::WhiteCockatoo => self.pick("White cockatoo", "Cacatúa alba"),
            Species::SulphurCrestedCockatoo => {
                self.pick("Sulphur-crested cockatoo", "Cacatúa galerita")
            }
            Species::MoluccanCockatoo => self.pick("Moluccan cockatoo", "Cacatúa moluqueña"),
            Species::EclectusParrot => self.pick("Eclectus parrot", "Loro ecléctico"),
            Species::Cockatiel => self.pick("Cockatiel", "Cacatúa ninfa (cockatiel)"),
            Species::SunParakeet => self.pick("Sun parakeet", "Aratinga sol"),
            Species::GreenCheekedParakeet => {
                self.pick("Green-cheeked parakeet", "Cotorra de Molina")
            }
        }
    }

    /// A feed of the day: "Bedtime feed".
    pub const fn feed(self, slot: Slot) -> &'static str {
        match slot {
            Slot::EarlyMorning => self.pick("Early morning feed", "Toma del alba"),
            Slot::Morning => self.pick("Morning feed", "Toma de la mañana"),
            Slot::Midday => self.pick("Midday feed", "Toma del mediodía"),
            Slot::Afternoon => self.pick("Afternoon feed", "Toma de la tarde"),
            Slot::Evening => self.pick("Evening feed", "Toma del anochecer"),
            Slot::Bedtime => self.pick("Bedtime feed", "Toma de la noche"),
        }
    }

    /// The place of a feed in the day: "bedtime".
    pub const fn slot(self, slot: Slot) -> &'static str {
        match slot {
            Slot::EarlyMorning => self.pick("early morning", "alba"),
            Slot::Morning => self.pick("morning", "mañana"),
            Slot::Midday => self.pick("midday", "mediodía"),
            Slot::Afternoon => self.pick("afternoon", "tarde"),
            Slot::Evening => self.pick("evening", "anochecer"),
            Slot::Bedtime => self.pick("bedtime", "noche"),
        }
    }

    /// A level in words.
    pub const fn level(self, level: Level) -> &'static str {
        match level {
            Level::Settled => self.pick("Settled", "Normal"),
            Level::Watch => self.pick("Watch", "Vigile"),
            Level::CallBreeder => self.pick("Call the breeder", "Llame al criador"),
            Level::VetToday => self.pick("Vet today", "Al veterinario hoy"),
            Level::Emergency => self.pick("Emergency", "Emergencia"),
        }
    }

    /// A level as the chick's own breeder reads it, or anybody else: nobody is told to call themselves.
    pub const fn level_for(self, level: Level, is_breeder: bool) -> &'static str {
        match level {
            Level::CallBreeder if is_breeder => self.pick("Call the owner", "Llame al dueño"),
            Level::Settled
            | Level::Watch
            | Level::CallBreeder
            | Level::VetToday
            | Level::Emergency => self.level(level),
        }
    }

    /// A person to ring.
    pub const fn role(self, role: Role) -> &'static str {
        match role {
            Role::Breeder => self.pick("Breeder", "Criador"),
            Role::AvianVet => self.pick("Avian vet", "Veterinario de aves"),
            Role::EmergencyVet => self.pick("Out-of-hours vet", "Veterinario de urgencias"),
        }
    }

    /// The button that calls them.
    pub const fn call_role(self, role: Role) -> &'static str {
        match role {
            Role::Breeder => self.pick("Call the breeder", "Llamar al criador"),
            Role::AvianVet => self.pick("Call the vet", "Llamar al veterinario"),
            Role::EmergencyVet => self.pick("Call out of hours", "Llamar a urgencias"),
        }
    }

    /// The button that calls who has the chick at home.
    pub const fn call_owner(self) -> &'static str {
        self.pick("Call the owner", "Llamar al dueño")
    }

    /// What formula is given with.
    pub const fn tool(self, tool: Tool) -> &'static str {
        match tool {
            Tool::Syringe => self.pick("Syringe", "Jeringa"),
            Tool::Spoon => self.pick("Spoon", "Cuchara"),
            Tool::BentSpoon => self.pick("Bent spoon", "Cuchara de bordes doblados"),
        }
    }

    /// What a breeder says something about.
    pub const fn topic(self, topic: Topic) -> &'static str {
        match topic {
            Topic::Sex => self.pick("Sex, and how it is known", "Sexo, y cómo se sabe"),
            Topic::Wings => self.pick(
                "Wings: flies, or clipped how",
                "Alas: vuela, o cómo se cortaron",
            ),
            Topic::Papers => self.pick("Tests and papers", "Análisis y papeles"),
            Topic::TakesFood => self.pick("How it takes food", "Cómo toma la comida"),
            Topic::RoundCrop => self.pick(
                "How round its crop gets",
                "Hasta dónde se le llena el buche",
            ),
            Topic::AfterRefusal => self.pick("After one refusal", "Si no quiere una toma"),
            Topic::PowderName => self.pick("Powder, by name", "Papilla en polvo, nombre"),
            Topic::Recipe => self.pick(
                "Recipe in the breeder's words",
                "Receta, como la dice el criador",
            ),
            Topic::Night => self.pick("How it sleeps", "Cómo duerme"),
            Topic::Bath => self.pick("Bath", "Baño"),
        }
    }

    /// How well founded a number is.
    pub const fn standing(self, standing: Standing) -> &'static str {
        match standing {
            Standing::Published => self.pick("published", "publicado"),
            Standing::SecondHand => {
                self.pick("published, second hand", "publicado, citado por otros")
            }
            Standing::CommonPractice => self.pick("common practice", "práctica común"),
            Standing::Derived => self.pick(
                "worked out from published numbers",
                "calculado con datos publicados",
            ),
            Standing::Ours => self.pick(
                "our own limit, not tested on birds",
                "valor propio, sin probar en aves",
            ),
        }
    }

    /// What the crop held at a weighing.
    pub const fn crop_at_weighing(self, crop: CropAtWeighing) -> &'static str {
        match crop {
            CropAtWeighing::Empty => self.pick("crop empty", "buche vacío"),
            CropAtWeighing::AfterFeed => self.pick("after a feed", "después de una toma"),
            CropAtWeighing::NotSure => self.pick("crop not looked at", "buche sin comprobar"),
        }
    }

    /// How a feed was taken.
    pub const fn response(self, response: Response) -> &'static str {
        match response {
            Response::Eager => self.pick("eager", "con ganas"),
            Response::Slow => self.pick("slow", "despacio"),
            Response::NotNoted => self.pick("not noted", "sin anotar"),
        }
    }

    /// Why a feed was left out.
    pub const fn why_passed_over(self, why: WhyPassedOver) -> &'static str {
        match why {
            WhyPassedOver::CropNotEmpty => self.pick("crop not empty", "buche no vacío"),
            WhyPassedOver::NotFit => self.pick(
                "chick not well enough to be fed",
                "el polluelo no estaba bien",
            ),
            WhyPassedOver::Advised => self.pick(
                "breeder or vet said so",
                "lo dijo el criador o el veterinario",
            ),
            WhyPassedOver::NotPossible => self.pick("was not given", "no se dio"),
            WhyPassedOver::NotKnown => {
                self.pick("nobody knows if it was given", "no se sabe si se dio")
            }
        }
    }

    /// What the crop looks like.
    pub const fn crop_state(self, state: CropState) -> &'static str {
        match state {
            CropState::Flat => self.pick("flat", "plano"),
            CropState::Trace => self.pick("a trace", "un resto"),
            CropState::Quarter => self.pick("about a quarter", "un cuarto"),
            CropState::HalfOrMore => self.pick("half or more", "la mitad o más"),
        }
    }

    /// What the crop feels like.
    pub const fn crop_feel(self, feel: CropFeel) -> &'static str {
        match feel {
            CropFeel::Soft => self.pick("soft", "blando"),
            CropFeel::Firm => self.pick("firm or doughy", "duro o pastoso"),
            CropFeel::NotNoted => self.pick("not felt", "sin palpar"),
        }
    }

    /// What droppings look like.
    pub const fn droppings(self, look: Droppings) -> &'static str {
        match look {
            Droppings::Normal => self.pick("as usual", "como siempre"),
            Droppings::SmallOrFew => self.pick("small, dark or few", "pequeñas, oscuras o pocas"),
            Droppings::Watery => self.pick(
                "much clear water, stool formed",
                "mucha agua clara, parte sólida con forma",
            ),
            Droppings::LiquidStool => self.pick(
                "stool itself liquid, without form (diarrhoea)",
                "todo líquido, sin forma (diarrea)",
            ),
            Droppings::GreenOrBlack => self.pick("green or black", "verdes o negras"),
            Droppings::Undigested => self.pick("with undigested food", "con comida sin digerir"),
            Droppings::Bloody => self.pick(
                "red, without red food: blood",
                "rojas, sin haber comido nada rojo: sangre",
            ),
            Droppings::EmeraldGreen => self.pick(
                "emerald green, hardly any solid part",
                "verde esmeralda, casi sin parte sólida",
            ),
            Droppings::TarBlack => self.pick(
                "black-green and sticky, like tar",
                "negro verdosas y pegajosas, como alquitrán",
            ),
            Droppings::LimeUrates => self.pick(
                "the white part is yellow-green",
                "la parte blanca es amarillo verdosa",
            ),
            Droppings::WetAfterFruit => self.pick(
                "wet after fruit or a fright, stool formed",
                "mucha agua tras comer fruta o un susto, parte sólida con forma",
            ),
            Droppings::RedAfterFood => self.pick(
                "red after beet, berries or dyed pellets",
                "rojas tras comer remolacha (betabel), bayas o pellets de color",
            ),
        }
    }

    /// What droppings look like, as the form offers it: what was eaten is asked after red.
    pub fn droppings_choice(self, look: Droppings) -> &'static str {
        if look.asks_for_red_food() {
            self.look_red()
        } else {
            self.droppings(look)
        }
    }

    /// Droppings counted on a paper.
    pub fn counted(self, counted: DroppingsCount) -> String {
        format!("{} ({})", counted.count, self.paper(counted.paper))
    }

    /// Which paper droppings were counted on.
    pub const fn paper(self, paper: Paper) -> &'static str {
        match paper {
            Paper::Day => self.pick("the day's paper", "el papel del día"),
            Paper::Night => self.pick("the night's paper", "el papel de la noche"),
        }
    }

    /// How much solid food was eaten.
    pub const fn solids_eaten(self, eaten: SolidsEaten) -> &'static str {
        match eaten {
            SolidsEaten::Played => self.pick("only played with it", "solo jugó"),
            SolidsEaten::Little => self.pick("swallowed a little", "tragó un poco"),
            SolidsEaten::Meal => self.pick("ate a meal", "comió de verdad"),
        }
    }
}
