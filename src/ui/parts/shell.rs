//! The frame around every screen: top bar, standing notices, status line, bottom bar.

use leptos::prelude::*;

use crate::ui::copies::Keeping;
use crate::ui::parts::button::button;
use crate::ui::parts::chick_name::{beside, named_chicks};
use crate::ui::parts::file_delivery::FileDelivery;
use crate::ui::parts::later::DueParts;
use crate::ui::parts::level_mark::{LevelMark, level_name};
use crate::ui::parts::live::live;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;
use crate::words::names::{harmless, unturned};

/// The chick with its age, which opens chicks and settings, and Help, on every screen.
#[component]
pub fn TopBar(
    /// The route on screen.
    shown: Memo<Route>,
) -> impl IntoView {
    let name = live(move || {
        let name = DueParts::draw(|due| due.chick_name);
        name.unwrap_or_else(|| app_name().into_any())
    });
    view! { <header class="head">{name} <Help shown /></header> }
}

fn app_name() -> impl IntoView {
    view! { <p class="top-bar__name">{AppState::here().language().app_name()}</p> }
}

/// The chick with its age; the name of the app where there is none.
#[component]
pub fn ChickName() -> impl IntoView {
    let state = AppState::here();
    let beside = Memo::new(move |_| {
        let id = state.chick.get()?;
        state.journal.track();
        if state.chicks().len() < 2 {
            return None;
        }
        beside(state.writing.get(), &named_chicks(state), id)
    });
    let chick = move || {
        let outlook = state.outlook.get()?;
        if state.shown().is_of_all_chicks() {
            return None;
        }
        let writing = state.writing_now();
        let age = outlook.age.map(|age| writing.age(age));
        Some(view! {
            <div class="top-bar">
                <a class="top-bar__chick" href=Route::Settings.to_hash()>
                    <span class="top-bar__name">
                        <bdi>{harmless(&outlook.chick.plan.name)}</bdi>
                        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                            <path d="M4 9L12 17L20 9"></path>
                        </svg>
                    </span>
                    {beside.get().map(|beside| view! { <bdi class="top-bar__beside">{beside}</bdi> })}
                    <span class="top-bar__age">{age}</span>
                    <span class="print-day">{writing.date(outlook.lived.day)}</span>
                    <span class="only-read">{writing.language.bar_more()}</span>
                </a>
            </div>
        })
    };
    move || match chick() {
        Some(chick) => chick.into_any(),
        None => app_name().into_any(),
    }
}

/// The way to Help from any screen; in Help, back to where one came from.
#[component]
fn Help(shown: Memo<Route>) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let from = RwSignal::new(Route::Now);
    let is_open = move || shown.get() == Route::Wrong;
    let to = move || {
        let to = if is_open() { from.get() } else { Route::Wrong };
        to.to_hash()
    };
    let keep_place = move |_| {
        let place = shown.get_untracked();
        if place != Route::Wrong {
            from.set(place);
        }
    };
    let word = live(move || if is_open() { say.close() } else { say.help() });
    view! { <a class="help" href=to on:click=keep_place>{word}</a> }
}

/// The level in one band: shape, word, colour.
#[component]
pub fn Lamp() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    move || {
        state.outlook.get().map(|outlook| {
            let level = outlook.level;
            view! {
                <p class="lamp" data-level=level_name(level) role="status">
                    <LevelMark level />
                    <span class="lamp__word">{say.level(level)}</span>
                </p>
            }
        })
    }
}

/// What must never be overlooked: nothing is kept, something was damaged, the chick is made up.
#[component]
pub fn Banners() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let keeping = live(move || {
        let text = match state.keeping() {
            Keeping::Nothing | Keeping::Working | Keeping::Kept => return None,
            Keeping::OneCopyOnly => say.keep_browser_only(),
            Keeping::MemoryBlocked => say.keep_memory_only(),
            Keeping::MemoryFull => say.keep_full(),
            Keeping::NewerRecords => say.keep_newer(),
        };
        let is_demo = state.is_demo.get();
        (!is_demo).then(|| {
            view! {
                <div class="banner" data-kind="storage" role="alert">
                    <p>{text}</p>
                    <a class="button" href=Route::Handover.to_hash()>{say.save_backup()}</a>
                </div>
            }
        })
    });
    let damaged = live(move || {
        let raw = state.copies.damaged.get();
        (!raw.is_empty() && !state.is_demo.get()).then(|| {
            let delivery = FileDelivery::new(say);
            let make = move || platform::text_file("perchlight-set-aside.txt", "text/plain", &raw);
            view! {
                <div class="banner" data-kind="storage" role="alert">
                    <p>{say.keep_damaged()}</p>
                    {delivery.button(say.keep_download_raw(), true, Box::new(make))}
                    {delivery.answer()}
                </div>
            }
        })
    });
    let is_ahead = Memo::new(move |_| {
        let now = state.now.get();
        state.journal.with(|journal| journal.is_ahead_of(now))
    });
    let clock = live(move || {
        is_ahead.get().then(|| {
            view! { <div class="banner" data-kind="storage" role="alert"><p>{say.keep_clock()}</p></div> }
        })
    });
    let demo = live(move || {
        state.is_demo.get().then(|| {
            view! {
                <div class="banner" data-kind="demo">
                    <p>{say.demo_banner()}</p>
                    {button(say.demo_leave(), move |_| state.leave_demo())}
                </div>
            }
        })
    });
    let update = live(move || {
        // Never while a form is open: a reload would lose what is half typed.
        (state.program.get_value().is_update_ready.get() && !state.route.get().is_form()).then(|| {
            view! {
                <div class="banner" data-kind="update">
                    <p>{say.update_ready()}</p>
                    {button(say.update_now(), move |_| platform::apply_update())}
                    {button(say.update_later(), move |_| state.program.get_value().is_update_ready.set(false))}
                </div>
            }
        })
    });
    view! { <aside class="banners" aria-label=say.notices()>{demo} {keeping} {clock} {damaged} {update}</aside> }
}

