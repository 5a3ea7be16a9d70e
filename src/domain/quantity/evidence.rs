//! Where a number comes from and how far it can be trusted.

/// How well founded a number is, strongest first.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// Published, and the figure was read in the source.
    Published,
    /// Published, quoted by another work or recalled, not read again.
    SecondHand,
    /// Common practice of the trade: many sources agree, no single authority.
    CommonPractice,
    /// Computed from numbers of better standing.
    Derived,
    /// Chosen by us, on the safe side; not tested on birds.
    Ours,
}

/// A number with its source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cited<T> {
    /// The number.
    pub value: T,
    /// How well founded it is.
    pub standing: Standing,
    /// Author, year and place, or how it was chosen.
    pub source: &'static str,
}

impl<T> Cited<T> {
    /// A number with its standing and source.
    pub const fn new(value: T, standing: Standing, source: &'static str) -> Self {
        Self {
            value,
            standing,
            source,
        }
    }
}
