//! The bundled example: the gearbox and crankcase of an invented walking tractor.

use super::sheet::{JOB_FORM_VERSION, Sheet};

/// Our own JSON form, as a user's file would be.
const TEXT: &str = include_str!("example.json");

/// A fresh sheet of the example. A test holds it readable; were it not, the sheet would be empty.
pub fn sheet() -> Sheet {
    Sheet::from_json(TEXT).unwrap_or_else(|_| Sheet {
        version: JOB_FORM_VERSION,
        title: String::new(),
        machine: String::new(),
        steps: Vec::new(),
        extra: serde_json::Map::new(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn is_a_whole_sheet() {
        let sheet = Sheet::from_json(TEXT).unwrap();
        assert!(sheet.steps.len() >= 20);
    }
}
