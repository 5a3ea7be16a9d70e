//! The browser's doors: address, random numbers, clipboard, files out and in, lasting storage.

use std::time::Duration;

use js_sys::{Array, Promise, Reflect, Uint8Array};
use leptos::prelude::{document, set_timeout, window};
use leptos::task::{spawn_local, tick};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    DomException, Element, Event, File, FilePropertyBag, HtmlAnchorElement, HtmlElement,
    ScrollIntoViewOptions, ScrollLogicalPosition, ShareData, Url,
};

/// The part of the address after `#`, with it.
pub fn hash() -> String {
    window().location().hash().unwrap_or_default()
}

/// Changes the part of the address after `#`.
pub fn set_hash(hash: &str) {
    if self::hash() != hash && window().location().set_hash(hash).is_err() {
        leptos::logging::warn!("the address could not be changed");
    }
}

/// Changes the part of the address after `#` without leaving the old one in the history.
pub fn replace_hash(hash: &str) {
    let is_done = window().history().is_ok_and(|history| {
        history
            .replace_state_with_url(&JsValue::NULL, "", Some(hash))
            .is_ok()
    });
    if !is_done {
        set_hash(hash);
    }
}

/// The address of this page without what stands after `#` or `?`.
pub fn page_address() -> String {
    let location = window().location();
    let origin = location.origin().unwrap_or_default();
    format!("{origin}{}", location.pathname().unwrap_or_default())
}

/// A text of ours as a link to this app: everything stands after `#`, so that it never leaves the phone.
pub fn link_to(text: &str) -> String {
    format!("{}#{text}", page_address())
}

/// Waits for the browser's next task: it can paint and answer a tap before it.
pub async fn next_task() {
    let task = Promise::new(&mut |go_on, _| {
        if window().set_timeout_with_callback(&go_on).is_err() {
            drop(go_on.call0(&JsValue::NULL));
        }
    });
    if JsFuture::from(task).await.is_err() {
        leptos::logging::warn!("a pause was cut short");
    }
}

/// 96 random bits from the browser's secure source, or from its plain one where there is none.
pub fn random_id() -> [u8; 12] {
    let mut bytes = [0_u8; 12];
    let is_secure = window()
        .crypto()
        .is_ok_and(|crypto| crypto.get_random_values_with_u8_array(&mut bytes).is_ok());
    if !is_secure {
        let drawn = bytes.map(|_| {
            u8::try_from(crate::domain::quantity::count::whole(
                js_sys::Math::random() * 256.0,
            ))
            .unwrap_or(0)
        });
        bytes = drawn;
    }
    bytes
}

/// How a file left the app.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Handed {
    /// Another app took it from the share sheet.
    Shared,
    /// The person closed the share sheet.
    Cancelled,
    /// The browser took it to save it.
    Saved,
    /// Neither took it.
    NotTaken,
}

/// A file of text; `None` when the browser makes none.
pub fn text_file(name: &str, mime: &str, text: &str) -> Option<File> {
    file_of(&JsValue::from_str(text), name, mime)
}

/// A file of one part, which is a text or a blob.
pub fn file_of(part: &JsValue, name: &str, mime: &str) -> Option<File> {
    file_of_parts(&Array::of1(part), name, mime)
}

/// A file of several parts, one after the other.
pub fn file_of_parts(parts: &Array, name: &str, mime: &str) -> Option<File> {
    let options = FilePropertyBag::new();
    options.set_type(mime);
    File::new_with_blob_sequence_and_options(parts, name, &options).ok()
}

/// Hands a file out: to the share sheet when that is wanted and takes files of this type, else as a
/// download. To be called within a tap, as share sheets open only then.
pub async fn hand_over(file: &File, to_share_sheet: bool, line: &str) -> Handed {
    if to_share_sheet && let Some(sharing) = share(file, line) {
        match JsFuture::from(sharing).await {
            Ok(_) => return Handed::Shared,
            Err(error) if is_cancelled(&error) => return Handed::Cancelled,
            // Refused after all, as by a computer's policy: it is saved instead.
            Err(_) => {}
        }
    }
    if save(file).is_ok() {
        Handed::Saved
    } else {
        Handed::NotTaken
    }
}

/// Opens the share sheet with a file and, unless it is empty, a line of text; `None` when this browser shares no file of this type.
fn share(file: &File, line: &str) -> Option<Promise> {
    let navigator = window().navigator();
    let has = |name| {
        Reflect::get(&navigator, &JsValue::from_str(name)).is_ok_and(|door| door.is_function())
    };
    if !has("canShare") || !has("share") {
        return None;
    }
    let data = ShareData::new();
    data.set_files(&Array::of1(file));
    if !line.is_empty() {
        data.set_text(line);
    }
    navigator
        .can_share_with_data(&data)
        .then(|| navigator.share_with_data(&data))
}

