//! Who holds this phone: asked when the records of a chick came in that it did not know.

use leptos::prelude::*;

use crate::domain::journal::carers::carers;
use crate::domain::journal::entries::ChickId;
use crate::store::setting::Setting;
use crate::ui::clock;
use crate::ui::parts::button::button;
use crate::ui::parts::field::{Field, FieldKind};
use crate::ui::state::AppState;

/// The question, with a name for the journal. Until it is answered the phone counts down and warns, so that nothing
/// is missed.
pub fn role_asked(state: AppState, id: ChickId) -> impl IntoView {
    let writing = state.writing_now();
    let say = writing.language;
    let name = RwSignal::new(state.copies.carer());
    let answered = move |said: &str| {
        state.set_of_phone(Setting::AskRole, id, None);
        state.say(said.to_owned(), Vec::new());
    };
    let both = move |_| {
        state.copies.remember_carer(&name.get_untracked());
        answered(say.life_role_both_said());
    };
    let mine = move |_| {
        let typed = name.get_untracked();
        let noted = state
            .journal
            .with_untracked(|journal| carers(journal, id).into_iter().next());
        let known = Some(typed).filter(|typed| !typed.trim().is_empty());
        state
            .copies
            .remember_carer(&known.or(noted).unwrap_or_default());
        answered(say.life_role_mine_said());
    };
    let follow = move |_| {
        state.set_of_phone(Setting::Followed, id, Some(clock::now()));
        answered(say.life_followed_hint());
    };
    view! {
        <section class="question" data-ask="role">
            <h2>{say.life_role_asked()}</h2>
            <p>{writing.about(say.life_role_asked_hint(), &state.name_of(id))}</p>
            <Field id="role-name" label=say.life_role_name() kind=FieldKind::Text text=name hint=say.optional() />
            <div class="acts">
                {button(say.life_role_both(), both)}
                {button(say.life_role_mine(), mine)}
                {button(say.life_role_follow(), follow)}
            </div>
        </section>
    }
}
