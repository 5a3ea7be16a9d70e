//! What happened, in an entry's own object: the word under `did`, then the fields of that word.

use crate::domain::journal::entries::{Change, ChickId, EntryId};
use crate::domain::journal::photo::{Photo, PhotoHash};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::quantity::units::{Celsius, Grams, Millilitres};
use crate::domain::time::moment::Lived;
use crate::store::id_text::id_to_text;
use crate::store::saved::fields::{Fields, ObjectText, id_of};
use crate::store::saved::plan::{plan_to_text, read_plan};
use crate::store::saved_error::SavedError;

/// Writes the word and its fields.
#[expect(clippy::too_many_lines, reason = "one arm a kind of change")]
pub(crate) fn write_change(object: &mut ObjectText, change: &Change) {
    match change {
        Change::ChickAdded(plan) => write_plan(object, "chick-added", plan),
        Change::PartSet {
            part,
            replaces,
            side,
            is_carer,
        } => {
            object.text("did", "part-set");
            object.tag("part", part.kind());
            object.ids("replaces", replaces);
            object.tag("side", *side);
            object.flag("carer", *is_carer);
            let plan = CarePlan::of_part(part.as_ref().clone());
            object.json("plan", &plan_to_text(&plan));
        }
        Change::PartTaken { sets } => {
            object.text("did", "part-taken");
            object.ids("sets", sets);
        }
        Change::PartAgreed { sets, said_by } => {
            object.text("did", "part-agreed");
            object.ids("sets", sets);
            object.text("said_by", said_by);
        }
        Change::Arrived => object.text("did", "arrived"),
        Change::Weighed { weight, crop } => {
            object.text("did", "weighed");
            object.tenths("g10", weight.tenths());
            object.tag("crop", *crop);
        }
        Change::Fed {
            counts_as,
            taken,
            offered,
            served_at,
            response,
        } => {
            object.text("did", "fed");
            if let Some(slot) = counts_as {
                object.tag("slot", *slot);
            }
            object.tenths("ml10", taken.tenths());
            if offered != taken {
                object.tenths("of_ml10", offered.tenths());
            }
            if let Some(served_at) = served_at {
                object.tenths("c10", served_at.tenths());
            }
            object.tag("response", *response);
        }
        Change::FeedRefused { counts_as, offered } => {
            object.text("did", "feed-refused");
            if let Some(slot) = counts_as {
                object.tag("slot", *slot);
            }
            if offered.tenths() > 0 {
                object.tenths("of_ml10", offered.tenths());
            }
        }
        Change::SameFood { notes, answer } => {
            object.text("did", "same-food");
            let notes: Vec<String> = notes
                .iter()
                .map(|id| format!("\"{}\"", id_to_text(id.0)))
                .collect();
            object.list("entries", &notes);
            object.tag("answer", *answer);
        }
        Change::FeedPassedOver { slot, day, why } => {
            object.text("did", "feed-passed-over");
            object.tag("slot", *slot);
            object.text("day", &day.iso());
            object.tag("why", *why);
        }
        Change::CropSeen { state, feel } => {
            object.text("did", "crop-seen");
            object.tag("state", *state);
            object.tag("feel", *feel);
        }
        Change::DroppingsSeen { look } => {
            object.text("did", "droppings-seen");
            object.tag("look", *look);
        }
        Change::DroppingsCounted { paper, count } => {
            object.text("did", "droppings-counted");
            object.tag("paper", *paper);
            object.number("count", i64::from(*count));
        }
        Change::SolidsSeen { what, eaten } => {
            object.text("did", "solids-seen");
            object.text("what", what);
            object.tag("eaten", *eaten);
        }
        Change::SignSeen { sign } => {
            object.text("did", "sign-seen");
            object.tag("sign", *sign);
        }
        Change::SignGone { sign } => {
            object.text("did", "sign-gone");
            object.tag("sign", *sign);
        }
        Change::FeedDropped { slot, by_breeder } => {
            object.text("did", "feed-dropped");
            object.tag("slot", *slot);
            object.flag("by_breeder", *by_breeder);
        }
        Change::FeedBroughtBack { slot } => {
            object.text("did", "feed-brought-back");
            object.tag("slot", *slot);
        }
        Change::MixMade {
            powder,
            water,
            fat_supplement,
        } => {
            object.text("did", "mix-made");
            object.tenths("powder_g10", powder.tenths());
            object.tenths("water_g10", water.tenths());
            object.tenths("fat_g10", fat_supplement.tenths());
        }
        Change::StockOpened { powder } => {
            object.text("did", "stock-opened");
            object.tenths("powder_g10", powder.tenths());
        }
        Change::Called { whom, agreed } => {
            object.text("did", "called");
            object.tag("whom", *whom);
            object.text("agreed", agreed);
        }
        Change::AdviceNoted {
            who,
            about,
            may_feed,
            ml,
            until,
        } => {
            object.text("did", "advice-noted");
            object.tag("who", *who);
            object.text("about", about);
            object.flag("may_feed", *may_feed);
            if let Some(ml) = ml {
                object.tenths("ml10", ml.tenths());
            }
            if let Some(until) = until {
                object.number("until", until.seconds());
            }
        }
        Change::RoomSeen { room } => {
            object.text("did", "room-seen");
            object.tenths("c10", room.tenths());
        }
        Change::DrinkingSeen => object.text("did", "drinking-seen"),
        Change::Grown => object.text("did", "grown"),
        Change::Died => object.text("did", "died"),
        Change::HandedOver { to, name } => {
            object.text("did", "handed-over");
            object.tag("to", *to);
            object.text("name", name);
        }
        Change::SameChick { typed, card } => {
            object.text("did", "same-chick");
            object.text("typed", &id_to_text(typed.0));
            object.text("card", &id_to_text(card.0));
        }
        Change::WeightStands { id } => {
            object.text("did", "weight-stands");
            object.text("entry", &id_to_text(id.0));
        }
        Change::PhotoTaken(photo) => {
            object.text("did", "photo-taken");
            object.tag("of", photo.of);
            object.text("sha256", &photo.hash.to_hex());
            object.number("bytes", i64::from(photo.bytes));
        }
        Change::VisitReason { text } => {
            object.text("did", "visit-reason");
            object.text("text", text);
        }
        Change::VetSeen { said } => {
            object.text("did", "vet-seen");
            object.text_if_any("said", said);
        }
        Change::VetBooked { on } => {
            object.text("did", "vet-booked");
            object.text("day", &on.day.iso());
            object.text("time", &on.time.text());
        }
        Change::Noted { text } => {
            object.text("did", "noted");
            object.text("text", text);
        }
        Change::Remarked { text } => {
            object.text("did", "remarked");
            object.text("text", text);
        }
        Change::Retracted { id } => {
            object.text("did", "retracted");
            object.text("entry", &id_to_text(id.0));
        }
    }
}

