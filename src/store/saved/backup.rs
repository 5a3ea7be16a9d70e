//! A backup's text: the entries, and what a breeder typed once for every chick of hers.
//!
//! Form: that of many entries, with an object `breeder` where a breeder holds the phone: `name` as she signs, `own` the
//! plan that holds her own words, `templates` a plan a species, the last used first, `bred` the ids of her chicks. Each
//! is left out when there is none, and so is the whole object, so that a backup from before it was there reads as before.

use crate::domain::journal::entries::{Change, ChickId, Entry, check_change};
use crate::domain::plan::care_plan::CarePlan;
use crate::domain::plan::plan_line::plan_difference;
use crate::domain::plan::species::Species;
use crate::domain::quantity::order::set_of;
use crate::store::json::Json;
use crate::store::saved::fields::{Fields, ObjectText, id_of};
use crate::store::saved::plan::{plan_to_text, read_plan};
use crate::store::saved::{Limits, entries_of, entry_to_text, fields_of_many};
use crate::store::saved_error::{SavedError, VERSION};

/// What a breeder typed once, beside the records of her chicks.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct OfBreeder {
    /// As she signs what she notes; empty when she gave no name.
    pub name: String,
    /// Her details and standing words; `None` before she typed any.
    pub own: Option<CarePlan>,
    /// Her templates, one a species, the last used first.
    pub templates: Vec<CarePlan>,
    /// The chicks that she bred.
    pub bred: Vec<ChickId>,
}

/// A backup as it was read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Backup {
    /// The records.
    pub entries: Vec<Entry>,
    /// What a breeder typed once; `None` in an owner's backup and in one from before it was kept there.
    pub of_breeder: Option<OfBreeder>,
}

impl OfBreeder {
    /// Whether there is nothing in it.
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// What is here with what `file` adds: words and templates that are missing here come in, what is here stays.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::plan::care_plan::CarePlan;
    /// use perchlight::domain::plan::species::Species;
    /// use perchlight::store::saved::backup::OfBreeder;
    ///
    /// let mut here = OfBreeder { own: Some(CarePlan::default_for(Species::ScarletMacaw)), ..OfBreeder::default() };
    /// let mut file = here.clone();
    /// file.own.as_mut().unwrap().note = "Wash your hands.".to_owned();
    /// assert_eq!(here.joined(&file), file);
    /// here.own.as_mut().unwrap().note = "No visitors.".to_owned();
    /// assert_eq!(here.joined(&file), here);
    /// ```
    #[must_use]
    pub fn joined(&self, file: &Self) -> Self {
        let own = match (&self.own, &file.own) {
            (Some(here), Some(there)) => Some(filled(here, there)),
            (Some(one), None) | (None, Some(one)) => Some(one.clone()),
            (None, None) => None,
        };
        let mut templates = self.templates.clone();
        for template in &file.templates {
            if templates
                .iter()
                .all(|known| known.species != template.species)
            {
                templates.push(template.clone());
            }
        }
        let name = if self.name.is_empty() {
            &file.name
        } else {
            &self.name
        };
        let bred = self.bred.iter().chain(&file.bred).copied();
        Self {
            name: name.clone(),
            own,
            templates,
            bred: set_of(bred).into_iter().collect(),
        }
    }

    /// The same with the words and templates of `file` wherever it has some.
    #[must_use]
    pub fn replaced_by(&self, file: &Self) -> Self {
        let joined = self.joined(file);
        let templates = joined.templates.into_iter().map(|here| {
            let there = file
                .templates
                .iter()
                .find(|one| one.species == here.species);
            there.cloned().unwrap_or(here)
        });
        Self {
            own: file.own.clone().or(joined.own),
            templates: templates.collect(),
            name: joined.name,
            bred: joined.bred,
        }
    }
}

