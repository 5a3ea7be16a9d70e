//! Parts of a page that stands by itself: readable with scripts off, on paper, and after years.
//!
//! **Invariants.** Every text that goes in is escaped here; callers pass plain text. A page loads
//! nothing, runs nothing and sends nothing: its policy forbids it, and nothing in it asks for it.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;

use crate::share::data_block::MARK;
use crate::share::markup::escape;
use crate::share::phone::call_link;
use crate::words::Language;
use crate::words::names::harmless;

/// Nothing but the page's own style and the photos in it. A `script` element of data is not a script.
///
/// Source: Content Security Policy Level 3, section 6; HTML, "data blocks".
const POLICY: &str = concat!(
    "default-src 'none'; img-src",
    " data:; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'"
);

const STYLE: &str = "\
:root{color-scheme:light}\
body{font:1rem/1.45 system-ui,sans-serif;color:#1c2a30;background:#fff;max-width:46rem;margin:0 auto;padding:1rem}\
h1{font-size:1.5rem;margin:0}h2{font-size:1.1rem;margin:1.2rem 0 .3rem;border-bottom:1px solid #55636a}\
p{margin:.3rem 0}ul{margin:.2rem 0;padding-left:1.2rem}\
table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}\
caption{text-align:left;font-weight:600;padding-top:.6rem}\
th,td{text-align:left;padding:.15rem .5rem .15rem 0;border-bottom:1px solid #ccc;vertical-align:top}\
dl{display:grid;grid-template-columns:minmax(9rem,2fr) 3fr;gap:.1rem .8rem;margin:.2rem 0}\
dt{color:#55636a}dd{margin:0;white-space:pre-wrap;overflow-wrap:anywhere}\
.typed td{overflow-wrap:anywhere}figure{margin:0}figure svg{max-width:100%;height:auto}\
.level{font-size:1.2rem;font-weight:600}.small{font-size:.85rem;color:#55636a}\
@media (max-width:32rem){table{font-size:.8rem}}\
.link{overflow-wrap:anywhere;font-size:.75rem}.code{max-width:20rem}\
.photos{display:flex;flex-wrap:wrap;gap:.5rem}.photo{max-width:20rem}.photo img{max-width:100%}\
@media print{:root{font-size:10pt}body{max-width:none;padding:0}h2{break-after:avoid}tr,figure{break-inside:avoid}a{color:inherit}}";

/// Of the card: everything grows with the paper, so that A4 is as full as A5. The code is 61 mm wide at
/// least, and has four squares of white beside it.
const CARD_STYLE: &str = "\
@page{margin:7mm}body{overflow-wrap:anywhere}\
.top{display:flex;flex-wrap:wrap;gap:1.6rem;align-items:flex-start}.who{flex:1 1 14rem;min-inline-size:0}.who p{margin:0}\
.code{inline-size:20.6rem;max-inline-size:100%}.code svg{display:block;inline-size:100%}\
.label{margin-block-start:.45rem!important}.number{font-size:1.85rem;font-weight:700;line-height:1.15;overflow-wrap:anywhere}\
.number a{color:inherit;text-decoration:none}.blank{border-bottom:1px dotted #1c2a30}\
.week{table-layout:fixed}.week th,.week td{padding:.1rem;border-color:#55636a;vertical-align:middle}.week th{font-weight:400;font-size:.9rem}\
.week tr{block-size:2.9rem}.many .week tr{block-size:1.3rem}.many .box{inline-size:1.15rem;block-size:1.15rem}.many .time{font-size:1.4rem}.week tr:first-child{block-size:auto}\
.week .time{inline-size:5.9rem;font-size:1.7rem;font-weight:700}.week .ml{inline-size:3.6rem}.week .weight{font-weight:700}\
.box{display:inline-block;inline-size:1.4rem;block-size:1.4rem;border:2px solid #1c2a30;border-radius:.25rem;vertical-align:middle}\
.line{display:inline-block;inline-size:1.7rem;border-bottom:1px dotted #1c2a30}.line.long{inline-size:90%}\
.numbers{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1.35fr) minmax(0,1fr);gap:.3rem 1rem;border-block-start:2px solid #1c2a30;margin-block-start:.5rem;padding-block-start:.3rem}\
.fact p{margin:0}.fact strong{font-size:1.25rem;line-height:1.2}\
.never{border:2px solid #1c2a30;border-radius:.4rem;padding:.35rem .6rem;font-weight:600}\
.paper{display:none}.paper p{margin:0}\
@media print{:root{font-size:8.4pt}body{line-height:1.2}h2{margin:.4rem 0 .15rem}p{margin:.15rem 0}.screen{display:none}.paper{display:block;columns:2;column-gap:1.2rem;font-size:8pt;line-height:1.15}\
.small{font-size:8pt}.top{flex-wrap:nowrap}.code{flex:none}.more{break-before:page}h1{font-size:1.6rem;line-height:1.1}}\
@media print and (min-width:165mm){:root{font-size:11.6pt}.small{font-size:10pt}.paper{font-size:11pt}}";

