//! Buttons that make a file on their tap and hand it out, and the sentence about what became of it.

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen_futures::JsFuture;
use web_sys::File;

use crate::ui::parts::button::button;
use crate::ui::parts::live::live;
use crate::ui::platform::{self, Handed};
use crate::words::Language;

/// Makes a file when its button is tapped; `None` when there is none to be made.
pub type MakeFile = Box<dyn Fn() -> Option<File>>;

/// What is still to be done about the last file.
#[derive(Debug, Clone)]
enum Left {
    Nothing,
    /// It can be saved instead.
    ToSave(File),
    /// Only its text can be shown, to be copied.
    ToCopy(String),
}

/// What became of the last file of one group of buttons.
#[derive(Debug, Clone, Copy)]
pub struct FileDelivery {
    say: Language,
    answer: RwSignal<String>,
    left: RwSignal<Left, LocalStorage>,
    is_out: RwSignal<bool>,
}

impl FileDelivery {
    /// Nothing was handed out yet.
    pub fn new(say: Language) -> Self {
        Self {
            say,
            answer: RwSignal::new(String::new()),
            left: RwSignal::new_local(Left::Nothing),
            is_out: RwSignal::new(false),
        }
    }

    /// A button that makes a file and hands it out: to the share sheet where `to_share_sheet` is set
    /// and the browser takes it, else as a download, else as text to be copied.
    pub fn button(self, word: &'static str, to_share_sheet: bool, make: MakeFile) -> AnyView {
        let hand_out = move |_| self.hand_out(make(), to_share_sheet);
        button(word, hand_out)
    }

    /// Hands a file out and says what became of it.
    pub fn hand_out(self, file: Option<File>, to_share_sheet: bool) {
        self.hand_out_with(file, to_share_sheet, String::new());
    }

    /// The same with a line of text beside the file, where a share sheet takes one.
    pub fn hand_out_with(self, file: Option<File>, to_share_sheet: bool, line: String) {
        let say = self.say;
        self.left.set(Left::Nothing);
        let Some(file) = file else {
            return self.answer.set(say.hand_no_file().to_owned());
        };
        self.answer.set(String::new());
        spawn_local(async move {
            let handed = platform::hand_over(&file, to_share_sheet, &line).await;
            self.answer.set(match handed {
                Handed::Shared => say.hand_shared().to_owned(),
                Handed::Cancelled => say.hand_cancelled().to_owned(),
                Handed::Saved => say.hand_saved(&file.name()),
                Handed::NotTaken => say.hand_no_file().to_owned(),
            });
            match handed {
                Handed::Shared | Handed::Saved => self.is_out.set(true),
                Handed::Cancelled => self.left.set(Left::ToSave(file)),
                // A picture stands on the screen already.
                Handed::NotTaken if file.type_().starts_with("image/") => {}
                Handed::NotTaken => {
                    let text = JsFuture::from(file.text()).await.ok();
                    let text = text.and_then(|text| text.as_string()).unwrap_or_default();
                    self.left.set(Left::ToCopy(text));
                }
            }
        });
    }

    /// Whether a file was shared or saved; follows.
    pub fn is_out(self) -> bool {
        self.is_out.get()
    }

    /// The sentence about the last file, and what can still be done about it.
    pub fn answer(self) -> AnyView {
        let say = self.say;
        let left = live(move || {
            match self.left.get() {
            Left::Nothing => ().into_any(),
            Left::ToSave(file) => {
                let save = move |_| self.hand_out(Some(file.clone()), false);
                button(say.hand_save_instead(), save)
            }
            Left::ToCopy(text) => {
                view! {
                    <div class="field">
                        <textarea readonly rows="6" aria-label=say.hand_text() prop:value=text></textarea>
                    </div>
                }
                    .into_any()
            }
        }
        });
        view! {
            <p class="hint handed" role="status">{move || self.answer.get()}</p>
            {left}
        }
        .into_any()
    }
}
