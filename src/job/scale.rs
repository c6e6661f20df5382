//! The line that a focal number lies on, as marks to draw: the scale of a wrench at its setting, and that of
//! any other number between its ends.

use crate::trade::quantity::{shortest, trimmed};
use crate::trade::wrench::{LOW_PART, Setting, Wrench, WrenchKind};

/// Lines of the tube in sight.
const LINES: u32 = 4;
/// Divisions of the thimble in sight on either side of the one that is set.
const BESIDE: i64 = 2;

/// One mark.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Where: on the tube lines back from the thimble's edge, on the thimble divisions from the set one.
    pub at: f64,
    /// Its figure.
    pub figure: String,
    /// It is the one that is set.
    pub set: bool,
}

/// A thimble scale at its setting.
#[derive(Debug, Clone, PartialEq)]
pub struct ThimbleScale {
    /// Lines on the tube, the set one first.
    pub tube: Vec<Mark>,
    /// Divisions on the thimble, from below to above.
    pub thimble: Vec<Mark>,
    /// In words: "line 80 + 6".
    pub words: String,
}

/// The drawing's marks; nothing for a wrench without a thimble.
pub fn thimble_scale(wrench: &Wrench, setting: &Setting) -> Option<ThimbleScale> {
    let scale = setting.scale?;
    let WrenchKind::Thimble { main_division } = wrench.kind else {
        return None;
    };
    let per_line = (main_division / wrench.division).round().max(1.0);
    let past = f64::from(scale.divisions) / per_line;
    let tube = (0..LINES)
        .map(|line| (line, scale.main - f64::from(line) * main_division))
        .filter(|(line, value)| *line == 0 || *value > wrench.min - wrench.division / 2.0)
        .map(|(line, value)| Mark {
            at: f64::from(line) + past,
            figure: tidy(value),
            set: line == 0,
        })
        .collect();
    let thimble = (-BESIDE..=BESIDE)
        .map(|by| Mark {
            at: by as f64,
            figure: (i64::from(scale.divisions) + by)
                .rem_euclid(per_line as i64)
                .to_string(),
            set: by == 0,
        })
        .collect();
    Some(ThimbleScale {
        tube,
        thimble,
        words: format!("line {} + {}", tidy(scale.main), scale.divisions),
    })
}

/// A mark's value without what subtraction left in the last bits.
fn tidy(value: f64) -> String {
    shortest((value * 1e6).round() / 1e6)
}

/// A number on its line: places from 0 to 1 along it.
#[derive(Debug, Clone, PartialEq)]
pub struct Ruler {
    /// The line's ends.
    pub least: String,
    /// The upper one.
    pub most: String,
    /// The part where it is not to be, or is least certain.
    pub hatched: (f64, f64),
    /// Its lines.
    pub lines: Vec<f64>,
    /// Where the number is.
    pub at: f64,
    /// In words: "set on 86 of 20 to 120".
    pub words: String,
}

/// Most lines of a ruler: closer ones run together on a phone.
const MOST_LINES: f64 = 40.0;

/// The ruler of that wrench at its setting; nothing for a wrench of one torque.
pub fn ruler(wrench: &Wrench, setting: &Setting) -> Option<Ruler> {
    let span = wrench.max - wrench.min;
    if wrench.kind == WrenchKind::Preset || !span.is_finite() || span <= 0.0 {
        return None;
    }
    let along = |value: f64| ((value - wrench.min) / span).clamp(0.0, 1.0);
    let drawn = match wrench.kind {
        WrenchKind::Thimble { main_division } => main_division,
        WrenchKind::Dial | WrenchKind::Digital | WrenchKind::Preset => wrench.division,
    };
    // Each line, or each tenth, or each hundredth.
    let steps = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1_000.0];
    let step = steps
        .into_iter()
        .map(|by| by * drawn)
        .find(|step| span / step <= MOST_LINES)?;
    let first = (wrench.min / step).ceil() as i64;
    let last = (wrench.max / step).floor() as i64;
    let (least, most) = (tidy(wrench.min), tidy(wrench.max));
    Some(Ruler {
        hatched: (0.0, along(LOW_PART * wrench.max)),
        lines: (first..=last).map(|line| along(line as f64 * step)).collect(),
        at: along(setting.value),
        words: format!("set on {} of {least} to {most}", setting.text()),
        least,
        most,
    })
}