/// The boxes of a week.
pub(crate) struct Week<'a> {
    /// The days.
    pub(crate) days: &'a [String],
    /// Time and amount of each feed, and whether it is over on the first day.
    pub(crate) rows: &'a [(String, String, bool)],
    /// The word for the weight.
    pub(crate) weight: &'a str,
    /// Its unit.
    pub(crate) unit: &'a str,
}

/// Paper that a page is laid out for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Paper {
    /// A report of any length.
    A4,
    /// One A4 page with small type and two columns.
    OneA4,
    /// A card for the carrier, on A5 or A4.
    Card,
}

impl Paper {
    const fn style(self) -> &'static str {
        match self {
            Self::A4 => "@page{size:A4;margin:14mm}",
            Self::OneA4 => {
                "@page{size:A4;margin:10mm}\
                 .people p{margin:0}.reason{border:2px solid;border-radius:8px;padding:.4rem .8rem;margin:.5rem 0}\
                 .reason h2{border:0;margin:0}.asked{font-size:1.15rem}\
                 .days{font-size:.85rem}.days td:nth-child(-n+4){white-space:nowrap}\
                 .days td:nth-child(2),.days td:nth-child(3),.days td:nth-child(4){text-align:right}\
                 .days tbody tr:first-child td{font-weight:600}.days td{overflow-wrap:anywhere}.chart svg{display:block;max-width:24rem}\
                 @media (max-width:40rem){.days{display:block;overflow-x:auto}}\
                 @media print,(min-width:40rem){.two{display:grid;grid-template-columns:1fr 1fr;gap:0 1.2rem;align-items:start}}\
                 @media print{:root{font-size:8.5pt}body{line-height:1.25}.days{display:table;table-layout:fixed;font-size:1em}\
                 .days th:nth-child(1){width:9.5%}.days th:nth-child(2){width:6.5%}.days th:nth-child(3){width:8%}.days th:nth-child(4){width:9.5%}\
                 .days th:nth-child(5){width:13%}.days th:nth-child(6){width:16%}.days th{white-space:normal;vertical-align:bottom}\
                 .top{display:flex;justify-content:space-between;align-items:end;border-bottom:2px solid;margin-top:-1.7rem}.people{text-align:right}\
                 .two{grid-template-columns:1fr 1fr}h2{margin:.5em 0 .1em}p,ul,dl{margin:.1em 0}\
                 caption{padding-top:.4em}td,th{padding:.1em .6em .1em 0}.reason{margin:.4em 0;padding:.2em .8em}\
                 dl{grid-template-columns:fit-content(11em) 1fr;gap:0 .6em}\
                 .chart svg{max-height:50mm;max-width:100%}.photos{flex-wrap:nowrap}.photo{max-width:45mm}.photo img{max-height:27mm}}"
            }
            Self::Card => CARD_STYLE,
        }
    }
}

/// A page in the making.
#[derive(Debug)]
pub(crate) struct Page {
    html: String,
}

