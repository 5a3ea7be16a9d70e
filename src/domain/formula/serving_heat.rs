//! Whether formula is at a safe temperature to feed, and whether a typed temperature is a slip.

use crate::domain::quantity::units::{Celsius, celsius_from_fahrenheit};

/// Warmest formula that may be fed, whatever a plan says, 41.0 C. Source: *Vet Times* 18 Feb 2019 (39 to
/// 41 C).
pub const WARMEST_C: f64 = 41.0;

/// Up to here, 41.5 C, stirring and waiting may do; above, feeding is blocked.
///
/// Standing: ours. 1.8 C below the burn limit, for thermometer error and uneven mixing.
pub const BLOCK_ABOVE_C: f64 = 41.5;

/// From here, 43.3 C (110 F), formula burns the crop. Source: Rivera 2008.
pub const BURN_C: f64 = 43.3;

/// Warm bath for a cup, 42 C. Source: breeders' common practice; the figure is ours.
pub const BATH_C: f64 = 42.0;

/// Hottest bath for a cup, 43.0 C. Ours: a hotter bath can take the edge of the cup over [`BURN_C`].
pub const BATH_AT_MOST_C: f64 = 43.0;

/// Slack on every limit, in kelvin: only for the rounding of a Fahrenheit conversion, so that
/// 105.8 F is 41.0 C. No thermometer shows as little.
const ROUNDING_C: f64 = 1e-6;

/// Formula temperatures that a keeper can meet, in Celsius: cold tap water to far too hot.
///
/// Standing: ours. Outside it a reading is taken for a slip of unit or of typing.
pub const FORMULA_C: (f64, f64) = (15.0, 65.0);

/// What a measured formula temperature means for feeding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ServingVerdict {
    /// Below the plan's window, or not a number: do not feed.
    TooCold,
    /// In the plan's window: feed.
    Good,
    /// Above it up to 41.5 C: stir, wait, measure again.
    Amber,
    /// Above 41.5 C: do not feed, let it cool.
    TooHot,
    /// From 43.3 C: burns the crop.
    BurnDanger,
}

impl ServingVerdict {
    /// Whether formula may be fed as it is.
    pub fn is_feedable(self) -> bool {
        match self {
            Self::Good => true,
            Self::TooCold | Self::Amber | Self::TooHot | Self::BurnDanger => false,
        }
    }
}

/// Temperatures at which a plan serves formula, in Celsius; never above [`WARMEST_C`].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Serving {
    /// Coldest.
    pub from_c: f64,
    /// Warmest.
    pub to_c: f64,
}

impl Serving {
    /// The window of a plan, capped.
    pub fn of(from: Celsius, to: Celsius) -> Self {
        let to_c = to.as_c().min(WARMEST_C);
        let from_c = from.as_c().min(to_c);
        Self { from_c, to_c }
    }

    /// What `temp_c` means for feeding.
    ///
    /// # Examples
    /// ```
    /// use perchlight::domain::formula::serving_heat::{Serving, ServingVerdict};
    /// let serving = Serving { from_c: 39.0, to_c: 40.5 };
    /// assert_eq!(serving.verdict(40.0), ServingVerdict::Good);
    /// assert_eq!(serving.verdict(43.3), ServingVerdict::BurnDanger);
    /// ```
    pub fn verdict(self, temp_c: f64) -> ServingVerdict {
        if BURN_C <= temp_c + ROUNDING_C {
            return ServingVerdict::BurnDanger;
        }
        if BLOCK_ABOVE_C + ROUNDING_C < temp_c {
            return ServingVerdict::TooHot;
        }
        if self.to_c + ROUNDING_C < temp_c {
            return ServingVerdict::Amber;
        }
        if self.from_c <= temp_c + ROUNDING_C {
            return ServingVerdict::Good;
        }
        ServingVerdict::TooCold
    }
}

/// The unit that a phone is set to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TemperatureUnit {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// How a typed formula temperature is understood.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TypedTemperature {
    /// Plausible in the unit that is set.
    AsSet {
        /// The temperature in Celsius.
        temp_c: f64,
    },
    /// Implausible as set, plausible in the other unit: ask before using it.
    ProbablyOther {
        /// The unit it is probably in.
        unit: TemperatureUnit,
        /// The temperature in Celsius if it is.
        temp_c: f64,
    },
    /// Implausible in either unit: refuse.
    Implausible,
}

/// How `given`, typed on a phone set to `unit`, is understood against [`FORMULA_C`].
///
/// # Examples
/// ```
/// use perchlight::domain::formula::serving_heat::{TemperatureUnit, TypedTemperature, typed_temperature};
/// let typed = typed_temperature(104.0, TemperatureUnit::Celsius);
/// let unit = TemperatureUnit::Fahrenheit;
/// assert_eq!(typed, TypedTemperature::ProbablyOther { unit, temp_c: 40.0 });
/// ```
pub fn typed_temperature(given: f64, unit: TemperatureUnit) -> TypedTemperature {
    let fahrenheit_c = celsius_from_fahrenheit(given);
    let (as_set_c, other, as_other_c) = match unit {
        TemperatureUnit::Celsius => (given, TemperatureUnit::Fahrenheit, fahrenheit_c),
        TemperatureUnit::Fahrenheit => (fahrenheit_c, TemperatureUnit::Celsius, given),
    };
    if is_formula(as_set_c) {
        return TypedTemperature::AsSet { temp_c: as_set_c };
    }
    if is_formula(as_other_c) {
        return TypedTemperature::ProbablyOther {
            unit: other,
            temp_c: as_other_c,
        };
    }
    TypedTemperature::Implausible
}

