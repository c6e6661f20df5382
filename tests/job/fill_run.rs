//! A fill in the manual's own unit, and what was put in; an engine that is run, looked at and left to cool.

use super::{MORNING, sheet};
use halfcase::job::form;
use halfcase::job::journal::words;
use halfcase::job::kinds::{Fill, Work};
use halfcase::job::reading::{Fact, Verdict, What};
use halfcase::job::record::Record;
use halfcase::job::settings::Settings;
use halfcase::job::sheet::{JobId, Sheet, StepId};
use halfcase::job::state::{Ask, Intent, Job, JobHead, Jobs, Now, ReadWith, Refused, State};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::VolumeUnit;

/// A bench with that job at hand.
pub struct Hand {
    pub state: State,
    pub now: Moment,
}

impl Hand {
    pub fn with(sheet: Sheet) -> Self {
        let jobs = Jobs {
            at_hand: JobId(1),
            heads: vec![JobHead::new(JobId(1), &sheet.title)],
        };
        let files = [(JobId(1), Job::new(sheet, Record::default()))];
        Self {
            state: State::new(jobs, files.into_iter().collect(), Vec::new(), Settings::example()),
            now: MORNING,
        }
    }

    pub fn send(&mut self, intent: Intent) -> Result<(), Refused> {
        let done = self.state.apply(&intent, Now::utc(self.now))?;
        self.state.take(done);
        Ok(())
    }

    pub fn ask(&self, id: u32) -> Ask {
        self.state.ask(StepId(id), self.now).unwrap()
    }

    /// Changes the plan of the first step by its form's path.
    pub fn edit(&mut self, field: &str, value: &str) -> Result<(), Refused> {
        self.send(Intent::EditStep {
            step: StepId(1),
            field: field.to_owned(),
            value: value.to_owned(),
        })
    }

    /// Every STOP of the step read.
    pub fn read_stops(&mut self, id: u32) {
        while let Ask::Acknowledge(caution) = self.ask(id) {
            let caution = caution.to_owned();
            self.send(Intent::Acknowledge {
                step: StepId(id),
                caution,
            })
            .unwrap();
        }
    }

    pub fn close(&mut self, id: u32) -> Result<(), Refused> {
        self.send(Intent::Close(StepId(id)))
    }

    pub fn read(&mut self, id: u32, what: What, value: f64, unit: &str) -> Result<(), Refused> {
        self.send(Intent::Read {
            step: StepId(id),
            what,
            value,
            unit: unit.to_owned(),
            with: ReadWith::default(),
        })
    }

    fn say(&mut self, id: u32, fact: Fact, holds: bool, words: &str) -> Result<(), Refused> {
        self.send(Intent::Say {
            step: StepId(id),
            fact,
            holds,
            words: words.to_owned(),
        })
    }

    fn accept(&mut self, id: u32, what: What) -> Result<(), Refused> {
        self.send(Intent::Accept {
            step: StepId(id),
            what,
            reason: "seen and wiped, dry after ten minutes".to_owned(),
            initials: "PM".to_owned(),
        })
    }

    fn last_line(&self) -> String {
        let job = self.state.job();
        words(job.record.entries().last().unwrap(), &job.sheet)
    }
}

fn filled(fill: &str) -> Hand {
    Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Gearbox oil","work":{{"fill":{fill}}}}}"#
    )))
}

fn fill(hand: &Hand) -> Fill {
    match &hand.state.step(StepId(1)).unwrap().work {
        Work::Fill(fill) => fill.clone(),
        other => panic!("{other:?}"),
    }
}

/// What a release wrote before there were other units is the dry fill, and is written back the same.
#[test]
fn a_fill_in_litres_reads_on_and_is_written_back_the_same() {
    let text = r#"{"fluid":"SAE 30","litres":1.1,"hot":false}"#;
    let hand = filled(text);
    let read = fill(&hand);
    assert_eq!(read.stated().unwrap().text(), "1.1 L");
    assert_eq!(serde_json::to_string(&read).unwrap(), text);
    // 1.1 L is 1.1 / 0.946 352 9 = 1.162 US qt (NIST SP 811).
    assert_eq!(read.amount_words(read.dry().unwrap()), "1.1 L (1.16 US qt)");
}