impl Page {
    /// A page with its title; `heading` is shown on top.
    pub(crate) fn new(language: Language, title: &str, paper: Paper) -> Self {
        let (tag, tab, title) = (language.tag(), escape(&harmless(title)), escape(title));
        let html = format!(
            "<!doctype html>\n<html lang=\"{tag}\">\n<head>\n<meta charset=\"utf-8\">\n{MARK}\n\
             <meta http-equiv=\"Content-Security-Policy\" content=\"{POLICY}\">\n\
             <meta name=\"viewport\" content=\"width=device-width\">\n\
             <meta name=\"referrer\" content=\"no-referrer\">\n\
             <title>{tab}</title>\n<style>{STYLE}{}</style>\n</head>\n<body>\n\
             <header><h1><bdi>{title}</bdi></h1></header>\n",
            paper.style()
        );
        Self { html }
    }

    /// A heading.
    pub(crate) fn heading(&mut self, text: &str) {
        self.element("h2", "", text);
    }

    /// A paragraph; nothing for an empty one.
    pub(crate) fn paragraph(&mut self, class: &str, text: &str) {
        if !text.is_empty() {
            self.element("p", class, text);
        }
    }

    /// A list; nothing for an empty one.
    pub(crate) fn list(&mut self, items: &[String]) {
        if items.is_empty() {
            return;
        }
        self.html.push_str("<ul>\n");
        for item in items {
            self.element("li", "", item);
        }
        self.html.push_str("</ul>\n");
    }

    /// Labels and values; nothing when there are none.
    pub(crate) fn pairs(&mut self, pairs: &[(String, String)]) {
        if pairs.is_empty() {
            return;
        }
        self.html.push_str("<dl>\n");
        for (label, value) in pairs {
            self.element("dt", "", label);
            self.element("dd", "", value);
        }
        self.html.push_str("</dl>\n");
    }

    /// A table; nothing without rows. In one of class `typed` long words are broken.
    pub(crate) fn table(
        &mut self,
        class: &str,
        caption: &str,
        headings: &[&str],
        rows: &[Vec<String>],
    ) {
        if rows.is_empty() {
            return;
        }
        self.html
            .extend(["<table class=\"", &escape(class), "\">\n"]);
        self.element("caption", "", caption);
        self.html.push_str("<thead><tr>");
        for heading in headings {
            self.html
                .extend(["<th scope=\"col\">", &escape(heading), "</th>"]);
        }
        self.html.push_str("</tr></thead>\n<tbody>\n");
        for row in rows {
            self.html.push_str("<tr>");
            for cell in row {
                self.html
                    .extend(["<td><bdi>", &escape(cell), "</bdi></td>"]);
            }
            self.html.push_str("</tr>\n");
        }
        self.html.push_str("</tbody>\n</table>\n");
    }

    /// A picture drawn by this program.
    pub(crate) fn picture(&mut self, class: &str, meaning: &str, svg: &str) {
        let (class, meaning) = (escape(class), escape(meaning));
        let opening = format!("<figure class=\"{class}\" role=\"img\" aria-label=\"{meaning}\">");
        self.html.extend([opening.as_str(), svg, "</figure>\n"]);
    }

    /// Begins a part of the page that [`Page::close`] ends.
    pub(crate) fn open(&mut self, class: &str) {
        self.html.extend(["<div class=\"", &escape(class), "\">\n"]);
    }

    /// Ends the part that was begun last.
    pub(crate) fn close(&mut self) {
        self.html.push_str("</div>\n");
    }

    /// A photo with its caption, as part of the page.
    pub(crate) fn photo(&mut self, jpeg: &[u8], caption: &str) {
        let (data, caption) = (STANDARD.encode(jpeg), escape(caption));
        self.html.extend([
            "<figure class=\"photo\"><img alt=\"",
            &caption,
            "\" src=\"data:image/jpeg;base64,",
            &data,
            "\"><figcaption class=\"small\"><bdi>",
            &caption,
            "</bdi></figcaption></figure>\n",
        ]);
    }

