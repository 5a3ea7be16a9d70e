//! The weight chart as SVG text, drawn with plotters in the colours of the day theme.
//!
//! On screen the style sheet gives each colour its counterpart of the night theme, by attribute
//! selectors on the colours below. Lines and the last reading are named where they end, with a halo of
//! the paper; what the picture means stands beside it, in text.

use plotters::coord::types::RangedCoordf64;
use plotters::prelude::*;
use thiserror::Error;

use crate::share::markup::escape;

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
/// The loss limit and the space below it.
const LIMIT: RGBColor = RGBColor(0xa3, 0x4c, 0x00);

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
    /// Weight at which somebody is to be called, grams.
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

/// Width and height in the picture's own units: its width on a phone of 360 px, so that a unit is a
/// pixel there.
pub const SIZE: (u32, u32) = (312, 272);
/// Height of the letters, in the picture's own units.
const LETTERS: f64 = 15.0;
/// What plotters divides the size of letters by before it writes it.
const PLOTTERS_LETTERS: f64 = 1.24;
/// Width of a letter as a share of its height, for the room that a name takes. Ours, for plain fonts.
const LETTER_WIDTH: f64 = 0.56;
/// Room of the names of days below the chart.
const DAYS_HEIGHT: u32 = 32;
/// How many of the last readings are drawn larger: today's and what it is compared with. Ours.
const LARGER: usize = 3;

/// Writes a day of the time axis, counted from the first one.
pub type WriteDay<'a> = &'a dyn Fn(i32) -> String;
/// Writes a weight in grams, without its unit.
pub type WriteWeight<'a> = &'a dyn Fn(f64) -> String;

/// What is named on the chart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChartNames {
    /// The unit, on the axis of weights.
    pub unit: &'static str,
    /// Names the handover weight.
    pub handover: String,
    /// Names the limit.
    pub limit: String,
    /// The last reading.
    pub last: String,
}

/// A drawn chart.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawn {
    /// The SVG text.
    pub svg: String,
    /// Where each reading stands, in the picture's own units, in the order of the readings.
    pub places: Vec<(f64, f64)>,
}

/// Where the drawing ends, in its own units.
struct Edges {
    left: f64,
    right: f64,
    bottom: f64,
    handover: Option<f64>,
    limit: Option<f64>,
    drops: Vec<f64>,
    places: Vec<(f64, f64)>,
}

impl WeightChart {
    /// The chart as SVG text.
    ///
    /// # Errors
    /// [`ChartError::NoReading`] without a reading; [`ChartError::Drawing`] when plotters refuses.
    pub fn draw(
        &self,
        chart_names: &ChartNames,
        day: WriteDay<'_>,
        weight: WriteWeight<'_>,
    ) -> Result<Drawn, ChartError> {
        if self.readings.is_empty() {
            return Err(ChartError::NoReading);
        }
        let mut svg = String::new();
        let edges = {
            let area = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
            let edges = self
                .draw_on(&area, day, weight)
                .map_err(|error| ChartError::Drawing(error.to_string()))?;
            area.present()
                .map_err(|error| ChartError::Drawing(error.to_string()))?;
            edges
        };
        let svg = svg.trim_end();
        let open = svg.strip_suffix("</svg>").unwrap_or(svg);
        let svg = format!("{open}{}</svg>", names(&edges, chart_names));
        let places = edges.places;
        Ok(Drawn { svg, places })
    }

