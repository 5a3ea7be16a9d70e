//! When a falling weight reaches the loss limit at its present pace.

use crate::domain::quantity::count;
use crate::domain::statistics::kalman::Estimate;
use crate::domain::time::moment::Moment;

/// The crossing is told at most this many days ahead. Ours: the pace says nothing of later weeks.
pub const MOST_DAYS: f64 = 14.0;

/// Standard deviations below which nine tenths of a normal distribution lie.
///
/// Source: NIST/SEMATECH e-Handbook 1.3.6.7.1 (1.282); the digits are the exact quantile of 0.9.
const Z_90: f64 = 1.281_551_565_544_600_4;

/// When the level reaches the limit if the pace stays what it is. Eight chances of ten lie between
/// earliest and latest: level and pace are known only so well.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Crossing {
    /// From here on the chance of being below the limit is at least one in ten; may be now.
    pub earliest: Moment,
    /// When the most likely level meets the limit.
    pub likely: Moment,
    /// From here on the chance is at least nine in ten; `None` when that is not so in [`MOST_DAYS`].
    pub latest: Option<Moment>,
}

/// When the level of `today`, as it is known at `now`, crosses a limit in grams.
///
/// `None` when the level does not fall, lies at or below the limit already, or would need more than
/// [`MOST_DAYS`].
///
/// # Formula
/// With `a` grams left to the limit, a fall of `b` a day and their variances, the days `t` solve
/// `(a - b t)² = z² (var a + 2 t cov + t² var b)`, a quadratic.
///
/// Source: Fieller (1954), Journal of the Royal Statistical Society B 16:175; from memory.
pub fn crossing(now: Moment, today: &Estimate, limit_g: f64) -> Option<Crossing> {
    let slope = today.slope?;
    let (left, fall) = (today.level_g - limit_g, -slope.g_per_day);
    if fall <= 0.0 || left <= 0.0 || MOST_DAYS < left / fall {
        return None;
    }
    let z_square = Z_90 * Z_90;
    let square = fall * fall - z_square * slope.var;
    let half = left * fall + z_square * slope.level_cov;
    let constant = left * left - z_square * today.level_var;
    // At `left / fall` days the quadratic is at or below 0, so there are roots.
    let sum = half + (half * half - square * constant).max(0.0).sqrt();
    let moment = |days: f64| now.plus_seconds(count::whole(days * 86_400.0));
    Some(Crossing {
        earliest: moment((constant / sum).clamp(0.0, left / fall)),
        likely: moment(left / fall),
        latest: (sum <= MOST_DAYS * square).then(|| moment(sum / square)),
    })
}

#[cfg(test)]
mod tests {
    use crate::domain::statistics::kalman::Slope;
    use crate::domain::weight::crossing::*;

    const NOW: Moment = Moment::from_seconds(1_790_000_000);

    /// 24 g above a limit of 936 g, falling 10 g a day; standard deviations 8 g and 2 g a day.
    fn falling() -> Estimate {
        Estimate {
            level_g: 960.0,
            level_var: 64.0,
            slope: Some(Slope {
                g_per_day: -10.0,
                var: 4.0,
                level_cov: 5.0,
            }),
        }
    }

    fn days(moment: Moment) -> f64 {
        moment.days_since(NOW)
    }

    #[test]
    fn one_in_ten_lies_before_the_earliest_and_after_the_latest() {
        let found = crossing(NOW, &falling(), 936.0).unwrap();
        assert!((days(found.likely) - 2.4).abs() < 1e-4);
        // How far the limit lies above the level then, in standard deviations; 1.2816 hold 90 %.
        let above = |at: Moment| {
            let t = days(at);
            (936.0 - (960.0 - 10.0 * t)) / (64.0 + 10.0 * t + 4.0 * t * t).sqrt()
        };
        assert!((above(found.earliest) + 1.281_6).abs() < 1e-3);
        assert!((above(found.latest.unwrap()) - 1.281_6).abs() < 1e-3);
    }

    #[test]
    fn a_level_close_to_the_limit_may_cross_it_now() {
        // 10 g are 1.25 standard deviations of 8 g, just inside the 1.28.
        let found = crossing(NOW, &falling(), 950.0).unwrap();
        assert_eq!(found.earliest, NOW);
        assert!(found.likely < found.latest.unwrap());
    }

    #[test]
    fn a_pace_that_may_be_none_leaves_the_latest_day_open() {
        // 10 g a day are 1.25 standard deviations of 8 g a day: one chance in ten that it rises.
        let mut vague = falling();
        vague.slope = vague.slope.map(|slope| Slope { var: 64.0, ..slope });
        let found = crossing(NOW, &vague, 936.0).unwrap();
        assert_eq!(found.latest, None);
        assert!(NOW < found.earliest && found.earliest < found.likely);
    }

    #[test]
    fn no_fall_no_room_or_no_time_make_no_crossing() {
        let falling = falling();
        assert_eq!(crossing(NOW, &falling, 960.0), None);
        assert!(crossing(NOW, &falling, 959.0).is_some());
        // 14 days at 10 g a day are 140 g.
        assert!(crossing(NOW, &falling, 820.0).is_some());
        assert_eq!(crossing(NOW, &falling, 819.0), None);
        let mut steady = falling;
        steady.slope = steady.slope.map(|slope| Slope {
            g_per_day: 0.0,
            ..slope
        });
        assert_eq!(crossing(NOW, &steady, 936.0), None);
        assert_eq!(
            crossing(
                NOW,
                &Estimate {
                    slope: None,
                    ..falling
                },
                936.0
            ),
            None
        );
    }
}
