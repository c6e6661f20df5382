//! A shell's class by the two codes, on the Measure screen and in a step: the same table, the same sentences.
//! The table is our own, of the walking tractor's crankshaft.

use halfcase::job::field::Refused;
use halfcase::job::json;
use halfcase::job::kinds::kind::Kind;
use halfcase::job::kinds::select::answer::advice;
use halfcase::job::kinds::select::words::advice_words;
use halfcase::job::kinds::{Select, Work, blank};
use halfcase::job::measuring::{Calculation, MeasureBench, Trouble, of};
use halfcase::job::progress::StepProgress;

const TABLE: [(&str, &str); 4] = [
    ("down", "A, B"),
    ("across", "1, 2, 3"),
    ("line_1", "green, brown, black"),
    ("line_2", "brown, black, –"),
];

fn codes() -> &'static Calculation {
    of("codes")
}

fn put(bench: &mut MeasureBench, id: &str, words: &str) {
    let field = codes().fields.iter().find(|field| field.id == id);
    bench.choose(codes(), field.unwrap_or_else(|| panic!("no {id}")), words);
}

/// The table with those words put in, over what stands there.
fn with(more: &[(&str, &str)]) -> MeasureBench {
    let mut bench = MeasureBench::default();
    TABLE
        .iter()
        .chain(more)
        .for_each(|(id, words)| put(&mut bench, id, words));
    bench
}

fn said(bench: &MeasureBench) -> String {
    match codes().answer(bench) {
        Ok(answer) => answer.number,
        Err(why) => why.to_string(),
    }
}

/// One thing is asked for at a time, in the order a table is copied out.
#[test]
fn the_table_is_asked_for_line_by_line_then_the_codes() {
    let mut bench = MeasureBench::default();
    for (asked, id, words) in [
        ("Enter: codes down the side, with commas.", "down", "A, B"),
        ("Enter: codes across the top, with commas.", "across", "1, 2, 3"),
        (
            "Enter: A: what goes with 1, 2, 3.",
            "line_1",
            "green, brown, black",
        ),
        ("Enter: B: what goes with 1, 2, 3.", "line_2", "brown, black, –"),
        ("Enter: code read, one of those down the side.", "read_down", "B"),
        (
            "Enter: code read, one of those across the top.",
            "read_across",
            "2",
        ),
    ] {
        let why = codes().answer(&bench).unwrap_err();
        assert!(matches!(why, Trouble::Missing(_) | Trouble::Line(_)), "{why:?}");
        assert_eq!(why.to_string(), asked);
        put(&mut bench, id, words);
    }
    assert_eq!(said(&bench), "black");
}

/// Every cell of the table, by the codes as they stand on the parts: a small letter or a space is no other code.
#[test]
fn every_cell_is_found() {
    for (down, line) in [
        ("A", ["green", "brown", "black"]),
        (" b ", ["brown", "black", ""]),
    ] {
        for (across, class) in ["1", "2", "3"].into_iter().zip(line) {
            let bench = with(&[("read_down", down), ("read_across", across)]);
            let found = codes().answer(&bench).ok().map(|answer| answer.number);
            assert_eq!(found.unwrap_or_default(), class, "{down}{across}");
        }
    }
}

#[test]
fn what_is_not_in_the_table_is_said_with_what_is() {
    for (more, words) in [
        (
            &[("read_down", "C"), ("read_across", "1")][..],
            "The manual’s table has no “C” as code down the side, only A, B: nothing is chosen. Read it again.",
        ),
        // Not before the second code is asked for.
        (
            &[("read_down", "C")],
            "The manual’s table has no “C” as code down the side, only A, B: nothing is chosen. Read it again.",
        ),
        (
            &[("read_down", "A"), ("read_across", "4")],
            "The manual’s table has no “4” as code across the top, only 1, 2, 3: nothing is chosen. Read it again.",
        ),
        (
            &[("read_down", "B"), ("read_across", "3")],
            "The manual’s table has nothing for these codes: nothing is chosen. Read them again.",
        ),
        (
            &[("line_2", "brown, black, red, blue")],
            "The line of “B” has 4 parts, and across the top are 1, 2, 3: enter one part for each of these, with commas, – where the manual has nothing.",
        ),
        (&[("down", "A, B, a")], "“a” stands there twice."),
        (
            &[("down", "1,2,3,4,5,6,7,8,9,10,11,12,13,14,15,16,17,18,19,20,21")],
            "A side has 20 codes at most.",
        ),
    ] {
        let why = codes().answer(&with(more)).unwrap_err();
        assert_eq!(why, Trouble::Said(words.to_owned()), "{more:?}");
    }
}

