//! The way of a touch: decided, shown, kept. The commands below only put it into words.

use super::{Bench, Intent, ReadWith, Refused, Restore, Said as Message, Settings};
use crate::device::storage::StorageError;
use crate::device::wake_lock::{self, Awake};
use crate::job::bonding::{BondAnswer, Walk};
use crate::job::bottle::{Bottle, BottleId};
use crate::job::clock::ClockId;
use crate::job::desk::{Desk, typed_words};
use crate::job::example;
use crate::job::id;
use crate::job::journal::gap_words;
use crate::job::kinds::fasten::fastening::PassAnswer;
use crate::job::kinds::seat::oven::{OvenRun, OvenState};
use crate::job::kinds::select::answer::Advice;
use crate::job::kinds::{LiftWork, Piece, Seat, Work};
use crate::job::night::Night;
use crate::job::parts::{self, Listed, PartKey, PartPlace};
use crate::job::reading::What;
use crate::job::readings;
use crate::job::record::{EntryId, Instead, Record};
use crate::job::scale::Ruler;
use crate::job::sheet::{JobId, Sheet, Step, StepId, Units};
use crate::job::skins::{self, Deadline};
use crate::job::state::{Ask, OvenNext, Transaction, Way};
use crate::job::text_form::said::Said;
use crate::trade::application::Application;
use crate::trade::caution::Caution;
use crate::trade::cooling::TimeRange;
use crate::trade::guard::Fastener;
use crate::trade::hoist::BoomPosition;
use crate::trade::moment::Moment;
use crate::trade::quantity::{Length, Mass, TorqueStatement, TorqueUnit};
use crate::trade::thread::Thread;
use crate::trade::wrench::Wrench;
use reactive_graph::graph::untrack;
use reactive_graph::prelude::*;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;

impl Bench {
    /// Does what is intended, shows it and keeps it.
    ///
    /// # Errors
    /// [`Refused`]: nothing is changed. What could not be kept is said, and kept with the next touch.
    pub fn send(self, intent: Intent) -> Result<(), Refused> {
        let now = self.right_now();
        let transaction = self.state.with(|state| state.apply(&intent, now))?;
        if transaction.is_empty() {
            return Ok(());
        }
        // What comes out of a file stands only when it is kept: half a backup is none.
        let from_file = !transaction.after.files.is_empty() || !transaction.others.is_empty();
        if from_file && let Err(error) = self.keep_first(&transaction) {
            self.put(Message::not_kept(&error));
            return Err(Refused::NotKept);
        }
        let (kept, way) = (transaction.clone(), transaction.way);
        let heard = self.state.with(|state| state.heard(&transaction));
        let touched = self.state.get().borrow_mut().take(transaction);
        if !from_file {
            let outcome = self
                .state
                .with(|state| self.shelves.with_value(|shelves| shelves.keep(state, &kept)));
            self.follow_keeping(outcome);
        } else {
            self.follow_keeping(Ok(()));
        }
        if way != Way::Unlisted {
            self.answered();
        }
        if let Some(heard) = heard {
            self.heard.set(heard);
        }
        self.show(touched);
        self.tick();
        Ok(())
    }

    fn keep_first(self, transaction: &Transaction) -> Result<(), StorageError> {
        let mut after = self.state.with(Clone::clone);
        after.take(transaction.clone());
        self.shelves
            .with_value(|shelves| shelves.keep_or_forget(&after, transaction))
    }

    /// What was not kept is said, and that it is kept after all.
    fn follow_keeping(self, outcome: Result<(), StorageError>) {
        let was = self.not_kept.get_untracked();
        let is = outcome.is_err();
        self.kept_or_said(outcome);
        if was != is {
            self.not_kept.set(is);
        }
        if was && !is {
            self.said.update(|all| all.retain(|said| !said.room));
            self.say("There is room again: everything is kept.", false);
        }
    }

    pub(super) fn kept_or_said(self, kept: Result<(), StorageError>) {
        if let Err(error) = kept {
            self.put(Message::not_kept(&error));
        }
    }