    /// A person with a link that calls; the number as text when it cannot be rung.
    pub(crate) fn contact(&mut self, role: &str, name: &str, number: &str) {
        let (role, name) = (escape(role), escape(name));
        let shown = escape(number);
        let number = match call_link(number) {
            Ok(link) => format!("<a href=\"{}\">{shown}</a>", escape(&link)),
            Err(_) => shown,
        };
        let line = format!("<p>{role}: <bdi>{name}</bdi> <bdi>{number}</bdi></p>\n");
        self.html.push_str(&line);
    }

    /// A label and its value in one line.
    pub(crate) fn pair(&mut self, label: &str, value: &str) {
        let (label, value) = (escape(label), escape(value));
        let line = format!("<p><b>{label}</b> <bdi>{value}</bdi></p>\n");
        self.html.push_str(&line);
    }

    /// A number to be read from afar: what it is, itself, and a word on it.
    pub(crate) fn fact(&mut self, label: &str, number: &str, more: &str) {
        let [label, number, more] = [label, number, more].map(escape);
        let fact = format!(
            "<div class=\"fact\"><p class=\"small\"><bdi>{label}</bdi></p><p><strong><bdi>{number}</bdi></strong></p>\
             <p class=\"small\"><bdi>{more}</bdi></p></div>\n"
        );
        self.html.push_str(&fact);
    }

    /// A telephone number in large type, which calls where it can be.
    pub(crate) fn number(&mut self, number: &str) {
        let shown = escape(number);
        let number = match call_link(number) {
            Ok(link) => format!("<a href=\"{}\">{shown}</a>", escape(&link)),
            Err(_) => shown,
        };
        let line = format!("<p class=\"number\"><bdi>{number}</bdi></p>\n");
        self.html.push_str(&line);
    }

    /// Feeds by days, each with a box to tick and a line for the amount, and a line for each day's weight.
    pub(crate) fn week(&mut self, week: &Week<'_>) {
        self.html.push_str("<table class=\"week\">\n<tr>");
        self.html
            .push_str("<th class=\"time\"></th><th class=\"ml\"></th>");
        for day in week.days {
            self.html
                .extend(["<th scope=\"col\">", &escape(day), "</th>"]);
        }
        let open = "<td><span class=\"box\"></span><span class=\"line\"></span></td>";
        for (time, volume, is_over) in week.rows {
            let (time, volume) = (escape(time), escape(volume));
            let head = format!(
                "</tr>\n<tr><th class=\"time\" scope=\"row\">{time}</th><td class=\"ml\">{volume}</td>"
            );
            self.html.push_str(&head);
            for place in 0..week.days.len() {
                let is_over = *is_over && place == 0;
                self.html
                    .push_str(if is_over { "<td>–</td>" } else { open });
            }
        }
        let head = format!(
            "</tr>\n<tr><th class=\"weight\" scope=\"row\">{}</th><td class=\"ml\">{}</td>",
            escape(week.weight),
            escape(week.unit)
        );
        self.html.push_str(&head);
        for _ in week.days {
            self.html
                .push_str("<td><span class=\"line long\"></span></td>");
        }
        self.html.push_str("</tr>\n</table>\n");
    }

    /// A link to the app; plain text when the address is not one of the web.
    pub(crate) fn link(&mut self, address: &str) {
        let shown = escape(address);
        let line = if address.starts_with("https://") || address.starts_with("http://") {
            format!("<p class=\"link\"><a href=\"{shown}\">{shown}</a></p>\n")
        } else {
            format!("<p class=\"link\">{shown}</p>\n")
        };
        self.html.push_str(&line);
    }

    /// The page, with a block of data at its end when there is one.
    pub(crate) fn finish(mut self, data_block: Option<&str>) -> String {
        if let Some(block) = data_block {
            self.html.push_str(block);
            self.html.push('\n');
        }
        self.html.push_str("</body>\n</html>\n");
        self.html
    }

    fn element(&mut self, name: &str, class: &str, text: &str) {
        let class = if class.is_empty() {
            String::new()
        } else {
            format!(" class=\"{class}\"")
        };
        let text = escape(text);
        let element = format!("<{name}{class}><bdi>{text}</bdi></{name}>\n");
        self.html.push_str(&element);
    }
}
