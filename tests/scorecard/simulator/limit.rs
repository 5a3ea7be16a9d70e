//! The limit: a judge who knows what nobody can know, from weights alone.
//!
//! It knows the healthy curve, the wandering of a day, the scale's noise and the pace of the illness it looks
//! for; only not whether and when it began. For each start it holds the ratio of the likelihoods with and without
//! the fall, and rings when the largest passes a threshold: no judge that sees one reading a morning does better but
//! for little.

/// Wandering of a day, as in the life of a chick: a standard deviation, and what of it is left on the next day.
const WANDER: f64 = 0.005;
const LEFT: f64 = 0.5;

/// The largest logarithm of the ratio after each morning, for a fall of so large a share a day.
pub(crate) fn ln_ratios(off: &[Option<f64>], noise: f64, a_day: f64) -> Vec<f64> {
    let stays = WANDER * WANDER;
    let (mut level, mut level_var) = (0.0, stays);
    // What the filter has followed of a fall, its length in days, and its ratio, for each start.
    let mut starts: Vec<(f64, f64, f64)> = Vec::new();
    let mut ratios = Vec::new();
    for read in off {
        level *= LEFT;
        level_var = LEFT * LEFT * level_var + (1.0 - LEFT * LEFT) * stays;
        starts.push((0.0, 0.0, 0.0));
        for (followed, days, _) in &mut starts {
            *followed *= LEFT;
            *days += 1.0;
        }
        if let Some(off) = read {
            let var = level_var + noise * noise;
            let gain = level_var / var;
            let surprise = off - level;
            for (followed, days, ratio) in &mut starts {
                let share = -a_day * *days - *followed;
                *ratio += share * surprise / var - share * share / (2.0 * var);
                *followed += gain * share;
            }
            level += gain * surprise;
            level_var *= 1.0 - gain;
        }
        ratios.push(starts.iter().map(|start| start.2).fold(f64::MIN, f64::max));
    }
    ratios
}
