//! The program comes in three pieces, each a file of its own: the frame with the first start; the
//! records of a chick, judging it and what is due; every other screen. The first is small, so that a
//! page opens soon. The others follow by themselves behind the first screen, so that no tap waits for
//! long and nothing is missing when the network goes.
//!
//! **Invariant.** Nothing that reads, changes or judges a journal is called from the first piece but
//! through [`Due`]: it would become part of it.

use std::time::Duration;

use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_split::{SplitLoaderError, wasm_split};

use crate::ui::parts::button::button;
use crate::ui::parts::later::{DueParts, LaterDueParts, Part, ReportPart};
use crate::ui::parts::shell::{Banners, BottomBar, ChickName, StatusLine};
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::screens::breeder::chick::ChickScreen;
use crate::ui::screens::breeder::chicks::ChicksScreen;
use crate::ui::screens::breeder::details::DetailsScreen;
use crate::ui::screens::breeder::new_card::NewCardScreen;
use crate::ui::screens::breeder::reports::ReportsScreen;
use crate::ui::screens::first_groups::FirstGroupsScreen;
use crate::ui::screens::first_start::Templates;
use crate::ui::screens::first_weeks::FirstWeeksScreen;
use crate::ui::screens::for_vet::ForVetScreen;
use crate::ui::screens::guide::GuideScreen;
use crate::ui::screens::handover::{HandoverScreen, ReportButton};
use crate::ui::screens::home::HomeScreen;
use crate::ui::screens::import::ImportScreen;
use crate::ui::screens::journal::JournalScreen;
use crate::ui::screens::log_feed::LogFeedScreen;
use crate::ui::screens::now::NowScreen;
use crate::ui::screens::observation::{CropScreen, DroppingsScreen, SolidsScreen};
use crate::ui::screens::plan_form::{PlanScreen, TypeInScreen};
use crate::ui::screens::settings::SettingsScreen;
use crate::ui::screens::sources::SourcesScreen;
use crate::ui::screens::weaning::WeaningScreen;
use crate::ui::screens::weigh::WeighScreen;
use crate::ui::screens::weight::WeightScreen;
use crate::ui::screens::wrong::WrongScreen;
use crate::ui::state::{AppState, Judge, judge_here};
use crate::ui::together::{keep_together, open_records};

/// A piece of the program that is fetched after the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Piece {
    /// The records of a chick, judging it, and the screen that says what is due.
    Due,
    /// Every other screen.
    Rest,
}

impl Piece {
    /// The piece that draws a route; `None` for what the first one draws.
    pub fn of(route: Route) -> Option<Self> {
        let is_due = route == Route::Now;
        (route != Route::Start).then_some(if is_due { Self::Due } else { Self::Rest })
    }
}

/// Draws the screen of a route.
type Draw = fn(Route) -> AnyView;

/// What the first piece calls of [`Piece::Due`].
#[derive(Debug, Clone, Copy)]
pub struct Due {
    /// Judges a chick.
    judge: Judge,
    /// Draws what is due.
    draw: Draw,
    /// Opens the records: [`open_records`].
    open: fn(AppState),
    /// Keeps the two copies together: [`keep_together`].
    pub keep_together: fn(AppState),
    /// Shows the made-up chick: [`AppState::show_demo`].
    show_demo: fn(AppState),
    /// What the first piece shows of it.
    parts: DueParts,
}

/// How far a piece is.
#[derive(Debug, Clone, Copy)]
enum Arrival {
    NotAsked,
    OnTheWay,
    Here(Draw),
    Failed,
}

/// The pieces of the running program, copied freely.
#[derive(Debug, Clone, Copy)]
pub struct Pieces {
    /// Comes with [`Piece::Due`].
    pub judge: RwSignal<Option<Judge>>,
    /// [`Piece::Due`], once it is here and has opened the records.
    pub of_due: RwSignal<Option<Due>>,
    /// Comes with [`Piece::Due`]: what the first piece shows of it.
    pub parts: LaterDueParts,
    /// Comes with [`Piece::Rest`]: the report of the chick on screen, with one tap.
    pub report: ReportPart,
    due: RwSignal<Arrival>,
    rest: RwSignal<Arrival>,
}

