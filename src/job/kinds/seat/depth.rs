//! How deep the part sits, and the gap that is left behind it.

use super::data::SeatDepth;
use crate::trade::quantity::fixed;

/// Readings are taken to a hundredth; half of that is no difference.
const HALF_STEP_MM: f64 = 0.005;

/// What a depth reading says.
#[derive(Debug, Clone, PartialEq)]
pub struct DepthAnswer {
    /// Whether the depth lies within its limits, both ends included.
    pub depth_holds: bool,
    /// Whether it sits deeper than its limits allow.
    pub too_deep: bool,
    /// The gap behind, mm, where the bore's depth is known.
    pub gap_mm: Option<f64>,
    /// Whether the gap is as open as it must be; true where none is asked for.
    pub gap_holds: bool,
}

/// Judges a depth reading, mm below the face: gap = depth of the bore − width of the part − depth read.
pub fn judge(depth: &SeatDepth, width_mm: f64, read_mm: f64) -> DepthAnswer {
    let gap_mm = depth.bore_mm.map(|bore_mm| bore_mm - width_mm - read_mm);
    let too_deep = read_mm > depth.most_mm + HALF_STEP_MM;
    let holds = read_mm >= depth.least_mm - HALF_STEP_MM && !too_deep;
    let gap_holds = match (gap_mm, depth.gap_mm) {
        (Some(gap), Some(least)) => gap >= least - HALF_STEP_MM,
        // Deeper than the bore goes: the reading or a size is off.
        (Some(gap), None) => gap >= -HALF_STEP_MM,
        (None, _) => true,
    };
    DepthAnswer {
        depth_holds: holds,
        too_deep,
        gap_mm,
        gap_holds,
    }
}

/// Whether a gap read by itself is as open as it must be.
pub fn gap_holds(depth: &SeatDepth, gap_mm: f64) -> bool {
    depth.gap_mm.is_none_or(|least| gap_mm >= least - HALF_STEP_MM)
}

/// What must be reached: "0.90 to 1.10 mm below the face".
pub fn target_words(depth: &SeatDepth) -> String {
    let (least, most) = (depth.least_mm, depth.most_mm);
    let hundredths = |mm: f64| fixed(mm.abs(), 2);
    let sit = if most <= 0.0 && least < 0.0 {
        format!(
            "{} to {} mm proud of the face",
            hundredths(most),
            hundredths(least)
        )
    } else if least < 0.0 {
        format!(
            "from {} mm proud to {} mm below the face",
            hundredths(least),
            hundredths(most)
        )
    } else {
        format!("{} to {} mm below the face", hundredths(least), hundredths(most))
    };
    match depth.gap_mm {
        Some(gap) => format!("{sit}, at least {} mm open behind", hundredths(gap)),
        None => sit,
    }
}

/// What the reading says, in words.
pub fn read_words(answer: &DepthAnswer) -> String {
    let depth = if answer.depth_holds {
        "Depth within its limits."
    } else if answer.too_deep {
        "Too deep: stop pressing, and check the reading and the sizes."
    } else {
        "Not deep enough: press on, or find what holds it."
    };
    match (answer.gap_mm, answer.gap_holds) {
        (Some(gap), true) => format!("{depth} {} mm stays open behind.", fixed(gap, 2)),
        (Some(gap), false) if gap < 0.0 => {
            format!("{depth} That is deeper than the bore: check the sizes.")
        }
        (Some(gap), false) => {
            format!(
                "{depth} Only {} mm stays open behind: oil is cut off.",
                fixed(gap, 2)
            )
        }
        (None, _) => depth.to_owned(),
    }
}
