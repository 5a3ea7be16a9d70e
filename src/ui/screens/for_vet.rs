//! What goes to the vet: why it is seen, photos, and the page.

use std::time::Duration;

use leptos::prelude::*;

use crate::domain::journal::chick::Noted;
use crate::domain::journal::entries::Change;
use crate::domain::journal::photo::{Photo, PhotoOf};
use crate::share::file_name::{FileKind, file_name};
use crate::share::vet_page::vet_page_with_photos_html;
use crate::ui::parts::button::button;
use crate::ui::parts::choice::Choice;
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::parts::live::{listed, live, whenever};
use crate::ui::parts::page::Page;
use crate::ui::parts::photo_field::PhotoField;
use crate::ui::parts::text_area::TextArea;
use crate::ui::parts::vet_visits::VetVisits;
use crate::ui::photo::{PhotoPicture, fetched_pictures};
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// Photos shown at first, and more each time they are asked for.
const PHOTOS_AT_A_TIME: usize = 12;

/// Why the vet is to see it, photos, and the page for the vet.
#[component]
pub fn ForVetScreen() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    view! {
        <Page title=say.vet_title() back=Route::Handover>
            <Reason />
            <PageForVet />
            <VetVisits />
            <Photos />
        </Page>
    }
}

#[component]
fn Reason() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let reason = state.outlook.with_untracked(|outlook| {
        let reason = outlook.as_ref()?.chick.visit_reason.as_ref()?;
        Some(reason.what.clone())
    });
    let (text, fault) = (
        RwSignal::new(reason.unwrap_or_default()),
        RwSignal::new(String::new()),
    );
    let keep = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let text = text.get_untracked().trim().to_owned();
        fault.set(String::new());
        let said = say.entry_visit_reason().to_owned();
        match state.dispatch(Change::VisitReason { text }) {
            Ok(id) => state.say(said, vec![id]),
            Err(refusal) => fault.set(say.refusal(&refusal).to_owned()),
        }
    };
    view! {
        <form class="form" on:submit=keep>
            <TextArea id="vet-reason" label=say.vet_reason_label() rows="4" text hint=say.vet_reason_hint() fault />
            <button type="submit" class="button">{say.vet_reason_keep()}</button>
        </form>
    }
}

#[component]
fn PageForVet() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let delivery = FileDelivery::new(say);
    // Fetched anew with each photo, so that the page holds the latest.
    let pictures = Memo::new(move |_| {
        state.outlook.with(|outlook| {
            let chick = outlook.as_ref().map(|outlook| &outlook.chick);
            chick.map_or(0, |chick| chick.photos.len())
        })
    });
    let fetched = StoredValue::new_local(None);
    whenever(move || {
        pictures.get();
        let outlook = state.outlook.get_untracked();
        let now = outlook.as_ref().map(|outlook| outlook.now);
        let chick = outlook.map(|outlook| outlook.chick.clone());
        fetched.set_value(now.map(|now| fetched_pictures(Duration::ZERO, now, chick)));
    });
    let make = move || {
        let outlook = state.outlook.get_untracked()?;
        let pictures = fetched.get_value()?;
        let writing = state.writing_now();
        let text =
            pictures.with_value(|pictures| vet_page_with_photos_html(writing, &outlook, pictures));
        let kind = FileKind::VetPage;
        let name = file_name(&outlook.chick.plan.name, kind, outlook.lived.day);
        platform::text_file(&name, kind.media_type(), &text)
    };
    view! {
        <section class="group">
            <p class="hint">{say.vet_page_hint()}</p>
            <div class="acts">{delivery.button(say.vet_page_make(), FileKind::VetPage.is_for_share_sheet(), Box::new(make))}</div>
            {delivery.answer()}
        </section>
    }
}

#[component]
fn Photos() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let chosen = RwSignal::new(Some(0));
    let of = Signal::derive(move || {
        let place = chosen.get().unwrap_or_default();
        let mut kinds = PhotoOf::ALL.into_iter().skip(place);
        kinds.next().unwrap_or(PhotoOf::Droppings)
    });
    let shown = RwSignal::new(PHOTOS_AT_A_TIME);
    let photos = Memo::new(move |_| {
        state.outlook.with(|outlook| {
            let chick = outlook.as_ref().map(|outlook| &outlook.chick);
            let photos = chick.map(|chick| chick.photos.clone());
            photos.unwrap_or_default()
        })
    });
    let space = live(move || {
        photos.with(|photos| {
            let bytes = photos.iter().map(|photo| u64::from(photo.what.bytes)).sum();
            (!photos.is_empty()).then(|| writing.photos_space(photos.len(), bytes))
        })
    });
    let latest = move || {
        photos.with(|photos| {
            let latest = photos.iter().rev().take(shown.get());
            latest.cloned().collect::<Vec<_>>()
        })
    };
    let has_more = move || photos.with(Vec::len) > shown.get();
    let more = live(move || {
        has_more().then(|| {
            let show = move |_| shown.update(|count| *count += PHOTOS_AT_A_TIME);
            button(say.journal_show_more(), show)
        })
    });
    let row = move |photo: Noted<Photo>| {
        view! {
            <li>
                <PhotoPicture photo=photo.what />
                <p class="hint">{writing.lived(photo.lived())} " " {writing.photo(photo.what)}</p>
            </li>
        }
    };
    view! {
        <section class="group" id="photos">
            <h2>{say.photos_title()}</h2>
            <Choice
                legend=say.photos_of()
                name="photo-of"
                options=PhotoOf::ALL.map(|of| match of {
                    PhotoOf::Droppings => say.photo_droppings(),
                    PhotoOf::Crop => say.photo_crop(),
                    PhotoOf::Skin => say.photo_skin(),
                }).to_vec()
                chosen
            />
            <PhotoField of />
            <p class="hint">{space}</p>
            <ul class="photo-list">
                {listed(latest, |photo| photo.id, row)}
            </ul>
            {more}
        </section>
    }
}
