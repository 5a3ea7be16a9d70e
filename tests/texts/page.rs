//! The page of texts: the rules with standing and source first, then every file of `src/words`.

use perchlight::words::Language;
use perchlight::words::format::Writing;

use crate::found::Found;

const STYLE: &str = "body{font:16px/1.4 sans-serif;margin:1rem;color:#111;background:#fff}\
table{border-collapse:collapse;width:100%;table-layout:fixed}\
td,th{border:1px solid #999;padding:.35rem;vertical-align:top;text-align:left;overflow-wrap:anywhere}\
col.name{width:14%}col.mark{width:14%}td:first-child{font-size:.75rem;color:#444}\
p{margin:0 0 .3rem}h2{break-after:avoid}tr{break-inside:avoid}";

/// The whole page.
pub(crate) fn page(found: &[Found]) -> String {
    let mut page = format!(
        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>Every text of Perchlight</title>\
         <style>{STYLE}</style></head><body>\n<h1>Every text of Perchlight</h1>\n\
         <p>English and Spanish side by side; the last column is for your marks. {{\u{2026}}} stands for a \
         number or name that the app fills in.</p>\n"
    );
    rules(&mut page);
    let mut file = "";
    for text in found {
        if text.file != file {
            if !file.is_empty() {
                page.push_str("</tbody></table>\n");
            }
            file = &text.file;
            page.push_str(&head(file));
        }
        let [english, spanish] = [&text.english, &text.spanish].map(|lines| paragraphs(lines));
        let name = format!("{} ({})", text.name, text.line);
        page.push_str(&row(&name, &english, &spanish));
    }
    page.push_str("</tbody></table>\n</body></html>\n");
    page
}

/// The rules and numbers as the app shows them, each with its standing and source.
fn rules(page: &mut String) {
    let [english, spanish] = Language::ALL.map(|language| Writing::metric(language).manual());
    for ((heading, rows), (other, others)) in english.into_iter().zip(spanish) {
        page.push_str(&head(&[heading, other].join(" / ")));
        for (left, right) in rows.iter().zip(&others) {
            let [said, dicho] = [left, right].map(|row| {
                let lines = [row.name, &row.sentence, &row.standing, row.wrong_when];
                let lines = lines.into_iter().filter(|line| !line.is_empty());
                paragraphs(&lines.map(str::to_owned).collect::<Vec<_>>())
            });
            page.push_str(&row(left.id, &said, &dicho));
        }
        page.push_str("</tbody></table>\n");
    }
}

fn head(title: &str) -> String {
    let title = escaped(title);
    format!(
        "<h2>{title}</h2>\n<table><colgroup><col class=\"name\"><col><col><col class=\"mark\"></colgroup>\
         <thead><tr><th>Where</th><th>English</th><th>Espa\u{f1}ol</th><th>Mark</th></tr></thead><tbody>\n"
    )
}

fn row(name: &str, english: &str, spanish: &str) -> String {
    let name = escaped(name);
    format!(
        "<tr><td>{name}</td><td lang=\"en\">{english}</td><td lang=\"es\">{spanish}</td><td></td></tr>\n"
    )
}

fn paragraphs(lines: &[String]) -> String {
    let lines = lines
        .iter()
        .map(|line| ["<p>", &escaped(line), "</p>"].concat());
    lines.collect::<Vec<_>>().concat()
}

/// A text as HTML says it.
pub(crate) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}
