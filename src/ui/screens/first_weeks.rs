//! First weeks: what is for today, every card by search, and one card.

use leptos::prelude::*;

use crate::domain::homecoming::first_weeks::{Card, for_today};
use crate::ui::parts::card_drawing::CardDrawing;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::parts::live::live;
use crate::ui::parts::page::Page;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// What is searched for among the cards; kept beside the screens, so that it is there again after a card.
#[derive(Debug, Clone, Copy)]
pub struct CardSearch(RwSignal<String>);

impl CardSearch {
    /// Gives every screen the one place for it.
    pub fn provide() {
        provide_context(Self(RwSignal::new(String::new())));
    }
}

/// The cards of the first weeks, or one of them.
#[component]
pub fn FirstWeeksScreen(
    /// The card that is open.
    card: Option<Card>,
) -> impl IntoView {
    match card {
        Some(card) => view! { <OneCard card /> }.into_any(),
        None => view! { <CardList /> }.into_any(),
    }
}

#[component]
fn CardList() -> impl IntoView {
    let state = AppState::here();
    let writing = state.writing_now();
    let say = writing.language;
    let kept = use_context::<CardSearch>().map(|search| search.0);
    let typed = kept.unwrap_or_else(|| RwSignal::new(String::new()));
    let back = if state.chick.get_untracked().is_some() {
        Route::Now
    } else {
        Route::Start
    };
    let today = Memo::new(move |_| {
        let outlook = state.outlook.get();
        outlook.map_or_else(Vec::new, |outlook| {
            let zone = state.zone;
            zone.with(|zone| for_today(outlook.now, &outlook.chick, zone))
        })
    });
    let today = live(move || {
        let cards = today.get();
        (!cards.is_empty()).then(|| {
            view! {
                <section class="sign-group">
                    <h2>{say.weeks_today()}</h2>
                    {card_links(&cards)}
                </section>
            }
        })
    });
    let found = Memo::new(move |_| typed.with(|typed| writing.cards_found(typed)));
    let none = live(move || found.with(Vec::is_empty).then(|| say.journal_no_match()));
    view! {
        <Page title=say.weeks_title() back>
            <p class="hint">{say.weeks_breeder_first()}</p>
            {today}
            <section class="sign-group">
                <h2>{say.weeks_all()}</h2>
                <Field id="card-search" label=say.weeks_search() kind=FieldKind::Text text=typed />
                <p role="status">{none}</p>
                {move || found.with(|cards| card_links(cards))}
            </section>
        </Page>
    }
}

/// A list of cards by their titles.
pub fn card_links(cards: &[Card]) -> impl IntoView + use<> {
    let say = AppState::here().language();
    let links = cards.iter().map(|card| {
        let place = Route::FirstWeeks(Some(*card)).to_hash();
        view! { <li><a class="sign" href=place>{say.card_title(*card)}</a></li> }
    });
    view! { <ul>{links.collect_view()}</ul> }
}

/// Its heading takes the focus, as that of every screen does.
#[component]
fn OneCard(card: Card) -> impl IntoView {
    let writing = AppState::here().writing_now();
    let say = writing.language;
    let lines = writing.card_lines(card).into_iter();
    let lines = lines.map(|line| view! { <li>{line}</li> }).collect_view();
    let picture = card
        .picture()
        .map(|picture| view! { <CardDrawing picture /> });
    view! {
        <Page title=say.card_title(card) back=Route::FirstWeeks(None)>
            {picture}
            <ul class="plain-list">{lines}</ul>
            <details class="group">
                <summary>{say.weeks_from()}</summary>
                <p>{say.card_from(card)}</p>
                <p>{say.weeks_breeder_first()}</p>
            </details>
        </Page>
    }
}
