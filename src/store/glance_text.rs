//! What the page shows before the app is there, as text: a first line `glance 1`, then a line for each
//! thing, its name and its texts with tabs between them. The app words everything; the page's own script
//! (`public/glance.js`) only puts the texts in their places, as texts, and leaves out what it does not know.

use crate::domain::time::moment::Moment;

/// Version of the form.
const VERSION: &str = "1";

/// Somebody to call.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GlanceCall {
    /// "Call the vet".
    pub who: String,
    /// Name and number.
    pub number: String,
    /// The `tel:` address.
    pub link: String,
}

/// What was known of a chick when the app was left.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Glance {
    /// As of when.
    pub as_of: String,
    /// Its name.
    pub name: String,
    /// The moment as of which it is.
    pub at: Moment,
    /// Until when the answer is sure to be the same; `None` where food is kept back, which no time lifts.
    pub until: Option<Moment>,
    /// When the next feed is due, where there is one to wait for.
    pub due: Option<Moment>,
    /// The name and the word of the level.
    pub level: (&'static str, &'static str),
    /// The answer, a sentence a line.
    pub answer: Vec<String>,
    /// What is known and stays true: the last weight.
    pub known: Vec<String>,
    /// What to do first: what is seen, and then what; the first is empty where it is seen already.
    pub aid: Vec<(String, String)>,
    /// Whom to call, first to call first.
    pub calls: Vec<GlanceCall>,
}

impl Glance {
    /// The text of it.
    pub fn to_text(&self) -> String {
        let mut text = String::new();
        let mut line = |parts: &[&str]| {
            let parts: Vec<String> = parts.iter().map(|part| plain(part)).collect();
            text.push_str(&parts.join("\t"));
            text.push('\n');
        };
        line(&["glance", VERSION]);
        line(&["as-of", &self.as_of]);
        line(&["name", &self.name]);
        let moments = [
            ("at", Some(self.at)),
            ("until", self.until),
            ("due", self.due),
        ];
        for (name, moment) in moments {
            if let Some(moment) = moment {
                line(&[name, &moment.seconds().to_string()]);
            }
        }
        line(&["level", self.level.0, self.level.1]);
        self.answer.iter().for_each(|part| line(&["answer", part]));
        self.known.iter().for_each(|part| line(&["known", part]));
        for (seen, act) in &self.aid {
            line(&["aid", seen, act]);
        }
        for call in &self.calls {
            line(&["call", &call.who, &call.number, &call.link]);
        }
        text
    }
}

/// A text that stays in its place: what people type may hold tabs and line breaks.
fn plain(text: &str) -> String {
    text.replace(char::is_control, " ")
}

#[cfg(test)]
mod tests {
    use crate::store::glance_text::*;

    fn glance() -> Glance {
        Glance {
            as_of: "As of 2 Nov 2026, 20:41".to_owned(),
            name: "Ember".to_owned(),
            at: Moment::from_seconds(1_793_652_060),
            until: Some(Moment::from_seconds(1_793_653_200)),
            due: None,
            level: ("settled", "Settled"),
            answer: vec!["Bedtime feed at 21:00".to_owned()],
            known: vec!["Weight: 1,012 g".to_owned()],
            aid: vec![(String::new(), "Keep it warm.".to_owned())],
            calls: vec![GlanceCall {
                who: "Call the vet".to_owned(),
                number: "555 0102".to_owned(),
                link: "tel:5550102".to_owned(),
            }],
        }
    }

    /// The page's script reads these very lines.
    #[test]
    fn the_form_stays_readable() {
        let wanted = "glance\t1\nas-of\tAs of 2 Nov 2026, 20:41\nname\tEmber\nat\t1793652060\n\
            until\t1793653200\nlevel\tsettled\tSettled\nanswer\tBedtime feed at 21:00\nknown\tWeight: 1,012 g\n\
            aid\t\tKeep it warm.\ncall\tCall the vet\t555 0102\ttel:5550102\n";
        assert_eq!(glance().to_text(), wanted);
    }

    #[test]
    fn a_typed_text_makes_no_line_and_no_place_of_its_own() {
        let mut typed = glance();
        typed.name = "Em\tber\nanswer\tFeed now\r\u{2028}".to_owned();
        let text = typed.to_text();
        assert_eq!(text.lines().count(), glance().to_text().lines().count());
        let names = text.lines().filter(|line| line.starts_with("answer"));
        assert_eq!(names.count(), 1);
        assert!(text.contains("name\tEm ber answer Feed now"));
    }
}