    fn draw_on(
        &self,
        area: &DrawingArea<SVGBackend<'_>, plotters::coord::Shift>,
        day: WriteDay<'_>,
        weight: WriteWeight<'_>,
    ) -> Result<Edges, Box<dyn std::error::Error>> {
        let (low, high) = self.weight_range();
        let last_day = self.last_day.max(LEAST_DAYS);
        let mut chart = ChartBuilder::on(area)
            .margin_top(24)
            .margin_right(10)
            .x_label_area_size(DAYS_HEIGHT)
            .y_label_area_size(50)
            .build_cartesian_2d(0.0..last_day, low..high)?;
        chart
            .configure_mesh()
            .disable_x_mesh()
            .light_line_style(TRANSPARENT)
            .bold_line_style(INK_SOFT.mix(0.3))
            .axis_style(INK_SOFT)
            .label_style(
                ("sans-serif", LETTERS * PLOTTERS_LETTERS)
                    .into_font()
                    .color(&INK_SOFT),
            )
            .x_labels(4)
            .y_labels(5)
            .x_label_formatter(&|place| day(crate::domain::quantity::count::rounded(*place)))
            .y_label_formatter(&|grams| weight(*grams))
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
                8,
                6,
                INK.stroke_width(2),
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
        let larger_from = self.readings.len().saturating_sub(LARGER);
        for (place, (day, grams, dot)) in self.readings.iter().enumerate() {
            let size = if place < larger_from { 4 } else { 5 };
            let place = (*day, *grams);
            match dot {
                Dot::Empty => chart.draw_series([Circle::new(place, size, INK.filled())])?,
                Dot::AfterFeed => {
                    chart.draw_series([Circle::new(place, size, INK.stroke_width(2))])?
                }
                Dot::Doubted => {
                    chart.draw_series([Circle::new(place, 7, INK.stroke_width(1))])?;
                    chart.draw_series([Circle::new(place, 3, INK.filled())])?
                }
            };
        }
        Ok(self.edges(&chart, low))
    }