fn write_plan(object: &mut ObjectText, did: &str, plan: &CarePlan) {
    object.text("did", did);
    object.json("plan", &plan_to_text(plan));
}

/// Reads the word and its fields.
#[expect(clippy::too_many_lines, reason = "one arm a kind of change")]
pub(crate) fn read_change(fields: &mut Fields<'_>) -> Result<Change, SavedError> {
    let did = fields.text("did")?;
    Ok(match did.as_str() {
        "chick-added" => Change::ChickAdded(Box::new(read_plan(fields.object("plan")?)?)),
        "part-set" => {
            let kind = fields.tag("part")?;
            Change::PartSet {
                replaces: fields.ids("replaces")?,
                side: fields.tag("side")?,
                is_carer: fields.flag("carer")?,
                part: Box::new(read_plan(fields.object("plan")?)?.part(kind)),
            }
        }
        "part-taken" => Change::PartTaken {
            sets: fields.ids("sets")?,
        },
        "part-agreed" => Change::PartAgreed {
            sets: fields.ids("sets")?,
            said_by: fields.text("said_by")?,
        },
        "arrived" => Change::Arrived,
        "weighed" => Change::Weighed {
            weight: fields.tenths("g10", Grams::from_tenths)?,
            crop: fields.tag("crop")?,
        },
        "fed" => {
            let taken = millilitres(fields, "ml10")?;
            Change::Fed {
                counts_as: fields.optional("slot", Fields::tag)?,
                taken,
                offered: fields.optional("of_ml10", millilitres)?.unwrap_or(taken),
                served_at: fields.optional("c10", celsius)?,
                response: fields.tag("response")?,
            }
        }
        "feed-refused" => Change::FeedRefused {
            counts_as: fields.optional("slot", Fields::tag)?,
            offered: fields
                .optional("of_ml10", millilitres)?
                .unwrap_or(Millilitres::whole(0)),
        },
        "same-food" => Change::SameFood {
            notes: fields
                .list("entries")?
                .iter()
                .map(|id| id_of(id, "entries").map(EntryId))
                .collect::<Result<_, _>>()?,
            answer: fields.tag("answer")?,
        },
        "feed-passed-over" => Change::FeedPassedOver {
            slot: fields.tag("slot")?,
            day: fields.day("day")?,
            why: fields.tag("why")?,
        },
        "crop-seen" => Change::CropSeen {
            state: fields.tag("state")?,
            feel: fields.tag("feel")?,
        },
        "droppings-seen" => Change::DroppingsSeen {
            look: fields.tag("look")?,
        },
        "droppings-counted" => Change::DroppingsCounted {
            paper: fields.tag("paper")?,
            count: fields.small("count")?,
        },
        "solids-seen" => Change::SolidsSeen {
            what: fields.text("what")?,
            eaten: fields.tag("eaten")?,
        },
        "sign-seen" => Change::SignSeen {
            sign: fields.tag("sign")?,
        },
        "sign-gone" => Change::SignGone {
            sign: fields.tag("sign")?,
        },
        "feed-dropped" => Change::FeedDropped {
            slot: fields.tag("slot")?,
            by_breeder: fields.flag("by_breeder")?,
        },
        "feed-brought-back" => Change::FeedBroughtBack {
            slot: fields.tag("slot")?,
        },
        "mix-made" => Change::MixMade {
            powder: fields.tenths("powder_g10", Grams::from_tenths)?,
            water: fields.tenths("water_g10", Grams::from_tenths)?,
            fat_supplement: fields.tenths("fat_g10", Grams::from_tenths)?,
        },
        "stock-opened" => Change::StockOpened {
            powder: fields.tenths("powder_g10", Grams::from_tenths)?,
        },
        "called" => Change::Called {
            whom: fields.tag("whom")?,
            agreed: fields.text("agreed")?,
        },
        "advice-noted" => Change::AdviceNoted {
            who: fields.tag("who")?,
            about: fields.text("about")?,
            may_feed: fields.flag("may_feed")?,
            ml: fields.optional("ml10", millilitres)?,
            until: fields.optional("until", Fields::moment)?,
        },
        "room-seen" => Change::RoomSeen {
            room: celsius(fields, "c10")?,
        },
        "drinking-seen" => Change::DrinkingSeen,
        "grown" => Change::Grown,
        "died" => Change::Died,
        "handed-over" => Change::HandedOver {
            to: fields.tag("to")?,
            name: fields.text("name")?,
        },
        "same-chick" => Change::SameChick {
            typed: ChickId(fields.id("typed")?),
            card: ChickId(fields.id("card")?),
        },
        "photo-taken" => Change::PhotoTaken(Photo {
            of: fields.tag("of")?,
            hash: photo_hash(fields)?,
            bytes: fields.small("bytes")?,
        }),
        "visit-reason" => Change::VisitReason {
            text: fields.text("text")?,
        },
        "vet-seen" => Change::VetSeen {
            said: fields.optional("said", Fields::text)?.unwrap_or_default(),
        },
        "vet-booked" => Change::VetBooked {
            on: Lived {
                day: fields.day("day")?,
                time: fields.wall_time("time")?,
            },
        },
        "noted" => Change::Noted {
            text: fields.text("text")?,
        },
        "remarked" => Change::Remarked {
            text: fields.text("text")?,
        },
        "weight-stands" => Change::WeightStands {
            id: EntryId(fields.id("entry")?),
        },
        "retracted" => Change::Retracted {
            id: EntryId(fields.id("entry")?),
        },
        _ => {
            return Err(SavedError::UnknownTag {
                field: "did",
                tag: did,
            });
        }
    })
}

fn photo_hash(fields: &mut Fields<'_>) -> Result<PhotoHash, SavedError> {
    let field = "sha256";
    PhotoHash::from_hex(&fields.text(field)?).ok_or(SavedError::BadText { field })
}

fn celsius(fields: &mut Fields<'_>, field: &'static str) -> Result<Celsius, SavedError> {
    fields.tenths(field, Celsius::from_tenths)
}

fn millilitres(fields: &mut Fields<'_>, field: &'static str) -> Result<Millilitres, SavedError> {
    fields.tenths(field, Millilitres::from_tenths)
}
