//! Which wrench is in the hand: asked once, before the first torque is converted, and answered by three
//! touches. Whoever has many describes them on Bench.

use super::settings::Settings;
use crate::trade::quantity::TorqueUnit;
use crate::trade::wrench::{Wrench, WrenchKind};

/// The units asked for; a wrench in another is described on Bench.
pub const UNITS: [TorqueUnit; 3] = [
    TorqueUnit::NewtonMetre,
    TorqueUnit::PoundFoot,
    TorqueUnit::PoundInch,
];

/// Lowest and highest mark.
pub type Marks = (f64, f64);

/// Divisions found on wrenches, whatever their unit.
const DIVISIONS: [f64; 11] = [0.05, 0.1, 0.2, 0.25, 0.5, 1.0, 2.0, 2.5, 5.0, 10.0, 20.0];

/// A scale has between so many divisions. Common practice, no source.
const FEWEST: f64 = 20.0;
const MOST: f64 = 250.0;

/// Whether it is still to be asked.
pub fn is_asked(settings: &Settings) -> bool {
    settings.wrenches.is_empty() && !settings.any_wrench
}

/// The scales offered in that unit. Common practice, no source: sizes by the drive they are made for.
pub fn scales(unit: TorqueUnit) -> &'static [Marks] {
    match unit {
        TorqueUnit::NewtonMetre => &[
            (1.0, 6.0),
            (2.0, 10.0),
            (5.0, 25.0),
            (10.0, 60.0),
            (20.0, 100.0),
            (40.0, 200.0),
            (60.0, 300.0),
        ],
        TorqueUnit::PoundFoot => &[
            (5.0, 50.0),
            (10.0, 75.0),
            (10.0, 100.0),
            (20.0, 150.0),
            (50.0, 250.0),
        ],
        TorqueUnit::PoundInch => &[
            (10.0, 50.0),
            (20.0, 120.0),
            (30.0, 200.0),
            (40.0, 250.0),
            (100.0, 600.0),
        ],
        TorqueUnit::KilogramMetre | TorqueUnit::KilogramCentimetre | TorqueUnit::OunceInch => &[],
    }
}

/// The divisions such a scale may have.
pub fn divisions((_, most): Marks) -> Vec<f64> {
    let fits = |division: &f64| (FEWEST..=MOST).contains(&(most / division));
    DIVISIONS.iter().copied().filter(fits).collect()
}

/// The wrench so described: by a pointer, as nothing is said of lines and a thimble, and of the accuracy
/// usual for its size.
pub fn described(unit: TorqueUnit, (min, max): Marks, division: f64) -> Wrench {
    Wrench {
        name: "My wrench".to_owned(),
        unit,
        min,
        max,
        division,
        kind: WrenchKind::Dial,
        accuracy: Wrench::typical_accuracy(unit.torque(max)),
    }
}
