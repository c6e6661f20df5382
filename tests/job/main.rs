//! The job and its rules, without a browser.

mod across;
mod air;
mod backup;
mod bolt_lengths;
mod bonding;
mod bottle;
mod calculated;
mod calendar;
mod changed_plan;
mod checks;
mod counts;
mod csv;
mod cure_gate;
mod decimal_comma;
mod figures;
mod fill_run;
mod form;
mod forms;
mod gate;
mod gauge;
mod groups;
mod guard;
mod hostile;
mod hot_range;
mod how;
mod ids;
mod in_turn;
mod journals;
mod json;
mod lifting;
mod loose;
mod manual_heat;
mod measuring;
mod night;
mod off_centre;
mod overview;
mod part_told;
mod parts;
mod program;
mod progress;
mod pull;
mod rectangle;
mod rework;
mod rigging;
mod rulers;
mod runout;
mod search;
mod seat_after;
mod seating;
mod select;
mod shared_box;
mod sheet;
mod shell_codes;
mod situation;
mod stated;
mod tamper;
mod told_in;
mod torque;
mod two_waits;
mod units;
mod wetted;
mod worked;
mod wrench_asked;
mod wrenches;

use halfcase::job::example;
use halfcase::job::kinds::Work;
use halfcase::job::record::{EntryId, Event, Record, SetTo, Setting};
use halfcase::job::sheet::{Sheet, StepId};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::TorqueUnit;

/// 2026-06-01 08:00 UTC.
const MORNING: Moment = Moment(1_780_300_800_000);

fn hours(after: f64) -> Moment {
    Moment(MORNING.0 + (after * 3_600_000.0) as i64)
}

/// A sheet of the walking tractor's gearbox, read as a user's file would be.
fn sheet(steps: &str) -> Sheet {
    Sheet::from_json(&format!(r#"{{"version":1,"title":"Gearbox","steps":[{steps}]}}"#)).unwrap()
}

/// What a wrench was set to, N·m.
fn set_to(newton_metres: f64, tool: &str) -> Setting {
    Setting {
        to: SetTo::Torque {
            value: newton_metres,
            unit: TorqueUnit::NewtonMetre,
            decimals: 0,
        },
        tool: tool.to_owned(),
        adapter: false,
        instead: None,
    }
}

fn done(record: &mut Record, step: u32) -> EntryId {
    record.add(MORNING, Some(StepId(step)), "", Event::Done { facts: None })
}

#[test]
fn the_example_can_be_read_and_written_back_without_change() {
    let sheet = example::sheet();
    assert_eq!(sheet.check(), Ok(()));
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet);
    assert!(sheet.steps.len() >= 20, "the example is about 20 steps");
}

/// The round is for bolts that are at the full torque already (ASME PCC-1).
#[test]
fn the_example_goes_round_only_after_a_pass_at_the_full_torque() {
    for step in example::sheet().steps {
        let Work::Fasten(fasten) = &step.work else {
            continue;
        };
        if let Some(round) = fasten.passes.iter().position(|pass| pass.round) {
            let before = fasten.passes[..round].last();
            assert_eq!(before.map(|pass| pass.share), Some(1.0), "{}", step.title);
        }
    }
}

#[test]
fn the_example_has_every_kind_of_work() {
    let words: std::collections::BTreeSet<&str> =
        example::sheet().steps.iter().map(|s| s.work.word()).collect();
    let all = [
        "Bond", "Check", "Clean", "Fasten", "Fill", "Fit", "Gauge", "Lift", "Run", "Seat", "Select", "Turn",
    ];
    assert_eq!(words.into_iter().collect::<Vec<_>>(), all);
}
