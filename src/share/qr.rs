//! Text as a QR code, drawn as SVG.

use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use thiserror::Error;

use crate::share::markup;

/// Clear modules on each side. Source: ISO/IEC 18004, "quiet zone": four.
const QUIET_ZONE: i32 = 4;
/// The largest version drawn. Ours: 97 modules and the quiet zone leave three pixels a module on
/// a telephone 320 pixels wide.
const LARGEST_VERSION: u8 = 20;
/// From this many digits at the end of the text on, they are packed as digits, three in ten bits.
/// Ours: below, the start of a new segment costs about what it saves.
const FEWEST_DIGITS_APART: usize = 20;

/// How much of a code may be dirty or torn and still be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Correction {
    /// About 7 %, level L.
    Low,
    /// About 15 %, level M.
    Medium,
}

/// A drawn QR code.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct QrPicture {
    /// A whole `<svg>` element, black on white in any theme, without fixed size.
    pub svg: String,
    /// 1 (21 modules wide) to 20 (97 modules).
    pub version: u8,
    /// The better of the two levels that fits.
    pub correction: Correction,
}

/// Why no QR code is drawn.
#[derive(Clone, Copy, Debug, Error, PartialEq, Eq)]
pub enum QrError {
    /// The text needs more than version 20: hand it over as a link or a file.
    #[error("text of {bytes} bytes is too long for a qr code of version 20")]
    TooLong {
        /// Its length in UTF-8.
        bytes: usize,
    },
}

/// The smallest QR code for the text, at level M if that fits, else at L.
///
/// Many digits at the end of the text, as `digits` writes them, take a third of the room of
/// letters. `title` is what a screen reader says for the picture.
///
/// # Errors
/// [`QrError::TooLong`].
///
/// # Examples
/// ```
/// let picture = perchlight::share::qr::picture("01234567", "Example")?;
/// assert_eq!(picture.version, 1);
/// assert!(picture.svg.starts_with("<svg "));
/// # Ok::<(), perchlight::share::qr::QrError>(())
/// ```
///
/// Source: ISO/IEC 18004.
pub fn picture(text: &str, title: &str) -> Result<QrPicture, QrError> {
    let segments = segments(text);
    let (code, correction) = [
        (QrCodeEcc::Medium, Correction::Medium),
        (QrCodeEcc::Low, Correction::Low),
    ]
    .into_iter()
    .find_map(|(level, correction)| Some((encoded(&segments, level)?, correction)))
    .ok_or(QrError::TooLong { bytes: text.len() })?;
    Ok(QrPicture {
        svg: svg(&code, title),
        version: code.version().value(),
        correction,
    })
}

fn segments(text: &str) -> Vec<QrSegment> {
    let head = text.trim_end_matches(|c: char| c.is_ascii_digit());
    let digits = text.get(head.len()..).unwrap_or_default();
    if digits.len() < FEWEST_DIGITS_APART {
        return QrSegment::make_segments(text);
    }
    let mut segments = QrSegment::make_segments(head);
    segments.push(QrSegment::make_numeric(digits));
    segments
}

fn encoded(segments: &[QrSegment], level: QrCodeEcc) -> Option<QrCode> {
    let (smallest, largest) = (Version::MIN, Version::new(LARGEST_VERSION));
    QrCode::encode_segments_advanced(segments, level, smallest, largest, None, false).ok()
}

fn svg(code: &QrCode, title: &str) -> String {
    let side = code.size() + 2 * QUIET_ZONE;
    let title = markup::escape(title);
    let path = path(code);
    format!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {side} {side}" role="img" shape-rendering="crispEdges"><title>{title}</title><rect width="{side}" height="{side}" fill="#fff"/><path d="{path}" fill="#000"/></svg>"##
    )
}

/// Each run of dark modules in a row as one rectangle.
fn path(code: &QrCode) -> String {
    let mut runs = Vec::new();
    for y in 0..code.size() {
        let mut run = 0;
        // One past the edge is light, so every run ends.
        for x in 0..=code.size() {
            if code.get_module(x, y) {
                run += 1;
            } else if run > 0 {
                let (left, top) = (x - run + QUIET_ZONE, y + QUIET_ZONE);
                runs.push(format!("M{left} {top}h{run}v1h-{run}z"));
                run = 0;
            }
        }
    }
    runs.concat()
}
