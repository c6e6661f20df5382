//! Bolts round a rectangle: how many are in the upper row and how many there are in all are judged together,
//! by touch, in the table of fasteners and in the plan's file; nothing is cut to fit without a word.

use halfcase::job::fasteners;
use halfcase::job::form::{fields, set};
use halfcase::job::json;
use halfcase::job::kinds::Work;
use halfcase::job::kinds::fasten::begin;
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::trade::order::Layout;

const EVEN: &str = "A rectangle needs an even count of four or more: change how many first.";

/// A step of so many that lie like that.
fn plan(count: &str, lie: &str) -> Step {
    let mut step = Step::new(
        StepId(1),
        "Case bolts",
        Work::Fasten(begin("M6", "9 N·m").unwrap()),
    );
    for (id, value) in [("fasten/count", count), ("fasten/layout", lie)] {
        enter(&mut step, id, value).unwrap();
    }
    step
}

fn enter(step: &mut Step, id: &str, value: &str) -> Result<(), String> {
    let sheet = Sheet::new("Plan", vec![step.clone()]);
    set(&sheet, step, id, value).map_err(|refused| refused.to_string())
}

fn lie(step: &Step) -> Layout {
    match &step.work {
        Work::Fasten(fasten) => fasten.layout,
        other => panic!("{other:?}"),
    }
}

/// What is entered is taken as it is or refused, and then nothing has changed.
#[test]
fn a_row_that_does_not_fit_is_refused_by_touch() {
    let row = "At most 8 of 16 fit in the upper row: enter fewer, or change how many first.";
    for (count, layout, across, said) in [
        ("16", "rectangle", "9", row),
        ("16", "rectangle", "31", row),
        ("16", "two rows", "9", row),
        ("15", "circle", "4", EVEN),
        ("2", "line", "2", EVEN),
    ] {
        let mut step = plan(count, layout);
        let before = step.clone();
        assert_eq!(
            enter(&mut step, "fasten/across", across),
            Err(said.to_owned()),
            "{count} {layout}"
        );
        assert_eq!(step, before, "{count} {layout}");
    }
    for (across, down) in [(8, 0), (7, 1), (2, 6)] {
        let mut step = plan("16", "two rows");
        enter(&mut step, "fasten/across", &across.to_string()).unwrap();
        assert_eq!(lie(&step), Layout::Rectangle { across, down });
    }
    // Nothing in a pattern that has no row stays nothing.
    let mut step = plan("15", "circle");
    enter(&mut step, "fasten/across", "").unwrap();
    assert_eq!(lie(&step), Layout::Circle { count: 15 });
}

/// Another count says so where the row no longer fits, or the pattern can't be of so many.
#[test]
fn a_count_that_the_pattern_cannot_have_is_refused() {
    let odd = "A rectangle needs an even count of four or more: change how they lie first.";
    let rows = "Two rows need an even count: change how they lie first.";
    let mut rectangle = plan("16", "rectangle");
    enter(&mut rectangle, "fasten/across", "7").unwrap();
    for (step, count, said) in [
        (
            &rectangle,
            "12",
            "At most 6 of 12 fit in the upper row, and 7 are there: change that first.",
        ),
        (
            &rectangle,
            "4",
            "At most 2 of 4 fit in the upper row, and 7 are there: change that first.",
        ),
        (&rectangle, "15", odd),
        (&rectangle, "2", odd),
        (&rectangle, "1", odd),
        (&plan("6", "two rows"), "5", rows),
        (&plan("6", "two rows"), "1", rows),
    ] {
        let mut changed = step.clone();
        assert_eq!(
            enter(&mut changed, "fasten/count", count),
            Err(said.to_owned()),
            "{count}"
        );
        assert_eq!(&changed, step, "{count}");
    }
    for (count, layout) in [
        ("14", Layout::Rectangle { across: 7, down: 0 }),
        ("20", Layout::Rectangle { across: 7, down: 3 }),
    ] {
        let mut step = rectangle.clone();
        enter(&mut step, "fasten/count", count).unwrap();
        assert_eq!(lie(&step), layout);
    }
    // The other patterns have any count.
    for layout in ["line", "circle", "as numbered"] {
        let mut step = plan("6", layout);
        for count in ["5", "1", "64"] {
            assert_eq!(
                enter(&mut step, "fasten/count", count),
                Ok(()),
                "{layout} {count}"
            );
        }
    }
}

