//! A table of fasteners typed at a desk: in whatever order, separator and words; wrong ones by line.

use super::sheet;
use halfcase::job::csv::{self, CsvError};
use halfcase::job::example;
use halfcase::job::fasteners::{self, TableError};
use halfcase::job::guarding::{guard_fasten, silent_words};
use halfcase::job::kinds::{Fasten, Reuse, Work, fasten};
use halfcase::job::parts::PartPlace;
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::trade::application::{Application, JointKind, ManualWord, answer, every_question};
use halfcase::trade::order::{Layout, Pass};
use halfcase::trade::preload::Condition;
use halfcase::trade::stages::Stage;
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;

fn cells(text: &str) -> Vec<Vec<String>> {
    csv::read(text)
        .unwrap()
        .into_iter()
        .map(|row| row.cells)
        .collect()
}

fn read(text: &str) -> Vec<Step> {
    fasteners::read(text, StepId(1)).unwrap()
}

fn refusal(text: &str) -> String {
    fasteners::read(text, StepId(1)).unwrap_err().to_string()
}

fn fasten(step: &Step) -> &Fasten {
    match &step.work {
        Work::Fasten(fasten) => fasten,
        other => panic!("{other:?}"),
    }
}

#[test]
fn quotes_line_ends_and_separators_are_read_as_rfc_4180_has_them() {
    assert_eq!(cells("a,b\r\n1,2\r\n"), [["a", "b"], ["1", "2"]]);
    assert_eq!(cells("a;b\n1,5;2"), [["a", "b"], ["1,5", "2"]]);
    assert_eq!(cells("a\tb\r1\t2"), [["a", "b"], ["1", "2"]]);
    assert_eq!(
        cells("\u{feff}a,b\n\n\"1,5\",\"say \"\"tight\"\"\"\n"),
        [["a", "b"], ["1,5", "say \"tight\""]]
    );
    assert_eq!(cells("a,b\n\"two\nlines\",x"), [["a", "b"], ["two\nlines", "x"]]);
    assert_eq!(csv::read("a,b\n\"x\ny,2\n"), Err(CsvError::OpenQuote { line: 2 }));
    assert_eq!(csv::read("a,b\n\"x\"y,2"), Err(CsvError::AfterQuote { line: 2 }));
    assert_eq!(csv::read(" \n\n"), Err(CsvError::Empty));
}

#[test]
fn what_may_mean_two_things_is_not_guessed() {
    // Rows are numbered, not counted, by "No."
    let rows = read("No.,thread,torque\n7,M6,9 N·m");
    assert_eq!(fasten(&rows[0]).layout.count(), 1);
    // SAE grade 5 is no ISO class 5.8, and grade 8 no 8.8.
    for cell in ["5", "8", "10", "12"] {
        let said = refusal(&format!("thread,torque,grade\n3/8-16,30 ft·lb,{cell}"));
        assert!(
            said.starts_with(&format!("Line 2, class: “{cell}” is none of these")),
            "{said}"
        );
    }
    assert_eq!(
        fasten(&read("thread,torque,grade\n3/8-16,30 ft·lb,Grade 5")[0]).strength,
        Some(Strength::Grade5)
    );
    // The manual's strength is not made up.
    let said = refusal("thread,torque,compound\nM8,20 N·m,threadlocker");
    assert!(
        said.starts_with("Line 2, compound: “threadlocker” is none of these"),
        "{said}"
    );
    // Cast iron bears more than cast aluminium.
    let said = refusal("thread,torque,into\nM8,20 N·m,cast");
    assert!(
        said.starts_with("Line 2, into: “cast” is none of these"),
        "{said}"
    );
    assert_eq!(
        fasten(&read("thread,torque,into\nM8,20 N·m,cast i")[0]).into,
        Some(FemaleMaterial::CastIron)
    );
}

#[test]
fn lines_are_counted_through_blank_ones_and_quoted_breaks() {
    let rows = csv::read("a,b\n\n\"1\n2\",x\n3,y").unwrap();
    assert_eq!(rows.iter().map(|row| row.line).collect::<Vec<_>>(), [1, 3, 5]);
}

#[test]
fn a_written_table_reads_back_the_same() {
    let rows = vec![
        vec![
            "plain".to_owned(),
            "with, comma".to_owned(),
            "say \"so\"".to_owned(),
        ],
        vec!["two\nlines".to_owned(), "tab\there".to_owned(), "9;10".to_owned()],
    ];
    assert_eq!(cells(&csv::write(&rows)), rows);
}