/// A cell that is empty keeps its place: what stands behind it isn't moved under another code.
#[test]
fn an_empty_cell_moves_no_other() {
    for empty in ["", " ", "-", "–", "—", "−"] {
        let line = format!("green,{empty},black");
        let read = |across| {
            said(&with(&[
                ("line_1", &line),
                ("read_down", "A"),
                ("read_across", across),
            ]))
        };
        assert_eq!(
            (read("1").as_str(), read("3").as_str()),
            ("green", "black"),
            "“{empty}”"
        );
        assert!(
            read("2").starts_with("The manual’s table has nothing"),
            "“{empty}”"
        );
        let mut select = Select::blank();
        for (path, words) in [
            ("codes/down", "A"),
            ("codes/across", "1, 2, 3"),
            ("codes/row/0", &line),
        ] {
            select.set(path, words).unwrap();
        }
        let table = select.codes.unwrap();
        assert_eq!(
            (table.at("A", "2"), table.at("A", "3")),
            (None, Some("black")),
            "“{empty}”"
        );
    }
}

/// A line of other codes, or whose own is gone, is kept as it was typed, through a reload too.
#[test]
fn nothing_typed_is_lost() {
    let mut bench = with(&[("read_down", "B"), ("read_across", "2")]);
    put(&mut bench, "across", "1");
    assert_eq!(said(&bench), "Enter: B: what goes with 1.");
    put(&mut bench, "down", "A");
    let written = json::write(&bench).unwrap();
    let mut back: MeasureBench = json::read(&written).unwrap();
    assert_eq!(back, bench);
    for (id, words) in [("down", "A, B"), ("across", "1, 2, 3")] {
        put(&mut back, id, words);
    }
    assert_eq!(said(&back), "black");
}

/// As many lines are asked for as there are codes; a code put in too often hides none.
#[test]
fn a_line_is_called_by_its_code() {
    let labels = |bench: &MeasureBench| -> Vec<String> {
        let lines = codes()
            .fields
            .iter()
            .filter(|field| field.id.starts_with("line_"));
        lines.filter_map(|field| codes().label(bench, field)).collect()
    };
    let named = ["A: what goes with 1, 2, 3", "B: what goes with 1, 2, 3"];
    assert_eq!(labels(&with(&[])), named);
    assert_eq!(labels(&with(&[("down", "A, A")])), [named[0], named[0]]);
    assert!(labels(&with(&[("down", "")])).is_empty());
    assert!(labels(&with(&[("across", " , ")])).is_empty());
}

/// The step says the same of codes that its table hasn't, by the names the manual gives them.
#[test]
fn a_step_says_which_codes_there_are() {
    let mut select = Select::blank();
    for (path, words) in [
        ("select/by", "3"),
        ("codes/down_name", "case code"),
        ("codes/down", "A, B"),
        ("codes/across", "1, 2"),
        ("codes/row/0", "green, brown"),
        ("codes/row/1", "brown"),
    ] {
        select.set(path, words).unwrap();
    }
    let line = |down: &str, across: &str| {
        let progress = StepProgress {
            codes: Some((down.to_owned(), across.to_owned())),
            ..StepProgress::default()
        };
        advice_words(&select, &progress, &advice(&select, &progress, &[])).lines
    };
    assert_eq!(
        line("C", "1"),
        ["The manual’s table has no “C” as case code, only A, B: nothing is chosen. Read it again."]
    );
    assert_eq!(
        line("A", "3"),
        ["The manual’s table has no “3” as second code, only 1, 2: nothing is chosen. Read it again."]
    );
    assert_eq!(
        line("B", "2"),
        ["The manual’s table has nothing for these codes: nothing is chosen. Read them again."]
    );
    assert_eq!(line("a", "2"), ["By the manual’s table."]);
    select.codes = None;
    assert_eq!(
        select.set("codes/row/0", "green"),
        Err(Refused::NoField),
        "no code, no line"
    );
    let Some(Work::Select(mut bare)) = blank("Select") else {
        panic!("a select step")
    };
    bare.set("codes/down", "A").unwrap();
    let refused = bare.set("codes/row/0", "green").unwrap_err();
    assert_eq!(
        refused,
        Refused::Said(
            "There are no codes across the top yet: enter these before the line of “A”.".to_owned()
        )
    );
}

