//! The three linear equations that a step of a growth fit solves.

/// One number for each fitted value: adult weight, rate, turn.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Three {
    pub(crate) adult: f64,
    pub(crate) rate: f64,
    pub(crate) turn: f64,
}

/// Sums of products of the slopes (`JᵀJ`), and of the slopes with what is left over.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Normal {
    pub(crate) adult: f64,
    pub(crate) rate: f64,
    pub(crate) turn: f64,
    pub(crate) adult_rate: f64,
    pub(crate) adult_turn: f64,
    pub(crate) rate_turn: f64,
    pub(crate) pull: Three,
    pub(crate) rss: f64,
}

/// Cholesky factor of a [`Normal`] with its diagonal scaled to 1 plus the damping.
pub(crate) struct Factor {
    scale: Three,
    first: f64,
    second: f64,
    third: f64,
    second_first: f64,
    third_first: f64,
    third_second: f64,
}

impl Normal {
    /// `None` when the slopes do not tell the three values apart.
    pub(crate) fn factored(&self, damping: f64) -> Option<Factor> {
        let scale = Three {
            adult: self.adult.sqrt(),
            rate: self.rate.sqrt(),
            turn: self.turn.sqrt(),
        };
        let diagonal = 1.0 + damping;
        let first = diagonal.sqrt();
        let second_first = self.adult_rate / (scale.adult * scale.rate) / first;
        let third_first = self.adult_turn / (scale.adult * scale.turn) / first;
        let second = (diagonal - second_first * second_first).sqrt();
        let cross = self.rate_turn / (scale.rate * scale.turn);
        let third_second = (cross - third_first * second_first) / second;
        let third = (diagonal - third_first * third_first - third_second * third_second).sqrt();
        // A square root of something negative, or a division by 0, ends here.
        (0.0 < second && 0.0 < third && third.is_finite()).then_some(Factor {
            scale,
            first,
            second,
            third,
            second_first,
            third_first,
            third_second,
        })
    }
}

impl Factor {
    pub(crate) fn solve(&self, right: Three) -> Three {
        let adult = right.adult / self.scale.adult / self.first;
        let rate = (right.rate / self.scale.rate - self.second_first * adult) / self.second;
        let turn =
            (right.turn / self.scale.turn - self.third_first * adult - self.third_second * rate)
                / self.third;
        let turn = turn / self.third;
        let rate = (rate - self.third_second * turn) / self.second;
        let adult = (adult - self.second_first * rate - self.third_first * turn) / self.first;
        Three {
            adult: adult / self.scale.adult,
            rate: rate / self.scale.rate,
            turn: turn / self.scale.turn,
        }
    }
}