    /// Where lines, readings and drops stand in the picture.
    fn edges(
        &self,
        chart: &ChartContext<'_, SVGBackend<'_>, Cartesian2d<RangedCoordf64, RangedCoordf64>>,
        low: f64,
    ) -> Edges {
        let place = |day: f64, grams: f64| {
            let (x, y) = chart.backend_coord(&(day, grams));
            (f64::from(x), f64::from(y))
        };
        let (left, bottom) = place(0.0, low);
        let (right, _) = place(self.last_day.max(LEAST_DAYS), low);
        let readings = self.readings.iter();
        let height = |grams: f64| place(0.0, grams).1;
        Edges {
            left,
            right,
            bottom,
            handover: self.handover.map(height),
            limit: self.limit.map(height),
            drops: self.drops.iter().map(|day| place(*day, low).0).collect(),
            places: readings
                .map(|(day, grams, _)| place(*day, *grams))
                .collect(),
        }
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

/// The room that a name takes.
#[derive(Debug, Clone, Copy)]
struct Room {
    left: f64,
    right: f64,
    top: f64,
    bottom: f64,
}

impl Room {
    /// Of a text that ends at `right` and stands on `foot`.
    fn of(text: &str, right: f64, foot: f64) -> Self {
        Self {
            left: right - width(text),
            right,
            top: foot - LETTERS * 0.8,
            bottom: foot + LETTERS * 0.25,
        }
    }

    /// Whether a dot at this place touches it.
    fn holds(&self, (x, y): (f64, f64)) -> bool {
        let dot = 6.0;
        (self.left - dot..=self.right + dot).contains(&x)
            && (self.top - dot..=self.bottom + dot).contains(&y)
    }

    fn meets(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }
}

/// How wide a text is, about.
fn width(text: &str) -> f64 {
    let letters = f64::from(u16::try_from(text.chars().count()).unwrap_or(u16::MAX));
    letters * LETTERS * LETTER_WIDTH
}

/// The unit, the names of lines and of the last reading, and the marks of feeds dropped.
fn names(edges: &Edges, words: &ChartNames) -> String {
    let mut taken: Vec<Room> = Vec::new();
    let mut out = text("end", edges.left - 8.0, LETTERS, 400, "#55636A", words.unit);
    let lines = [
        (edges.handover, &words.handover, 400, "#1C2A30"),
        (edges.limit, &words.limit, 700, "#A34C00"),
    ];
    for (line, name, weight, colour) in lines {
        let Some(line) = line else { continue };
        // Above its line, below it where a reading comes near, lower still where readings lie on the line; at the
        // end of the line, or at its beginning where the end is full of readings.
        let begin = edges.left + 4.0;
        let ends = [
            ("end", edges.right, edges.right),
            ("start", begin, begin + width(name)),
        ];
        let feet = [line - 7.0, line + LETTERS + 3.0, line + 1.2 * LETTERS + 9.0];
        let is_free = |room: &Room| {
            !edges.places.iter().any(|place| room.holds(*place))
                && !taken.iter().any(|other| room.meets(other))
        };
        let ([above, ..], [end, ..]) = (feet, ends);
        let mut places = ends.iter().flat_map(|end| feet.map(|foot| (*end, foot)));
        let fits = |((_, _, right), foot): &((&str, f64, f64), f64)| {
            let room = Room::of(name, *right, *foot);
            is_free(&room) && room.bottom < edges.bottom
        };
        let ((anchor, x, right), foot) = places.find(fits).unwrap_or((end, above));
        taken.push(Room::of(name, right, foot));
        out += &text(anchor, x, foot, weight, colour, name);
    }
    if let Some((x, y)) = edges.places.last().copied() {
        let half = Room::of(&words.last, 0.0, 0.0).left / -2.0;
        let right = (x + half).min(edges.right);
        // Beside the dot, or a line further where a name stands there.
        let beside = [y + LETTERS + 7.0, y - 10.0];
        let further = [y + 2.0 * LETTERS + 12.0, y - LETTERS - 15.0];
        let is_free = |room: &Room| {
            let mut others = edges.places.iter().rev().skip(1);
            !taken.iter().any(|other| room.meets(other)) && !others.any(|place| room.holds(*place))
        };
        let [below, above] = beside;
        let fits = |foot: &&f64| {
            let room = Room::of(&words.last, right, **foot);
            is_free(&room) && room.bottom <= edges.bottom && 0.0 <= room.top
        };
        let foot = beside.iter().chain(&further).find(fits);
        let is_low = edges.bottom < Room::of(&words.last, right, below).bottom;
        let foot = foot.copied().unwrap_or(if is_low { above } else { below });
        out += &text("end", right, foot, 700, "#1C2A30", &words.last);
    }
    let drops = edges.drops.iter().map(|x| {
        let (left, right, top, foot) = (x - 6.0, x + 6.0, edges.bottom + 1.0, edges.bottom + 10.0);
        format!(r##"<path fill="#8A5A00" d="M{left} {top}H{right}L{x} {foot}Z"/>"##)
    });
    out + &drops.collect::<String>()
}

/// A name with a halo of the paper around it.
fn text(anchor: &str, x: f64, y: f64, weight: u32, colour: &str, words: &str) -> String {
    let words = escape(words);
    format!(
        r##"<text class="chart__name" x="{x:.0}" y="{y:.0}" text-anchor="{anchor}" font-family="sans-serif" font-size="{LETTERS}" font-weight="{weight}" fill="{colour}" stroke="#FFFFFF" stroke-width="4" stroke-linejoin="round" paint-order="stroke">{words}</text>"##
    )
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
    let step = last_day / 16.0;
    let lines = (0..16).map(|index| {
        let left = f64::from(index) * step;
        PathElement::new(
            vec![(left, low), (left + step, limit)],
            LIMIT.mix(0.55).stroke_width(2),
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

    fn drawn(chart: &WeightChart, gram_per_unit: f64) -> Drawn {
        let weight = |grams: f64| format!("{:.1}", grams.max(0.0) / gram_per_unit);
        let names = ChartNames {
            unit: "g",
            handover: "handover 1040 g".to_owned(),
            limit: "call at 936 g".to_owned(),
            last: "1025 g".to_owned(),
        };
        chart.draw(&names, &|day| day.to_string(), &weight).unwrap()
    }

    fn svg(chart: &WeightChart) -> String {
        drawn(chart, 1.0).svg
    }

    #[test]
    fn each_reading_is_drawn_once_and_a_doubted_one_is_ringed() {
        assert_eq!(svg(&chart()).matches("<circle").count(), 4);
    }

    /// The labels of an axis: plotters writes each as a text element, those of the days below the rest.
    fn labels(svg: &str) -> (Vec<String>, Vec<String>) {
        let texts = svg.split("<text ").skip(1);
        let of_axis = texts.filter(|text| !text.starts_with("class=\"chart__name\""));
        let texts = of_axis.map(|text| {
            let (_, after) = text.split_once(" y=\"").unwrap();
            let height: u32 = after.split('"').next().unwrap().parse().unwrap();
            let (_, words) = text.split_once('>').unwrap();
            (height, words.split('<').next().unwrap().trim().to_owned())
        });
        let (days, weights) =
            texts.partition::<Vec<_>, _>(|(height, _)| SIZE.1 - DAYS_HEIGHT < *height);
        let words =
            |labels: Vec<(u32, String)>| labels.into_iter().map(|(_, words)| words).collect();
        (words(days), words(weights))
    }

    fn assert_readable(chart: &WeightChart, gram_per_unit: f64) {
        let (days, weights) = labels(&drawn(chart, gram_per_unit).svg);
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
        // From the limit of 936 g to the handover weight of 1040 g lie 104 g; a tenth of the chart is 27 px.
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
        let names = ChartNames {
            unit: "",
            handover: String::new(),
            limit: String::new(),
            last: String::new(),
        };
        let drawn = empty.draw(&names, &|_| String::new(), &|_| String::new());
        assert_eq!(drawn, Err(ChartError::NoReading));
    }

    /// The foot of a name, from its `y`.
    fn foot(svg: &str, name: &str) -> f64 {
        let (before, _) = svg.split_once(&format!(">{name}<")).unwrap();
        let (_, after) = before.rsplit_once(" y=\"").unwrap();
        after.split('"').next().unwrap().parse().unwrap()
    }

    #[test]
    fn lines_are_named_above_them_and_below_where_a_reading_comes_near() {
        let far = drawn(&chart(), 1.0);
        let (_, handover) = far.places[0];
        assert!(foot(&far.svg, "handover 1040 g") < handover);
        let mut near = chart();
        near.readings.push((4.6, 1_041.0, Dot::Empty));
        let near = drawn(&near, 1.0);
        assert!(foot(&near.svg, "handover 1040 g") > near.places[0].1);
    }

    #[test]
    fn a_line_is_named_at_its_beginning_where_readings_fill_its_end() {
        let mut full = chart();
        // Just above the limit of 936 g, on it and just below it, all in the last day and a half.
        let near = [3.6, 4.0, 4.4, 4.8]
            .map(|day| [946.0, 936.0, 926.0].map(|grams| (day, grams, Dot::Empty)));
        full.readings.extend(near.into_iter().flatten());
        let anchor = |chart: &WeightChart| {
            let svg = svg(chart);
            let (before, _) = svg.split_once(">call at 936 g<").unwrap();
            let (_, after) = before.rsplit_once("text-anchor=\"").unwrap();
            after.split('"').next().unwrap().to_owned()
        };
        assert_eq!(
            (anchor(&chart()), anchor(&full)),
            ("end".to_owned(), "start".to_owned())
        );
    }

    #[test]
    fn a_reading_is_found_at_its_place() {
        let drawn = drawn(&chart(), 1.0);
        let [first, second, third] = drawn.places.as_slice() else {
            panic!("{:?}", drawn.places);
        };
        // A day apart each, and 10 g then 5 g lower: equal steps to the right, half the step down.
        assert!(((second.0 - first.0) - (third.0 - second.0)).abs() <= 1.0);
        assert!(((second.1 - first.1) - 2.0 * (third.1 - second.1)).abs() <= 2.0);
        let dot = format!("cx=\"{}\" cy=\"{}\"", first.0, first.1);
        assert!(drawn.svg.contains(&dot), "{dot}");
    }
}