impl Pieces {
    /// Only the first piece is here.
    pub fn first_alone() -> Self {
        Self {
            judge: RwSignal::new(None),
            of_due: RwSignal::new(None),
            parts: RwSignal::new(None),
            report: ReportPart::new(),
            due: RwSignal::new(Arrival::NotAsked),
            rest: RwSignal::new(Arrival::NotAsked),
        }
    }

    /// The pieces of the app, from any component below it.
    pub fn here() -> Self {
        expect_context()
    }

    const fn arrival(self, piece: Piece) -> RwSignal<Arrival> {
        match piece {
            Piece::Due => self.due,
            Piece::Rest => self.rest,
        }
    }

    /// Fetches a piece, unless it is here or on the way. A failure is told where its screens would be.
    pub async fn fetch(self, state: AppState, piece: Piece) {
        let arrival = self.arrival(piece);
        match arrival.get_untracked() {
            Arrival::OnTheWay | Arrival::Here(_) => return,
            Arrival::NotAsked | Arrival::Failed => arrival.set(Arrival::OnTheWay),
        }
        let fetched = self.fetched(state, piece).await;
        arrival.set(fetched.map_or(Arrival::Failed, Arrival::Here));
    }

    /// Every screen of a chick judges it, so that the rest never comes without what is due.
    async fn fetched(self, state: AppState, piece: Piece) -> Result<Draw, SplitLoaderError> {
        let due = fetch_due().await?;
        if self.of_due.get_untracked().is_none() {
            (due.open)(state);
            self.judge.set(Some(due.judge));
            self.parts.set(Some(due.parts));
            self.of_due.set(Some(due));
        }
        match piece {
            Piece::Due => Ok(due.draw),
            Piece::Rest => {
                let (draw, report) = fetch_rest().await?;
                self.report.0.set(Some(report));
                Ok(draw)
            }
        }
    }

    /// Fetches what is not here yet.
    pub fn fetch_all(self, state: AppState) {
        spawn_local(self.fetch(state, Piece::Due));
        spawn_local(self.fetch(state, Piece::Rest));
    }

    /// Shows the made-up chick as soon as its piece is here.
    pub fn show_demo(self, state: AppState) {
        spawn_local(async move {
            self.fetch(state, Piece::Due).await;
            if let Some(due) = self.of_due.get_untracked() {
                (due.show_demo)(state);
            }
        });
    }

    /// The screen of a route, or what is to be said while its piece is not here.
    pub fn draw(self, piece: Piece, route: Route) -> AnyView {
        match self.arrival(piece).get() {
            Arrival::Here(draw) => draw(route),
            Arrival::NotAsked | Arrival::OnTheWay => {
                spawn_local(self.fetch(AppState::here(), piece));
                waiting().into_any()
            }
            Arrival::Failed => view! { {hidden_heading()} {self.failed(piece)} }.into_any(),
        }
    }

    /// That a piece could not be fetched, with the way to try again; nothing while that is not so.
    pub fn failure(self, piece: Piece) -> Option<AnyView> {
        let has_failed = matches!(self.arrival(piece).get(), Arrival::Failed);
        has_failed.then(|| self.failed(piece).into_any())
    }

    fn failed(self, piece: Piece) -> impl IntoView {
        let state = AppState::here();
        let say = state.language();
        let again = move |_| spawn_local(self.fetch(state, piece));
        view! {
            <section class="group" role="alert">
                <p>{say.piece_failed()}</p>
                {button(say.piece_again(), again)}
            </section>
        }
    }
}

