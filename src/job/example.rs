//! The bundled examples: the gearbox and crankcase of an invented walking tractor, and the transfer gearbox
//! of another, whose manual is in inches and °F.

use super::sheet::{JOB_FORM_VERSION, Sheet, Units};

/// Our own JSON form, as a user's file would be.
const TEXT: &str = include_str!("example.json");
/// The one in inches.
const INCH: &str = include_str!("example_inch.json");

/// A fresh sheet of the example.
pub fn sheet() -> Sheet {
    read(TEXT)
}

/// A fresh sheet of the one in inches.
pub fn inch() -> Sheet {
    read(INCH)
}

/// A test holds them readable; were one not, the sheet would be empty.
fn read(text: &str) -> Sheet {
    Sheet::from_json(text).unwrap_or_else(|_| Sheet {
        version: JOB_FORM_VERSION,
        title: String::new(),
        machine: String::new(),
        units: Units::default(),
        steps: Vec::new(),
        extra: serde_json::Map::new(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn are_whole_sheets() {
        for (text, least) in [(TEXT, 20), (INCH, 10)] {
            let sheet = Sheet::from_json(text).unwrap_or_else(|error| panic!("{error}"));
            assert!(sheet.steps.len() >= least);
            assert_eq!(Sheet::from_json(&sheet.to_json()), Ok(sheet));
        }
    }
}
