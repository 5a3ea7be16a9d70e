//! A photo on its way in and out: read, made small, kept under its hash, and shown again.

use std::collections::BTreeSet;
use std::sync::Arc;
use std::time::Duration;

use js_sys::{Array, Promise, Uint8Array};
use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, File, HtmlCanvasElement, HtmlImageElement, Url};

use crate::domain::journal::chick::Chick;
use crate::domain::journal::entries::{Change, Entry, Journal};
use crate::domain::journal::photo::{MOST_PHOTO_BYTES, Photo, PhotoHash, PhotoOf};
use crate::domain::quantity::order::set_of;
use crate::domain::time::moment::Moment;
use crate::share::photo_file::{
    Lines, MARK, MOST_LINE, head, is_jpeg, picture_line, read_picture_line,
};
use crate::share::photos::{MOST_IN_REPORT, Pictures, latest_photos};
use crate::store::photo_store::{PhotoStore, hash_of};
use crate::store::second_copy::SecondCopyError;
use crate::ui::platform;
use crate::words::photos::PhotoFault;

/// Longest side of a kept picture, dots. Ours: sharp on a screen and on a quarter of a printed page.
const LONGEST_SIDE: u32 = 1_280;
/// Shortest longest side that is tried where no quality makes the picture small enough.
const LEAST_SIDE: u32 = 320;
/// Qualities that are tried, best first. Ours.
const QUALITIES: [f64; 5] = [0.85, 0.75, 0.6, 0.45, 0.3];
/// The only kind of picture kept: every browser writes it, and every vet's computer shows it.
const JPEG: &str = "image/jpeg";
/// Bytes of a backup with photos that are read at a time.
const PIECE: f64 = 1_000_000.0;
/// Most bytes of the entries in it: as of any file.
const MOST_ENTRIES_TEXT: usize = 20_000_000;

/// Makes a picture small, and keeps it. The camera's own notes, place and time among them, do not come along:
/// the picture is drawn anew.
///
/// # Errors
/// [`PhotoFault`]; nothing was then kept.
pub async fn keep(file: &File, of: PhotoOf) -> Result<Photo, PhotoFault> {
    let picture = small(file).await.ok_or(PhotoFault::NotAPicture)?;
    let hash = hash_of(&picture).await.ok_or(PhotoFault::NotHere)?;
    put(hash, &picture).await?;
    let bytes = u32::try_from(picture.len()).unwrap_or(u32::MAX);
    Ok(Photo { of, hash, bytes })
}

async fn put(hash: PhotoHash, picture: &[u8]) -> Result<(), PhotoFault> {
    let store = told(PhotoStore::open().await)?;
    told(store.put(hash, picture).await)
}

/// What a person is told of it.
fn told<T>(answer: Result<T, SecondCopyError>) -> Result<T, PhotoFault> {
    answer.map_err(|error| match error {
        SecondCopyError::Full => PhotoFault::Full,
        SecondCopyError::Missing
        | SecondCopyError::Blocked
        | SecondCopyError::TimedOut
        | SecondCopyError::Closed
        | SecondCopyError::Other(_) => PhotoFault::NotHere,
    })
}

/// A file's picture as JPEG of at most [`MOST_PHOTO_BYTES`]; `None` when it is none that this browser reads.
async fn small(file: &File) -> Option<Vec<u8>> {
    let url = Url::create_object_url_with_blob(file).ok()?;
    let image = decoded(&url).await;
    drop(Url::revoke_object_url(&url));
    let image = image?;
    let mut side = LONGEST_SIDE;
    while side >= LEAST_SIDE {
        let canvas = drawn(&image, side).ok()?;
        for quality in QUALITIES {
            let bytes = encoded(&canvas, quality).await?;
            if u32::try_from(bytes.len()).is_ok_and(|count| count <= MOST_PHOTO_BYTES) {
                return Some(bytes);
            }
        }
        side /= 2;
    }
    None
}

async fn decoded(url: &str) -> Option<HtmlImageElement> {
    let image = HtmlImageElement::new().ok()?;
    image.set_src(url);
    JsFuture::from(image.decode()).await.ok()?;
    (image.natural_width() > 0 && image.natural_height() > 0).then_some(image)
}

