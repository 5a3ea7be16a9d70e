//! One line of the journal in words.

use crate::domain::journal::chick::{Advice, DroppingsCount};
use crate::domain::journal::entries::{Carer, Change, CropFeel};
use crate::domain::journal::photo::{Photo, PhotoOf};
use crate::domain::plan::care_plan::Slot;
use crate::domain::plan::parts::Side;
use crate::words::Language;
use crate::words::exchange::labelled;
use crate::words::format::Writing;

impl Writing {
    /// What an entry says, as one line without its time; `counted` is the planned feed that food counts for.
    #[expect(clippy::too_many_lines, reason = "one arm a kind of change")]
    pub fn change(self, change: &Change, counted: Option<Slot>) -> String {
        let say = self.language;
        match change {
            Change::ChickAdded(plan) => format!("{}: {}", say.entry_added(), plan.name),
            Change::PartSet {
                part,
                side,
                is_carer,
                ..
            } => {
                let is_asked = *side == Side::Owner && !is_carer;
                let what = if is_asked {
                    say.entry_plan_asked()
                } else {
                    say.entry_plan()
                };
                format!("{what}: {}", say.plan_part(part.kind()))
            }
            Change::PartTaken { .. } => say.entry_plan_taken().to_owned(),
            Change::PartAgreed { said_by, .. } => {
                let agreed = if said_by.is_empty() {
                    say.entry_plan_agreed()
                } else {
                    say.entry_plan_said()
                };
                labelled(agreed, said_by)
            }
            Change::Arrived => say.entry_arrived().to_owned(),
            Change::Weighed { weight, crop } => {
                format!("{}, {}", self.mass(*weight), say.crop_at_weighing(*crop))
            }
            Change::Fed {
                counts_as,
                taken,
                offered,
                served_at,
                ..
            } => {
                let volume = if taken == offered {
                    self.volume(*taken)
                } else {
                    self.part_of(&self.volume(*taken), &self.volume(*offered))
                };
                let served = served_at.map(|served| format!(", {}", self.temperature(served)));
                format!(
                    "{}: {volume}{}",
                    say.feed_or_food(counted.or(*counts_as)),
                    served.unwrap_or_default()
                )
            }
            Change::FeedRefused { counts_as, .. } => say.feed_refused(counted.or(*counts_as)),
            Change::SameFood { answer, .. } => say.same_food_answer(*answer).to_owned(),
            Change::FeedPassedOver { slot, why, .. } => {
                format!(
                    "{}: {}, {}",
                    say.feed(*slot),
                    say.entry_left_out(),
                    say.why_passed_over(*why)
                )
            }
            Change::CropSeen { state, feel } => {
                let feel = if *feel == CropFeel::NotNoted {
                    String::new()
                } else {
                    format!(", {}", say.crop_feel(*feel))
                };
                format!("{}: {}{feel}", say.now_crop(), say.crop_state(*state))
            }
            Change::DroppingsSeen { look } => {
                format!("{}: {}", say.now_droppings(), say.droppings(*look))
            }
            &Change::DroppingsCounted { paper, count } => {
                let counted = DroppingsCount { paper, count };
                format!("{}: {}", say.now_droppings(), say.counted(counted))
            }
            Change::SolidsSeen { what, eaten } => {
                let eaten = say.solids_eaten(*eaten);
                if what.is_empty() {
                    format!("{}: {eaten}", say.now_solids())
                } else {
                    format!("{what}: {eaten}")
                }
            }
            Change::SignSeen { sign } => crate::words::signs::sign(say, *sign).seen.to_owned(),
            Change::SignGone { sign } => {
                format!(
                    "{}: {}",
                    say.entry_gone(),
                    crate::words::signs::sign(say, *sign).seen
                )
            }
            Change::FeedDropped { slot, by_breeder } => {
                let by = if *by_breeder {
                    say.entry_by_breeder()
                } else {
                    ""
                };
                format!("{}: {}{by}", say.feed(*slot), say.entry_dropped())
            }
            Change::FeedBroughtBack { slot } => {
                format!("{}: {}", say.feed(*slot), say.entry_brought_back())
            }
            Change::MixMade {
                powder,
                water,
                fat_supplement,
            } => {
                let fat = if fat_supplement.tenths() == 0 {
                    String::new()
                } else {
                    format!(" + {} {}", self.mass(*fat_supplement), say.entry_fat())
                };
                format!(
                    "{}: {} {} + {} {}{fat}",
                    say.entry_mix(),
                    self.mass(*powder),
                    say.entry_powder(),
                    self.mass(*water),
                    say.entry_water()
                )
            }
            Change::StockOpened { powder } => {
                format!("{}: {}", say.entry_stock(), self.mass(*powder))
            }
            Change::Called { whom, agreed } => {
                let agreed = if agreed.is_empty() {
                    String::new()
                } else {
                    format!(": {agreed}")
                };
                format!("{} {}{agreed}", say.entry_rang(), say.role(*whom))
            }
            Change::AdviceNoted {
                who,
                about,
                may_feed,
                ml,
                until,
            } => {
                let what = Advice {
                    who: *who,
                    about: about.clone(),
                    may_feed: *may_feed,
                    ml: *ml,
                    until: *until,
                };
                self.advice(&what, None)
            }
            Change::RoomSeen { room } => {
                format!("{}: {}", say.entry_room(), self.temperature(*room))
            }
            Change::DrinkingSeen => say.entry_drinking().to_owned(),
            Change::Grown => say.entry_grown().to_owned(),
            Change::Died => say.entry_died().to_owned(),
            Change::HandedOver { to, name } => {
                let to = say.handed_to(*to);
                labelled(to, name)
            }
            Change::SameChick { .. } => say.entry_same_chick().to_owned(),
            Change::WeightStands { .. } => say.entry_weight_stands().to_owned(),
            Change::PhotoTaken(photo) => self.photo(*photo),
            Change::VisitReason { text } => labelled(say.entry_visit_reason(), text),
            Change::VetSeen { said } => labelled(say.entry_vet_seen(), said),
            Change::VetBooked { on } => self.visit_booked(*on),
            Change::Noted { text } | Change::Remarked { text } => text.clone(),
            Change::Retracted { .. } => say.journal_retracted().to_owned(),
        }
    }

