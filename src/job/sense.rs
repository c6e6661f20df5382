//! What makes sense as a typed number, and what is said where it makes none.

use super::reading::What;

/// A range that makes sense, both ends included.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sense {
    least: f64,
    most: f64,
    refusal: &'static str,
}

/// The least number above zero.
const ABOVE_ZERO: f64 = f64::MIN_POSITIVE;

impl Sense {
    const fn new(least: f64, most: f64, refusal: &'static str) -> Self {
        Self { least, most, refusal }
    }

    /// The number, where it makes sense.
    ///
    /// # Errors
    /// The sentence that says what to enter.
    pub fn of(self, number: f64) -> Result<f64, &'static str> {
        if number >= self.least && number <= self.most {
            Ok(number)
        } else {
            Err(self.refusal)
        }
    }
}

impl Sense {
    /// The same where nothing is told by a 0.
    ///
    /// # Errors
    /// As [`Sense::of`].
    pub fn told(self, number: f64) -> Result<Option<f64>, &'static str> {
        self.of(number).map(|number| (number > 0.0).then_some(number))
    }
}

/// What a press gives, kN.
pub const PRESS_KN: Sense = Sense::new(
    ABOVE_ZERO,
    5_000.0,
    "A press gives between 0 and 5 000 kN: read its plate again.",
);
/// What a hoist carries, kg.
pub const HOIST_KG: Sense = Sense::new(
    ABOVE_ZERO,
    50_000.0,
    "A hoist carries between 0 and 50 000 kg: read its plate again.",
);
/// What a part is when it is read, °C.
pub const PART_C: Sense = Sense::new(
    -40.0,
    150.0,
    "A part is read between −40 and 150 °C: read the thermometer again.",
);
/// A turn after a torque, °.
pub const TURN_DEG: Sense = Sense::new(0.0, 360.0, "A turn is from 0° to 360°: read the manual again.");
/// A bolt's stretch, mm; 0 where none is read.
pub const STRETCH_MM: Sense = Sense::new(
    0.0,
    5.0,
    "A stretch is from 0 to 5 mm: tight length less free length.",
);
/// A bolt's grip, or the plain shank in it, mm; 0 where it isn't told.
pub const GRIP_MM: Sense = Sense::new(0.0, 1_000.0, "A grip is from 0 to 1000 mm: measure it again.");
/// A bolt's shank across, mm; 0 where it is as thick as its thread.
pub const SHANK_MM: Sense = Sense::new(0.0, 200.0, "A shank is up to 200 mm across: measure it again.");
/// A nut's running torque, in the unit it is typed in.
pub const RUNNING: Sense = Sense::new(
    0.0,
    2_000.0,
    "A nut’s running torque is from 0 to 2 000: measure it as it turns freely.",
);
/// A diameter of a bore's grid, mm.
const DIAMETER_MM: Sense = Sense::new(0.1, 1_000.0, "Enter the diameter in mm, from 0.1 to 1000.");
/// A radius at which run-out is read, mm or inches.
const RADIUS: Sense = Sense::new(
    0.01,
    10_000.0,
    "Enter the radius it is read at, from the middle: 0.01 to 10 000, in the unit shown.",
);
/// A depth or a gap, mm.
const DEPTH_MM: Sense = Sense::new(
    -500.0,
    500.0,
    "Enter a reading in mm, up to 500; a minus sign where it stands proud.",
);
/// How long a fastener is over its ends, mm.
const BOLT_MM: Sense = Sense::new(
    1.0,
    1_000.0,
    "Enter the length over the ends in mm, from 1 to 1000.",
);
/// The same in inches.
const BOLT_IN: Sense = Sense::new(
    0.04,
    40.0,
    "Enter the length over the ends in inches, from 0.04 to 40.",
);
/// The same in thousandths of an inch.
const BOLT_THOU: Sense = Sense::new(
    40.0,
    40_000.0,
    "Enter the length over the ends in thou, from 40 to 40 000.",
);
/// How many times fasteners were tightened before.
const USES: Sense = Sense::new(
    0.0,
    99.0,
    "Enter how many times they were tightened before, from 0 for new ones to 99.",
);
/// What is worked out: no number typed for it makes sense.
const WORKED_OUT: Sense = Sense::new(
    f64::NAN,
    f64::NAN,
    "The stretch follows from the free and the tight length: enter these.",
);
/// A size of a select step, in its own unit.
const SIZE: Sense = Sense::new(
    -5_000.0,
    5_000.0,
    "Enter a size up to 5000, in the unit shown; a minus sign where it stands proud.",
);
/// End float or a turning torque, in the unit shown.
const TRIAL: Sense = Sense::new(
    0.0,
    10_000.0,
    "Enter a reading from 0 to 10 000, in the unit shown.",
);
/// A clearance read off gauging plastic, in the unit shown.
const CLEARANCE: Sense = Sense::new(0.0, 100.0, "Enter a clearance from 0 to 100, in the unit shown.");
/// How much of a fluid was put in, in the unit it is measured in; nothing where it was full already.
const PUT_IN: Sense = Sense::new(
    0.0,
    1_000_000.0,
    "Enter how much was put in: 0 where it was full already.",
);
/// What an engine reads when it runs, °C or °F.
const RAN_AT: Sense = Sense::new(
    -60.0,
    600.0,
    "Enter what the thermometer reads, from −60 to 600: read it again.",
);
/// How long an engine runs, minutes.
const RAN_FOR: Sense = Sense::new(0.0, 10_000.0, "Enter the minutes it ran, from 0 to 10 000.");
/// Anything else that is read: the plan names what it is.
const ANY: Sense = Sense::new(-1e9, 1e9, "Enter a number from −1 000 000 000 to 1 000 000 000.");

/// What makes sense as a reading of that, where the plan asks for it in `unit`.
pub fn reading_in(what: &What, unit: &str) -> Sense {
    match (what, unit) {
        (What::Free(_) | What::Tight(_), "in") => BOLT_IN,
        (What::Free(_) | What::Tight(_), "thou") => BOLT_THOU,
        _ => reading(what),
    }
}

/// What makes sense as a reading of that.
pub fn reading(what: &What) -> Sense {
    match what {
        What::Place { .. } => DIAMETER_MM,
        What::Radius(_) => RADIUS,
        What::Depth | What::Gap => DEPTH_MM,
        What::Running | What::Reached | What::ReachedAt(_) => RUNNING,
        What::Uses => USES,
        What::Free(_) | What::Tight(_) => BOLT_MM,
        What::Stretch(_) => WORKED_OUT,
        What::At(_) | What::Pack => SIZE,
        What::Trial | What::TurnTight | What::TurnLoose => TRIAL,
        What::Widest | What::Narrow => CLEARANCE,
        What::PutIn => PUT_IN,
        What::RanAt => RAN_AT,
        What::RanFor => RAN_FOR,
        What::Fact(_) | What::Skin(_) | What::Limit(_) | What::Named(_) | What::Turning | What::Part(_) => {
            ANY
        }
    }
}
