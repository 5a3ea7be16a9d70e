//! Our QR pictures, drawn from their own SVG and read back by a decoder that is not ours, at the
//! texts of `qr.json` and at every version that Perchlight draws; the worked example of ISO/IEC
//! 18004 module by module.
//!
//! The pictures beside that file test a scanner; Perchlight has none, the telephone's camera is
//! it. Levels Q and H are not drawn: a text listed with one of them is checked for its content.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop at the first surprise"
)]

pub mod common;
pub mod readers;

use perchlight::share::digits;
use perchlight::share::qr::{Correction, QrError, QrPicture, picture};
use rqrr::PreparedImage;

use common::checks_file;
use readers::{cases, text_of};

/// Dark modules of a drawn code, row by row, with the quiet zone.
struct Modules {
    side: usize,
    dark: Vec<bool>,
}

impl Modules {
    /// Reads the only path of the picture, made of rectangles `M x y h n v1 h-n z`.
    fn of(picture: &QrPicture) -> Modules {
        let svg = &picture.svg;
        assert_eq!(svg.matches("<path ").count(), 1);
        let view_box: Vec<usize> = attribute(svg, "viewBox")
            .split(' ')
            .map(|number| number.parse().unwrap())
            .collect();
        let side = view_box[2];
        assert_eq!(view_box, [0, 0, side, side]);
        let mut modules = Modules {
            side,
            dark: vec![false; side * side],
        };
        for run in attribute(svg, " d").split_terminator('z') {
            let (corner, run) = run.strip_prefix('M').unwrap().split_once('h').unwrap();
            let (x, y) = corner.split_once(' ').unwrap();
            let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
            let (right, left) = run.split_once("v1h-").unwrap();
            assert_eq!(right, left);
            let count: usize = right.parse().unwrap();
            assert!(count > 0 && x + count <= side, "{run}");
            modules.dark[y * side + x..][..count].fill(true);
        }
        modules
    }

    fn is_dark(&self, x: usize, y: usize) -> bool {
        self.dark[y * self.side + x]
    }

    /// Rows within the quiet zone, as in the check file.
    fn rows(&self) -> Vec<String> {
        (4..self.side - 4)
            .map(|y| {
                (4..self.side - 4)
                    .map(|x| if self.is_dark(x, y) { '1' } else { '0' })
                    .collect()
            })
            .collect()
    }

    /// What the decoder reads at so many pixels a module, `spoilt` turning single pixels over.
    fn decoded(&self, pixels: usize, spoilt: impl Fn(usize, usize) -> bool) -> (String, usize) {
        let width = self.side * pixels;
        let mut image = PreparedImage::prepare_from_greyscale(width, width, |x, y| {
            if self.is_dark(x / pixels, y / pixels) == spoilt(x, y) {
                255
            } else {
                0
            }
        });
        let grids = image.detect_grids();
        assert_eq!(grids.len(), 1);
        let (meta, text) = grids[0].decode().unwrap();
        (text, meta.version.0)
    }
}

fn attribute<'a>(svg: &'a str, name: &str) -> &'a str {
    let start = format!("{name}=\"");
    let (_, after) = svg.split_once(&start).expect(name);
    after.split_once('"').unwrap().0
}

fn assert_read_back(text: &str) -> QrPicture {
    let drawn = picture(text, "Code").unwrap();
    let modules = Modules::of(&drawn);
    let (read, version) = modules.decoded(4, |_, _| false);
    assert_eq!(read, text);
    assert_eq!(version, usize::from(drawn.version));
    drawn
}

/// Of letters that only byte mode holds, so that each takes eight bits.
fn letters(count: usize) -> String {
    "aB3-_z".chars().cycle().take(count).collect()
}

#[test]
fn the_texts_of_the_check_file_are_read_back() {
    let file = checks_file("qr.json");
    for case in cases(&file, "cases") {
        let text = text_of(case, "payload");
        let version = case["version"].as_u64().unwrap();
        let drawn = picture(text, "Code");
        if version > 20 {
            // Larger than we draw at the level given there, M or L. At Q and H there is no such
            // case: it could still fit at M.
            assert!(matches!(text_of(case, "error"), "L" | "M"), "{case}");
            let too_long = QrError::TooLong { bytes: text.len() };
            assert_eq!(drawn, Err(too_long));
            continue;
        }
        let drawn = assert_read_back(text);
        if text_of(case, "error") == "M" {
            assert_eq!(drawn.correction, Correction::Medium);
            assert_eq!(u64::from(drawn.version), version, "{}", case["id"]);
        } else if matches!(text_of(case, "error"), "Q" | "H") {
            assert!(u64::from(drawn.version) <= version, "{}", case["id"]);
        }
    }
}

#[test]
fn the_worked_example_of_the_standard_is_drawn_module_by_module() {
    let file = checks_file("qr.json");
    let example = &file["iso18004_worked_example"];
    let drawn = picture(text_of(example, "text"), "Example").unwrap();
    assert_eq!(
        u64::from(drawn.version),
        example["version"].as_u64().unwrap()
    );
    let case = cases(&file, "cases")
        .iter()
        .find(|case| case["payload"] == example["text"] && case["matrix"].is_array())
        .unwrap();
    let matrix: Vec<String> = serde_json::from_value(case["matrix"].clone()).unwrap();
    let rows = Modules::of(&drawn).rows();
    assert_eq!(rows.len(), matrix.len());
    assert_eq!(without_mask(&rows), without_mask(&matrix));
}