fn is_formula(temp_c: f64) -> bool {
    FORMULA_C.0 <= temp_c && temp_c <= FORMULA_C.1
}

#[cfg(test)]
mod tests {
    use crate::domain::formula::serving_heat::{
        Serving, ServingVerdict, TemperatureUnit, TypedTemperature, typed_temperature,
    };
    use crate::domain::quantity::units::{Celsius, celsius_from_fahrenheit};

    fn serving(from: i32, to: i32) -> Serving {
        Serving::of(Celsius::tenths_held(from), Celsius::tenths_held(to))
    }

    #[test]
    fn each_limit_holds_below_at_and_above() {
        for (temp_c, verdict) in [
            (-5.0, ServingVerdict::TooCold),
            (38.9, ServingVerdict::TooCold),
            (39.0, ServingVerdict::Good),
            (40.5, ServingVerdict::Good),
            (40.6, ServingVerdict::Amber),
            (41.5, ServingVerdict::Amber),
            (41.6, ServingVerdict::TooHot),
            (43.2, ServingVerdict::TooHot),
            (43.3, ServingVerdict::BurnDanger),
            (43.4, ServingVerdict::BurnDanger),
            (100.0, ServingVerdict::BurnDanger),
            (f64::NAN, ServingVerdict::TooCold),
        ] {
            assert_eq!(serving(390, 405).verdict(temp_c), verdict, "{temp_c} C");
        }
    }

    /// A plan of 37.0 to 37.8 C called a cup of 37.5 C too cold.
    #[test]
    fn a_plans_own_window_decides_what_is_cold() {
        for (temp_c, verdict) in [
            (36.9, ServingVerdict::TooCold),
            (37.0, ServingVerdict::Good),
            (37.8, ServingVerdict::Good),
            (37.9, ServingVerdict::Amber),
            (41.6, ServingVerdict::TooHot),
        ] {
            assert_eq!(serving(370, 378).verdict(temp_c), verdict, "{temp_c} C");
        }
    }

    #[test]
    fn no_plan_serves_above_forty_one_degrees() {
        for hot in [serving(400, 450), serving(420, 450)] {
            assert_eq!(hot.verdict(41.0), ServingVerdict::Good);
            assert_eq!(hot.verdict(41.1), ServingVerdict::Amber);
            assert_eq!(hot.verdict(41.6), ServingVerdict::TooHot);
        }
    }

    #[test]
    fn fahrenheit_readings_meet_the_same_limits() {
        // 100.4, 105.8, 106.7 F are 38.0, 41.0, 41.5 C; 110 F is 43.33 C.
        for (temp_f, verdict) in [
            (100.3, ServingVerdict::TooCold),
            (100.4, ServingVerdict::Good),
            (105.8, ServingVerdict::Good),
            (105.9, ServingVerdict::Amber),
            (106.7, ServingVerdict::Amber),
            (106.8, ServingVerdict::TooHot),
            (110.0, ServingVerdict::BurnDanger),
        ] {
            let temp_c = celsius_from_fahrenheit(temp_f);
            assert_eq!(serving(380, 410).verdict(temp_c), verdict, "{temp_f} F");
        }
    }

    #[test]
    fn only_the_window_may_be_fed() {
        let feedable = |temp_c| serving(380, 410).verdict(temp_c).is_feedable();
        assert!([38.0, 40.0, 41.0].into_iter().all(feedable));
        assert!(![37.9, 41.1, 41.6, 43.3].into_iter().any(feedable));
    }

    #[test]
    fn a_reading_in_the_other_unit_is_asked_about_and_never_taken_as_it_is() {
        let slip = |unit, temp_c| TypedTemperature::ProbablyOther { unit, temp_c };
        let celsius = |given| typed_temperature(given, TemperatureUnit::Celsius);
        let fahrenheit = |given| typed_temperature(given, TemperatureUnit::Fahrenheit);
        assert_eq!(celsius(104.0), slip(TemperatureUnit::Fahrenheit, 40.0));
        assert_eq!(fahrenheit(40.0), slip(TemperatureUnit::Celsius, 40.0));
        // 45 typed for 45 C on a Fahrenheit phone is 7 C as set: it must not pass as merely cold.
        assert_eq!(fahrenheit(45.0), slip(TemperatureUnit::Celsius, 45.0));
        assert_eq!(celsius(40.0), TypedTemperature::AsSet { temp_c: 40.0 });
        assert_eq!(fahrenheit(104.0), TypedTemperature::AsSet { temp_c: 40.0 });
    }

    #[test]
    fn the_plausible_range_holds_below_at_and_above() {
        let celsius = |given| typed_temperature(given, TemperatureUnit::Celsius);
        assert_eq!(celsius(14.9), TypedTemperature::Implausible);
        assert_eq!(celsius(15.0), TypedTemperature::AsSet { temp_c: 15.0 });
        assert_eq!(celsius(65.0), TypedTemperature::AsSet { temp_c: 65.0 });
        assert!(matches!(
            celsius(65.1),
            TypedTemperature::ProbablyOther { .. }
        ));
        // 149 F is 65 C.
        assert!(matches!(
            celsius(149.0),
            TypedTemperature::ProbablyOther { .. }
        ));
        assert_eq!(celsius(149.1), TypedTemperature::Implausible);
        assert_eq!(celsius(f64::NAN), TypedTemperature::Implausible);
    }
}
