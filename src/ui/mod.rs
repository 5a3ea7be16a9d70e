//! The app on screen. Screens hold no rule, no limit and no words.

pub mod clock;
pub mod copies;
pub mod glance;
pub mod of_phone;
pub mod parts;
pub mod photo;
pub mod picture;
pub mod pieces;
pub mod platform;
pub mod route;
pub mod screens;
pub mod state;
pub mod together;

use std::time::Duration;

use leptos::prelude::*;
use wasm_bindgen::JsCast;

use crate::domain::time::moment::Moment;
use crate::ui::copies::Copies;
use crate::ui::parts::call_card::Calls;
use crate::ui::parts::later::DueParts;
use crate::ui::parts::live::{live, on_change, whenever};
use crate::ui::parts::shell::TopBar;
use crate::ui::pieces::{Piece, Pieces};
use crate::ui::route::Route;
use crate::ui::screens::first_start::StartScreen;
use crate::ui::screens::first_weeks::CardSearch;
use crate::ui::state::AppState;

/// How long the first screen is left alone before the rest of the program is fetched.
const BEFORE_THE_REST: Duration = Duration::from_millis(300);

/// Puts the app in place of the page's first content, which stays until the first screen is drawn.
/// Without its place in the page nothing happens, and the page's own start-up check says so.
pub fn start() {
    if let Some(place) = document().get_element_by_id("app") {
        // Leptos knows of the browser's tasks only from the mount on.
        wasm_bindgen_futures::spawn_local(start_in(place));
    }
}

/// How much of the app is drawn: it starts in steps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Drawn {
    /// The frame, empty.
    Nothing,
    /// The status line too.
    Status,
    /// The notices too.
    Notices,
    /// The bars too.
    Bars,
    /// The screen too: all of it.
    Screen,
}

/// Each step is a task of its own, so that the browser can paint and answer a tap in between. The
/// app grows beside the page and takes its place when it is whole.
async fn start_in(place: web_sys::Element) {
    platform::next_task().await;
    let zone = clock::zone(clock::now());
    platform::next_task().await;
    let owner = Owner::new();
    let (state, pieces, drawn) = owner.with(|| {
        let pieces = Pieces::first_alone();
        let state = AppState::new(Copies::unopened(), zone, pieces.judge);
        (state, pieces, RwSignal::new(Drawn::Nothing))
    });
    if let Some(piece) = needed_at_first(state) {
        pieces.fetch(state, piece).await;
    }
    let app = document().create_element("div");
    let Ok(Ok(app)) = app.map(JsCast::dyn_into::<web_sys::HtmlElement>) else {
        return;
    };
    app.set_id("app");
    platform::next_task().await;
    let whole = move || {
        provide_context(state);
        provide_context(pieces);
        provide_context(pieces.report);
        provide_context(pieces.parts);
        Calls::provide();
        CardSearch::provide();
        view! { <App drawn /> }
    };
    mount_to(app.clone(), whole).forget();
    platform::next_task().await;
    owner.with(|| follow(state));
    for step in [Drawn::Status, Drawn::Notices, Drawn::Bars, Drawn::Screen] {
        platform::next_task().await;
        drawn.set(step);
    }
    platform::next_task().await;
    // What was tapped before the app was there is the screen now.
    let is_tapped = platform::is_on_page("#last-known[data-tapped]");
    if place.replace_with_with_node_1(&app).is_ok() {
        platform::set_root_attribute("data-started", "true");
        if is_tapped {
            platform::focus_heading();
        }
    }
    set_timeout(move || pieces.fetch_all(state), BEFORE_THE_REST);
    platform::next_task().await;
    owner.with(|| {
        whenever(move || {
            if let Some(due) = pieces.of_due.get() {
                untrack(|| (due.keep_together)(state));
            }
        });
    });
    // It lives as long as the page.
    std::mem::forget(owner);
}

/// The piece without which the first screen cannot be drawn; where there are records, they are opened.
fn needed_at_first(state: AppState) -> Option<Piece> {
    let needed = Piece::of(untrack(|| state.shown()));
    let has_records = state.program.get_value().is_unopened.get_untracked();
    needed.or(has_records.then_some(Piece::Due))
}

/// The whole app.
#[component]
fn App(drawn: RwSignal<Drawn>) -> impl IntoView {
    let state = AppState::here();
    move || {
        let language = state.writing.get().language;
        platform::set_root_attribute("lang", language.tag());
        view! { <Frame drawn /> }
    }
}

/// Follows what changes without the person: time, address, new versions.
fn follow(state: AppState) {
    platform::set_root_attribute("data-theme", &state.copies.theme());
    keep_time(state);
    follow_address(state);
    follow_updates(state);
}

/// For so long after a finger came down nothing is drawn anew because of the hour: a button taken away before the
/// finger goes up would not be pressed. Ours: longer than a press takes.
const PRESS_SECONDS: i64 = 2;