    /// Says why nothing was done; a refusal is never lost. One that was said already is not said again.
    pub fn tell(self, outcome: Result<(), Refused>) {
        match outcome {
            Ok(()) | Err(Refused::NotKept) => {}
            Err(refused) => self.refuse(refused.to_string()),
        }
    }

    /// The same for what gives something back.
    pub fn tell_plan<T>(self, outcome: Result<T, Refused>) -> Option<T> {
        outcome.map_err(|refused| self.tell(Err(refused))).ok()
    }

    /// What that step wants now; followed.
    pub fn ask(self, step: StepId) -> Option<Ask> {
        self.look(|state, now| state.ask(step, now.at))
    }

    /// That finding of a step in words, where it is one and not settled; followed.
    pub fn finding(self, step: StepId, what: &What) -> Option<String> {
        self.look(|state, _| {
            let found = state.findings(step).contains(what);
            let step = state.step(step).filter(|_| found)?;
            Some(readings::finding_words(step, &state.progress(step.id), what))
        })
    }

    /// Everything found in the job that is not settled, in words; followed.
    pub fn all_findings(self) -> Vec<(StepId, String)> {
        self.look(|state, _| state.all_findings())
    }

    /// Until when steps must be done before a bead skins, of one step or of all; followed.
    pub fn deadlines(self, step: Option<StepId>) -> Vec<Deadline> {
        self.look(|state, _| {
            let mut all = skins::all_deadlines(state.ground());
            all.retain(|deadline| step.is_none_or(|step| step == deadline.step));
            all
        })
    }

    /// The deadlines that press, of every step; followed.
    pub fn pressing(self) -> Vec<Deadline> {
        self.look(|state, now| skins::pressing(state.ground(), now.at))
    }

    /// Another page of this host cleared the store: all that is in memory is written again, and said.
    pub fn store_cleared(self) {
        let kept = self
            .state
            .with(|state| self.shelves.with_value(|shelves| shelves.keep_everything(state)));
        let well = kept.is_ok();
        self.kept_or_said(kept);
        if well {
            self.keep_watch();
            self.say(
                "Another page of this address cleared what the browser keeps. All of this bench was written again; make a backup.".to_owned(),
                true,
            );
        }
    }

    /// What in the plan doesn't go together, in words, of one step or of all; followed.
    pub fn conflicts(self, step: Option<StepId>) -> Vec<(StepId, String)> {
        self.look(|state, now| {
            let all = state.conflicts(now).into_iter().filter(|conflict| {
                let (own, bead) = conflict.about();
                step.is_none_or(|step| step == own || step == bead)
            });
            let sheet = &state.job().sheet;
            all.map(|conflict| (conflict.about().0, conflict.words(sheet)))
                .collect()
        })
    }

    /// The parts of a step, as the record has them; followed.
    pub fn parts_of(self, step: StepId) -> Vec<Listed> {
        self.look(|state, _| {
            let found = state.step(step);
            found.map_or(Vec::new(), |step| parts::here(step, &state.job().progress))
        })
    }

    /// What a part that settles a finding is called to begin with.
    pub fn part_for(self, step: StepId, what: &What) -> String {
        self.sheet.with_untracked(|sheet| {
            let step = sheet.step(step);
            // For a bolt's length or stretch: one more of these bolts.
            let own = step.filter(|_| what.of_length());
            let bolt = own.and_then(|step| parts::name(step, PartKey::Own));
            bolt.unwrap_or_else(|| step.map_or(String::new(), |step| what.judged_name(step)))
        })
    }

    /// The cautions of some work, that of a step or of a screen itself; followed.
    pub fn cautions_of(self, work: &Work, step: Option<StepId>) -> Vec<Caution> {
        let figures = self.figures();
        let mut cautions = self.look(|state, now| state.cautions(work, step, now.at));
        for caution in &mut cautions {
            caution.danger = figures.said(&caution.danger);
        }
        cautions
    }

    /// What goes on that joint out of my bottles, in today's shop; followed.
    pub fn bond(self, joint: &Application, activator: bool) -> BondAnswer {
        self.look(|state, now| state.bond(joint, activator, now))
    }

