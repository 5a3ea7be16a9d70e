//! Words for a growing chick beside the growth of its species.

use crate::domain::quantity::count::rounded;
use crate::domain::quantity::units::Grams;
use crate::domain::weight::trend::WeightTrend;
use crate::words::Language;
use crate::words::format::Writing;

impl Writing {
    /// Where a growing chick stands against the curve of its species; `None` once it should be grown.
    pub fn growth(self, trend: &WeightTrend) -> Option<String> {
        let stand = trend.growth.filter(|stand| stand.is_growing)?;
        let level_g = trend.now?.grams;
        let mass = |grams: f64| self.mass(Grams::tenths_held(rounded(grams) * 10));
        let (level, expected) = (mass(level_g), mass(stand.expected_g));
        let (low, high) = (mass(stand.low_g), mass(stand.high_g));
        let pct = self.pct(100.0 * level_g / stand.expected_g);
        let age = self.days(rounded(stand.age_days.floor()));
        let gain = mass(stand.wanted_g_per_day);
        Some(match self.language {
            Language::English => format!(
                "Growth: {level} at {age} is {pct} of its species\u{2019} curve, {expected} ({low} for the lightest adults, {high} for the heaviest). Scaled to this chick, the curve now rises by {gain} a day. Our own curve, not tested on birds: a published growth constant (AnAge) from an assumed weight at hatching. Breeder and avian vet decide."
            ),
            Language::Spanish => format!(
                "Crecimiento: {level} con {age} es el {pct} de la curva de su especie, {expected} ({low} para los adultos más ligeros, {high} para los más pesados). Ajustada a este polluelo, la curva sube ahora {gain} al día. Curva propia, sin probar en aves: una constante de crecimiento publicada (AnAge) desde un peso al nacer supuesto. Deciden el criador y el veterinario de aves."
            ),
        })
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::{Change, ChickId, CropAtWeighing};
    use crate::domain::journal::scenario::Scenario;
    use crate::domain::plan::care_plan::CarePlan;
    use crate::domain::plan::species::Species;
    use crate::domain::time::moment::{Day, Offset};
    use crate::domain::weight::trend::weight_trend;
    use crate::words::growth::*;

    fn growth(day: i32, grams: &[(i32, i32)]) -> Option<String> {
        let hatched = Day::from_date(2026, 9, 1).unwrap();
        let mut plan = CarePlan::default_for(Species::GreenWingedMacaw);
        plan.hatched = Some(hatched);
        let mut script = Scenario::new(ChickId([9; 12]), plan, hatched, Offset::UTC);
        for (day, grams) in grams {
            let (weight, crop) = (Grams::whole(*grams), CropAtWeighing::Empty);
            script.note(*day, 0, 0, Change::Weighed { weight, crop });
        }
        let trend = weight_trend(script.at(day, 0, 0), &script.chick().unwrap());
        let text = Writing::metric(Language::English).growth(&trend)?;
        Some(text.replace('\u{a0}', " "))
    }

    /// Green-winged: 1220 g, 24 g at hatching, 0.112 a day, so the turn is at ln(1196 / 24) / 0.112 =
    /// 34.90 days; at 42 days the share is 1 / (1 + exp(-0.112 x 7.10)) = 0.689, 841 g.
    #[test]
    fn a_growing_chick_is_held_against_its_species_and_says_whose_figure_it_is() {
        // On nine tenths of the curve throughout: 385 and 841 g at 28 and 42 days.
        let text = growth(42, &[(28, 347), (35, 553), (42, 757)]).unwrap();
        assert!(text.contains(" at 42 days is "), "{text}");
        assert!(text.contains("curve, 841 g ("), "{text}");
        // 0.9 x 1220 x 0.112 x 0.689 x 0.311 = 26.3 g a day.
        assert!(text.contains("rises by 26 g a day"), "{text}");
        assert!(text.contains("published growth constant (AnAge)"), "{text}");
    }

    #[test]
    fn a_grown_chick_is_not_held_against_a_curve() {
        // 95 % of the adult weight is 1,159 g, reached by the curve at 61.2 days.
        assert_eq!(growth(62, &[(62, 1_000)]), None);
        assert_eq!(growth(61, &[(61, 1_200)]), None);
    }
}