#[test]
fn headings_come_in_any_order_and_units_in_words() {
    let text = "Qty;Torque;Size;Title;Unit\n4;7,2;M6;Baffle screws;foot pounds\n8;20;m8 x 1,25;Case bolts;newton metres";
    let steps = read(text);
    assert_eq!(steps.len(), 2);
    assert_eq!(steps[0].title, "Baffle screws");
    assert_eq!(fasten(&steps[0]).torque.text(), "7.2 ft·lb");
    assert_eq!(fasten(&steps[0]).layout, Layout::Free { count: 4 });
    assert_eq!(fasten(&steps[1]).thread_name(), "M8");
    assert_eq!(fasten(&steps[1]).torque.text(), "20 N·m");
    assert_eq!(steps[1].id, StepId(2));
}

#[test]
fn a_unit_stands_in_the_cell_or_in_the_heading_or_in_its_own_column() {
    for text in [
        "thread,torque\nM6,9 N·m",
        "thread,Torque (Nm)\nM6,9",
        "thread,torque [N.m]\nM6,9",
        "thread,torque,unit\nM6,9,newton-metres",
        // The cell's own unit goes before the heading's.
        "thread,torque (ft·lb)\nM6,9 Nm",
    ] {
        assert_eq!(fasten(&read(text)[0]).torque.text(), "9 N·m", "{text}");
    }
    assert!(refusal("thread,torque\nM6,9").starts_with("Line 2, torque: "));
    assert_eq!(
        refusal("thread,torque,unit\nM6,9,bananas"),
        "Line 2, unit: “bananas” is no unit of torque."
    );
}

#[test]
fn every_column_is_taken() {
    let text = "step,thread,length mm,count,torque,class,into,engagement mm,condition,new,layout,passes,compound,bag,notes\n\
        Case bolts,M8,35,8,20 ± 2 N·m,8.8,cast aluminium,18,oiled,yes,two rows,30 60 100,medium,7,\"middle first, then out\"";
    let step = &read(text)[0];
    let fasten = fasten(step);
    assert_eq!(fasten.length_mm, Some(35.0));
    assert_eq!(fasten.layout, Layout::PairedRows { pairs: 4 });
    assert_eq!(fasten.torque.text(), "20 ± 2 N·m");
    assert_eq!(fasten.strength, Some(Strength::Class8_8));
    assert_eq!(fasten.into, Some(FemaleMaterial::CastAluminium));
    assert_eq!(fasten.engagement_mm, Some(18.0));
    assert_eq!(fasten.condition, Condition::Oiled);
    assert_eq!(fasten.reuse, Reuse::New);
    assert_eq!(
        fasten.passes.iter().map(|pass| pass.share).collect::<Vec<_>>(),
        [0.3, 0.6, 1.0]
    );
    let compound = fasten.compound.as_ref().unwrap();
    assert_eq!(compound.manual, Some(ManualWord::LockMedium));
    assert_eq!(compound.thread, fasten.thread.map(|thread| thread.major()));
    assert_eq!(step.parts[0].place, PartPlace::Bag("7".to_owned()));
    assert_eq!(step.parts[0].count, 8);
    assert_eq!(step.notes, "middle first, then out");
}

#[test]
fn a_wrong_cell_is_named_by_line_and_column() {
    let line = |cells: &str| {
        refusal(&format!(
            "step,thread,count,torque,class,new,layout,passes\n{cells}"
        ))
    };
    for (cells, start) in [
        ("x,M7.3,1,9 N·m,,,,", "Line 2, thread: "),
        (
            "x,M6,0,9 N·m,,,,",
            "Line 2, count: “0” is not a count from 1 to 64.",
        ),
        ("x,M6,2.5,9 N·m,,,,", "Line 2, count: "),
        ("x,M6,1,−9 N·m,,,,", "Line 2, torque: "),
        (
            "x,M6,1,9 N·m,99.9,,,",
            "Line 2, class: “99.9” is none of these: 4.6, ",
        ),
        ("x,M6,1,9 N·m,,perhaps,,", "Line 2, new: "),
        (
            "x,M6,3,9 N·m,,,two rows,",
            "Line 2, layout: two rows need an even count.",
        ),
        ("x,M6,3,9 N·m,,,,30 60", "Line 2, passes: "),
    ] {
        let words = line(cells);
        assert!(words.starts_with(start), "{cells}: {words}");
    }
    // The line is the file's own, headings and blank lines counted.
    let words = refusal("thread,torque\nM6,9 N·m\n\nM8,twenty");
    assert!(words.starts_with("Line 4, torque: "), "{words}");
}

