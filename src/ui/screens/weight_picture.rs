//! The weight chart as a picture to send: drawn on one tap, shown, handed out on the next.
//!
//! Two taps, since share sheets open only within a tap and drawing can outlast it.

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::{File, Url};

use crate::share::file_name::{FileKind, file_name};
use crate::share::weight_picture::weight_picture;
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::picture::png_file;
use crate::ui::state::AppState;

/// A drawn picture.
#[derive(Debug, Clone)]
struct Drawn {
    file: File,
    /// Where the page shows it from.
    address: String,
    /// What it means.
    meaning: String,
}

/// The act that draws the picture, and the picture once it is drawn.
#[component]
pub fn PictureToSend() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let drawn = RwSignal::new_local(None::<Drawn>);
    let fault = RwSignal::new("");
    let forget = move || {
        if let Some(old) = drawn.try_update(Option::take).flatten() {
            drop(Url::revoke_object_url(&old.address));
        }
    };
    on_cleanup(forget);
    let draw = move |_| {
        forget();
        let Some(outlook) = state.outlook.get_untracked() else {
            return;
        };
        let Some(picture) = weight_picture(state.writing_now(), &outlook) else {
            return fault.set(say.weight_none());
        };
        let plan = &outlook.chick.plan;
        let name = file_name(&plan.name, FileKind::WeightPicture, outlook.lived.day);
        spawn_local(async move {
            let file = png_file(&picture, &name).await;
            let address = file
                .as_ref()
                .and_then(|file| Url::create_object_url_with_blob(file).ok());
            let (Some(file), Some(address)) = (file, address) else {
                return fault.set(say.picture_refused());
            };
            fault.set("");
            drawn.set(Some(Drawn {
                file,
                address,
                meaning: picture.meaning,
            }));
        });
    };
    let shown = move || drawn.get().map(|drawn| picture_of(state, drawn));
    view! {
        <section class="group">
            <div class="acts">
                <button type="button" class="button" on:click=draw>{say.picture_make()}</button>
            </div>
            <p class="fault" role="alert">{move || fault.get()}</p>
            {shown}
        </section>
    }
}

fn picture_of(state: AppState, drawn: Drawn) -> impl IntoView {
    let say = state.language();
    let delivery = FileDelivery::new(say);
    let alt = format!("{}: {}", say.weight_chart(), drawn.meaning);
    let file = drawn.file;
    let make = move || Some(file.clone());
    view! {
        <figure class="picture">
            <img class="picture__image" src=drawn.address alt=alt />
            <figcaption>{drawn.meaning}</figcaption>
        </figure>
        <p class="hint">{say.picture_hold()}</p>
        <div class="acts">
            {delivery.button(say.picture_send(), FileKind::WeightPicture.is_for_share_sheet(), Box::new(make))}
        </div>
        {delivery.answer()}
    }
}