/// The image with its longer side at most `side`, on white: a JPEG has no clear parts.
fn drawn(image: &HtmlImageElement, side: u32) -> Result<HtmlCanvasElement, JsValue> {
    let (width, height) = (image.natural_width(), image.natural_height());
    let longer = width.max(height).max(1);
    let scaled = |length: u32| (length * side.min(longer) / longer).max(1);
    let (width, height) = (scaled(width), scaled(height));
    let canvas: HtmlCanvasElement = document().create_element("canvas")?.unchecked_into();
    canvas.set_width(width);
    canvas.set_height(height);
    let pen: CanvasRenderingContext2d = canvas
        .get_context("2d")?
        .ok_or(JsValue::NULL)?
        .unchecked_into();
    let (width, height) = (f64::from(width), f64::from(height));
    pen.set_fill_style_str("#ffffff");
    pen.fill_rect(0.0, 0.0, width, height);
    pen.draw_image_with_html_image_element_and_dw_and_dh(image, 0.0, 0.0, width, height)?;
    Ok(canvas)
}

async fn encoded(canvas: &HtmlCanvasElement, quality: f64) -> Option<Vec<u8>> {
    let mut refused = None;
    let done = Promise::new(&mut |done, _| {
        let quality = JsValue::from_f64(quality);
        refused = canvas
            .to_blob_with_type_and_encoder_options(&done, JPEG, &quality)
            .err();
    });
    if refused.is_some() {
        return None;
    }
    let blob: Blob = JsFuture::from(done).await.ok()?.dyn_into().ok()?;
    bytes_of(&blob).await.filter(|bytes| is_jpeg(bytes))
}

async fn bytes_of(blob: &Blob) -> Option<Vec<u8>> {
    let buffer = JsFuture::from(blob.array_buffer()).await.ok()?;
    Some(Uint8Array::new(&buffer).to_vec())
}

/// The pictures that a report or vet page of a chick shows, as far as they are here.
pub async fn pictures_of(now: Moment, chick: &Chick) -> Pictures {
    let mut pictures = Pictures::new();
    let wanted = latest_photos(now, chick, MOST_IN_REPORT);
    if wanted.is_empty() {
        return pictures;
    }
    let Ok(store) = PhotoStore::open().await else {
        return pictures;
    };
    for photo in wanted {
        if let Ok(Some(picture)) = store.get(photo.what.hash).await {
            pictures.insert(photo.what.hash, picture);
        }
    }
    pictures
}

/// The same of the chick on screen, fetched after a time and ahead of the tap that hands a file out: share sheets open only within
/// the tap.
pub fn fetched_pictures(
    after: Duration,
    now: Moment,
    chick: Option<Arc<Chick>>,
) -> StoredValue<Pictures, LocalStorage> {
    let pictures = StoredValue::new_local(Pictures::new());
    if let Some(chick) = chick.filter(|chick| !chick.photos.is_empty()) {
        let fetch = move || {
            spawn_local(async move {
                let found = pictures_of(now, &chick).await;
                // The screen may have gone by now.
                pictures.try_set_value(found);
            });
        };
        set_timeout(fetch, after);
    }
    pictures
}

/// A photo on screen, fetched when it is drawn; words where its picture is not here.
#[component]
pub fn PhotoPicture(
    /// Which one.
    photo: Photo,
) -> impl IntoView {
    let say = crate::ui::state::AppState::here().language();
    let url = RwSignal::new(None::<Option<String>>);
    spawn_local(async move {
        let found = match PhotoStore::open().await {
            Ok(store) => store.get(photo.hash).await.ok().flatten(),
            Err(_) => None,
        };
        let found = found.and_then(|picture| {
            let file = platform::file_of(&Uint8Array::from(&*picture), "photo.jpg", JPEG)?;
            Url::create_object_url_with_blob(&file).ok()
        });
        // Where the screen has gone in the meantime, its address goes too.
        if let Some(unseen) = url.try_set(Some(found)) {
            revoke(unseen.flatten());
        }
    });
    on_cleanup(move || revoke(url.try_get_untracked().flatten().flatten()));
    move || match url.get() {
        None => ().into_any(),
        Some(None) => view! { <p class="hint">{say.photo_not_here()}</p> }.into_any(),
        Some(Some(address)) => {
            let meaning = say.photo_of(photo.of);
            view! { <img class="photo" src=address alt=meaning /> }.into_any()
        }
    }
}

fn revoke(address: Option<String>) {
    if let Some(address) = address {
        drop(Url::revoke_object_url(&address));
    }
}