    /// What that pass of a fasten step asks for on the wrench in the hand; followed.
    pub fn pass_answer(self, step: &Step, pass: usize, place: usize) -> Option<PassAnswer> {
        self.look(|state, _| state.pass_answer(step, pass, place))
    }

    /// The fastener at that place, from 0, is at its torque: where the order is free, or it is the next.
    pub fn tally_at(self, step: StepId, place: usize) {
        self.tell(self.send(Intent::TallyAt { step, place }));
    }

    /// What may be used where no wrench on the bench can be set to the step's torque; followed.
    pub fn offered_instead(self, step: StepId) -> Vec<Instead> {
        self.look(|state, now| state.offered_instead(step, now.at))
    }

    /// The wrench to take for the step's next fastener, where the one in the hand can't be set; followed.
    pub fn wrench_instead(self, step: StepId) -> Option<(usize, String, String)> {
        self.look(|state, _| state.wrench_instead(step))
    }

    /// What a select step would put in now; followed.
    pub fn advice(self, step: &Step) -> Advice {
        self.look(|state, _| state.advice(step))
    }

    /// What a select step may take one more of; followed.
    pub fn there(self, step: &Step) -> Vec<Piece> {
        self.look(|state, _| state.there(step))
    }

    /// What a select step would rather put in and another has in; followed.
    pub fn in_elsewhere(self, step: &Step) -> Vec<String> {
        self.look(|state, _| state.missing_words(step))
    }

    /// What one touch of the key would put in; followed.
    pub fn offered(self, step: &Step) -> Option<Vec<Piece>> {
        self.look(|state, _| state.offered(step))
    }

    /// Where the job goes on behind that step, and the first step before it that is still open; followed.
    pub fn onward(self, step: StepId) -> (Option<StepId>, Option<StepId>) {
        self.look(|state, now| (state.next_after(step, now.at), state.open_before(step)))
    }

    /// The step at hand.
    pub fn at_hand(self) -> Option<StepId> {
        let now = self.right_now();
        self.state.with(|state| state.at_hand(now.at))
    }

    // ---- a step ----

    /// A caution of `step` was read.
    pub fn acknowledge(self, step: StepId, caution: &Caution) {
        let caution = caution.id.to_owned();
        self.tell(self.send(Intent::Acknowledge { step, caution }));
    }

    /// A reading, with what it was taken with.
    ///
    /// # Errors
    /// The step is closed, or it is no number.
    pub fn measure(
        self,
        step: StepId,
        what: What,
        value: f64,
        unit: &str,
        with: &ReadWith,
    ) -> Result<(), Refused> {
        self.send(Intent::Read {
            step,
            what,
            value,
            unit: unit.to_owned(),
            with: with.clone(),
        })
    }

    /// How something turned: freely where `tight_at` is empty.
    pub fn feel(self, step: StepId, tight_at: &str) {
        let tight_at = tight_at.to_owned();
        self.tell(self.send(Intent::Feel { step, tight_at }));
    }

    /// Where a part is and how many are counted.
    pub fn place_part(self, part: &Listed, place: PartPlace, here: u32) {
        self.tell(self.send(Intent::Place {
            step: part.step,
            part: part.key,
            place,
            here,
        }));
    }

    /// All of a part is here.
    pub fn tick_part(self, part: &Listed) {
        let (step, part) = (part.step, part.key);
        self.tell(self.send(Intent::TickPart { step, part }));
    }

    /// All fasteners of the step are loose, to be brought to torque again; a closed one is open again.
    pub fn loosen(self, step: StepId) {
        self.tell(self.send(Intent::Loosen(step)));
    }

    /// A closed step is open again.
    pub fn reopen(self, step: StepId) {
        self.tell(self.send(Intent::Reopen(step)));
    }

    /// A remark beside a line of the record, or on the whole job.
    ///
    /// # Errors
    /// No words given.
    pub fn add_remark(self, about: Option<EntryId>, words: &str) -> Result<(), Refused> {
        let words = words.to_owned();
        self.send(Intent::Remark { about, words })
    }