#[test]
fn a_table_without_what_it_needs_is_refused() {
    assert_eq!(
        fasteners::read("step,count\nx,1", StepId(1)),
        Err(TableError::NoColumn("thread"))
    );
    assert_eq!(
        fasteners::read("thread,size,torque\nM6,M6,9 N·m", StepId(1)),
        Err(TableError::Twice {
            line: 1,
            heading: "thread"
        })
    );
    assert_eq!(
        fasteners::read("thread,torque", StepId(1)),
        Err(TableError::NoRows)
    );
    assert_eq!(
        refusal(""),
        "The file is empty: it needs a line of headings and a line for each size."
    );
}

#[test]
fn what_is_handed_out_comes_back_in() {
    let steps = read(
        "step,thread,length mm,count,torque,class,into,engagement mm,condition,new,layout,passes,compound,bag,notes\n\
         Case bolts,M8,35,8,20 ± 2 N·m,8.8,cast aluminium,18,oiled,yes,two rows,30 60 100,medium,7,notes\n\
         Flywheel nut,M18x1.5,,1,17 kgf·m,,steel,15.5,clean and dry,,,,,on order,\n\
         Cover,1/4-20,,3,86 in·lb,grade 5,,,,,circle,,,,",
    );
    let sheet = Sheet::new("Gearbox", steps.clone());
    assert_eq!(read(&fasteners::write(&sheet)), steps);
}

#[test]
fn steps_of_other_kinds_are_left_out_of_the_table() {
    let sheet = sheet(
        r#"{"id":1,"title":"Turn","work":{"turn":{}}},
           {"id":2,"title":"Plug","work":{"fasten":{"thread":"M14x1.5","torque":"25–30 N·m","layout":"single"}}}"#,
    );
    let table = fasteners::write(&sheet);
    assert_eq!(table.lines().count(), 2);
    assert!(table.contains("Plug,M14×1.5,,1,25–30 N·m"), "{table}");
}

/// A stretch goes out and comes back, and a table without its columns reads on.
#[test]
fn a_stretch_comes_back_from_its_table() {
    let sheet = sheet(
        r#"{"id":1,"title":"Rod","work":{"fasten":{"thread":"M8x1","torque":"28 N·m","layout":{"line":{"count":2}},
            "stretch_least_mm":0.13,"stretch_most_mm":0.15,"stretch_decides":true}}}"#,
    );
    let Work::Fasten(fasten) = &sheet.steps[0].work else {
        panic!("a fasten step")
    };
    assert_eq!(fasten.stretch_least_mm, Some(0.13));
    assert_eq!(handed_round(&sheet), sheet.steps);
    assert!(sheet.to_json().contains("\"stretch_decides\""));
    let refused = fasteners::read("thread,torque,most stretch mm\nM8,28 N·m,50", StepId(1));
    assert!(
        matches!(
            refused,
            Err(TableError::Cell {
                column: "most stretch mm",
                ..
            })
        ),
        "{refused:?}"
    );
}

/// How often they may come again goes out and comes back.
#[test]
fn reuse_comes_back_from_its_table() {
    let sheet = sheet(
        r#"{"id":1,"title":"Head","work":{"fasten":{"thread":"M8","torque":"22 N·m","layout":{"line":{"count":4}},
            "most_uses":3,"longest_mm":88.5}}}"#,
    );
    let Work::Fasten(fasten) = &sheet.steps[0].work else {
        panic!("a fasten step")
    };
    assert_eq!((fasten.most_uses, fasten.longest_mm), (Some(3), Some(88.5)));
    assert_eq!(handed_round(&sheet), sheet.steps);
    for cell in ["0", "21", "2.5", "often"] {
        let refused = fasteners::read(&format!("thread,torque,uses\nM8,22 N·m,{cell}"), StepId(1));
        assert!(
            matches!(
                refused,
                Err(TableError::Cell {
                    column: "may be tightened",
                    ..
                })
            ),
            "{refused:?}"
        );
    }
}

/// The fasten steps of `sheet` after they were written and read back.
fn handed_round(sheet: &Sheet) -> Vec<Step> {
    read(&fasteners::write(sheet))
}

/// Stages, sealing, self-locking and the joint of the compound used to be lost on the way.
#[test]
fn the_examples_fasteners_come_back_from_their_table_as_they_were() {
    let sheet = example::sheet();
    let steps: Vec<&Step> = sheet
        .steps
        .iter()
        .filter(|step| matches!(step.work, Work::Fasten(_)))
        .collect();
    let back = handed_round(&sheet);
    assert_eq!(back.len(), steps.len());
    for (back, step) in back.iter().zip(steps) {
        assert_eq!(back.work, step.work, "{}", step.title);
        // What a table has no column for is the number, the minutes and the waits.
        assert_eq!((&back.title, &back.notes), (&step.title, &step.notes));
    }
}

