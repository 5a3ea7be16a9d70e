//! The app on screen. Screens hold no rule, no limit and no words.

pub mod clock;
pub mod copies;
pub mod parts;
pub mod picture;
pub mod platform;
pub mod route;
pub mod screens;
pub mod state;

use leptos::prelude::*;
use leptos::task::spawn_local;
use wasm_bindgen::JsCast;

use crate::domain::journal::Journal;
use crate::ui::parts::shell::{Banners, BottomBar, StatusLine, TopBar};
use crate::ui::route::Route;
use crate::ui::screens::first_start::StartScreen;
use crate::ui::screens::guide::GuideScreen;
use crate::ui::screens::handover::HandoverScreen;
use crate::ui::screens::home::HomeScreen;
use crate::ui::screens::journal::JournalScreen;
use crate::ui::screens::log_feed::LogFeedScreen;
use crate::ui::screens::look::{CropScreen, DroppingsScreen, SolidsScreen};
use crate::ui::screens::now::NowScreen;
use crate::ui::screens::plan_form::{PlanScreen, TypeInScreen};
use crate::ui::screens::settings::SettingsScreen;
use crate::ui::screens::take_in::TakeInScreen;
use crate::ui::screens::weaning::WeaningScreen;
use crate::ui::screens::weigh::WeighScreen;
use crate::ui::screens::weight::WeightScreen;
use crate::ui::screens::wrong::WrongScreen;
use crate::ui::state::AppState;

/// Puts the app in place of the page's first content. Without its place in the page nothing happens,
/// and the page's own start-up check says so.
pub fn start() {
    let place = document().get_element_by_id("app");
    let Some(place) = place.and_then(|place| place.dyn_into::<web_sys::HtmlElement>().ok()) else {
        return;
    };
    place.set_inner_html("");
    mount_to(place, App).forget();
}

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let state = AppState::open();
    provide_context(state);
    platform::set_root_attribute("data-theme", &state.copies.theme());
    platform::set_root_attribute("data-started", "true");
    keep_time(state);
    follow_address(state);
    follow_other_tabs(state);
    follow_updates(state);
    spawn_local(async move {
        let healed = state.copies.open_second(state.journal).await;
        if state.is_demo.get_untracked() {
            state.copies.set_aside(&Journal::from_entries(healed));
        } else {
            state.take_in(healed, false);
        }
    });
    move || {
        let language = state.writing.get().language;
        platform::set_root_attribute("lang", language.tag());
        view! { <Frame /> }
    }
}

/// Moves the present moment on, once a second while the page is visible and at once when it becomes so.
fn keep_time(state: AppState) {
    let tick = move || {
        if !document().hidden() {
            state.now.set(clock::now());
        }
    };
    if set_interval_with_handle(tick, std::time::Duration::from_secs(1)).is_err() {
        leptos::logging::warn!("the clock on screen stands still");
    }
    let wake = move |_: web_sys::Event| {
        let now = clock::now();
        state.zone.set(clock::zone(now));
        state.now.set(now);
        if !document().hidden() {
            state.copies.retry();
        }
    };
    let names = ["visibilitychange", "focus", "pageshow"];
    for name in names {
        window_event_listener_untyped(name, wake).remove_on_cleanup();
    }
}

fn follow_address(state: AppState) {
    state.follow_address();
    window_event_listener_untyped("hashchange", move |_| state.follow_address())
        .remove_on_cleanup();
    Effect::watch(
        move || state.route.get(),
        |_, _, _| platform::focus_heading(),
        false,
    );
}

fn follow_other_tabs(state: AppState) {
    window_event_listener_untyped("storage", move |event| {
        let Ok(event) = event.dyn_into::<web_sys::StorageEvent>() else {
            return;
        };
        let entries = state
            .copies
            .from_other_tab(event.key().as_deref(), event.new_value().as_deref());
        if !state.is_demo.get_untracked() {
            state.take_in(entries, false);
        }
    })
    .remove_on_cleanup();
}

/// Told by the page's own script when a new version waits.
fn follow_updates(state: AppState) {
    if platform::is_update_waiting() {
        state.is_update_ready.set(true);
    }
    window_event_listener_untyped("perchlight-update-ready", move |_| {
        state.is_update_ready.set(true);
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
fn Frame() -> impl IntoView {
    let state = AppState::here();
    let has_chick = move || state.chick.get().is_some();
    view! {
        {move || has_chick().then(|| view! { <TopBar /> })}
        <Banners />
        <StatusLine />
        <main class="main">{move || screen(state.route.get(), has_chick())}</main>
        {move || has_chick().then(|| view! { <BottomBar /> })}
    }
}

/// The screen of a route. Without a chick only those that need none.
fn screen(route: Route, has_chick: bool) -> AnyView {
    match route {
        Route::Wrong => view! { <WrongScreen /> }.into_any(),
        Route::Settings => view! { <SettingsScreen /> }.into_any(),
        Route::TypeIn => view! { <TypeInScreen /> }.into_any(),
        Route::TakeIn => view! { <TakeInScreen /> }.into_any(),
        Route::Start => view! { <StartScreen /> }.into_any(),
        Route::Handover => view! { <HandoverScreen /> }.into_any(),
        _ if !has_chick => view! { <StartScreen /> }.into_any(),
        Route::Now => view! { <NowScreen /> }.into_any(),
        Route::Weight => view! { <WeightScreen /> }.into_any(),
        Route::Weaning => view! { <WeaningScreen /> }.into_any(),
        Route::Journal => view! { <JournalScreen /> }.into_any(),
        Route::Weigh => view! { <WeighScreen /> }.into_any(),
        Route::Log(slot) => view! { <LogFeedScreen wanted=slot /> }.into_any(),
        Route::Guide => view! { <GuideScreen /> }.into_any(),
        Route::Home => view! { <HomeScreen /> }.into_any(),
        Route::Crop => view! { <CropScreen /> }.into_any(),
        Route::Droppings => view! { <DroppingsScreen /> }.into_any(),
        Route::Solids => view! { <SolidsScreen /> }.into_any(),
        Route::Plan => view! { <PlanScreen /> }.into_any(),
    }
}
