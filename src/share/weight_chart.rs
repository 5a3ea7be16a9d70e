//! The weight chart as SVG text, drawn with plotters in the colours of the day theme.
//!
//! On screen the style sheet gives each colour its counterpart of the night theme, by attribute
//! selectors on the colours below. Titles and meanings stand beside the picture, in text.

use plotters::prelude::*;
use thiserror::Error;

/// Why a chart was not drawn.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum ChartError {
    /// Nothing to draw.
    #[error("the series has no reading")]
    NoReading,
    /// The drawing library refused.
    #[error("the chart could not be drawn: {0}")]
    Drawing(String),
}

/// Ink: axes, readings and their words.
const INK: RGBColor = RGBColor(0x1c, 0x2a, 0x30);
/// Soft ink: level, band and grid.
const INK_SOFT: RGBColor = RGBColor(0x55, 0x63, 0x6a);
/// The handover weight.
const LAMP: RGBColor = RGBColor(0x8a, 0x5a, 0x00);
/// The loss limit and the space below it.
const LIMIT: RGBColor = RGBColor(0xa8, 0x32, 0x1e);

/// What kind of reading a dot stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dot {
    /// Empty crop: a full dot.
    Empty,
    /// After a feed, with the food taken off, or with the crop not known: a hollow dot.
    AfterFeed,
    /// Doubted: a ringed dot.
    Doubted,
}

/// A range of weights at a time, for bands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Days since the start of the chart.
    pub day: f64,
    /// Lower end, grams.
    pub low: f64,
    /// Upper end, grams.
    pub high: f64,
}

/// What the chart shows. Times are days since the midnight that begins `first day`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct WeightChart {
    /// Readings: day, grams, kind.
    pub readings: Vec<(f64, f64, Dot)>,
    /// The level: day, grams.
    pub level: Vec<(f64, f64)>,
    /// The level's band.
    pub band: Vec<Span>,
    /// The forecast's fan.
    pub fan: Vec<Span>,
    /// Handover weight, grams.
    pub handover: Option<f64>,
    /// Weight at the loss limit, grams.
    pub limit: Option<f64>,
    /// Days on which a feed was dropped.
    pub drops: Vec<f64>,
    /// Last day of the chart.
    pub last_day: f64,
}

/// Least height of the chart, grams. Ours: its labels then lie at least 5 g apart, more than the tenth
/// of an ounce (2.8 g) or gram that they are written with, so that no two read the same.
const LEAST_RANGE_G: f64 = 30.0;
/// Least width, days. Ours: with at most five labels one is at least a day from the next.
const LEAST_DAYS: f64 = 5.0;
/// How far bands widen the chart beyond readings, handover weight and limit, as a share of the highest
/// of these. Ours: after long without a weighing a band spans anything, and would press all else flat.
const ROOM_FOR_BANDS: f64 = 0.25;

/// Width and height in the picture's own units.
pub const SIZE: (u32, u32) = (360, 280);

impl WeightChart {
    /// The chart as SVG text. `day_label` writes a day of the time axis, `weight_label` a weight.
    ///
    /// # Errors
    /// [`ChartError::NoReading`] without a reading; [`ChartError::Drawing`] when plotters refuses.
    pub fn to_svg(
        &self,
        day_label: &dyn Fn(i32) -> String,
        weight_label: &dyn Fn(f64) -> String,
    ) -> Result<String, ChartError> {
        if self.readings.is_empty() {
            return Err(ChartError::NoReading);
        }
        let mut svg = String::new();
        {
            let area = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
            self.draw(&area, day_label, weight_label)
                .map_err(|error| ChartError::Drawing(error.to_string()))?;
            area.present()
                .map_err(|error| ChartError::Drawing(error.to_string()))?;
        }
        Ok(svg)
    }