/// The hashes that entries name.
fn named(entries: &[Entry]) -> BTreeSet<PhotoHash> {
    set_of(entries.iter().filter_map(|entry| {
        if let Change::PhotoTaken(photo) = &entry.change {
            Some(photo.hash)
        } else {
            None
        }
    }))
}

/// A backup with every picture that is here, as one file, and how many pictures it holds.
///
/// # Errors
/// [`PhotoFault`] when the pictures cannot be read, or the browser makes no file of them.
pub async fn backup_file(
    entries: &str,
    name: &str,
    mime: &str,
) -> Result<(File, usize), PhotoFault> {
    let store = told(PhotoStore::open().await)?;
    let parts = Array::of1(&head(entries).into());
    let mut count = 0;
    for hash in told(store.hashes().await)? {
        // One after the other, each handed to the browser at once: together they may be more than memory holds.
        if let Some(picture) = told(store.get(hash).await)? {
            let line = platform::file_of(&picture_line(hash, &picture).into(), "line", mime);
            parts.push(&JsValue::from(line.ok_or(PhotoFault::Full)?));
            count += 1;
        }
    }
    let file = platform::file_of_parts(&parts, name, mime).ok_or(PhotoFault::Full)?;
    Ok((file, count))
}

/// What became of the pictures of a file.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Taken {
    /// Kept, or here already.
    pub kept: usize,
    /// Damaged, or named by no entry.
    pub left: usize,
}

/// Keeps the pictures of a backup file that entries of the journal name; a file without any brings none.
///
/// # Errors
/// [`PhotoFault`] at the first one that cannot be kept; those before it are.
pub async fn take_in(file: &File, journal: &Journal) -> Result<Taken, PhotoFault> {
    let wanted = named(journal.entries());
    let mut taken = Taken::default();
    let mut lines = Lines::default();
    let mut place = 0;
    let mut from = 0.0;
    let store = told(PhotoStore::open().await)?;
    while from < file.size() {
        let piece = file.slice_with_f64_and_f64(from, from + PIECE);
        let piece = piece.ok().ok_or(PhotoFault::NotAPicture)?;
        let bytes = bytes_of(&piece).await.ok_or(PhotoFault::NotAPicture)?;
        from += PIECE;
        for line in lines.push(&bytes, MOST_LINE) {
            place += 1;
            // The mark and the entries go before the pictures.
            if place == 1 && line != MARK {
                return Ok(taken);
            }
            if place <= 2 {
                continue;
            }
            let picture = read_picture_line(&line).filter(|(_, picture)| is_jpeg(picture));
            let found = picture.filter(|(hash, _)| wanted.contains(hash));
            let is_same = match &found {
                Some((hash, picture)) => hash_of(picture).await == Some(*hash),
                None => false,
            };
            match found.filter(|_| is_same) {
                Some((hash, picture)) => {
                    told(store.put(hash, &picture).await)?;
                    taken.kept += 1;
                }
                None => taken.left += 1,
            }
        }
    }
    Ok(taken)
}

/// Takes away the pictures of entries that were erased, but for those that others still name; what cannot be
/// reached stays.
pub fn forget_photos(erased: &[Entry], journal: &Journal) {
    let others = named(journal.entries());
    let gone = named(erased);
    let gone: Vec<PhotoHash> = gone.difference(&others).copied().collect();
    if gone.is_empty() {
        return;
    }
    spawn_local(async move {
        let removed = match PhotoStore::open().await {
            Ok(store) => store.remove(&gone).await,
            Err(error) => Err(error),
        };
        if removed.is_err() {
            leptos::logging::warn!("pictures of an erased chick could not be taken away");
        }
    });
}

/// The text of the entries in a backup with photos; `None` for any other file.
pub async fn entries_text(file: &File) -> Option<String> {
    let mut lines = Lines::default();
    let mut from = 0.0;
    let mut is_marked = false;
    while from < file.size().min(platform::LARGEST_FILE) {
        let piece = file.slice_with_f64_and_f64(from, from + PIECE).ok()?;
        from += PIECE;
        for line in lines.push(&bytes_of(&piece).await?, MOST_ENTRIES_TEXT) {
            if is_marked {
                return Some(line);
            }
            if line != MARK {
                return None;
            }
            is_marked = true;
        }
        if !is_marked {
            return None;
        }
    }
    None
}
