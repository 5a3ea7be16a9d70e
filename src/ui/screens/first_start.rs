//! The first screen: a card, typing it in, a made-up chick, or what the first weeks ask of an owner.

use leptos::prelude::*;

use crate::domain::journal::chick::Chick;
use crate::ui::parts::button::button;
use crate::ui::parts::later::DueParts;
use crate::ui::parts::page::Heading;
use crate::ui::platform;
use crate::ui::route::Route;
use crate::ui::state::AppState;

/// The ways in, and what can be read with no chick entered at all.
#[component]
pub fn StartScreen(
    /// Shows the made-up chick.
    demo: impl Fn() + 'static,
    /// What is to be said when the made-up chick cannot be shown.
    failure: impl Fn() -> Option<AnyView> + Send + 'static,
) -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let ways = [
        (Route::Import, say.start_card(), say.start_card_hint()),
        (Route::TypeIn, say.start_type(), say.start_type_hint()),
        (Route::Import, say.start_backup(), say.start_backup_hint()),
    ];
    let ways = ways.map(|(route, title, hint)| {
        view! {
            <a class="way" href=route.to_hash()>
                <span class="way__title">{title}</span>
                <span class="way__hint">{hint}</span>
            </a>
        }
    });
    view! {
        <div class="start">
            <Heading text=say.start_title() />
            <p class="start__tagline">{say.tagline()}</p>
            <Caution />
            {ways.collect_view()}
            {|| DueParts::draw(|due| due.templates)}
            <a class="way" href=Route::Breeder.to_hash()>
                <span class="way__title">{say.start_breeder()}</span>
                <span class="way__hint">{say.start_breeder_hint()}</span>
            </a>
            <button type="button" class="way" on:click=move |_| demo()>
                <span class="way__title">{say.start_demo()}</span>
                <span class="way__hint">{say.start_demo_hint()}</span>
            </button>
            {failure}
            <a class="way" href=Route::FirstWeeks(None).to_hash()>
                <span class="way__title">{say.weeks_title()}</span>
                <span class="way__hint">{say.start_weeks_hint()}</span>
            </a>
            {platform::is_iphone().then(|| view! { <p class="hint">{say.settings_install_text()}</p> })}
        </div>
    }
}

/// For breeders: the cards on this phone that a new one can start from.
#[component]
pub fn Templates() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let shown = untrack(|| state.chicks());
    let buttons = state.journal.with_untracked(|journal| {
        let chicks = shown.into_iter();
        let named = chicks.filter_map(|id| Some((id, Chick::from_journal(journal, id)?.plan.name)));
        let buttons = named.map(|(id, name)| button(name, move |_| state.start_from(id)));
        buttons.collect::<Vec<_>>()
    });
    let has_any = !buttons.is_empty() && !state.is_demo.get_untracked();
    has_any.then(|| {
        view! {
            <section class="group" aria-labelledby="templates">
                <h2 id="templates">{say.start_template()}</h2>
                <div class="acts">{buttons}</div>
                <p class="hint">{say.handover_template_hint()}</p>
            </section>
        }
    })
}

/// The plain caution, accepted once and always reachable.
#[component]
pub fn Caution() -> impl IntoView {
    let state = AppState::here();
    let say = state.language();
    let is_accepted = RwSignal::new(state.copies.is_caution_accepted());
    let accept = move |_| {
        state.copies.accept_caution();
        is_accepted.set(true);
    };
    view! {
        <section class="caution" aria-labelledby="caution-title">
            <details open=move || !is_accepted.get()>
                <summary><h2 id="caution-title">{say.caution_title()}</h2></summary>
                <p>{say.caution_text()}</p>
            </details>
            {move || {
                (!is_accepted.get())
                    .then(|| button(say.caution_accept(), accept))
            }}
        </section>
    }
}