/// The table of fasteners says the same, with the line and the column.
#[test]
fn a_row_that_does_not_fit_is_refused_in_a_table() {
    let read = |count: u32, layout: &str| {
        let text = format!("step,thread,count,torque,layout\nx,M6,{count},9 N·m,{layout}");
        let steps = fasteners::read(&text, StepId(1));
        steps
            .map(|steps| lie(&steps[0]))
            .map_err(|refused| refused.to_string())
    };
    for (count, layout, said) in [
        (
            16,
            "rectangle 9",
            "Line 2, layout: At most 8 of 16 fit in the upper row: write fewer.",
        ),
        (
            6,
            "rectangle 31",
            "Line 2, layout: At most 3 of 6 fit in the upper row: write fewer.",
        ),
        (
            16,
            "rectangle 1",
            "Line 2, layout: Enter a whole number from 2 to 31.",
        ),
        (
            64,
            "rectangle 32",
            "Line 2, layout: Enter a whole number from 2 to 31.",
        ),
        (
            15,
            "rectangle 4",
            "Line 2, layout: a rectangle needs an even count of four or more.",
        ),
        (
            16,
            "rectangle x",
            "Line 2, layout: behind “rectangle” write how many are in its upper row.",
        ),
    ] {
        assert_eq!(read(count, layout), Err(said.to_owned()), "{layout}");
    }
    assert_eq!(
        read(16, "rectangle 8"),
        Ok(Layout::Rectangle { across: 8, down: 0 })
    );
    assert_eq!(
        read(16, "rectangle 7"),
        Ok(Layout::Rectangle { across: 7, down: 1 })
    );
}

/// A plan's file states the row and the sides: their count is made of both, so neither can be over the other.
/// What it states is shown as it stands, and refused where no joint has it.
#[test]
fn a_file_states_both_sides() {
    let file = |across: &str, down: &str| {
        format!(
            r#"{{"version":1,"title":"Plan","steps":[{{"id":1,"title":"x","work":{{"fasten":{{"thread":"M6",
            "torque":"9 N·m","layout":{{"rectangle":{{"across":{across},"down":{down}}}}}}}}}}}]}}"#
        )
    };
    let read = |across: &str, down: &str| {
        Sheet::from_json(&file(across, down))
            .map_err(|refused| refused.to_string())
            .and_then(|sheet| {
                sheet
                    .check_numbers()
                    .map(|()| sheet)
                    .map_err(|why| why.to_string())
            })
    };
    let sheet = read("9", "1").unwrap();
    assert_eq!(lie(&sheet.steps[0]), Layout::Rectangle { across: 9, down: 1 });
    let shown = fields(&sheet, &sheet.steps[0]);
    let value = |id: &str| shown.iter().find(|field| field.id == id).unwrap().value.clone();
    assert_eq!(
        (value("fasten/count"), value("fasten/across")),
        ("20".to_owned(), "9".to_owned())
    );
    for (across, down, said) in [
        (
            "1",
            "4",
            "in the upper row of a rectangle”: Enter a whole number from 2 to 31.",
        ),
        ("31", "2", "how many”: Enter a whole number from 1 to 64."),
    ] {
        let why = read(across, down).unwrap_err();
        assert!(why.ends_with(said), "{why}");
    }
    for (across, down) in [("9", "-1"), ("9", "null"), ("2.5", "1")] {
        assert!(read(across, down).is_err(), "{across}, {down}");
    }
}

/// What an earlier release kept opens as it stands, whatever it holds, and may be corrected from there.
#[test]
fn a_stored_rectangle_opens_as_it_stands() {
    let mut step = plan("16", "rectangle");
    if let Work::Fasten(fasten) = &mut step.work {
        fasten.layout = Layout::Rectangle { across: 40, down: 3 };
    }
    let sheet = Sheet::new("Plan", vec![step.clone()]);
    let mut back = json::read::<Sheet>(&json::write(&sheet).unwrap())
        .unwrap()
        .steps
        .remove(0);
    assert_eq!(back.work, step.work);
    enter(&mut back, "fasten/across", "8").unwrap();
    enter(&mut back, "fasten/count", "16").unwrap();
    assert_eq!(lie(&back), Layout::Rectangle { across: 8, down: 0 });
}