/// How words left the app.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Told {
    /// Another app took them from the share sheet.
    Shared,
    /// The person closed the share sheet.
    Cancelled,
    /// They stand on the clipboard.
    Copied,
    /// Neither took them.
    NotTaken,
}

/// Hands words out: to the share sheet where there is one, else to the clipboard. To be called within a tap.
pub async fn tell(words: String) -> Told {
    let navigator = window().navigator();
    let share = Reflect::get(&navigator, &JsValue::from_str("share"));
    if share.is_ok_and(|share| share.is_function()) {
        let data = ShareData::new();
        data.set_text(&words);
        match JsFuture::from(navigator.share_with_data(&data)).await {
            Ok(_) => return Told::Shared,
            Err(error) if is_cancelled(&error) => return Told::Cancelled,
            Err(_) => {}
        }
    }
    if copy(words).await {
        Told::Copied
    } else {
        Told::NotTaken
    }
}

fn is_cancelled(error: &JsValue) -> bool {
    error
        .dyn_ref::<DomException>()
        .is_some_and(|error| error.name() == "AbortError")
}

/// How long a saved file's address is kept: browsers may read it well after the tap. Ours.
const ADDRESS_KEPT: Duration = Duration::from_secs(60);

fn save(file: &File) -> Result<(), JsValue> {
    let url = Url::create_object_url_with_blob(file)?;
    let link: HtmlAnchorElement = document().create_element("a")?.unchecked_into();
    link.set_href(&url);
    link.set_download(&file.name());
    link.click();
    set_timeout(move || drop(Url::revoke_object_url(&url)), ADDRESS_KEPT);
    Ok(())
}

/// Puts a text on the clipboard; tells whether the browser allowed it.
pub async fn copy(text: String) -> bool {
    // Outside a secure context there is no clipboard at all, and the typed binding would throw.
    let clipboard = Reflect::get(&window().navigator(), &JsValue::from_str("clipboard"));
    if !clipboard.is_ok_and(|clipboard| clipboard.is_object()) {
        return false;
    }
    JsFuture::from(window().navigator().clipboard().write_text(&text))
        .await
        .is_ok()
}

/// Largest file that is read at all, bytes.
pub const LARGEST_FILE: f64 = 20_000_000.0;

/// The text of a chosen file; `None` when it is too large or cannot be read.
pub async fn read_file(file: File) -> Option<String> {
    if file.size() > LARGEST_FILE {
        return None;
    }
    let buffer = JsFuture::from(file.array_buffer()).await.ok()?;
    String::from_utf8(Uint8Array::new(&buffer).to_vec()).ok()
}

/// Asks the browser not to clear this page's storage by itself; tells its answer.
pub async fn ask_to_persist() -> bool {
    let Ok(promise) = window().navigator().storage().persist() else {
        return false;
    };
    JsFuture::from(promise)
        .await
        .is_ok_and(|answer| answer == JsValue::TRUE)
}

/// Whether the browser has promised not to clear this page's storage by itself.
pub async fn is_persisted() -> bool {
    let Ok(promise) = window().navigator().storage().persisted() else {
        return false;
    };
    JsFuture::from(promise)
        .await
        .is_ok_and(|answer| answer == JsValue::TRUE)
}

/// Moves the focus to the heading of a new screen, so that it is read out and keys start there.
pub fn focus_heading() {
    let heading = document().query_selector("main h1").ok().flatten();
    if let Some(heading) = heading.and_then(|heading| heading.dyn_into::<HtmlElement>().ok())
        && heading.focus().is_err()
    {
        leptos::logging::warn!("the heading could not take the focus");
    }
    for place in ["main", "main .scroll"] {
        if let Ok(Some(scrolled)) = document().query_selector(place) {
            scrolled.set_scroll_top(0);
        }
    }
}

/// Brings the element of an id into view and gives it the focus; nothing where there is none.
pub fn reveal(id: &str) {
    let element = document().get_element_by_id(id);
    if let Some(element) = element.and_then(|element| element.dyn_into::<HtmlElement>().ok())
        && element.focus().is_ok()
    {
        element.scroll_into_view();
    }
}

/// Whether this is an iPhone or iPad, where the installed app keeps records apart from the browser's.
pub fn is_iphone() -> bool {
    let agent = window().navigator().user_agent().unwrap_or_default();
    ["iPhone", "iPad"].iter().any(|name| agent.contains(name))
}

/// Whether the window has room for two columns: from 700 CSS pixels on.
pub fn is_wide() -> bool {
    is_matched("(min-width: 700px)")
}

/// Whether the window has room for the weight beside what is due: a telephone that lies on its side has not.
pub fn is_wide_and_high() -> bool {
    is_matched("(min-width: 700px) and (min-height: 417px)")
}

/// Whether the window has room for a table beside the chosen row: from 1,100 CSS pixels on.
pub fn is_wide_for_table() -> bool {
    is_matched("(min-width: 1100px)")
}