/// What was just done, how far it is kept, and the way back. It is there from the start, so that
/// changes of its text are read out.
#[component]
pub fn StatusLine() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let kept = move || kept_words(state);
    let text = live(move || {
        let notice = state.notice.get();
        notice
            .map(|notice| format!("{} {}", ended(unturned(&notice.text)), kept()))
            .unwrap_or_default()
    });
    let undo = live(move || {
        let notice = state.notice.get().filter(|notice| !notice.undo.is_empty());
        notice.map(|notice| button(say.undo(), move |_| state.take_back(&notice.undo)))
    });
    let close = live(move || {
        state.notice.get().is_some().then(|| {
            view! {
                <button
                    type="button"
                    class="button button--icon"
                    aria-label=say.close()
                    on:click=move |_| state.notice.set(None)
                >
                    <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                        <path d="M6 6L18 18M18 6L6 18"></path>
                    </svg>
                </button>
            }
        })
    });
    view! {
        <section class="status-line" aria-label=say.status_label() data-shown=move || state.notice.get().is_some().to_string()>
            <p role="status" data-kept=move || format!("{:?}", state.keeping())>{text}</p>
            {undo}
            {close}
        </section>
    }
}

/// How far the last act is kept.
pub fn kept_words(state: AppState) -> &'static str {
    let say = state.language();
    if state.is_demo.get() {
        return say.demo_banner();
    }
    match state.keeping() {
        Keeping::Nothing => "",
        Keeping::Working => say.status_keeping(),
        Keeping::Kept => say.status_kept(),
        Keeping::OneCopyOnly => say.keep_browser_only(),
        Keeping::MemoryBlocked => say.keep_memory_only(),
        Keeping::MemoryFull => say.keep_full(),
        Keeping::NewerRecords => say.keep_newer(),
    }
}

fn ended(mut text: String) -> String {
    if !text.ends_with(['.', '!', '?']) {
        text.push('.');
    }
    text
}

/// The five places of a carer, or the four of a breeder.
#[component]
pub fn BottomBar() -> impl IntoView {
    let state = AppState::here();
    let is_breeders = Memo::new(move |_| state.is_breeders_view());
    move || {
        if is_breeders.get() {
            bar(state, "breeder", breeders_places(state)).into_any()
        } else {
            bar(state, "carer", carers_places(state)).into_any()
        }
    }
}

/// A place of the bar: where it leads, its word and its drawing.
type Place = (Route, &'static str, &'static str);

fn breeders_places(state: AppState) -> Vec<Place> {
    let say = state.language();
    vec![
        (
            Route::Chicks,
            say.breeder_chicks(),
            "M4 8h16M16 4L20 8M20 16H4M8 20L4 16",
        ),
        (
            Route::NewCard,
            say.breeder_new_card(),
            "M5 3h14v18H5zM9 8h6M9 12h6M9 16h4",
        ),
        (
            Route::Breeder,
            say.breeder_details(),
            "M12 4a4 4 0 1 0 0 8a4 4 0 1 0 0-8zM4 21a8 8 0 0 1 16 0",
        ),
        (
            Route::Settings,
            say.breeder_settings(),
            "M9 3h6l4 9H5zM12 12v8M8 20h8",
        ),
    ]
}

fn carers_places(state: AppState) -> Vec<Place> {
    let say = state.language();
    vec![
        (Route::Now, say.bar_now(), "M9 3h6l4 9H5zM12 12v8M8 20h8"),
        (
            Route::Weight,
            say.bar_weight(),
            "M3 6h18M6 6a6 5.500 0 0 0 12 0M9 16h6l2 5H7zM12 11.500V16",
        ),
        (Route::Weaning, say.bar_weaning(), "M3 5h6v5h6v5h6v5"),
        (
            Route::Journal,
            say.bar_journal(),
            "M5 3h14v18H5zM9 8h6M9 12h6M9 16h4",
        ),
        (
            Route::Handover,
            say.bar_handover(),
            "M4 8h16M16 4L20 8M20 16H4M8 20L4 16",
        ),
    ]
}

fn bar(state: AppState, whose: &'static str, places: Vec<Place>) -> impl IntoView {
    let say = state.language();
    // A breeder's list stands in place of what is due.
    let is_in_place = move |route| route == Route::Now && whose == "breeder";
    let here = move || {
        let route = state.route.get();
        if is_in_place(route) {
            Route::Chicks
        } else {
            route
        }
    };
    let places = places.into_iter().map(|(route, word, icon)| {
        view! {
            <a
                class="bottom-bar__place"
                href=route.to_hash()
                aria-current=move || if here() == route { "page" } else { "false" }
            >
                <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
                    <path d=icon></path>
                </svg>
                <span>{word}</span>
            </a>
        }
    });
    view! { <nav class="bottom-bar" data-whose=whose aria-label=say.bar_label()>{places.collect_view()}</nav> }
}