    /// The last action back.
    ///
    /// # Errors
    /// Nothing is left to take back.
    pub fn undo(self) -> Result<(), Refused> {
        let stopped = self.running();
        let done = self.send(Intent::Undo);
        self.silence_but(&self.running(), &stopped);
        done
    }

    // ---- clocks ----

    /// The joint was opened again and the compound is on anew.
    pub fn restart(self, id: ClockId) {
        self.tell(self.send(Intent::Restart(id)));
    }

    /// A clock goes out of sight.
    pub fn put_away(self, id: ClockId) {
        self.silence(id);
        self.tell(self.send(Intent::PutAway(id)));
    }

    // ---- the plan ----

    /// A step behind `after`, or at the end; tells its number.
    pub fn add_step(self, after: Option<StepId>, step: Step) -> StepId {
        let id = self.sheet.with_untracked(Sheet::free_id);
        let steps = vec![step];
        self.tell(self.send(Intent::AddSteps { after, steps }));
        id
    }

    /// Several steps at the end.
    pub fn add_steps(self, steps: Vec<Step>) {
        self.tell(self.send(Intent::AddSteps { after: None, steps }));
    }

    /// Changes one field of a step.
    ///
    /// # Errors
    /// The field's sentence; nothing is changed.
    pub fn edit_step(self, step: StepId, field: &str, value: &str) -> Result<(), Refused> {
        self.send(Intent::EditStep {
            step,
            field: field.to_owned(),
            value: value.to_owned(),
        })
    }

    /// Gives a step another kind of work.
    ///
    /// # Errors
    /// The record speaks of it.
    pub fn change_work(self, step: StepId, work: Work) -> Result<(), Refused> {
        let work = Box::new(work);
        self.send(Intent::ChangeKind { step, work })
    }

    /// Moves a step one place.
    ///
    /// # Errors
    /// It would stand before one it waits for.
    pub fn move_step(self, step: StepId, down: bool) -> Result<(), Refused> {
        self.send(Intent::MoveStep { step, down })
    }

    /// Copies a step; tells the copy's number.
    ///
    /// # Errors
    /// There is no such step.
    pub fn copy_step(self, step: StepId) -> Result<StepId, Refused> {
        let id = self.sheet.with_untracked(Sheet::free_id);
        self.send(Intent::CopyStep(step)).map(|()| id)
    }

    /// Takes a step out of the plan.
    ///
    /// # Errors
    /// The record speaks of it, or another waits for it.
    pub fn remove_step(self, step: StepId) -> Result<(), Refused> {
        self.send(Intent::RemoveStep(step))
    }

    /// Names the machine.
    pub fn name_machine(self, words: &str) {
        self.tell(self.send(Intent::NameMachine(words.to_owned())));
    }

    /// What the manual of the job measures in.
    pub fn set_units(self, units: Units) {
        self.tell(self.send(Intent::SetUnits(units)));
    }

    /// Changes the numbers of a step's work, or a screen's own; `what` names the change.
    fn set_work(self, step: Option<StepId>, what: &'static str, work: Work) {
        let work = Box::new(work);
        self.tell(self.send(Intent::SetWork { step, what, work }));
    }

    /// A step's work, changed.
    fn change_step(self, what: &'static str, id: StepId, change: impl FnOnce(&mut Work)) {
        let work = self
            .sheet
            .with_untracked(|sheet| sheet.step(id).map(|step| step.work.clone()));
        if let Some(mut work) = work {
            change(&mut work);
            self.set_work(Some(id), what, work);
        }
    }

    /// What is known of a step's joint; it is kept in the sheet.
    pub fn answer_for(self, step: StepId, joint: Application) {
        self.change_step("answer", step, |work| match work {
            Work::Bond(bond) => bond.application = joint,
            Work::Fasten(fasten) => fasten.compound = Some(joint),
            _ => {}
        });
    }

    /// What is filled in reaches a step's joint, or does not.
    pub fn wet_joint(self, step: StepId, wetted: bool) {
        self.change_step("answer", step, |work| {
            let joint = match work {
                Work::Bond(bond) => Some(&mut bond.application),
                Work::Fasten(fasten) => fasten.compound.as_mut(),
                _ => None,
            };
            joint.into_iter().for_each(|joint| joint.wetted = Some(wetted));
        });
    }