    fn draw(
        &self,
        area: &DrawingArea<SVGBackend<'_>, plotters::coord::Shift>,
        day_label: &dyn Fn(i32) -> String,
        weight_label: &dyn Fn(f64) -> String,
    ) -> Result<(), Box<dyn std::error::Error>> {
        let (low, high) = self.weight_range();
        let last_day = self.last_day.max(LEAST_DAYS);
        let mut chart = ChartBuilder::on(area)
            .margin(8)
            .margin_right(14)
            .x_label_area_size(26)
            .y_label_area_size(44)
            .build_cartesian_2d(0.0..last_day, low..high)?;
        chart
            .configure_mesh()
            .disable_x_mesh()
            .light_line_style(TRANSPARENT)
            .bold_line_style(INK_SOFT.mix(0.3))
            .axis_style(INK_SOFT)
            .label_style(("sans-serif", 12).into_font().color(&INK))
            .x_labels(5)
            .y_labels(6)
            .x_label_formatter(&|day| day_label(crate::domain::quantity::count::rounded(*day)))
            .y_label_formatter(&|grams| weight_label(*grams))
            .draw()?;
        if let Some(limit) = self.limit {
            chart.draw_series(hatching(last_day, low, limit))?;
            chart.draw_series([PathElement::new(
                vec![(0.0, limit), (last_day, limit)],
                LIMIT.stroke_width(2),
            )])?;
        }
        if let Some(handover) = self.handover {
            let line = DashedLineSeries::new(
                [(0.0, handover), (last_day, handover)],
                6,
                4,
                LAMP.stroke_width(2),
            );
            chart.draw_series(line)?;
        }
        for (spans, share) in [(&self.fan, 0.18), (&self.band, 0.32)] {
            if !spans.is_empty() {
                let outline = outline(spans, low, high);
                chart.draw_series([Polygon::new(outline, INK_SOFT.mix(share))])?;
            }
        }
        let level = self.level.iter();
        chart.draw_series(LineSeries::new(
            level.map(|(day, grams)| (*day, grams.max(low).min(high))),
            INK_SOFT.stroke_width(2),
        ))?;
        let drop_height = (high - low) * 0.05;
        let ticks = self.drops.iter().map(|day| {
            PathElement::new(
                vec![(*day, low), (*day, low + drop_height)],
                LAMP.stroke_width(4),
            )
        });
        chart.draw_series(ticks)?;
        for (day, grams, dot) in &self.readings {
            let place = (*day, *grams);
            match dot {
                Dot::Empty => chart.draw_series([Circle::new(place, 4, INK.filled())])?,
                Dot::AfterFeed => {
                    chart.draw_series([Circle::new(place, 4, INK.stroke_width(2))])?
                }
                Dot::Doubted => {
                    chart.draw_series([Circle::new(place, 7, INK.stroke_width(1))])?;
                    chart.draw_series([Circle::new(place, 3, INK.filled())])?
                }
            };
        }
        Ok(())
    }

    /// The lowest and highest weight shown: readings, handover weight and limit, the bands as far as
    /// [`ROOM_FOR_BANDS`] goes, and a tenth of room on both sides. Never below nothing.
    fn weight_range(&self) -> (f64, f64) {
        let widened = |(low, high): (f64, f64), grams: f64| (low.min(grams), high.max(grams));
        let readings = self.readings.iter().map(|(_, grams, _)| *grams);
        let all = readings.chain(self.handover).chain(self.limit);
        let (lowest, highest) = all.fold((f64::INFINITY, f64::NEG_INFINITY), widened);
        let most = highest * ROOM_FOR_BANDS;
        let spans = self.band.iter().chain(&self.fan);
        let ends = spans.flat_map(|span| [span.low, span.high]);
        let held = ends.map(|grams| grams.max(lowest - most).min(highest + most));
        let (low, high) = held.fold((lowest, highest), widened);
        let room = ((high - low) * 0.1).max((LEAST_RANGE_G - (high - low)) / 2.0);
        let low = (low - room).max(0.0);
        (low, (high + room).max(low + LEAST_RANGE_G))
    }
}

/// The outline of a band within the chart: along its lower end and back along its upper one.
fn outline(spans: &[Span], low: f64, high: f64) -> Vec<(f64, f64)> {
    let lower = spans.iter().map(|span| (span.day, span.low));
    let upper = spans.iter().rev().map(|span| (span.day, span.high));
    let ends = lower.chain(upper);
    ends.map(|(day, grams)| (day, grams.max(low).min(high)))
        .collect()
}

/// Slanted lines below the limit: the space is told apart without colour.
fn hatching(last_day: f64, low: f64, limit: f64) -> Vec<PathElement<(f64, f64)>> {
    let step = last_day / 24.0;
    let lines = (0..24).map(|index| {
        let left = f64::from(index) * step;
        PathElement::new(
            vec![(left, low), (left + step, limit)],
            LIMIT.mix(0.35).stroke_width(1),
        )
    });
    lines.collect()
}

