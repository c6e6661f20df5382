//! Tolerance classes and fits as drawings write them: `N7`, `k6`, `52 H7/p6`.

use super::FitError;
use crate::trade::quantity::{Length, decimal, shortest};
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;
use uom::si::length::millimeter;

/// Which kind of surface a class is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Feature {
    /// An inside: written with a capital letter.
    Hole,
    /// An outside: written with a small letter.
    Shaft,
}

/// Where the tolerance lies against the nominal size: the class's letter.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Position {
    /// D or d: wide clearance.
    D,
    /// E or e.
    E,
    /// F or f.
    F,
    /// G or g: close clearance.
    G,
    /// H or h: one limit is the nominal size.
    H,
    /// JS or js: half of the tolerance to each side.
    Js,
    /// J or j: about half to each side, from the table.
    J,
    /// K or k: transition.
    K,
    /// M or m.
    M,
    /// N or n.
    N,
    /// P or p: interference.
    P,
    /// R or r.
    R,
    /// S or s.
    S,
    /// T or t.
    T,
    /// U or u: heavy interference.
    U,
}

impl Position {
    /// Every position, from clearance to interference.
    pub const ALL: [Self; 15] = [
        Self::D,
        Self::E,
        Self::F,
        Self::G,
        Self::H,
        Self::Js,
        Self::J,
        Self::K,
        Self::M,
        Self::N,
        Self::P,
        Self::R,
        Self::S,
        Self::T,
        Self::U,
    ];

    /// The letter of a hole.
    pub const fn capital(self) -> &'static str {
        match self {
            Self::D => "D",
            Self::E => "E",
            Self::F => "F",
            Self::G => "G",
            Self::H => "H",
            Self::Js => "JS",
            Self::J => "J",
            Self::K => "K",
            Self::M => "M",
            Self::N => "N",
            Self::P => "P",
            Self::R => "R",
            Self::S => "S",
            Self::T => "T",
            Self::U => "U",
        }
    }
}

/// A tolerance class: letter and grade. Stored and printed as `N7`, `k6`, `js5`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct ToleranceClass {
    /// Hole or shaft.
    pub feature: Feature,
    /// The letter.
    pub position: Position,
    /// The grade, 5 to 11.
    pub grade: u8,
}

/// The grades that the tables hold.
pub const GRADES: std::ops::RangeInclusive<u8> = 5..=11;

impl FromStr for ToleranceClass {
    type Err = FitError;

    /// Reads `N7`, `k6`, `JS7`, `js5`; a capital first letter makes it a hole.
    fn from_str(text: &str) -> Result<Self, FitError> {
        let text = text.trim();
        let refuse = || FitError::NotAClass(text.chars().take(24).collect());
        let digits = text.find(|c: char| c.is_ascii_digit()).ok_or_else(refuse)?;
        let (letters, grade) = text.split_at(digits);
        let letters = letters.trim();
        let feature = match letters.chars().next() {
            Some(c) if c.is_ascii_uppercase() => Feature::Hole,
            _ => Feature::Shaft,
        };
        let position = Position::ALL
            .into_iter()
            .find(|p| p.capital().eq_ignore_ascii_case(letters))
            .ok_or_else(refuse)?;
        let grade = grade.parse().map_err(|_| refuse())?;
        if GRADES.contains(&grade) {
            Ok(Self {
                feature,
                position,
                grade,
            })
        } else {
            Err(FitError::Grade(grade))
        }
    }
}

impl fmt::Display for ToleranceClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.feature {
            Feature::Hole => write!(f, "{}{}", self.position.capital(), self.grade),
            Feature::Shaft => write!(
                f,
                "{}{}",
                self.position.capital().to_ascii_lowercase(),
                self.grade
            ),
        }
    }
}

impl TryFrom<String> for ToleranceClass {
    type Error = FitError;

    fn try_from(text: String) -> Result<Self, FitError> {
        text.parse()
    }
}

impl From<ToleranceClass> for String {
    fn from(class: ToleranceClass) -> Self {
        class.to_string()
    }
}

/// What a drawing says of a fit; any of its three parts may be missing, but not all.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct FitCode {
    /// The nominal size.
    #[serde(
        default,
        rename = "nominal_mm",
        with = "crate::trade::stored::millimetres::maybe"
    )]
    pub nominal: Option<Length>,
    /// The hole's class.
    pub hole: Option<ToleranceClass>,
    /// The shaft's class.
    pub shaft: Option<ToleranceClass>,
}

impl FromStr for FitCode {
    type Err = FitError;

    /// Reads `52 H7/p6`, `52H7/p6`, `Ø 62 N7`, `25 k6`, `H7-p6`, `62,5 JS7`; millimetres.
    fn from_str(text: &str) -> Result<Self, FitError> {
        let refuse = || FitError::NotAFit(text.trim().chars().take(24).collect());
        let rest = text.trim().trim_start_matches(['Ø', 'ø', '⌀']).trim_start();
        let letter = rest.find(|c: char| c.is_alphabetic()).unwrap_or(rest.len());
        let (size, classes) = rest.split_at(letter);
        // "62 mm N7": the unit is no class.
        let classes = classes.strip_prefix("mm").unwrap_or(classes);
        let nominal = if size.trim().is_empty() {
            None
        } else {
            let mm = decimal(size).ok_or_else(refuse)?;
            if mm <= 0.0 {
                return Err(FitError::Size(mm));
            }
            Some(Length::new::<millimeter>(mm))
        };
        let mut code = Self {
            nominal,
            hole: None,
            shaft: None,
        };
        for class in classes
            .split(['/', '-', '–'])
            .map(str::trim)
            .filter(|c| !c.is_empty())
        {
            let class: ToleranceClass = class.parse()?;
            let place = match class.feature {
                Feature::Hole => &mut code.hole,
                Feature::Shaft => &mut code.shaft,
            };
            if place.replace(class).is_some() {
                return Err(refuse());
            }
        }
        if code.hole.is_none() && code.shaft.is_none() {
            Err(refuse())
        } else {
            Ok(code)
        }
    }
}

impl fmt::Display for FitCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(nominal) = self.nominal {
            let mm = (nominal.get::<millimeter>() * 1e6).round() / 1e6;
            write!(f, "{} ", shortest(mm))?;
        }
        match (self.hole, self.shaft) {
            (Some(hole), Some(shaft)) => write!(f, "{hole}/{shaft}"),
            (Some(class), None) | (None, Some(class)) => write!(f, "{class}"),
            (None, None) => Ok(()),
        }
    }
}
