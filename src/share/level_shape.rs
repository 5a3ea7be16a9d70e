//! The shape and the colour of a level, in pictures that leave the phone as on its screen.

use crate::domain::warnings::level::Level;

/// The outline of a level's shape in a box of 24.
pub const fn level_shape(level: Level) -> &'static str {
    match level {
        Level::Settled => {
            "M12 3a9 9 0 1 0 0 18a9 9 0 1 0 0-18zM12 7a5 5 0 1 1 0 10a5 5 0 1 1 0-10z"
        }
        Level::Watch => "M2 15a10 10 0 0 1 20 0z",
        Level::CallBreeder => "M12 1L23 12L12 23L1 12z",
        Level::VetToday => "M12 2L23 21H1z",
        Level::Emergency => "M8 1.5h8L22.5 8v8L16 22.5H8L1.5 16V8z",
    }
}

/// The colour of a level on paper, as in the day theme.
pub const fn level_colour(level: Level) -> &'static str {
    match level {
        Level::Settled => "#2C6B48",
        Level::Watch => "#2B5F93",
        Level::CallBreeder => "#A34C00",
        Level::VetToday => "#B23A16",
        Level::Emergency => "#A51D2D",
    }
}
