//! The weight chart as a picture to send: drawn beforehand, since share sheets open only within a tap and
//! drawing can outlast it.

use std::time::Duration;

use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::{File, Url};

use crate::domain::outlook::Outlook;
use crate::share::file_name::{FileKind, file_name};
use crate::share::weight_picture::{WeightPicture, weight_picture};
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::picture::png_file;
use crate::ui::state::AppState;

/// How long the screen is left alone before the picture is drawn.
const BEFORE_DRAWING: Duration = Duration::from_millis(300);

/// A drawn picture.
#[derive(Debug, Clone)]
struct Drawn {
    file: File,
    /// Where the page shows it from.
    address: String,
    /// What it means.
    meaning: String,
}

/// How far the picture is.
#[derive(Debug, Clone)]
enum Progress {
    /// It is being drawn.
    Drawing,
    /// It is here.
    Here(Drawn),
    /// The browser draws none.
    Refused,
}

/// The act that hands the picture out with a line of text, and the picture once it was asked for.
#[component]
pub fn SendChart() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let progress = RwSignal::new_local(Progress::Drawing);
    let (is_asked, fault) = (RwSignal::new(false), RwSignal::new(""));
    let forget = move || {
        if let Some(Progress::Here(old)) = progress.try_get_untracked() {
            drop(Url::revoke_object_url(&old.address));
        }
    };
    on_cleanup(forget);
    let wanted = Memo::new(move |_| {
        let picture = |outlook: &Outlook| {
            let name = &outlook.chick.plan.name;
            let name = file_name(name, FileKind::WeightPicture, outlook.lived.day);
            Some((weight_picture(writing, outlook)?, name))
        };
        state
            .outlook
            .with(|outlook| outlook.as_deref().and_then(picture))
    });
    let draw = move || {
        let Some((picture, name)) = wanted.try_get_untracked().flatten() else {
            return;
        };
        spawn_local(async move {
            let drawn = drawn(picture, &name).await;
            forget();
            let now = drawn.map_or(Progress::Refused, Progress::Here);
            drop(progress.try_set(now));
        });
    };
    Effect::new(move || {
        wanted.track();
        set_timeout(draw, BEFORE_DRAWING);
    });
    let delivery = FileDelivery::new(say);
    let send = move |_| match progress.get_untracked() {
        Progress::Drawing => fault.set(say.weight_sending()),
        Progress::Refused => fault.set(say.picture_refused()),
        Progress::Here(drawn) => {
            fault.set("");
            is_asked.set(true);
            let is_for_sheet = FileKind::WeightPicture.is_for_share_sheet();
            delivery.hand_out_with(Some(drawn.file), is_for_sheet, drawn.meaning);
        }
    };
    let shown = move || match progress.get() {
        Progress::Here(drawn) if is_asked.get() => Some(picture_of(state, drawn)),
        Progress::Here(_) | Progress::Drawing | Progress::Refused => None,
    };
    view! {
        <div class="acts chart__acts">
            <button type="button" class="button" data-send="true" on:click=send>{say.weight_send()}</button>
        </div>
        <p class="fault" role="alert">{move || fault.get()}</p>
        {delivery.answer()}
        {shown}
    }
}

async fn drawn(picture: WeightPicture, name: &str) -> Option<Drawn> {
    let file = png_file(&picture, name).await?;
    let address = Url::create_object_url_with_blob(&file).ok()?;
    let meaning = picture.meaning;
    Some(Drawn {
        file,
        address,
        meaning,
    })
}

fn picture_of(state: AppState, drawn: Drawn) -> impl IntoView {
    let say = state.language();
    let alt = format!("{}: {}", say.weight_chart(), drawn.meaning);
    view! {
        <figure class="picture">
            <img class="picture__image" src=drawn.address alt=alt />
            <figcaption>{drawn.meaning}</figcaption>
        </figure>
        <p class="hint">{say.picture_hold()}</p>
    }
}