fn waiting() -> impl IntoView {
    // The screen that comes in its place takes the focus as any new screen does.
    on_cleanup(|| set_timeout(platform::focus_heading, Duration::ZERO));
    view! {
        {hidden_heading()}
        <p class="hint" role="status">{AppState::here().language().piece_waiting()}</p>
    }
}

/// For those who read by headings, where the screen with its own is not here.
fn hidden_heading() -> impl IntoView {
    let name = AppState::here().language().app_name();
    view! { <h1 class="only-read" tabindex="-1">{name}</h1> }
}

/// Fetches [`Piece::Due`].
///
/// # Errors
/// [`SplitLoaderError`] when it cannot be fetched; the next call tries again.
#[allow(
    clippy::unnecessary_wraps,
    reason = "the macro adds the error of the fetch"
)]
#[wasm_split(due, wasm_split_path = leptos::wasm_split, fallible)]
fn fetch_due() -> Result<Due, SplitLoaderError> {
    Ok(Due {
        judge: judge_here,
        draw: |_| view! { <NowScreen /> }.into_any(),
        open: open_records,
        keep_together,
        show_demo: AppState::show_demo,
        parts: DueParts {
            chick_name: || view! { <ChickName /> }.into_any(),
            banners: || view! { <Banners /> }.into_any(),
            status_line: || view! { <StatusLine /> }.into_any(),
            places: || view! { <BottomBar /> }.into_any(),
            templates: || view! { <Templates /> }.into_any(),
        },
    })
}

/// Fetches [`Piece::Rest`].
///
/// # Errors
/// [`SplitLoaderError`] when it cannot be fetched; the next call tries again.
#[allow(
    clippy::unnecessary_wraps,
    reason = "the macro adds the error of the fetch"
)]
#[wasm_split(rest, wasm_split_path = leptos::wasm_split, fallible)]
fn fetch_rest() -> Result<(Draw, Part), SplitLoaderError> {
    let report: Part = || view! { <ReportButton has_file=true /> }.into_any();
    Ok((draw_rest, report))
}

fn draw_rest(route: Route) -> AnyView {
    match route {
        Route::Now | Route::Start => ().into_any(),
        Route::Wrong => view! { <WrongScreen /> }.into_any(),
        Route::Settings => view! { <SettingsScreen /> }.into_any(),
        Route::Chicks => view! { <ChicksScreen /> }.into_any(),
        Route::Chick => view! { <ChickScreen /> }.into_any(),
        Route::NewCard => view! { <NewCardScreen /> }.into_any(),
        Route::Breeder => view! { <DetailsScreen /> }.into_any(),
        Route::Reports => view! { <ReportsScreen /> }.into_any(),
        Route::TypeIn => view! { <FirstGroupsScreen /> }.into_any(),
        Route::WholePlan => view! { <TypeInScreen /> }.into_any(),
        Route::Import => view! { <ImportScreen /> }.into_any(),
        Route::Handover => view! { <HandoverScreen /> }.into_any(),
        Route::ForVet => view! { <ForVetScreen /> }.into_any(),
        Route::Weight => view! { <WeightScreen /> }.into_any(),
        Route::Weaning => view! { <WeaningScreen /> }.into_any(),
        Route::Journal => view! { <JournalScreen /> }.into_any(),
        Route::Weigh => view! { <WeighScreen /> }.into_any(),
        Route::Log(slot) => view! { <LogFeedScreen wanted=slot /> }.into_any(),
        Route::Guide => view! { <GuideScreen /> }.into_any(),
        Route::Home => view! { <HomeScreen /> }.into_any(),
        Route::FirstWeeks(card) => view! { <FirstWeeksScreen card /> }.into_any(),
        Route::Crop => view! { <CropScreen /> }.into_any(),
        Route::Droppings => view! { <DroppingsScreen /> }.into_any(),
        Route::Solids => view! { <SolidsScreen /> }.into_any(),
        Route::Plan => view! { <PlanScreen /> }.into_any(),
        Route::Sources(place) => view! { <SourcesScreen place /> }.into_any(),
    }
}
