//! Law 11: every illness of the simulator ends in a call before a fifth of the weight is gone, or at
//! the first weighing after two missed mornings.

use crate::laws::law;
use crate::simulator::chances::Chances;
use crate::simulator::habit::Habit;
use crate::simulator::life::{Bird, Fate, Life, Speed};
use crate::simulator::watch::{Notes, Way, watch};

/// Made-up chicks for each pace of illness.
const CHICKS: u32 = 60;
const SEED: u64 = 11;

#[test]
fn every_illness_ends_in_a_call_before_a_fifth_is_lost() {
    for speed in [Speed::Fast, Speed::Middling, Speed::Slow] {
        for number in 0..CHICKS {
            let fate = Fate::FallsIll(speed);
            let life = Life::drawn(fate, Bird::Macaw, &mut Chances::of(SEED, number));
            let watched = watch(
                (fate, Bird::Macaw),
                Habit::Misses,
                Notes::Full,
                &mut Chances::of(SEED, number),
            );
            let onset = usize::try_from(life.onset.unwrap()).unwrap();
            let well = life.grams[onset];
            let called = watched
                .calls(Way::Perchlight)
                .iter()
                .skip(onset)
                .position(|rings| *rings);
            let called = called.map_or(life.grams.len() - 1, |place| onset + 1 + place);
            let lost = 1.0 - life.grams[called] / well;
            // The morning of the call may follow two that were missed: what is lost in them is not held
            // against the judge.
            let two_before = called.saturating_sub(2).max(onset);
            let lost_before = 1.0 - life.grams[two_before] / well;
            law(11, lost < 0.2 || lost_before < 0.2, || {
                format!(
                    "{speed:?}, chick {number}: {:.0} % lost on day {called}",
                    100.0 * lost
                )
            });
        }
    }
}