    /// What a photo shows and how large it is.
    pub fn photo(self, photo: Photo) -> String {
        let of = self.language.photo_of(photo.of);
        format!("{of}, {}", self.kilobytes(photo.bytes))
    }

    fn part_of(self, taken: &str, offered: &str) -> String {
        match self.language {
            Language::English => format!("{taken} of {offered}"),
            Language::Spanish => format!("{taken} de {offered}"),
        }
    }
}

impl Language {
    /// What a photo shows.
    pub const fn photo_of(self, of: PhotoOf) -> &'static str {
        match of {
            PhotoOf::Droppings => self.pick("Photo of the droppings", "Foto de las heces"),
            PhotoOf::Crop => self.pick("Photo of the crop", "Foto del buche"),
            PhotoOf::Skin => self.pick("Photo of skin or feathers", "Foto de la piel o las plumas"),
        }
    }

    /// Who cares for the chick from here on.
    pub const fn handed_to(self, to: Carer) -> &'static str {
        match to {
            Carer::Owner => self.pick("Handed over to its owner", "Entregado a su dueño"),
            Carer::Breeder => self.pick("Given back to the breeder", "De vuelta con el criador"),
            Carer::Sitter => self.pick("Handed to a sitter", "Dejado con un cuidador"),
            Carer::Clinic => self.pick("Handed to a clinic", "Dejado en la clínica"),
        }
    }
}

texts! {
    entry_drinking: "Seen to drink", "Se le ha visto beber";
    entry_grown: "Grown", "Ya es adulto";
    entry_died: "Died", "Ha muerto";
    entry_same_chick: "The typed-in chick and the card's are the same bird", "El polluelo añadido a mano y el de la ficha son el mismo";
    entry_added: "Chick added", "Polluelo añadido";
    entry_plan: "Plan changed", "Plan cambiado";
    entry_plan_asked: "Asked the breeder for another value", "Se pidió otro valor al criador";
    entry_plan_agreed: "The breeder agreed to the plan", "El criador está de acuerdo con el plan";
    entry_plan_said: "Said by telephone, the plan", "Dicho por teléfono, el plan";
    entry_plan_taken: "Plan taken", "Plan aceptado";
    entry_arrived: "Arrived in its new home", "Llegó a su nuevo hogar";
    entry_left_out: "left out", "no dada";
    entry_gone: "No longer seen", "Ya no lo tiene";
    entry_by_breeder: ", decided by breeder or vet", ", por decisión del criador o veterinario";
    entry_dropped: "dropped", "quitada";
    entry_brought_back: "offered again", "ofrecida de nuevo";
    entry_mix: "Mixed", "Papilla preparada";
    entry_powder: "powder", "de polvo";
    entry_water: "water", "de agua";
    entry_fat: "fat supplement", "de suplemento graso";
    entry_stock: "Powder", "Papilla en polvo";
    entry_rang: "Called:", "Llamada:";
    entry_weight_stands: "Not weighed again: the weight counts as it is", "Sin pesar otra vez: el peso vale como está";
    photo_elsewhere: "Photos that are not on this phone (a backup file brings them):", "Fotos que no están en este teléfono (las trae una copia de seguridad):";
    entry_visit_reason: "Reason for the visit", "Motivo de la consulta";
    entry_vet_seen: "Seen by a vet", "Visto por un veterinario";
    entry_room: "Room", "Habitación";
}
