//! The block of data in a page of ours, by which the app takes the page in again.

use crate::checksum::crc32;
use crate::share::markup::json_in_script;
use crate::store::import_error::ImportError;

/// What the head of every page of ours says, so that one without data is known too.
pub const MARK: &str = r#"<meta name="generator" content="Perchlight">"#;
/// What a block begins with, up to its check sum.
const START: &str = r#"<script type="application/json" id="perchlight-data" data-crc32=""#;
/// What stands between the check sum and the data.
const AFTER_SUM: &str = "\">";
/// What ends the block.
const END: &str = "</script>";

/// A block as it was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DataBlock<'a> {
    /// The JSON.
    pub json: &'a str,
    /// The CRC-32 that its bytes should have.
    pub sum: u32,
}

/// A block that holds `json`; no text in it can end the block.
pub fn write(json: &str) -> String {
    let json = json_in_script(json);
    let sum = crc32(json.as_bytes());
    format!("{START}{sum:08x}{AFTER_SUM}{json}{END}")
}

/// The block of a page; `None` when the text is no page of ours.
///
/// # Errors
/// Within: cut off before or in the block, a page that carries no data, or a check sum that is no
/// number.
pub fn find(page: &str) -> Option<Result<DataBlock<'_>, ImportError>> {
    if let Some((_, rest)) = page.split_once(START) {
        return Some(read(rest));
    }
    page.contains(MARK).then_some(if page.ends_with("</html>") {
        Err(ImportError::WrongKind)
    } else {
        Err(ImportError::Truncated)
    })
}

fn read(rest: &str) -> Result<DataBlock<'_>, ImportError> {
    let (sum, rest) = rest.split_once(AFTER_SUM).ok_or(ImportError::Truncated)?;
    let (json, _) = rest.split_once(END).ok_or(ImportError::Truncated)?;
    let is_plain = sum.len() == 8 && sum.bytes().all(|byte| byte.is_ascii_hexdigit());
    let sum = u32::from_str_radix(sum, 16).ok().filter(|_| is_plain);
    let sum = sum.ok_or(ImportError::Damaged)?;
    Ok(DataBlock { json, sum })
}