/// Moves the present moment on, once a second while the page is visible and at once when it becomes so.
fn keep_time(state: AppState) {
    let pressed = StoredValue::new(None::<Moment>);
    let tick = move || {
        let now = clock::now();
        let is_over = |at: Moment| now < at || at.plus_seconds(PRESS_SECONDS) < now;
        if !document().hidden() && pressed.get_value().is_none_or(is_over) {
            state.now.set(now);
        }
    };
    if set_interval_with_handle(tick, Duration::from_secs(1)).is_err() {
        leptos::logging::warn!("the clock on screen stands still");
    }
    let press = move |_: web_sys::Event| pressed.set_value(Some(clock::now()));
    window_event_listener_untyped("pointerdown", press).remove_on_cleanup();
    let wake = move |_: web_sys::Event| {
        let now = clock::now();
        state.zone.set(clock::zone(now));
        state.now.set(now);
    };
    for name in platform::WAKES {
        window_event_listener_untyped(name, wake).remove_on_cleanup();
    }
}

fn follow_address(state: AppState) {
    state.follow_address();
    window_event_listener_untyped("hashchange", move |_| state.follow_address())
        .remove_on_cleanup();
    on_change(
        move || state.route.get(),
        move |_| {
            state.leave_notice();
            platform::focus_heading();
        },
    );
}

/// Told by the page's own script when a new version waits.
fn follow_updates(state: AppState) {
    if platform::is_update_waiting() {
        state.program.get_value().is_update_ready.set(true);
    }
    window_event_listener_untyped("perchlight-update-ready", move |_| {
        state.program.get_value().is_update_ready.set(true);
    })
    .remove_on_cleanup();
}

/// Listeners stay until the app is taken away.
trait RemoveOnCleanup {
    fn remove_on_cleanup(self);
}

impl RemoveOnCleanup for WindowListenerHandle {
    fn remove_on_cleanup(self) {
        on_cleanup(move || self.remove());
    }
}

#[component]
fn Frame(drawn: RwSignal<Drawn>) -> impl IntoView {
    let state = AppState::here();
    let is_drawn = move |part| Memo::new(move |_| drawn.get() >= part);
    let has_status = is_drawn(Drawn::Status);
    let has_notices = is_drawn(Drawn::Notices);
    let has_bars = is_drawn(Drawn::Bars);
    let route = Memo::new(move |_| state.shown());
    let has_places = Memo::new(move |_| has_bars.get() && has_places(state));
    let has_screen = is_drawn(Drawn::Screen);
    // The records are opened behind a screen that may be in use: it is drawn anew for another route or chick only.
    let shown = Memo::new(move |_| (route.get(), state.chick.get()));
    let is_wide = wide();
    let has_beside =
        Memo::new(move |_| is_wide.get() && has_places.get() && route.get() == Route::Now);
    let sent_off = |event: web_sys::SubmitEvent| platform::show_answer(&event);
    view! {
        {move || has_bars.get().then(|| view! { <TopBar shown=route /> })}
        {move || has_notices.get().then(|| DueParts::draw(|due| due.banners))}
        {move || has_status.get().then(|| DueParts::draw(|due| due.status_line))}
        <main class="main" on:submit=sent_off>{move || has_screen.get().then(|| screen(state, shown.get().0))}</main>
        {move || (has_screen.get() && has_beside.get()).then(|| beside(state))}
        {move || has_places.get().then(|| DueParts::draw(|due| due.places))}
    }
}

/// The screen of a route. Without a chick only those that need none.
fn screen(state: AppState, route: Route) -> AnyView {
    let pieces = Pieces::here();
    if let Some(piece) = Piece::of(route) {
        return pieces.draw(piece, route);
    }
    let failure = move || pieces.failure(Piece::Due);
    view! { <StartScreen demo=move || pieces.show_demo(state) failure /> }.into_any()
}

/// Whether the window has room for the weight beside what is due; follows.
fn wide() -> RwSignal<bool> {
    let is_wide = RwSignal::new(platform::is_wide_and_high());
    window_event_listener_untyped("resize", move |_| {
        let now = platform::is_wide_and_high();
        if is_wide.get_untracked() != now {
            is_wide.set(now);
        }
    })
    .remove_on_cleanup();
    is_wide
}

/// The weight beside what is due.
fn beside(state: AppState) -> impl IntoView {
    let weight = live(move || Pieces::here().draw(Piece::Rest, Route::Weight));
    view! { <aside class="beside" aria-label=state.language().bar_weight()>{weight}</aside> }
}

/// Whether the five places are shown: not where one thing is to be done to its end.
fn has_places(state: AppState) -> bool {
    let has_any = state.chick.get().is_some() || state.is_breeders_view();
    has_any && !state.route.get().stands_alone()
}
