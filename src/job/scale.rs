//! The scale-and-thimble of a wrench at its setting, as marks to draw.

use crate::trade::wrench::{Setting, Wrench, WrenchKind};

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
    ((value * 1e6).round() / 1e6).to_string()
}