/// The words of `here`, and those of `there` that say something where `here` says nothing.
fn filled(here: &CarePlan, there: &CarePlan) -> CarePlan {
    let nothing = CarePlan::default_for(here.species);
    let said = plan_difference(&nothing, here);
    let mut own = here.clone();
    for line in plan_difference(here, there) {
        if !said.contains(&line) {
            line.copy(there, &mut own);
        }
    }
    own
}

/// The text of a backup.
pub fn backup_to_text(entries: &[Entry], of_breeder: &OfBreeder) -> String {
    let lines: Vec<String> = entries.iter().map(entry_to_text).collect();
    let mut object = ObjectText::new();
    object.number("v", VERSION);
    object.list("entries", &lines);
    if !of_breeder.is_empty() {
        object.json("breeder", &breeder_to_text(of_breeder));
    }
    object.finish()
}

fn breeder_to_text(of_breeder: &OfBreeder) -> String {
    let mut object = ObjectText::new();
    object.text_if_any("name", &of_breeder.name);
    if let Some(own) = &of_breeder.own {
        object.json("own", &plan_to_text(own));
    }
    if !of_breeder.templates.is_empty() {
        let templates: Vec<String> = of_breeder.templates.iter().map(plan_to_text).collect();
        object.list("templates", &templates);
    }
    if !of_breeder.bred.is_empty() {
        object.chicks("bred", &of_breeder.bred);
    }
    object.finish()
}

/// The backup of a text, all of it or nothing.
///
/// # Errors
/// [`SavedError`] for the first thing that is wrong.
pub fn backup_from_text(text: &str, limits: Limits) -> Result<Backup, SavedError> {
    let mut fields = fields_of_many(text, limits)?;
    let of_breeder = fields.optional("breeder", Fields::object)?;
    let of_breeder = of_breeder.map(read_breeder).transpose()?;
    let entries = entries_of(fields, limits)?;
    Ok(Backup {
        entries,
        of_breeder,
    })
}

fn read_breeder(mut fields: Fields<'_>) -> Result<OfBreeder, SavedError> {
    let name = fields.optional("name", Fields::text)?.unwrap_or_default();
    if CarePlan::SHORT_TEXT < name.chars().count() {
        return Err(SavedError::BadText { field: "name" });
    }
    let own = fields.optional("own", Fields::object)?;
    let own = own.map(checked_plan).transpose()?;
    let templates = fields.optional("templates", Fields::list)?;
    let templates = templates.unwrap_or_default();
    let limit = Species::ALL.len();
    if limit < templates.len() {
        return Err(SavedError::TooMany { limit });
    }
    let template = |value: Json<'_>| checked_plan(Fields::new(value, "templates")?);
    let templates: Vec<CarePlan> = templates
        .into_iter()
        .map(template)
        .collect::<Result<_, _>>()?;
    let species = set_of(templates.iter().map(|template| template.species));
    if species.len() < templates.len() {
        return Err(SavedError::NotTheSame);
    }
    let bred = fields.optional("bred", Fields::list)?.unwrap_or_default();
    let bred = bred.iter().map(|id| id_of(id, "bred").map(ChickId));
    let bred = bred.collect::<Result<_, _>>()?;
    fields.finish()?;
    Ok(OfBreeder {
        name,
        own,
        templates,
        bred,
    })
}

fn checked_plan(fields: Fields<'_>) -> Result<CarePlan, SavedError> {
    let plan = read_plan(fields)?;
    check_change(&Change::ChickAdded(Box::new(plan.clone()))).map_err(SavedError::Refused)?;
    Ok(plan)
}

#[cfg(test)]
mod tests {
    use crate::domain::plan::care_plan::{CarePlan, Contact, Role};
    use crate::domain::plan::species::Species;
    use crate::domain::plan::topic::Topic;
    use crate::domain::quantity::units::Percent;
    use crate::store::saved::backup::*;
    use crate::store::saved::entries_to_text;

    fn own(name: &str, note: &str) -> CarePlan {
        let mut own = CarePlan::default_for(Species::GreenWingedMacaw);
        own.contacts = vec![Contact {
            role: Role::Breeder,
            name: name.to_owned(),
            number: "+1 555 0100".to_owned(),
        }];
        own.note = note.to_owned();
        own
    }