#[test]
fn every_word_of_a_fastener_comes_back() {
    let plain = || fasten::begin("M8x1", "20 ± 2 N·m").unwrap();
    let mut all: Vec<Fasten> = Vec::new();
    for condition in fasten::CONDITIONS {
        all.push(Fasten { condition, ..plain() });
    }
    for strength in Strength::ALL.map(Some) {
        all.push(Fasten { strength, ..plain() });
    }
    for into in FemaleMaterial::ALL.map(Some) {
        all.push(Fasten { into, ..plain() });
    }
    for layout in [
        Layout::Single,
        Layout::Line { count: 1 },
        Layout::Circle { count: 5 },
        Layout::PairedRows { pairs: 3 },
        Layout::Rectangle { across: 4, down: 1 },
        Layout::Rectangle { across: 2, down: 3 },
        Layout::Free { count: 1 },
    ] {
        all.push(Fasten { layout, ..plain() });
    }
    for front in fasten::Front::ALL {
        all.push(Fasten { front, ..plain() });
    }
    let passes = [(1.0 / 3.0, false), (1.0, false), (1.0, true)];
    all.push(Fasten {
        length_mm: Some(0.5),
        engagement_mm: Some(12.25),
        passes: passes.map(|(share, round)| Pass { share, round }).to_vec(),
        stages: vec![
            Stage::torque(plain().torque),
            Stage::angle(60.0),
            Stage::angle(22.5),
        ],
        seal: true,
        self_locking: true,
        old_locked: true,
        reuse: Reuse::New,
        ..plain()
    });
    for kind in JointKind::ALL {
        let mut joint = Application::new(*kind);
        all.push(Fasten {
            compound: Some(joint.clone()),
            ..plain()
        });
        for question in every_question(*kind) {
            for choice in question.choices {
                if answer(&mut joint, question.id, choice.id).is_ok() {
                    all.push(Fasten {
                        compound: Some(joint.clone()),
                        ..plain()
                    });
                }
            }
        }
    }
    assert!(all.len() > 100, "{}", all.len());
    let steps = all.into_iter().zip(1..);
    let steps = steps.map(|(fasten, id)| Step::new(StepId(id), "Bolts", Work::Fasten(fasten)));
    let sheet = Sheet::new("Plan", steps.collect());
    for (back, step) in handed_round(&sheet).iter().zip(&sheet.steps) {
        assert_eq!(back, step);
    }
}

#[test]
fn stages_flags_and_joints_are_typed_at_a_desk_too() {
    let text = "thread,torque,stages,seals,self-locking,joint of the compound,compound\n\
        M8,40 N·m,snug 20 N·m; 40 N·m; 90°,yes,x,kind: plug; hole: through,low\n\
        M8,40 N·m,30 60 100,,,,";
    let steps = read(text);
    let first = fasten(&steps[0]);
    assert_eq!(first.stages.len(), 3);
    assert!(first.seal && first.self_locking && !first.old_locked);
    let joint = first.compound.as_ref().unwrap();
    assert_eq!(joint.manual, Some(ManualWord::LockLow));
    // Passes under the heading "stages" stay passes, as they were read before.
    assert_eq!(fasten(&steps[1]).passes.len(), 3);
    for (heading, cell) in [
        ("stages", "40"),
        ("seals", "perhaps"),
        ("joint of the compound", "kind: glue"),
        ("joint of the compound", "}"),
    ] {
        let said = refusal(&format!("thread,torque,{heading}\nM8,40 N·m,{cell}"));
        assert!(said.starts_with(&format!("Line 2, {heading}: ")), "{said}");
    }
}

/// Most manuals state no thread: an empty cell says so, and it is written back as that.
#[test]
fn a_thread_that_is_not_stated_is_none_and_comes_back_as_none() {
    let steps = read("thread,torque,count\n,20 N·m,4\nnot stated,9 N·m,2");
    for step in &steps {
        assert_eq!(fasten(step).thread, None);
    }
    assert_eq!(steps[0].title, "4 × thread not stated");
    let sheet = Sheet::new("x", steps.clone());
    let again = fasteners::read(&fasteners::write(&sheet), StepId(1)).unwrap();
    assert_eq!(again[0].work, steps[0].work);
    // In a file it is left out, and the guard says that it says nothing.
    assert!(!sheet.to_json().contains("\"thread\""));
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet);
    assert_eq!(guard_fasten(fasten(&steps[0])), None);
    assert!(silent_words(fasten(&steps[0])).is_some_and(|words| words.starts_with("Thread not stated")));
}