    /// Corrects the torque of a fasten step on its sheet.
    pub fn correct_torque(self, step: StepId, statement: TorqueStatement) {
        self.change_step("correction of the torque", step, |work| {
            if let Work::Fasten(fasten) = work {
                fasten.say(Said {
                    torque: statement,
                    stages: Vec::new(),
                });
            }
        });
    }

    /// Says what the fasteners of a step are, on its sheet.
    pub fn say_fastener(self, step: StepId, fastener: Fastener) {
        self.change_step("what it is", step, |work| {
            if let Work::Fasten(fasten) = work {
                fasten.take_fastener(fastener);
            }
        });
    }

    /// The fit at hand: that of a step, or the screen's own. None where the step is no seat step.
    pub fn seat(self, step: Option<StepId>) -> Option<Seat> {
        match step {
            None => Some(self.settings.with(|s| s.seat.work.clone())),
            Some(id) => self.sheet.with(|sheet| match &sheet.step(id)?.work {
                Work::Seat(seat) => Some(seat.clone()),
                _ => None,
            }),
        }
    }

    /// Changes the fit at hand; `what` names the change.
    ///
    /// # Errors
    /// What makes no sense beside the other sizes; what the keeping refuses is said.
    pub fn change_seat(
        self,
        step: Option<StepId>,
        what: &'static str,
        change: impl FnOnce(&mut Seat),
    ) -> Result<(), String> {
        let Some(mut seat) = untrack(|| self.seat(step)) else {
            return Ok(());
        };
        change(&mut seat);
        let work = Box::new(Work::Seat(seat));
        match self.send(Intent::SetWork { step, what, work }) {
            Err(Refused::Plan(refused)) => Err(refused.to_string()),
            outcome => {
                self.tell(outcome);
                Ok(())
            }
        }
    }

    /// The lift at hand: that of a step, or the screen's own. None where the step is no lift step.
    pub fn lift(self, step: Option<StepId>) -> Option<LiftWork> {
        match step {
            None => Some(self.settings.with(|s| s.lift.work.clone())),
            Some(id) => self.sheet.with(|sheet| match &sheet.step(id)?.work {
                Work::Lift(lift) => Some(lift.clone()),
                _ => None,
            }),
        }
    }

    /// Changes the lift at hand; `what` names the change.
    pub fn change_lift(self, step: Option<StepId>, what: &'static str, change: impl FnOnce(&mut LiftWork)) {
        if let Some(mut lift) = untrack(|| self.lift(step)) {
            change(&mut lift);
            self.set_work(step, what, Work::Lift(lift));
        }
    }

    /// The part is out of the oven (or the freezer): the countdown runs from now.
    pub fn take_out(self, step: Option<StepId>, window: TimeRange) {
        self.tick();
        self.tell(self.send(Intent::TakeOut {
            step,
            window,
            ahead_ms: self.phone_ahead_ms(),
        }));
    }

    /// Where the countdown for that step of the job at hand stands, or for the screen's own numbers.
    pub fn countdown(self, step: Option<StepId>) -> Option<OvenState> {
        let run = self.oven_run(step)?;
        Some(run.state(self.oven_time()))
    }

    /// How much of that time is gone, on its line.
    pub fn countdown_ruler(self, step: Option<StepId>) -> Option<Ruler> {
        let run = self.oven_run(step)?;
        run.ruler(self.oven_time())
    }

    fn oven_run(self, step: Option<StepId>) -> Option<OvenRun> {
        let job = self.job.get();
        let run = self.settings.with(|s| s.seat.oven)?;
        let mine = run.step == step && (step.is_none() || run.job.is_none_or(|of| of == job));
        (mine && !run.home).then_some(run)
    }

    /// Where a part on its way stands, whatever it is for.
    pub fn on_its_way(self) -> Option<OvenState> {
        let run = self.settings.with(|s| s.seat.oven).filter(|run| !run.home)?;
        Some(run.state(self.oven_time()))
    }

