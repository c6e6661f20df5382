//! How a reading is worked out from others: their mean, what they differ by, how one sits in the other, or by a
//! calculation of the Measure screen.

use crate::job::id::ReadingId;
use crate::job::measuring::as_reading_of;
use crate::trade::quantity::{Stated, fixed};
use serde::{Deserialize, Serialize};

/// How it is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// The mean.
    Mean,
    /// The greatest.
    Greatest,
    /// The least.
    Least,
    /// The greatest less the least.
    Spread,
    /// The first less the second.
    Difference,
    /// Half of a run-out read as the whole swing of the indicator: how far it is off centre.
    Offset,
    /// The first less the second, a hole and what sits in it: above zero loose, below tight.
    Fit,
    /// By the calculation that is named beside it.
    Calculation,
}

/// From what, and how.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Worked {
    /// How.
    pub how: How,
    /// The readings, by their numbers.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub of: Vec<ReadingId>,
    /// The calculation, by its id; one of another release is kept.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub calculation: String,
    /// What its fields are fed with; one that isn't among them is left out.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub fed: Vec<Fed>,
}

/// What one field of a calculation is fed with: a reading of the step, else what the plan says.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fed {
    /// The field, by its id; one of another release is kept.
    pub field: String,
    /// A reading measured in this step.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<ReadingId>,
    /// A number of the plan.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub number: Option<Stated>,
    /// Its unit; empty where it is the one the calculation keeps: mm, N·m, N, °C.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub unit: String,
    /// A choice or a thread.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub word: String,
}

impl Worked {
    /// Worked out from these.
    pub fn of(how: How, of: Vec<ReadingId>) -> Self {
        Self {
            how,
            of,
            calculation: String::new(),
            fed: Vec::new(),
        }
    }

    /// How, in words: a calculation by its name.
    pub fn words(&self) -> &str {
        match self.how {
            How::Calculation => as_reading_of(&self.calculation).map_or(&self.calculation, |one| one.name),
            how => how.words(),
        }
    }

    /// What a field is fed with.
    pub fn fed(&self, field: &str) -> Option<&Fed> {
        self.fed.iter().find(|fed| fed.field == field)
    }
}

/// Digits kept behind those of the readings: a mean of three does not end.
const MORE_DIGITS: usize = 2;

impl How {
    /// Each way without a calculation, in the order they are offered.
    pub const ALL: [Self; 7] = [
        Self::Mean,
        Self::Greatest,
        Self::Least,
        Self::Spread,
        Self::Difference,
        Self::Fit,
        Self::Offset,
    ];

    /// It in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Mean => "mean",
            Self::Greatest => "greatest",
            Self::Least => "least",
            Self::Spread => "spread: greatest less least",
            Self::Difference => "difference: first less second",
            Self::Offset => "offset: half the run-out",
            Self::Fit => "fit: hole less shaft, tight below zero",
            Self::Calculation => "a calculation",
        }
    }

    /// Of how many readings it is and no more, where that is fixed; else of two at least.
    pub fn of_just(self) -> Option<usize> {
        match self {
            Self::Calculation => Some(0),
            Self::Offset => Some(1),
            Self::Difference | Self::Fit => Some(2),
            Self::Mean | Self::Greatest | Self::Least | Self::Spread => None,
        }
    }

    /// Whether it can be of so many.
    pub fn takes(self, count: usize) -> bool {
        self.of_just().map_or(count >= 2, |just| count == just)
    }

    /// It of these; none where it can't be of so many.
    pub fn of(self, values: &[f64]) -> Option<f64> {
        if !self.takes(values.len()) {
            return None;
        }
        let first = *values.first()?;
        let second = values.get(1).copied().unwrap_or(0.0);
        let greatest = values.iter().copied().fold(first, f64::max);
        let least = values.iter().copied().fold(first, f64::min);
        let exact = match self {
            Self::Mean => values.iter().sum::<f64>() / values.len() as f64,
            Self::Greatest => greatest,
            Self::Least => least,
            Self::Spread => greatest - least,
            Self::Difference | Self::Fit => first - second,
            Self::Offset => first / 2.0,
            Self::Calculation => return None,
        };
        Some(rounded(exact, values))
    }
}

/// Without the last bits that arithmetic leaves behind the readings' own digits.
fn rounded(exact: f64, values: &[f64]) -> f64 {
    let digits = |value: &f64| {
        value
            .to_string()
            .split_once('.')
            .map_or(0, |(_, behind)| behind.len())
    };
    let most = values.iter().map(digits).max().unwrap_or(0);
    let scale = 10_f64.powi((most + MORE_DIGITS).min(9) as i32);
    (exact * scale).round() / scale
}

/// A fit in words: "0.0005 in T" where it is tight, "0.0010 in L" where it is loose.
pub fn fit_words(value: f64, decimals: u8, unit: &str) -> String {
    let size = fixed(value.abs(), decimals);
    let is_zero = !size.bytes().any(|digit| (b'1'..=b'9').contains(&digit));
    let letter = match (is_zero, value < 0.0) {
        (true, _) => "",
        (false, true) => " T",
        (false, false) => " L",
    };
    format!("{} {unit}{letter}", size)
}
