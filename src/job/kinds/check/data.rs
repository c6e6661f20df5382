//! What a check step holds: readings and bores, each with its limits.

use super::limit::{Limit, pairs_wrong};
use super::worked;
use crate::job::id::ReadingId;
use crate::trade::material::Material;
use crate::trade::measure::{DEPTHS, DIRECTIONS};
use serde::{Deserialize, Serialize};

/// Readings to take.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Check {
    /// What is measured, each with its limits.
    pub readings: Vec<Limit>,
    /// Bores read in two directions at three depths.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub bores: Vec<Bore>,
    /// The engine runs while they are taken.
    #[serde(skip_serializing_if = "is_false")]
    pub running: bool,
}

fn is_false(it: &bool) -> bool {
    !it
}

impl Check {
    /// What is wrong with the readings and bores as planned: limits that nothing can keep, or two of one name.
    pub fn wrong(&self) -> Option<String> {
        let names: Vec<&str> = self.names().collect();
        let twice = |at: usize| names[at + 1..].contains(&names[at]);
        let limits = self.readings.iter().find_map(Limit::wrong);
        limits
            .or_else(|| self.bores.iter().find_map(Bore::wrong))
            .or_else(|| {
                (0..names.len())
                    .any(twice)
                    .then_some("Two readings have one name: give each its own.")
            })
            .map(str::to_owned)
            .or_else(|| worked::wrong(&self.readings))
    }

    /// The names of its readings, bores and journals.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let names = self.readings.iter().map(|limit| limit.name.as_str());
        names.chain(self.bores.iter().flat_map(Bore::names))
    }

    /// The names of every reading the step asks for, in order.
    pub fn asked(&self) -> Vec<String> {
        let measured = self.readings.iter().filter(|limit| limit.worked.is_none());
        let limits = measured.map(|limit| limit.name.clone());
        limits.chain(self.bores.iter().flat_map(Bore::asked)).collect()
    }
}

/// The depths of a grid, in the order of its rows.
pub const DEPTH_WORDS: [&str; DEPTHS] = ["top", "middle", "bottom"];
/// The directions of a grid, in the order of its columns.
pub const DIRECTION_WORDS: [&str; DIRECTIONS] = ["along", "across"];

/// A bore read as a grid, with the journal that runs in it where there is one. Limits in mm at 20 °C.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bore {
    /// Unique among the readings and bores of the step.
    #[serde(default)]
    pub id: ReadingId,
    /// What it is.
    pub name: String,
    /// What it is made of.
    #[serde(default = "cast_aluminium")]
    pub material: Material,
    /// The smallest diameter allowed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_mm: Option<f64>,
    /// The largest diameter allowed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_mm: Option<f64>,
    /// Worn, the smallest it may be used at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worn_least_mm: Option<f64>,
    /// Worn, the largest it may be used at.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub worn_most_mm: Option<f64>,
    /// It is a shaft or journal by itself, measured over the outside.
    #[serde(default, skip_serializing_if = "is_false")]
    pub shaft: bool,
    /// The most the two directions may differ.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub out_of_round_mm: Option<f64>,
    /// The most the depths may differ.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub taper_mm: Option<f64>,
    /// The journal or shaft that runs in it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub journal: Option<Journal>,
}

/// What runs in a bore, read as a grid too.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Journal {
    /// What it is.
    pub name: String,
    /// What it is made of.
    #[serde(default = "steel")]
    pub material: Material,
    /// The least clearance allowed, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearance_least_mm: Option<f64>,
    /// The most clearance allowed, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearance_most_mm: Option<f64>,
    /// Worn, the most clearance it may be used at, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub clearance_worn_mm: Option<f64>,
}

fn cast_aluminium() -> Material {
    Material::CastAluminium
}

fn steel() -> Material {
    Material::Steel
}

impl Bore {
    /// One of that name, of which nothing else is said: a shaft of steel, or a bore in a casting.
    pub fn named(name: String, shaft: bool) -> Self {
        Self {
            id: ReadingId::default(),
            name,
            material: if shaft { steel() } else { cast_aluminium() },
            least_mm: None,
            most_mm: None,
            worn_least_mm: None,
            worn_most_mm: None,
            shaft,
            out_of_round_mm: None,
            taper_mm: None,
            journal: None,
        }
    }

    /// What is wrong with its limits: nobody could keep them.
    pub fn wrong(&self) -> Option<&'static str> {
        let own = pairs_wrong(
            (self.least_mm, self.most_mm),
            (self.worn_least_mm, self.worn_most_mm),
        );
        let journal = self.journal.as_ref();
        own.or_else(|| {
            let journal = journal?;
            let new = (journal.clearance_least_mm, journal.clearance_most_mm);
            pairs_wrong(new, (None, journal.clearance_worn_mm))
        })
        .or_else(|| {
            let both = self.shaft && journal.is_some();
            both.then_some("No journal runs in a shaft: say that it is a bore, or leave the journal out.")
        })
    }

    /// Its name, and its journal's: what its readings go by in the record.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        let journal = self.journal.iter().map(|journal| journal.name.as_str());
        std::iter::once(self.name.as_str()).chain(journal)
    }

    /// The names of the grid's readings, and of the journal's.
    pub fn asked(&self) -> Vec<String> {
        self.names()
            .flat_map(|name| {
                DEPTH_WORDS
                    .iter()
                    .flat_map(move |depth| DIRECTION_WORDS.iter().map(move |way| grid_name(name, depth, way)))
            })
            .collect()
    }
}

/// What one reading of a grid is called in the record.
pub fn grid_name(name: &str, depth: &str, direction: &str) -> String {
    format!("{name}, {depth}, {direction}")
}
