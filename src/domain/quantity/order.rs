//! Putting lists in order.
//!
//! The standard library's sort is compiled anew for each type, 4 kB each time. Here positions are
//! sorted, by one sort for the whole program, and the items follow.

use std::cmp::Ordering;
use std::collections::BTreeSet;

/// The items in rising order; equal ones stay as they were.
pub fn sorted<T: Ord>(items: Vec<T>) -> Vec<T> {
    sorted_by(items, T::cmp)
}

/// The items in the order of `compare`; equal ones stay as they were.
pub fn sorted_by<T>(items: Vec<T>, compare: impl Fn(&T, &T) -> Ordering) -> Vec<T> {
    let order = positions(
        items.len(),
        &|one, other| match (items.get(one), items.get(other)) {
            (Some(one), Some(other)) => compare(one, other),
            (None, _) | (_, None) => Ordering::Equal,
        },
    );
    let mut items: Vec<Option<T>> = items.into_iter().map(Some).collect();
    order
        .into_iter()
        .filter_map(|place| items.get_mut(place)?.take())
        .collect()
}

/// A set of these items, filled one by one: gathering it would sort them first.
pub fn set_of<T: Ord>(items: impl IntoIterator<Item = T>) -> BTreeSet<T> {
    let mut set = BTreeSet::new();
    for item in items {
        set.insert(item);
    }
    set
}

fn positions(count: usize, compare: &dyn Fn(usize, usize) -> Ordering) -> Vec<usize> {
    let mut order: Vec<usize> = (0..count).collect();
    order.sort_by(|one, other| compare(*one, *other));
    order
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use crate::domain::quantity::order::{set_of, sorted, sorted_by};

    proptest! {
        #[test]
        fn the_order_is_that_of_the_standard_library(items in prop::collection::vec((0_u8..9, 0_u16..999), 0..60)) {
            let mut by_all = items.clone();
            by_all.sort_unstable();
            prop_assert_eq!(sorted(items.clone()), by_all);
            let mut by_first = items.clone();
            by_first.sort_by_key(|(first, _)| *first);
            let ours = sorted_by(items.clone(), |(one, _), (other, _)| one.cmp(other));
            prop_assert_eq!(ours, by_first);
            prop_assert_eq!(set_of(items.clone()), items.into_iter().collect());
        }
    }
}