fn is_matched(query: &str) -> bool {
    let query = window().match_media(query).ok().flatten();
    query.is_some_and(|query| query.matches())
}

/// What the browser tells when the page is looked at again.
pub const WAKES: [&str; 3] = ["visibilitychange", "focus", "pageshow"];

/// Whether the focus is in a part of the page.
pub fn has_focus(selector: &str) -> bool {
    is_on_page(&format!("{selector}:focus-within"))
}

/// Whether the page has such an element.
pub fn is_on_page(selector: &str) -> bool {
    let found = document().query_selector(selector);
    found.ok().flatten().is_some()
}

/// Scrolls to the heading of the screen.
pub fn to_heading() {
    if let Ok(Some(heading)) = document().query_selector("main h1") {
        heading.scroll_into_view();
    }
}

/// Opens the browser's print dialogue for this screen.
pub fn print() {
    if window().print().is_err() {
        leptos::logging::warn!("this browser does not print");
    }
}

/// Once the form is answered in which this happened: the first field at fault takes the focus, or what
/// is asked comes into view. A form that has gone was taken, and nothing is left to show.
pub fn show_answer(event: &Event) {
    const FAULT: &str = "[aria-invalid='true'], .fault:not(:empty)";
    const ASKED: &str = "main .question[role], main .question[aria-live]";
    let pressed = event
        .target()
        .and_then(|target| target.dyn_into::<Element>().ok());
    let form = pressed.and_then(|pressed| {
        let around = pressed.closest("form").ok().flatten();
        // In a dock it names the form that it belongs to.
        around.or_else(|| document().get_element_by_id(&pressed.get_attribute("form")?))
    });
    spawn_local(async move {
        // The answer is drawn in the task of the tap; what is typed next must find the focus moved.
        tick().await;
        tick().await;
        let Some(form) = form.filter(|form| form.is_connected()) else {
            return;
        };
        let fault = form.query_selector(FAULT).ok().flatten();
        let asked = || document().query_selector(ASKED).ok().flatten();
        let Some(place) = fault.or_else(asked) else {
            return;
        };
        // With its label, or with the answers it is one of.
        let whole = place.closest(".field, fieldset").ok().flatten();
        let options = ScrollIntoViewOptions::new();
        options.set_block(ScrollLogicalPosition::Nearest);
        whole
            .as_ref()
            .unwrap_or(&place)
            .scroll_into_view_with_scroll_into_view_options(&options);
        let first = whole.and_then(|whole| whole.query_selector("input, select").ok().flatten());
        let field = Some(place).filter(|place| place.has_attribute("aria-invalid"));
        let field = field.or(first);
        if let Some(field) = field.and_then(|field| field.dyn_into::<HtmlElement>().ok())
            && field.focus().is_err()
        {
            leptos::logging::warn!("the field could not take the focus");
        }
    });
}

/// The browser's first language, as a tag.
pub fn language_tag() -> String {
    window().navigator().language().unwrap_or_default()
}

/// Sets an attribute of the page's root element.
pub fn set_root_attribute(name: &str, value: &str) {
    if let Some(root) = document().document_element()
        && root.set_attribute(name, value).is_err()
    {
        leptos::logging::warn!("the page's root could not be changed");
    }
}

/// Asks the phone to keep the screen lit while this page is in front; without an answer it goes dark as
/// usual.
pub fn keep_screen_on() {
    let lock = Reflect::get(&window().navigator(), &JsValue::from_str("wakeLock"))
        .ok()
        .filter(JsValue::is_object);
    let Some(lock) = lock else { return };
    let request = Reflect::get(&lock, &JsValue::from_str("request")).ok();
    let Some(request) = request.and_then(|request| request.dyn_into::<js_sys::Function>().ok())
    else {
        return;
    };
    if let Ok(promise) = request.call1(&lock, &JsValue::from_str("screen")) {
        spawn_local(async move {
            // A refusal (low battery, hidden page) only means that the screen goes dark as usual.
            drop(JsFuture::from(Promise::resolve(&promise)).await);
        });
    }
}

/// Whether a new version of the app waits to be taken.
pub fn is_update_waiting() -> bool {
    update_object().is_some()
}

/// Takes the waiting version; the page reloads once.
pub fn apply_update() {
    let Some(update) = update_object() else {
        return;
    };
    let apply = Reflect::get(&update, &JsValue::from_str("apply"))
        .ok()
        .and_then(|apply| apply.dyn_into().ok());
    let apply: Option<js_sys::Function> = apply;
    if let Some(apply) = apply
        && apply.call0(&update).is_err()
    {
        leptos::logging::warn!("the waiting version could not be taken");
    }
}

fn update_object() -> Option<JsValue> {
    Reflect::get(&window(), &JsValue::from_str("perchlightUpdate"))
        .ok()
        .filter(JsValue::is_object)
}
