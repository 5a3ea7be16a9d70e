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
use crate::ui::parts::live::{live, whenever};
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

/// The picture on its way out: drawn anew with each weighing, handed out on a tap.
#[derive(Debug, Clone, Copy)]
pub struct Sending {
    state: AppState,
    progress: RwSignal<Progress, LocalStorage>,
    is_asked: RwSignal<bool>,
    fault: RwSignal<&'static str>,
    delivery: FileDelivery,
}

impl Sending {
    /// Of the chick on screen.
    pub fn here() -> Self {
        let state = AppState::here();
        let sending = Self {
            state,
            progress: RwSignal::new_local(Progress::Drawing),
            is_asked: RwSignal::new(false),
            fault: RwSignal::new(""),
            delivery: FileDelivery::new(state.language()),
        };
        let writing = state.writing_now();
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
            if let Some((picture, name)) = wanted.try_get_untracked().flatten() {
                spawn_local(async move { sending.take(drawn(picture, &name).await) });
            }
        };
        whenever(move || {
            wanted.track();
            set_timeout(draw, BEFORE_DRAWING);
        });
        on_cleanup(move || sending.forget());
        sending
    }

    fn forget(self) {
        if let Some(Progress::Here(old)) = self.progress.try_get_untracked() {
            drop(Url::revoke_object_url(&old.address));
        }
    }

    fn take(self, drawn: Option<Drawn>) {
        self.forget();
        let now = drawn.map_or(Progress::Refused, Progress::Here);
        drop(self.progress.try_set(now));
    }

    fn send(self) {
        let say = self.state.language();
        match self.progress.get_untracked() {
            Progress::Drawing => self.fault.set(say.weight_sending()),
            Progress::Refused => self.fault.set(say.picture_refused()),
            Progress::Here(drawn) => {
                self.fault.set("");
                self.is_asked.set(true);
                let is_for_sheet = FileKind::WeightPicture.is_for_share_sheet();
                self.delivery
                    .hand_out_with(Some(drawn.file), is_for_sheet, drawn.meaning);
            }
        }
    }

    /// The act that hands the picture out with a line of text.
    pub fn button(self) -> impl IntoView {
        let word = self.state.language().weight_send();
        view! { <button type="button" class="button" data-send=move || matches!(self.progress.get(), Progress::Here(_)).to_string() on:click=move |_| self.send()>{word}</button> }
    }

    /// What became of it, and the picture once it was asked for.
    pub fn shown(self) -> impl IntoView {
        let picture = live(move || match self.progress.get() {
            Progress::Here(drawn) if self.is_asked.get() => Some(picture_of(self.state, drawn)),
            Progress::Here(_) | Progress::Drawing | Progress::Refused => None,
        });
        view! {
            <p class="fault" role="alert">{move || self.fault.get()}</p>
            {self.delivery.answer()}
            {picture}
        }
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