#[test]
fn the_manuals_unit_stays_and_dry_fill_and_refill_are_two_amounts() {
    let text = r#"{"fluid":"SAE 30","dry":"2 1/2 US qt","refill":"4 imp pt","measured_in":"millilitre"}"#;
    let read = fill(&filled(text));
    assert_eq!(read.stated().unwrap().text(), "2.5 US qt");
    // 2.5 × 0.946 352 9 = 2.3659 L.
    assert_eq!(
        read.amount_words(read.dry().unwrap()),
        "2.5 US qt (2.37 L, 2370 mL)"
    );
    let drained = Fill {
        drained: true,
        ..read.clone()
    };
    assert_eq!(drained.stated().unwrap().text(), "4 imp pt");
    let names: Vec<&str> = drained.facts().iter().map(|(name, _)| *name).collect();
    assert_eq!(
        names,
        ["fluid", "refill after draining", "to the level", "not this time"]
    );
    // Written and read back without loss.
    let again: Fill = serde_json::from_str(&serde_json::to_string(&drained).unwrap()).unwrap();
    assert_eq!(again, drained);
}

#[test]
fn a_fill_is_planned_by_touch_in_any_unit() {
    let plan = sheet(r#"{"id":1,"title":"Oil","work":{"fill":{"fluid":"oil","litres":1.1}}}"#);
    let mut step = plan.steps[0].clone();
    for (field, value) in [
        ("fill/dry", "2.5 US qt"),
        ("fill/refill", "2 US qt"),
        ("fill/drained", "yes"),
        ("fill/level", "upper mark of the dipstick"),
        ("fill/measured", "1"),
    ] {
        form::set(&plan, &mut step, field, value).unwrap_or_else(|why| panic!("{field}: {why}"));
    }
    let Work::Fill(fill) = &step.work else { panic!() };
    assert_eq!((fill.litres, fill.unit()), (0.0, VolumeUnit::Millilitre));
    assert_eq!(fill.stated().unwrap().text(), "2 US qt");
    let shown = form::fields(&plan, &step);
    let dry = shown.iter().find(|field| field.id == "fill/dry").unwrap();
    assert_eq!(dry.value, "2.5 US qt");
    // Litres go where every release finds them; empty takes it out.
    form::set(&plan, &mut step, "fill/dry", "1.2").unwrap();
    assert!(matches!(&step.work, Work::Fill(fill) if fill.litres == 1.2 && fill.dry.is_none()));
    let refused = form::set(&plan, &mut step, "fill/dry", "2 qt")
        .unwrap_err()
        .to_string();
    assert!(refused.contains("US qt"), "{refused}");
    form::set(&plan, &mut step, "fill/dry", "").unwrap();
    assert!(matches!(&step.work, Work::Fill(fill) if fill.dry().is_none()));
}

/// A fill used to be done by "Done", whatever had been put in.
#[test]
fn what_was_put_in_is_asked_and_recorded_as_a_number() {
    let mut hand = filled(r#"{"fluid":"SAE 30","dry":"2.5 US qt"}"#);
    assert_eq!(hand.ask(1), Ask::Read(What::PutIn));
    assert!(hand.close(1).is_err());
    hand.read(1, What::PutIn, 2.4, "US qt").unwrap();
    assert_eq!(hand.last_line(), "put in: 2.4 US qt: within limits");
    assert_eq!(hand.ask(1), Ask::Close);
    hand.close(1).unwrap();
}

/// A tenth off passes (common practice, no source); a quart for a litre of something else does not.
#[test]
fn an_amount_far_from_the_stated_one_is_a_finding() {
    let mut hand = filled(r#"{"fluid":"SAE 30","litres":1.1}"#);
    for (value, near) in [(1.0, true), (1.2, true), (0.9, false), (4.5, false), (0.0, false)] {
        hand.read(1, What::PutIn, value, "L").unwrap();
        let expected = if near {
            Ask::Close
        } else {
            Ask::Finding(What::PutIn)
        };
        assert_eq!(hand.ask(1), expected, "{value}");
    }
    assert!(hand.close(1).is_err());
    hand.accept(1, What::PutIn).unwrap();
    hand.close(1).unwrap();
    // By another jug it is the amount that counts: 1.1 US qt is 1.04 L, 1.1 US pt half of that.
    let mut other = filled(r#"{"fluid":"SAE 30","litres":1.1}"#);
    other.read(1, What::PutIn, 1.1, "US qt").unwrap();
    assert_eq!(other.ask(1), Ask::Close);
    other.read(1, What::PutIn, 1.1, "US pt").unwrap();
    assert_eq!(other.ask(1), Ask::Finding(What::PutIn));
    assert!(other.read(1, What::PutIn, 1.1, "kg").is_err());
}

#[test]
fn to_a_level_alone_the_level_is_said_and_with_an_amount_both_are() {
    let mut hand = filled(r#"{"fluid":"SAE 30","level":"upper mark"}"#);
    let level = What::Fact(Fact::Level);
    assert_eq!(hand.ask(1), Ask::Read(level.clone()));
    // It is no number, and nothing that was not asked can be said.
    assert!(hand.read(1, level.clone(), 1.0, "").is_err());
    hand.say(1, Fact::Level, false, "").unwrap();
    assert_eq!(hand.last_line(), "level: upper mark: not reached");
    assert_eq!(hand.ask(1), Ask::Finding(level.clone()));
    assert!(hand.close(1).is_err());
    hand.say(1, Fact::Level, true, "").unwrap();
    hand.close(1).unwrap();

    let mut both = filled(r#"{"fluid":"SAE 30","litres":1.1,"level":"upper mark"}"#);
    assert_eq!(both.ask(1), Ask::Read(What::PutIn));
    both.read(1, What::PutIn, 1.1, "L").unwrap();
    assert_eq!(both.ask(1), Ask::Read(level));
    both.say(1, Fact::Level, true, "").unwrap();
    both.close(1).unwrap();
}

#[test]
fn with_neither_amount_nor_level_what_was_put_in_is_noted() {
    let mut hand = filled(r#"{"fluid":"grease"}"#);
    assert_eq!(hand.ask(1), Ask::Read(What::PutIn));
    assert!(hand.say(1, Fact::Level, true, "").is_err());
    hand.read(1, What::PutIn, 0.05, "L").unwrap();
    let reading = hand.state.progress(StepId(1)).readings[0].clone();
    assert_eq!(reading.verdict, Verdict::Noted);
    hand.close(1).unwrap();
}

/// Bolts, then a run of the engine they hold.
fn run(run: &str) -> Hand {
    let mut hand = Hand::with(sheet(&format!(
        r#"{{"id":1,"title":"Head bolts","work":{{"fasten":{{"thread":"M8","torque":"20 N·m","layout":"single"}}}}}},
           {{"id":2,"title":"First run","work":{{"run":{run}}}}}"#
    )));
    assert!(
        matches!(hand.ask(2), Ask::Wait(_)),
        "it waits for every step before it"
    );
    hand.send(Intent::Skip {
        step: StepId(1),
        reason: "done at the shop".to_owned(),
    })
    .unwrap();
    hand
}

const WHOLE: &str = r#"{"what":"engine","until":"180 °F","never_over":"110 °C","minutes":10,"cool":true,
    "level":"upper mark","torque_again":1}"#;

#[test]
fn a_run_asks_one_thing_after_the_other_and_records_each() {
    let mut hand = run(WHOLE);
    // Nothing of it is said before its STOP is read.
    assert_eq!(hand.say(2, Fact::Runs, true, ""), Err(Refused::Unacknowledged));
    hand.read_stops(2);
    assert_eq!(hand.ask(2), Ask::Read(What::Fact(Fact::Runs)));
    // Nor anything out of its turn.
    assert!(hand.say(2, Fact::Cooled, true, "").is_err());
    assert!(hand.read(2, What::RanAt, 180.0, "°F").is_err());
    hand.say(2, Fact::Runs, true, "").unwrap();
    hand.read(2, What::RanAt, 185.0, "°F").unwrap();
    hand.read(2, What::RanFor, 12.0, "min").unwrap();
    for (fact, line) in [
        (Fact::NoLeaks, "leaks: none seen"),
        (Fact::Cooled, "cooling: cold enough to touch"),
        (Fact::Level, "level: upper mark: reached"),
        (Fact::TorquedAgain, "fasteners: torqued again"),
    ] {
        assert_eq!(hand.ask(2), Ask::Read(What::Fact(fact)));
        assert!(hand.close(2).is_err(), "{fact:?}");
        hand.say(2, fact, true, "").unwrap();
        assert_eq!(hand.last_line(), line);
    }
    hand.close(2).unwrap();
}

#[test]
fn a_leak_holds_the_step_until_it_is_looked_at_again_or_accepted() {
    let mut hand = run(r#"{"what":"engine","cool":true}"#);
    hand.read_stops(2);
    hand.say(2, Fact::Runs, true, "").unwrap();
    assert_eq!(hand.say(2, Fact::NoLeaks, false, " "), Err(Refused::NoPlace));
    hand.say(2, Fact::NoLeaks, false, "at the drain plug").unwrap();
    let leak = What::Fact(Fact::NoLeaks);
    // It is seen to before anything else is asked.
    assert_eq!(hand.ask(2), Ask::Finding(leak.clone()));
    let why = hand.close(2).unwrap_err().to_string();
    assert!(why.contains("at the drain plug"), "{why}");
    assert_eq!(hand.state.all_findings().len(), 1);
    hand.say(2, Fact::NoLeaks, true, "").unwrap();
    assert_eq!(hand.ask(2), Ask::Read(What::Fact(Fact::Cooled)));
    hand.say(2, Fact::NoLeaks, false, "at the breather").unwrap();
    hand.accept(2, leak.clone()).unwrap();
    assert_eq!(
        hand.last_line(),
        "leaks: it leaks, accepted: seen and wiped, dry after ten minutes"
    );
    // Found once more, the old reason does not hold.
    hand.say(2, Fact::NoLeaks, false, "at the drain plug").unwrap();
    assert_eq!(hand.ask(2), Ask::Finding(leak.clone()));
    hand.accept(2, leak).unwrap();
    hand.say(2, Fact::Cooled, true, "").unwrap();
    hand.close(2).unwrap();
}

/// 110 °C is 230 °F by definition: a limit on the other scale is the same limit.
#[test]
fn too_cold_too_hot_and_too_short_are_findings() {
    let mut hand = run(WHOLE);
    hand.read_stops(2);
    hand.say(2, Fact::Runs, true, "").unwrap();
    for (value, good) in [(179.0, false), (180.0, true), (230.0, true), (231.0, false)] {
        hand.read(2, What::RanAt, value, "°F").unwrap();
        let found = hand.state.findings(StepId(2)).contains(&What::RanAt);
        assert_eq!(found, !good, "{value}");
    }
    assert_eq!(hand.ask(2), Ask::Finding(What::RanAt));
    hand.read(2, What::RanAt, 190.0, "°F").unwrap();
    hand.read(2, What::RanFor, 9.0, "min").unwrap();
    assert_eq!(hand.ask(2), Ask::Finding(What::RanFor));
    hand.read(2, What::RanFor, 10.0, "min").unwrap();
    assert_eq!(hand.ask(2), Ask::Read(What::Fact(Fact::NoLeaks)));
}

#[test]
fn a_run_is_planned_by_touch_and_read_back_whole() {
    let plan = run(WHOLE).state.job().sheet.clone();
    assert_eq!(Sheet::from_json(&plan.to_json()).unwrap(), plan);
    let mut step = plan.steps[1].clone();
    step.work = halfcase::job::kinds::blank("Run").unwrap();
    for (field, value) in [
        ("run/what", "engine"),
        ("run/until", "180 °F"),
        ("run/never_over", "110"),
        ("run/minutes", "10"),
        ("run/level", "upper mark"),
        ("again", "1"),
    ] {
        form::set(&plan, &mut step, field, value).unwrap_or_else(|why| panic!("{field}: {why}"));
    }
    assert_eq!(step.work, plan.steps[1].work);
    for (field, value) in [
        ("run/until", "240 °F"),
        ("run/until", "warm"),
        ("run/minutes", "0"),
        ("again", "2"),
    ] {
        assert!(
            form::set(&plan, &mut step, field, value).is_err(),
            "{field} {value}"
        );
    }
    assert_eq!(step.work, plan.steps[1].work);
}

/// The fasteners a run names stay before it, and stay fasteners.
#[test]
fn the_step_that_is_torqued_again_is_not_taken_from_under_the_run() {
    let mut hand = Hand::with(run(WHOLE).state.job().sheet.clone());
    let bolts = StepId(1);
    assert!(hand.send(Intent::RemoveStep(bolts)).is_err());
    assert!(
        hand.send(Intent::MoveStep {
            step: bolts,
            down: true
        })
        .is_err()
    );
    let work = Box::new(halfcase::job::kinds::blank("Turn").unwrap());
    assert!(hand.send(Intent::ChangeKind { step: bolts, work }).is_err());
    let text = r#"{"version":1,"title":"x","steps":[{"id":1,"title":"Turn","work":{"turn":{}}},
        {"id":2,"title":"Run","work":{"run":{"torque_again":1}}}]}"#;
    let said = Sheet::from_json(text).unwrap_err().to_string();
    assert!(said.contains("torque_again"), "{said}");
}

#[test]
fn a_run_brings_up_what_can_hurt() {
    let hand = run(WHOLE);
    let work = &hand.state.step(StepId(2)).unwrap().work;
    let all = hand.state.cautions(work, Some(StepId(2)), hand.now);
    let ids: Vec<&str> = all.iter().map(|caution| caution.id).collect();
    for id in ["exhaust", "hot-oil", "running-parts"] {
        assert!(ids.contains(&id), "{ids:?}");
    }
}
