//! The pictures of photos beside what the journal tells of them.

use std::collections::BTreeMap;

use crate::domain::journal::chick::{Chick, Noted};
use crate::domain::journal::photo::{Photo, PhotoHash};
use crate::domain::time::moment::Moment;
use crate::share::page::Page;
use crate::words::format::Writing;

/// Photos of a report. Ours: with 200 kB each the file stays one that a messenger takes.
pub const MOST_IN_REPORT: usize = 20;
/// Photos of the vet page: one row of it.
pub const MOST_FOR_VET: usize = 4;

/// Pictures as JPEG, each under its hash.
pub type Pictures = BTreeMap<PhotoHash, Vec<u8>>;

/// The latest photos of a chick up to `now`, each picture once, latest first.
pub fn latest_photos(now: Moment, chick: &Chick, most: usize) -> Vec<&Noted<Photo>> {
    let mut latest: Vec<&Noted<Photo>> = Vec::new();
    for photo in chick.photos.iter().rev().filter(|photo| photo.at <= now) {
        let is_there = latest
            .iter()
            .any(|other| other.what.hash == photo.what.hash);
        if latest.len() < most && !is_there {
            latest.push(photo);
        }
    }
    latest
}

/// Puts photos on a page as far as their pictures are at hand; says of the others that they are not.
pub(crate) fn put_photos(
    page: &mut Page,
    writing: Writing,
    photos: &[&Noted<Photo>],
    pictures: &Pictures,
) {
    let caption = |photo: &Noted<Photo>| {
        let (of, lived) = (writing.language.photo_of(photo.what.of), photo.lived());
        format!("{of}, {}", writing.lived(lived))
    };
    let (here, away): (Vec<&Noted<Photo>>, Vec<&Noted<Photo>>) = photos
        .iter()
        .copied()
        .partition(|photo| pictures.contains_key(&photo.what.hash));
    if !here.is_empty() {
        page.open("photos");
        for photo in here {
            if let Some(picture) = pictures.get(&photo.what.hash) {
                page.photo(picture, &caption(photo));
            }
        }
        page.close();
    }
    let away: Vec<String> = away.into_iter().map(caption).collect();
    if !away.is_empty() {
        let not_here = writing.language.photo_elsewhere();
        page.paragraph("small", &format!("{not_here} {}.", away.join("; ")));
    }
}