    /// The later of our time and the phone's: see [`Intent::TakeOut`].
    fn oven_time(self) -> Moment {
        let now = self.now.get();
        Moment(now.0.saturating_add(self.phone_ahead_ms().max(0)))
    }

    /// The part is home: the countdown ends, and its step remembers it.
    pub fn put_countdown_away(self) {
        self.set("end of the countdown", |settings| {
            settings.seat.oven = settings.seat.oven.filter(|run| run.step.is_some());
            settings.seat.oven.iter_mut().for_each(|run| run.home = true);
        });
    }

    /// What of the way from the oven comes next in that step; followed.
    pub fn oven_next(self, step: StepId) -> Option<OvenNext> {
        self.look(|state, now| state.oven_next(step, now.at))
    }

    /// The depth and the gap last read for the fit at hand, mm.
    pub fn depth_read(self, step: Option<StepId>) -> (Option<f64>, Option<f64>) {
        match step {
            None => self.settings.with(|s| (s.seat.depth_mm, s.seat.gap_mm)),
            Some(id) => self.progress.with(|progress| {
                let progress = progress.step(id);
                let value = |what| progress.reading(&what).map(|reading| reading.value);
                (value(What::Depth), value(What::Gap))
            }),
        }
    }

    // ---- jobs ----

    /// Begins a job with that sheet and takes it to hand; tells its number.
    pub fn begin_job(self, sheet: Sheet) -> JobId {
        self.tell(self.send(Intent::BeginJob(Box::new(sheet))));
        self.job.get_untracked()
    }

    /// Begins a job without steps.
    ///
    /// # Errors
    /// The job needs a name.
    pub fn begin_empty(self, title: &str) -> Result<JobId, Refused> {
        self.send(Intent::BeginEmpty(title.to_owned()))?;
        Ok(self.job.get_untracked())
    }

    /// Begins an empty job of that title, and goes `on` where it was begun; tells why it wasn't.
    pub fn begin_named(self, title: &str, on: fn()) -> bool {
        let begun = self.tell_plan(self.begin_empty(title)).is_some();
        if begun {
            on();
        }
        begun
    }

    /// Begins the bundled example afresh.
    pub fn begin_example(self) -> JobId {
        self.begin_job(example::sheet())
    }

    /// Begins the one in inches.
    pub fn begin_inch_example(self) -> JobId {
        self.begin_job(example::inch())
    }

    /// Takes another job to hand.
    ///
    /// # Errors
    /// It can't be read.
    pub fn take_job(self, id: JobId) -> Result<(), Refused> {
        self.send(Intent::TakeJob(id))?;
        let gaps = self.record.with_untracked(Record::gaps);
        gaps.into_iter().for_each(|gap| self.say(gap_words(gap), true));
        Ok(())
    }

    /// Renames a job.
    ///
    /// # Errors
    /// The job has no name, or can't be read.
    pub fn rename_job(self, job: JobId, title: &str) -> Result<(), Refused> {
        let title = title.to_owned();
        self.send(Intent::RenameJob { job, title })
    }

    /// Archives a job, or takes it out of the archive.
    pub fn archive_job(self, job: JobId, away: bool) {
        self.tell(self.send(Intent::ArchiveJob { job, away }));
    }

    /// Deletes a job: out of sight, but kept until its space is freed.
    ///
    /// # Errors
    /// No other job is left.
    pub fn delete_job(self, id: JobId) -> Result<(), Refused> {
        self.send(Intent::DeleteJob(id))
    }

    /// Brings a deleted job back.
    pub fn bring_back_job(self, id: JobId) {
        self.tell(self.send(Intent::BringBackJob(id)));
    }

    /// Frees the space of every deleted job, for good but for undo.
    pub fn free_deleted(self) {
        self.tell(self.send(Intent::FreeDeleted));
    }

    /// Begins a job with the same sheet and an empty record.
    ///
    /// # Errors
    /// It can't be read.
    pub fn duplicate_job(self, id: JobId) -> Result<JobId, Refused> {
        self.send(Intent::Duplicate(id))?;
        Ok(self.job.get_untracked())
    }

