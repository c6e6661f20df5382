//! Files that mean harm, or were mangled: refused with a sentence, or made harmless.

use halfcase::job::csv;
use halfcase::job::id::{ClockId, EntryId};
use halfcase::job::json;
use halfcase::job::keep::is_anothers;
use halfcase::job::sheet::{JobId, Sheet, SheetError, StepId};

/// Cells that begin like this are formulas in a spreadsheet (OWASP, "CSV Injection").
#[test]
fn no_cell_is_a_formula_and_each_comes_back_as_it_was() {
    let cells = [
        "=1+1",
        "+1+1",
        "-1+1",
        "@SUM(A1)",
        "=HYPERLINK(\"http://x\",\"y\")",
        "\'=1",
        "\'\'+1",
        "\'quoted\'",
        "-0.02",
        "−3",
        "12",
        "M8 × 20, -5 °C",
        "",
        "9 +2/−0 N·m",
    ];
    let row: Vec<String> = cells.iter().map(|cell| (*cell).to_owned()).collect();
    let text = csv::write(std::slice::from_ref(&row));
    for cell in text.trim_end().split(',') {
        let cell = cell.trim_matches('"');
        let shown = cell.starts_with(['=', '+', '@']) || (cell.starts_with('-') && cell != "-0.02");
        assert!(!shown, "{cell}");
    }
    let read = csv::read(&text).unwrap();
    assert_eq!(read[0].cells, row);
}

/// One more than the greatest there is would wrap to nothing.
#[test]
fn numbers_that_leave_none_above_them_are_refused() {
    for text in ["4294967295", "1000000001"] {
        assert!(json::read::<JobId>(text).is_err(), "{text}");
        assert!(json::read::<StepId>(text).is_err(), "{text}");
        assert!(json::read::<ClockId>(text).is_err(), "{text}");
        assert!(json::read::<EntryId>(text).is_err(), "{text}");
    }
    assert!(json::read::<EntryId>("18446744073709551615").is_err());
    assert_eq!(
        json::read::<EntryId>("1000000000").unwrap(),
        EntryId(1_000_000_000)
    );
    assert_eq!(json::read::<JobId>("7").unwrap(), JobId(7));
}

#[test]
fn a_name_that_would_break_a_backup_is_nobodys() {
    for name in [
        "x\"y",
        "",
        "a b",
        "ä",
        "x\\y",
        "x\ny",
        &"x".repeat(65),
        "jobs",
        "record/1/0000",
    ] {
        assert!(!is_anothers(name), "{name:?}");
    }
    for name in ["counters", "photos/3-a_b"] {
        assert!(is_anothers(name), "{name:?}");
    }
}

fn with(title: &str, steps: usize) -> String {
    let step = |id| format!(r#"{{"id":{id},"title":"Wash","work":{{"clean":{{}}}}}}"#);
    let steps: Vec<String> = (1..=steps).map(step).collect();
    format!(
        r#"{{"version":1,"title":"{title}","steps":[{}]}}"#,
        steps.join(",")
    )
}

#[test]
fn a_sheet_too_large_for_a_phone_is_refused() {
    assert_eq!(
        Sheet::from_json(&with("Bottom end", 501)).unwrap_err(),
        SheetError::TooMany(501)
    );
    assert!(Sheet::from_json(&with("Bottom end", 500)).is_ok());
    let why = Sheet::from_json(&with(&"x".repeat(501), 1)).unwrap_err();
    assert!(why.to_string().contains("notes"), "{why}");
    assert!(Sheet::from_json(&with(&"x".repeat(500), 1)).is_ok());
}
