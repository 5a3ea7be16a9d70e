//! The one place where a count becomes a float.

/// A count as a float, exact below 2^53.
///
/// # Examples
/// ```
/// assert_eq!(perchlight::domain::quantity::count::as_f64(3), 3.0);
/// ```
pub fn as_f64(count: usize) -> f64 {
    #[expect(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        reason = "std offers no lossless conversion; counts here stay far below 2^53"
    )]
    let value = count as f64;
    value
}

/// A float rounded half away from zero to a whole number, held within `i32`; not a number gives 0.
pub fn rounded(value: f64) -> i32 {
    #[expect(
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        reason = "float to integer `as` saturates and maps NaN to 0, which is what is wanted"
    )]
    let whole = value.round() as i32;
    whole
}

/// A float cut down to a whole number, held within `i64`; not a number gives 0.
pub fn whole(value: f64) -> i64 {
    #[expect(
        clippy::as_conversions,
        clippy::cast_possible_truncation,
        reason = "float to integer `as` saturates and maps NaN to 0, which is what is wanted"
    )]
    let whole = value.floor() as i64;
    whole
}

/// Seconds as a float, exact below 2^53.
pub fn seconds_as_f64(seconds: i64) -> f64 {
    #[expect(
        clippy::as_conversions,
        clippy::cast_precision_loss,
        reason = "std offers no lossless conversion; seconds since 1970 stay far below 2^53"
    )]
    let value = seconds as f64;
    value
}
