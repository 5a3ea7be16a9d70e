//! The owner's empty cup as text: `1 mass stuff`, the mass in whole tenths of a gram. It is weighed once
//! and counted at each mix; a text that is not whole gives no cup, and it is then asked for again.

use crate::domain::formula::heat_balance::CupStuff;
use crate::domain::quantity::units::Grams;

/// Version of the form.
const VERSION: &str = "1";

/// The cup as text.
pub fn cup_to_text(mass: Grams, stuff: CupStuff) -> String {
    format!("{VERSION} {} {}", mass.tenths(), word(stuff))
}

/// The cup of a text; `None` when it is not whole.
pub fn cup_from_text(text: &str) -> Option<(Grams, CupStuff)> {
    let mut words = text.split(' ');
    if words.next()? != VERSION {
        return None;
    }
    let mass = Grams::from_tenths(words.next()?.parse().ok()?).ok()?;
    let found = words.next()?;
    let stuff = CupStuff::ALL
        .into_iter()
        .find(|stuff| word(*stuff) == found)?;
    words.next().is_none().then_some((mass, stuff))
}

const fn word(stuff: CupStuff) -> &'static str {
    match stuff {
        CupStuff::Plastic => "plastic",
        CupStuff::GlassOrChina => "glass-or-china",
        CupStuff::Steel => "steel",
    }
}

#[cfg(test)]
mod tests {
    use crate::store::cup_text::*;

    #[test]
    fn every_cup_comes_back() {
        for stuff in CupStuff::ALL {
            let mass = Grams::tenths_held(523);
            assert_eq!(
                cup_from_text(&cup_to_text(mass, stuff)),
                Some((mass, stuff))
            );
        }
    }

    #[test]
    fn the_form_stays_readable() {
        let cup = Some((Grams::whole(52), CupStuff::GlassOrChina));
        assert_eq!(cup_from_text("1 520 glass-or-china"), cup);
    }

    #[test]
    fn what_is_not_whole_or_newer_is_no_cup() {
        for text in [
            "",
            "1",
            "1 520",
            "1 520 ",
            "1 520 tin",
            "1 -1 steel",
            "1 x steel",
            "1 520 steel more",
            "2 520 steel",
        ] {
            assert_eq!(cup_from_text(text), None, "{text}");
        }
    }
}
