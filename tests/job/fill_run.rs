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
            state: State::new(jobs, files.into_iter().collect(), Vec::new(), Settings::default()),
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

    pub fn close(&mut self, id: u32) -> Result<(), Refused> {
        self.send(Intent::Close(StepId(id)))
    }

    fn read(&mut self, id: u32, what: What, value: f64, unit: &str) -> Result<(), Refused> {
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
    // A reading in the jug's unit of another day does not stand for the plan's.
    let mut other = filled(r#"{"fluid":"SAE 30","litres":1.1}"#);
    other.read(1, What::PutIn, 1.1, "US qt").unwrap();
    assert_eq!(other.ask(1), Ask::Read(What::PutIn));
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