#[cfg(test)]
mod tests {
    use crate::share::weight_chart::*;

    fn chart() -> WeightChart {
        WeightChart {
            readings: vec![
                (0.3, 1_040.0, Dot::Empty),
                (1.3, 1_030.0, Dot::AfterFeed),
                (2.3, 1_025.0, Dot::Doubted),
            ],
            handover: Some(1_040.0),
            limit: Some(936.0),
            last_day: 5.0,
            ..WeightChart::default()
        }
    }

    fn svg(chart: &WeightChart) -> String {
        chart
            .to_svg(&|day| day.to_string(), &|grams| format!("{grams:.0}"))
            .unwrap()
    }

    #[test]
    fn each_reading_is_drawn_once_and_a_doubted_one_is_ringed() {
        assert_eq!(svg(&chart()).matches("<circle").count(), 4);
    }

    /// The labels of an axis: plotters writes each as a text element, those of the days below the rest.
    fn labels(svg: &str) -> (Vec<String>, Vec<String>) {
        let texts = svg.split("<text ").skip(1).map(|text| {
            let (_, after) = text.split_once(" y=\"").unwrap();
            let height: u32 = after.split('"').next().unwrap().parse().unwrap();
            let (_, words) = text.split_once('>').unwrap();
            (height, words.split('<').next().unwrap().trim().to_owned())
        });
        let (days, weights) = texts.partition::<Vec<_>, _>(|(height, _)| SIZE.1 - 26 < *height);
        let words =
            |labels: Vec<(u32, String)>| labels.into_iter().map(|(_, words)| words).collect();
        (words(days), words(weights))
    }

    fn assert_readable(chart: &WeightChart, gram_per_unit: f64) {
        let svg = chart
            .to_svg(&|day| day.to_string(), &|grams| {
                format!("{:.1}", grams.max(0.0) / gram_per_unit)
            })
            .unwrap();
        let (days, weights) = labels(&svg);
        for labels in [days, weights] {
            assert!((2..=6).contains(&labels.len()), "{labels:?}");
            let distinct: std::collections::BTreeSet<&String> = labels.iter().collect();
            assert_eq!(distinct.len(), labels.len(), "{labels:?}");
        }
    }

    #[test]
    fn no_two_labels_of_an_axis_are_the_same() {
        // 1 g, and 1 oz avoirdupois = 28.349523125 g (exact by the international yard and pound of 1959).
        for unit in [1.0, 28.349_523_125] {
            assert_readable(&chart(), unit);
            for grams in [0.5, 30.0, 90.0, 1_040.0, 2_500.0] {
                for last_day in [0.0, 1.0, 2.0, 7.0, 40.0, 400.0] {
                    let one = WeightChart {
                        readings: vec![(0.3, grams, Dot::Empty)],
                        last_day,
                        ..WeightChart::default()
                    };
                    assert_readable(&one, unit);
                }
            }
        }
    }

    #[test]
    fn a_year_without_a_weighing_leaves_the_readings_room_and_no_weight_below_nothing() {
        let span = |day: f64, half: f64| Span {
            day,
            low: 1_030.0 - half,
            high: 1_030.0 + half,
        };
        let year = WeightChart {
            band: vec![span(0.3, 10.0), span(2.3, 9.0)],
            fan: vec![span(2.3, 9.0), span(365.0, 6_000.0)],
            last_day: 368.0,
            ..chart()
        };
        assert_readable(&year, 1.0);
        assert_readable(&year, 28.349_523_125);
        let (low, high) = year.weight_range();
        assert!(0.0 <= low, "{low}");
        // From the limit of 936 g to the handover weight of 1040 g lie 104 g; a tenth of the chart is 28 px.
        assert!(0.1 <= 104.0 / (high - low), "{low} to {high}");
    }

    #[test]
    fn the_picture_holds_no_style_and_no_script() {
        let svg = svg(&chart());
        assert!(!svg.contains("style=") && !svg.contains("<script"));
    }

    #[test]
    fn a_chart_without_a_reading_is_refused() {
        let empty = WeightChart::default();
        assert_eq!(
            empty.to_svg(&|_| String::new(), &|_| String::new()),
            Err(ChartError::NoReading)
        );
    }
}