/// Most lines under a number that no tool has lines for.
const FEW_LINES: f64 = 16.0;

/// Figures of a line's ends.
const END_FIGURES: u32 = 3;

/// `at` on a line from `from` to `to` with `hatched` of it out of bounds, all in one unit; none where that is
/// no line. Lines stand at round values: 1, 2 or 5 times a power of ten.
pub fn on_line((from, to): (f64, f64), at: f64, hatched: (f64, f64), words: String) -> Option<Ruler> {
    let span = to - from;
    if ![from, to, at, hatched.0, hatched.1]
        .iter()
        .all(|it| it.is_finite())
        || span <= 0.0
    {
        return None;
    }
    let along = |value: f64| ((value - from) / span).clamp(0.0, 1.0);
    let power = 10f64.powf((span / FEW_LINES).log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0];
    let step = steps
        .map(|by| by * power)
        .into_iter()
        .find(|step| span / step <= FEW_LINES)?;
    let (first, last) = ((from / step).ceil() as i64, (to / step).floor() as i64);
    Some(Ruler {
        least: trimmed(from, END_FIGURES),
        most: trimmed(to, END_FIGURES),
        hatched: (along(hatched.0), along(hatched.1)),
        lines: (first..=last).map(|line| along(line as f64 * step)).collect(),
        at: along(at),
        words,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trade::quantity::TorqueUnit;
    use uom::si::torque::newton_meter;

    fn wrench(min: f64, max: f64, division: f64) -> Wrench {
        Wrench {
            name: "Middle".to_owned(),
            unit: TorqueUnit::NewtonMetre,
            min,
            max,
            division,
            kind: WrenchKind::Dial,
            accuracy: 0.04,
        }
    }

    #[test]
    fn a_ruler_shows_the_scale_as_it_is() {
        let middle = wrench(10.0, 60.0, 0.5);
        let set = middle.setting(crate::trade::quantity::Torque::new::<newton_meter>(20.0));
        let drawn = set.ok().and_then(|set| ruler(&middle, &set));
        let Some(drawn) = drawn else {
            panic!("it has a scale");
        };
        // (20 − 10) / 50, and its lowest fifth ends at 12 (common practice, no source).
        assert!((drawn.at - 0.2).abs() < 1e-9 && (drawn.hatched.1 - 0.04).abs() < 1e-9);
        // A hundred lines of 0.5 run together: every fifth is drawn, 2.5 apart.
        assert_eq!(drawn.lines.len(), 21);
        assert_eq!(
            (drawn.lines.first(), drawn.lines.last()),
            (Some(&0.0), Some(&1.0))
        );
        assert_eq!(drawn.words, "set on 20.0 of 10 to 60");
    }

    #[test]
    fn a_number_lies_on_its_line_with_round_lines() {
        let line = on_line((20.0, 120.0), 74.0, (20.0, 50.0), String::new()).expect("a line");
        assert!((line.at - 0.54).abs() < 1e-9 && (line.hatched.1 - 0.3).abs() < 1e-9);
        // 20, 30 … 120: steps of 5 would be twenty.
        assert_eq!(line.lines.len(), 11);
        assert_eq!((line.least.as_str(), line.most.as_str()), ("20", "120"));
        // What lies beyond stands at the end.
        let over = on_line((0.0, 10.0), 12.0, (10.0, 10.0), String::new()).expect("a line");
        assert!((over.at - 1.0).abs() < 1e-9);
        for (from, to, at) in [
            (5.0, 5.0, 5.0),
            (5.0, 1.0, 2.0),
            (0.0, f64::NAN, 1.0),
            (0.0, 1.0, f64::INFINITY),
        ] {
            assert_eq!(on_line((from, to), at, (0.0, 0.0), String::new()), None);
        }
    }
}