    /// The sheet of any job.
    pub fn sheet_of(self, id: JobId) -> Option<Sheet> {
        self.state
            .with(|state| state.files.get(&id).map(|job| job.sheet.clone()))
    }

    /// Takes in what was agreed to of a backup; tells how many jobs came; none where it was refused.
    pub fn restore(self, restore: &Restore) -> Option<usize> {
        let count = restore.taken().count();
        let done = self.send(Intent::Restore(Box::new(restore.clone())));
        let taken = done.is_ok();
        self.tell(done);
        taken.then_some(count)
    }

    // ---- the bench ----

    /// Changes the settings; `what` names the change for undo.
    pub fn set(self, what: &'static str, change: impl FnOnce(&mut Settings)) {
        let settings = self.changed(change);
        self.tell(self.send(Intent::Set { what, settings }));
    }

    /// Changes the settings without a way back: for what only remembers what was typed.
    pub fn note(self, change: impl FnOnce(&mut Settings)) {
        let settings = self.changed(change);
        self.tell(self.send(Intent::Remember(settings)));
    }

    fn changed(self, change: impl FnOnce(&mut Settings)) -> Box<Settings> {
        let mut settings = Box::new(self.settings.get_untracked());
        change(&mut settings);
        settings
    }

    /// The threads of the sheet's fasteners, the last ones first, and the one on the Torque screen.
    pub fn threads_in_use(self) -> Vec<Thread> {
        let of_sheet: Vec<Thread> = self.sheet.with_untracked(|sheet| {
            let steps = sheet.steps.iter().rev().filter_map(|step| match &step.work {
                Work::Fasten(fasten) => fasten.thread,
                _ => None,
            });
            steps.collect()
        });
        let on_desk = self.settings.with_untracked(|settings| settings.desk.bolt);
        of_sheet
            .into_iter()
            .chain(on_desk.map(|bolt| bolt.joint.thread))
            .collect()
    }

    /// The unit the sheet's last torque is written in; that of the Torque screen where it has none.
    pub fn last_torque_unit(self) -> TorqueUnit {
        let of_sheet = self.sheet.with_untracked(|sheet| {
            sheet.steps.iter().rev().find_map(|step| match &step.work {
                Work::Fasten(fasten) => Some(fasten.torque.unit),
                _ => None,
            })
        });
        of_sheet.unwrap_or_else(|| self.settings.with_untracked(|settings| settings.torque_unit))
    }

    /// Puts a value into the entry on Torque.
    pub fn enter(self, statement: &TorqueStatement, what: &'static str) {
        self.set(what, |settings| {
            settings.torque_typed = typed_words(statement);
            settings.torque_unit = statement.unit;
        });
    }

    /// Puts what the manual says in other words beside it; none takes it away.
    pub fn enter_also(self, statement: Option<&TorqueStatement>) {
        self.set("second value", |settings| {
            settings.desk.also_typed = statement.map_or(String::new(), typed_words);
            if let Some(statement) = statement {
                settings.desk.also_unit = statement.unit;
            }
        });
    }

    /// Changes what lies on the Torque screen.
    pub fn on_desk(self, what: &'static str, change: impl FnOnce(&mut Desk)) {
        self.set(what, |settings| change(&mut settings.desk));
    }

    /// Carries a fasten step's value and bolt to the Torque screen.
    pub fn carry(self, step: &Step) {
        self.tell(self.send(Intent::Carry(step.id)));
    }

    /// Changes the walk on the Bond screen.
    pub fn walk(self, what: &'static str, change: impl FnOnce(&mut Walk)) {
        self.set(what, |settings| change(&mut settings.walk));
    }

    /// Puts a new wrench last, and into the hand.
    ///
    /// # Errors
    /// Its numbers make no sense.
    pub fn add_wrench(self, wrench: Wrench) -> Result<(), Refused> {
        self.send(Intent::AddWrench(wrench))
    }

    /// Puts `wrench` in the place of the one at `at`.
    ///
    /// # Errors
    /// Its numbers make no sense; the old one stays.
    pub fn change_wrench(self, at: usize, wrench: Wrench) -> Result<(), Refused> {
        self.send(Intent::ChangeWrench { at, wrench })
    }

