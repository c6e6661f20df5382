//! What a select step holds: what is measured, the box or the table it is chosen from, the trial after it.
//!
//! Sizes are in the step's own unit, as the manual states them.

use crate::job::id::{ReadingId, RowId};
use crate::trade::quantity::{LengthUnit, TorqueUnit, Unit};
use crate::trade::selection::{Codes, Counts, Thicker};
use serde::{Deserialize, Serialize};

/// What a choice goes by.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum By {
    /// A gap is measured; the pack is built from the box.
    #[default]
    Gap,
    /// A pack is put in, tightened, read and changed.
    Trial,
    /// A size is measured; a table of ranges says which part.
    Range,
    /// Two codes are read; a table says which part.
    Code,
}

impl By {
    /// Every one with its words.
    pub const ALL: [(Self, &'static str); 4] = [
        (Self::Gap, "a measured gap"),
        (Self::Trial, "trial"),
        (Self::Range, "a table of ranges"),
        (Self::Code, "a table of codes"),
    ];
}

/// The units a step may be in: mm, in, thou.
pub const UNITS: [LengthUnit; 3] = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Thou];

/// Shims, thrust washers, bearing shells, snap rings: chosen by size.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Select {
    /// What is chosen: "shims behind the output bearing".
    pub part: String,
    /// The unit of every size of the step.
    pub unit: LengthUnit,
    /// What the choice goes by.
    pub by: By,
    /// Where it is measured.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub places: Vec<Place>,
    /// What counts of several readings.
    #[serde(skip_serializing_if = "is_mean")]
    pub counts: Counts,
    /// What is added to the reading; negative is taken off.
    #[serde(skip_serializing_if = "is_nothing")]
    pub allowance: f64,
    /// How far the pack may be off, to either side.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<f64>,
    /// The box or set they come from, by a name of its own, where other steps take from it too.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub set: String,
    /// The box of shims.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub shims: Vec<Shim>,
    /// The table of ranges; beside a box the manual's rounding.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub rows: Vec<Row>,
    /// The table of codes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub codes: Option<Codes>,
    /// What is read once it is in and tightened.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trial: Option<Trial>,
}

impl Default for Select {
    fn default() -> Self {
        Self {
            part: String::new(),
            unit: LengthUnit::Millimetre,
            by: By::Gap,
            places: Vec::new(),
            counts: Counts::Mean,
            allowance: 0.0,
            tolerance: None,
            set: String::new(),
            shims: Vec::new(),
            rows: Vec::new(),
            codes: None,
            trial: None,
        }
    }
}

impl Select {
    /// Whether a size is measured at places before anything is chosen.
    pub fn measured(&self) -> bool {
        matches!(self.by, By::Gap | By::Range)
    }
}

fn is_mean(it: &Counts) -> bool {
    *it == Counts::Mean
}

fn is_nothing(it: &f64) -> bool {
    *it == 0.0
}

/// A place where it is measured.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Place {
    /// Unique among the places of the step.
    #[serde(default)]
    pub id: ReadingId,
    /// What it is called.
    pub name: String,
}

/// Shims of one thickness in the box.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Shim {
    /// Unique in the box.
    #[serde(default)]
    pub id: RowId,
    /// How thick one is; 0: not said yet.
    pub thick: f64,
    /// How many there are.
    #[serde(default = "one")]
    pub count: u32,
    /// They lie only between two others.
    #[serde(default, skip_serializing_if = "is_false")]
    pub between: bool,
}

fn one() -> u32 {
    1
}

fn is_false(it: &bool) -> bool {
    !it
}

/// A row of the table of ranges; one without any end is for nothing yet.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// Unique in the table.
    #[serde(default)]
    pub id: RowId,
    /// The least size it is for; none: all up to the greatest.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least: Option<f64>,
    /// The greatest; none: all from the least on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most: Option<f64>,
    /// How thick the part is that it gives, where the manual says.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thick: Option<f64>,
    /// What the manual calls that part.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub code: String,
}

/// What is read once the pack is in and tightened, and what it must come to.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Trial {
    /// The unit of a turning torque; none: end float, in the step's unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque: Option<TorqueUnit>,
    /// It is read loose too, and that is taken off: a seal's or a shaft's own drag.
    #[serde(skip_serializing_if = "is_false")]
    pub loose: bool,
    /// Not less than this.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<f64>,
    /// Not more than this.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub most: Option<f64>,
    /// What a thicker pack does.
    pub thicker: Thicker,
    /// By how much the pack changes a turning torque: of pack, for one of torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per: Option<f64>,
}

impl Trial {
    /// What is read.
    pub fn name(&self) -> &'static str {
        match self.torque {
            None => "end float",
            Some(_) => "turning torque",
        }
    }

    /// Its unit's symbol, in a step of that unit.
    pub fn unit(&self, of_step: LengthUnit) -> &'static str {
        self.torque.map_or_else(|| of_step.symbol(), TorqueUnit::symbol)
    }

    /// Its limits in words, in a step of that unit.
    pub fn limit_words(&self, of_step: LengthUnit) -> String {
        crate::job::kinds::check::bore::limit_words(self.least, self.most, self.unit(of_step))
    }

    /// Whether the limits hold a value; none where there are none.
    pub fn holds(&self, value: f64) -> Option<bool> {
        let limits = self.least.is_some() || self.most.is_some();
        let holds =
            || self.least.is_none_or(|least| value >= least) && self.most.is_none_or(|most| value <= most);
        limits.then(holds)
    }
}

/// What was put in: so many of one thickness, or what the manual calls them.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Piece {
    /// How thick one is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thick: Option<f64>,
    /// How many.
    #[serde(default = "one")]
    pub count: u32,
    /// What the manual calls it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub code: String,
}

impl Piece {
    /// So many of that thickness.
    pub fn shims(thick: f64, count: u32) -> Self {
        Self {
            thick: Some(thick),
            count,
            code: String::new(),
        }
    }

    /// Adds one more to what was taken so far.
    pub fn add(self, taken: &mut Vec<Self>) {
        let same = |own: &&mut Self| own.thick == self.thick && own.code == self.code;
        match taken.iter_mut().find(same) {
            Some(own) => own.count = own.count.saturating_add(self.count),
            None => taken.push(self),
        }
    }

    /// One of that code.
    pub fn coded(code: &str, thick: Option<f64>) -> Self {
        Self {
            thick,
            count: 1,
            code: code.to_owned(),
        }
    }
}