/// The modules of a version 1 code that carry data, the mask that the code itself names taken
/// off: the standard leaves the choice of mask to a rating in which encoders differ.
///
/// Source: ISO/IEC 18004, sections on format information (its mask bits lie at row 8, columns 2
/// to 4, under the pattern 101) and data masking.
fn without_mask(rows: &[String]) -> Vec<Option<bool>> {
    let bit = |x: usize, y: usize| rows[y].as_bytes()[x] == b'1';
    let mask = [(2, true), (3, false), (4, true)]
        .into_iter()
        .fold(0, |sum, (x, pattern)| {
            sum * 2 + u8::from(bit(x, 8) != pattern)
        });
    let mut modules = vec![];
    for y in 0..21 {
        for x in 0..21 {
            // The three finder patterns with the format information, and the timing lines.
            let is_corner = match y {
                0..9 => !(9..13).contains(&x),
                13.. => x < 9,
                _ => false,
            };
            let is_fixed = is_corner || x == 6 || y == 6;
            let flips = match mask {
                0 => (x + y) % 2 == 0,
                1 => y % 2 == 0,
                2 => x % 3 == 0,
                3 => (x + y) % 3 == 0,
                4 => (y / 2 + x / 3) % 2 == 0,
                5 => (x * y) % 2 + (x * y) % 3 == 0,
                6 => ((x * y) % 2 + (x * y) % 3) % 2 == 0,
                _ => ((x + y) % 2 + (x * y) % 3) % 2 == 0,
            };
            modules.push((!is_fixed).then(|| bit(x, y) != flips));
        }
    }
    modules
}

/// Bytes that fit at level M in versions 1 to 20. Source: ISO/IEC 18004, table of capacities;
/// typed from memory, four of them (10, 15, 20 and 1) checked against other sources.
const MEDIUM_BYTES: [usize; 20] = [
    14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331, 362, 412, 450, 504, 560, 624, 666,
];

#[test]
fn every_version_is_filled_to_its_capacity_and_read_back() {
    for (version, bytes) in (1..).zip(MEDIUM_BYTES) {
        let drawn = assert_read_back(&letters(bytes));
        assert_eq!(
            (drawn.version, drawn.correction),
            (version, Correction::Medium)
        );
        if version < 20 {
            let over = picture(&letters(bytes + 1), "Code").unwrap();
            assert_eq!(over.version, version + 1);
        }
    }
}

/// Version 20 holds 858 bytes at level L. Source: ISO/IEC 18004, table of capacities.
#[test]
fn a_text_too_long_for_medium_falls_to_low_and_then_is_refused() {
    for bytes in [667, 858] {
        let drawn = assert_read_back(&letters(bytes));
        assert_eq!(drawn.correction, Correction::Low);
        assert!(drawn.version <= 20);
    }
    let refused = picture(&letters(859), "Code");
    assert_eq!(refused, Err(QrError::TooLong { bytes: 859 }));
}

/// The gain that `share::digits` claims: 16 bits in 16.7 instead of in 21.3.
#[test]
fn bytes_as_digits_need_a_smaller_code_than_as_base64url() {
    let bytes: Vec<u8> = (0..300_u16)
        .map(|n| (n * 37 % 251).to_le_bytes()[0])
        .collect();
    let head = "https://example.org/a/#";
    let as_digits = assert_read_back(&format!("{head}d{}", digits::encode(&bytes)));
    let as_letters = format!("{head}b{}", perchlight::share::base64url::encode(&bytes));
    let as_letters = assert_read_back(&as_letters);
    assert!(as_digits.version < as_letters.version);
}

#[test]
fn the_quiet_zone_is_four_clear_modules_on_each_side() {
    for text in ["a", "01234567", &letters(300)] {
        let modules = Modules::of(&picture(text, "Code").unwrap());
        for x in 0..modules.side {
            for y in 0..modules.side {
                let inside = |n: usize| (4..modules.side - 4).contains(&n);
                assert!((inside(x) && inside(y)) || !modules.is_dark(x, y));
            }
        }
        assert!(
            modules.is_dark(4, 4),
            "the corner of the first finder pattern"
        );
    }
}

/// Version 20 has three pixels a module on a telephone 320 pixels wide.
#[test]
fn the_largest_code_is_read_at_three_pixels_a_module() {
    let text = letters(666);
    let modules = Modules::of(&picture(&text, "Code").unwrap());
    assert_eq!(modules.decoded(3, |_, _| false).0, text);
}

/// A blot of 15 by 15 modules is 2 % of the code, well below what level M restores (about 15 %).
#[test]
fn the_largest_code_is_read_through_a_blot() {
    let text = letters(666);
    let modules = Modules::of(&picture(&text, "Code").unwrap());
    let blot = 4 * 40..4 * 55;
    let is_spoilt = |x: usize, y: usize| blot.contains(&x) && blot.contains(&y);
    assert_eq!(modules.decoded(4, is_spoilt).0, text);
}

#[test]
fn the_title_is_escaped_and_the_picture_is_named_as_one() {
    let drawn = picture("a", "Pip & <script>").unwrap();
    let title = "<title>Pip &amp; &lt;script&gt;</title>";
    assert!(drawn.svg.contains(title), "{}", drawn.svg);
    assert_eq!(attribute(&drawn.svg, "role"), "img");
    let name_space = attribute(&drawn.svg, "xmlns");
    assert_eq!(name_space, "http://www.w3.org/2000/svg");
}