    /// Moves the wrench at `at` one place towards the front; the one in the hand stays in it.
    pub fn move_wrench_up(self, at: usize) {
        self.tell(self.send(Intent::MoveWrenchUp(at)));
    }

    /// Takes the wrench at `at` off the bench; if it was in the hand, its neighbour is taken.
    pub fn remove_wrench(self, at: usize) {
        self.tell(self.send(Intent::RemoveWrench(at)));
    }

    /// Takes another wrench in the hand.
    pub fn take_wrench(self, at: usize) {
        self.tell(self.send(Intent::TakeWrench(at)));
    }

    /// A number for a new bottle.
    pub fn next_bottle(self) -> BottleId {
        self.settings
            .with_untracked(|settings| BottleId(id::free(settings.bottles.iter().map(|bottle| bottle.id.0))))
    }

    /// Puts a bottle on the shelf, or its changed label in place of the old one.
    pub fn shelve(self, bottle: Bottle) {
        self.tell(self.send(Intent::Shelve(Box::new(bottle))));
    }

    /// Takes a bottle off the shelf for good.
    pub fn throw_away(self, id: BottleId) {
        self.tell(self.send(Intent::ThrowAway(id)));
    }

    /// Takes that bottle for its class from now on.
    pub fn take_bottle(self, id: BottleId) {
        self.tell(self.send(Intent::TakeBottle(id)));
    }

    /// Takes no bottle: typical figures for what `fits` serves.
    pub fn take_typical(self, fits: impl Fn(&Bottle) -> bool) {
        let ids = self.settings.with_untracked(|settings| {
            let bottles = settings.bottles.iter().filter(|bottle| fits(bottle));
            bottles.map(|bottle| bottle.id).collect()
        });
        self.tell(self.send(Intent::TakeTypical(ids)));
    }

    /// Notes the shop's temperature as of now, °C.
    pub fn note_shop(self, celsius: f64) {
        self.tell(self.send(Intent::NoteShop(celsius)));
    }

    /// Notes the humidity of the shop's air as of now, %; none: not known.
    ///
    /// # Errors
    /// No such humidity, or the shop's temperature was never told.
    pub fn note_humidity(self, percent: Option<f64>) -> Result<(), Refused> {
        self.send(Intent::NoteHumidity(percent))
    }

    /// Plans the nights ahead.
    ///
    /// # Errors
    /// The plan makes no sense, or the day's temperature isn't known.
    pub fn plan_night(self, plan: Night) -> Result<(), Refused> {
        self.send(Intent::PlanNight(plan))
    }

    /// Plans no nights any more.
    pub fn unplan_night(self) {
        self.tell(self.send(Intent::UnplanNight));
    }

    /// Adds a hole of my hoist's boom, or corrects the one at that reach.
    pub fn add_boom(self, reach_mm: f64, rating_kg: f64) {
        let position = BoomPosition {
            reach: Length::new::<millimeter>(reach_mm),
            rating: Mass::new::<kilogram>(rating_kg),
        };
        self.set("boom position", |settings| {
            let boom = &mut settings.lift.boom;
            boom.retain(|other| (other.reach - position.reach).get::<millimeter>().abs() >= 1.0);
            boom.push(position);
            boom.sort_by(|a, b| a.reach.value.total_cmp(&b.reach.value));
        });
    }

    /// Takes a hole of my hoist's boom out.
    pub fn remove_boom(self, at: usize) {
        self.set("boom position", |settings| {
            if at < settings.lift.boom.len() {
                settings.lift.boom.remove(at);
            }
        });
    }

    /// Asks for the display to stay on while a step or a clock is open.
    pub fn stay_awake(self) {
        let wanted = untrack(|| {
            self.progress.with(|progress| progress.job_closed.is_none())
                || self
                    .clocks
                    .with(|clocks| clocks.iter().any(|clock| clock.ended.is_none()))
        });
        if wanted {
            wake_lock::hold(move |awake| {
                self.awake.try_set(awake);
            });
        } else {
            wake_lock::release();
            self.awake.set(Awake::NotAsked);
        }
    }
}