/// A line goes with its code: one put in before it is asked for its own, one taken out and put back has it again.
#[test]
fn a_line_stays_with_its_code() {
    let mut bench = with(&[("read_down", "B"), ("read_across", "1")]);
    for (down, said_then) in [
        ("X, A, B", "brown"),
        ("B, A", "brown"),
        ("b", "brown"),
        (
            "A",
            "The manual’s table has no “B” as code down the side, only A: nothing is chosen. Read it again.",
        ),
        ("A, B", "brown"),
    ] {
        put(&mut bench, "down", down);
        assert_eq!(said(&bench), said_then, "{down}");
    }
    put(&mut bench, "down", "X, A, B");
    put(&mut bench, "read_down", "X");
    assert_eq!(said(&bench), "Enter: X: what goes with 1, 2, 3.");
}

/// Codes put in, taken out or turned about across the top, or another engine's table: every line is asked for
/// anew, none comes to stand under other codes.
#[test]
fn a_line_has_a_part_for_each_code() {
    let read = [("read_down", "A"), ("read_across", "2")];
    let mut bench = with(&read);
    for across in ["0, 1, 2, 3", "2, 3", "3, 2, 1", "2, 3, 4"] {
        put(&mut bench, "across", across);
        assert_eq!(said(&bench), format!("Enter: A: what goes with {across}."));
    }
    let mut bench = with(&read);
    put(&mut bench, "line_1", "green");
    assert!(
        said(&bench).starts_with("The line of “A” has 1 part, and"),
        "{}",
        said(&bench)
    );
}

/// In a step the cells go with their codes too, down and across.
#[test]
fn cells_of_a_step_stay_with_their_codes() {
    let mut select = Select::blank();
    let mut enter = |path: &str, words: &str| {
        select.set(path, words).unwrap();
        select.codes.clone().unwrap()
    };
    enter("codes/down", "A, B");
    enter("codes/across", "1, 2");
    enter("codes/row/0", "green, brown");
    enter("codes/row/1", "red, black");
    for (path, codes) in [
        ("codes/down", "X, A, B"),
        ("codes/down", "B, X, A"),
        ("codes/down", "A, B"),
        ("codes/across", "0, 1, 2"),
        ("codes/across", "2, 1"),
        ("codes/across", "1, 2"),
    ] {
        let table = enter(path, codes);
        for (down, across, class) in [
            ("A", "1", Some("green")),
            ("A", "2", Some("brown")),
            ("B", "1", Some("red")),
            ("B", "2", Some("black")),
            ("X", "1", None),
            ("A", "0", None),
        ] {
            assert_eq!(table.at(down, across), class, "{path} {codes}: {down}{across}");
        }
    }
    // One that alone was renamed keeps what it had.
    let table = enter("codes/down", "A, C");
    assert_eq!(
        (table.at("C", "1"), table.at("C", "2")),
        (Some("red"), Some("black"))
    );
    let table = enter("codes/across", "1, 3");
    assert_eq!(
        (table.at("A", "3"), table.at("C", "3")),
        (Some("brown"), Some("black"))
    );
    // One taken out takes what it had along.
    let table = enter("codes/down", "C");
    assert_eq!((table.at("A", "1"), table.at("C", "1")), (None, Some("red")));
}