    fn template(species: Species, powder: i32) -> CarePlan {
        let mut template = CarePlan::default_for(species);
        template.powder_fraction = Percent::whole(powder);
        template
    }

    fn whole() -> OfBreeder {
        let mut own = own("Ana", "Wash your hands.");
        own.say(Topic::AfterRefusal, "Wait an hour");
        own.ask_before_drop = true;
        OfBreeder {
            name: "Ana".to_owned(),
            own: Some(own),
            templates: vec![
                template(Species::HyacinthMacaw, 28),
                template(Species::ScarletMacaw, 25),
            ],
            bred: vec![ChickId([1; 12]), ChickId([2; 12])],
        }
    }

    #[test]
    fn what_she_typed_comes_back_and_a_backup_without_it_reads_as_before() {
        let text = backup_to_text(&[], &whole());
        let read = backup_from_text(&text, Limits::FILE).unwrap();
        assert_eq!(read.of_breeder, Some(whole()));
        // An owner's backup is the text that it was before.
        let owner = backup_to_text(&[], &OfBreeder::default());
        assert_eq!(owner, r#"{"v":1,"entries":[]}"#);
        assert_eq!(owner, entries_to_text(&[]));
        let read = backup_from_text(&owner, Limits::FILE).unwrap();
        assert_eq!(read.of_breeder, None);
    }

    #[test]
    fn a_phone_that_has_nothing_takes_all_of_it() {
        assert_eq!(OfBreeder::default().joined(&whole()), whole());
        assert_eq!(whole().joined(&OfBreeder::default()), whole());
        assert_eq!(whole().joined(&whole()), whole());
    }

    #[test]
    fn what_is_here_stays_until_she_says_otherwise() {
        let mut here = whole();
        here.own = Some(own("Ana", "No visitors in the first week."));
        here.templates = vec![template(Species::ScarletMacaw, 30)];
        here.bred = vec![ChickId([3; 12])];
        let joined = here.joined(&whole());
        let own = joined.own.unwrap();
        assert_eq!(own.note, "No visitors in the first week.");
        // What she has not said here comes in.
        assert_eq!(own.said(Topic::AfterRefusal), "Wait an hour");
        assert!(own.ask_before_drop);
        let powders: Vec<_> = joined
            .templates
            .iter()
            .map(|one| (one.species, one.powder_fraction))
            .collect();
        let expected = [
            (Species::ScarletMacaw, Percent::whole(30)),
            (Species::HyacinthMacaw, Percent::whole(28)),
        ];
        assert_eq!(powders, expected);
        assert_eq!(joined.bred, [1, 2, 3].map(|id| ChickId([id; 12])));
        let replaced = here.replaced_by(&whole());
        assert_eq!(replaced.own, whole().own);
        assert_eq!(replaced.templates[0], template(Species::ScarletMacaw, 25));
        assert_eq!(replaced.templates.len(), 2);
    }

    #[test]
    fn a_damaged_or_a_hostile_one_is_refused_whole() {
        let text = backup_to_text(&[], &whole());
        let refused = |text: &str| backup_from_text(text, Limits::FILE).is_err();
        assert!(refused(&text.replace("\"templates\"", "\"patterns\"")));
        assert!(refused(&text.replace("scarlet", "hyacinth")));
        assert!(refused(
            &text.replace("\"powder_pct10\":250", "\"powder_pct10\":9900")
        ));
        assert!(refused(&text.replace(
            "\"name\":\"Ana\",\"own\"",
            &format!("\"name\":\"{}\",\"own\"", "x".repeat(61))
        )));
        let twice = text.replace("\"breeder\":", "\"breeder\":{},\"breeder\":");
        assert!(refused(&twice));
        for cut in 1..text.len() {
            assert!(text.get(..cut).is_none_or(refused), "cut at {cut}");
        }
    }
}
