//! What the readings of a bore's grid say: size, out-of-round, taper, clearance, each against its limit.

use super::data::{Bore, Journal};
use super::limit::{Pair, pairs_words};
pub use super::limit::{limit_words, stated_words};
use crate::job::id::ReadingId;
use crate::job::progress::StepProgress;
use crate::job::reading::What;
use crate::trade::growth::{GrowthError, size_at_20};
use crate::trade::material::Material;
use crate::trade::measure::{Allowed, DiameterGrid, MeasureError, MeasureVerdict, Shape, clearance};
use crate::trade::quantity::{Length, ThermodynamicTemperature, convert, fixed};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Where no temperature was noted: the reference of all sizes (ISO 1).
const REFERENCE_C: f64 = 20.0;

/// A judged size.
#[derive(Debug, Clone, PartialEq)]
pub struct Judged {
    /// What it is: "out-of-round".
    pub name: String,
    /// Its number and unit: "0.012 mm".
    pub value: String,
    /// Its limit in words; empty where there is none.
    pub limit: String,
    /// What the limit says; empty where there is none.
    pub verdict: String,
    /// It is outside its limit.
    pub outside: bool,
}

/// What the readings say so far.
#[derive(Debug, Clone, PartialEq)]
pub struct BoreAnswer {
    /// What was judged.
    pub judged: Vec<Judged>,
    /// Why there is no more: readings missing, one far off.
    pub trouble: Option<String>,
    /// Every reading is there, and they can't be reckoned with: one is far off, or a temperature.
    pub unsure: bool,
}

impl BoreAnswer {
    /// Whether any size is outside its limit, or can't be told.
    pub fn outside(&self) -> bool {
        self.unsure || self.judged.iter().any(|line| line.outside)
    }
}

/// Works a bore out from the readings of its step.
pub fn answer(bore: &Bore, progress: &StepProgress) -> BoreAnswer {
    let mut judged = Vec::new();
    let shape = match grid(bore.id, false, bore.material, progress).shape() {
        Ok(shape) => shape,
        Err(error) => {
            return BoreAnswer {
                judged,
                unsure: !matches!(error, MeasureError::Missing(_)),
                trouble: Some(error.to_string()),
            };
        }
    };
    let least = |limit: Option<f64>| (limit, None);
    let most = |limit: Option<f64>| (None, limit);
    let none = (None, None);
    judged.push(judge(
        "smallest",
        shape.smallest,
        least(bore.least_mm),
        least(bore.worn_least_mm),
    ));
    judged.push(judge(
        "largest",
        shape.largest,
        most(bore.most_mm),
        most(bore.worn_most_mm),
    ));
    judged.push(judge(
        "out-of-round",
        shape.out_of_round,
        most(bore.out_of_round_mm),
        none,
    ));
    judged.push(judge("taper", shape.taper, most(bore.taper_mm), none));
    let mut unsure = false;
    let trouble = bore.journal.as_ref().and_then(|journal| {
        match grid(bore.id, true, journal.material, progress).shape() {
            Ok(inner) => {
                judged.extend(clearances(&shape, &inner, journal));
                None
            }
            Err(MeasureError::Missing(_)) => {
                Some(format!("{}: readings are still to be taken.", journal.name))
            }
            Err(error) => {
                unsure = true;
                Some(format!("{}: {error}", journal.name))
            }
        }
    });
    BoreAnswer {
        judged,
        trouble,
        unsure,
    }
}

fn clearances(bore: &Shape, journal: &Shape, allowed: &Journal) -> [Judged; 2] {
    let between = clearance(bore, journal);
    let least = (allowed.clearance_least_mm, None);
    let most = (None, allowed.clearance_most_mm);
    let worn = (None, allowed.clearance_worn_mm);
    [
        judge("least clearance", between.least, least, (None, None)),
        judge("most clearance", between.most, most, worn),
    ]
}

/// The limits of its diameter in words: new, and worn; empty where there are none.
pub fn size_words(bore: &Bore) -> String {
    let new = (bore.least_mm, bore.most_mm);
    limits_in_words(new, (bore.worn_least_mm, bore.worn_most_mm))
}

fn limits_in_words(new: Pair, worn: Pair) -> String {
    match (new, worn) {
        ((None, None), (None, None)) => String::new(),
        _ => pairs_words(new, worn, |least, most| limit_words(least, most, "mm")),
    }
}

/// The grid of that bore, or of its journal, as far as it has been read, each reading carried to 20 °C from the temperature
/// noted with it; where none was, from the first noted in the grid.
fn grid(bore: ReadingId, journal: bool, material: Material, progress: &StepProgress) -> DiameterGrid {
    let reading = |depth: usize, way: usize| {
        progress.reading(&What::Place {
            bore,
            journal,
            depth: depth as u8,
            way: way as u8,
        })
    };
    let noted_c = [0, 1, 2]
        .into_iter()
        .flat_map(|depth| [0, 1].map(|way| (depth, way)))
        .find_map(|(depth, way)| reading(depth, way).and_then(|reading| reading.at_c))
        .unwrap_or(REFERENCE_C);
    let celsius = ThermodynamicTemperature::new::<degree_celsius>;
    let mut at = celsius(REFERENCE_C);
    let mut carried = |depth, way| {
        let reading = reading(depth, way)?;
        let read_at = celsius(reading.at_c.unwrap_or(noted_c));
        let mm = convert(reading.value, &reading.unit, "mm")?;
        let size = Length::new::<millimeter>(mm);
        match size_at_20(size, material, read_at) {
            Ok(size) => Some(size.get::<millimeter>()),
            // The grid refuses it, in its own words.
            Err(why) => {
                at = if why == GrowthError::Temperature {
                    read_at
                } else {
                    at
                };
                Some(mm)
            }
        }
    };
    let readings_mm = [0, 1, 2].map(|depth| [0, 1].map(|way| carried(depth, way)));
    DiameterGrid {
        at,
        material,
        readings_mm,
    }
}

/// A size against the limits of a new part, and of a worn one.
fn judge(name: &str, value: Length, new: Pair, worn: Pair) -> Judged {
    let usable = (worn.0.or(new.0), worn.1.or(new.1));
    let says = |(least, most): Pair| {
        let allowed = Allowed {
            least: least.map(Length::new::<millimeter>),
            most: most.map(Length::new::<millimeter>),
        };
        allowed.judge(value)
    };
    let verdict = match (says(usable), says(new)) {
        (Ok(MeasureVerdict::Below { .. }), _) => "too small",
        (Ok(MeasureVerdict::Above { .. }), _) => "too large",
        (Ok(MeasureVerdict::Within), Ok(MeasureVerdict::Below { .. } | MeasureVerdict::Above { .. })) => {
            "worn but usable"
        }
        (Ok(MeasureVerdict::Within), _) => "within",
        (Err(_), _) => "",
    };
    Judged {
        name: name.to_owned(),
        value: format!("{} mm", fixed(value.get::<millimeter>(), 3)),
        limit: limits_in_words(new, worn),
        outside: verdict.starts_with("too"),
        verdict: verdict.to_owned(),
    }
}
