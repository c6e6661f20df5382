//! The fields of a step, in the order the form shows them.

use super::{CONDITIONS, Field, Kind};
use crate::job::fasteners::layout_words;
use crate::job::kinds::check::bore::limit_words;
use crate::job::kinds::{Bore, Check, Fasten, LiftWay, LiftWork, Limit, Reuse, Seat, SeatWay, Work};
use crate::job::sheet::{Sheet, Step};
use crate::trade::application::{Application, JointKind, questions};
use crate::trade::fit::SizeSource;
use crate::trade::material::Material;
use crate::trade::order::Layout;
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use uom::si::length::millimeter;

/// Every field of `step`, a step of `sheet` or about to be.
pub fn fields(sheet: &Sheet, step: &Step) -> Vec<Field> {
    let mut form = Form::default();
    form.add("title", "title", &step.title, Kind::Words);
    form.add("notes", "how it is done", &step.notes, Kind::Words);
    form.head(step.work.word());
    form.work(&step.work);
    form.head("Parts it needs");
    for (at, part) in step.parts.iter().enumerate() {
        form.add(format!("part/{at}/name"), "part", &part.name, Kind::Words);
        form.number(
            format!("part/{at}/count"),
            "how many",
            Some(f64::from(part.count)),
            "",
            false,
        );
        form.flag(format!("part/{at}/new"), "must be new", part.new_part);
        form.press(format!("part/{at}/remove"), &format!("take out “{}”", part.name));
    }
    form.press("part/add", "add a part");
    form.head("Time and order");
    form.number("minutes", "how long it takes", step.minutes, "min", true);
    let before = match sheet.place(step.id) {
        Some(_) => sheet.before(step.id),
        None => &sheet.steps,
    };
    for wait in &step.waits_for {
        let title = before
            .iter()
            .find(|step| step.id == *wait)
            .map_or("", |step| step.title.as_str());
        form.press(
            format!("wait/{}/remove", wait.0),
            &format!("no longer wait for “{title}”"),
        );
    }
    let offered: Vec<(String, String)> = before
        .iter()
        .filter(|earlier| !step.waits_for.contains(&earlier.id))
        .map(|earlier| (earlier.id.0.to_string(), earlier.title.clone()))
        .collect();
    if !offered.is_empty() {
        form.add("wait/add", "waits for", "another step", Kind::Choice(offered));
    }
    form.fields
}

#[derive(Default)]
struct Form {
    fields: Vec<Field>,
}

impl Form {
    fn add(&mut self, id: impl Into<String>, label: &str, value: &str, kind: Kind) {
        self.fields.push(Field {
            id: id.into(),
            label: label.to_owned(),
            value: value.to_owned(),
            kind,
        });
    }

    fn head(&mut self, words: &str) {
        self.add("", words, "", Kind::Head);
    }

    fn press(&mut self, id: impl Into<String>, words: &str) {
        self.add(id, words, "", Kind::Press);
    }

    fn flag(&mut self, id: impl Into<String>, label: &str, value: bool) {
        self.add(id, label, if value { "yes" } else { "no" }, Kind::Flag);
    }

    fn number(
        &mut self,
        id: impl Into<String>,
        label: &str,
        value: Option<f64>,
        unit: &'static str,
        optional: bool,
    ) {
        let value = value.map_or(String::new(), |value| value.to_string().replace('-', "−"));
        self.add(id, label, &value, Kind::Number { unit, optional });
    }

    /// One of `all`, each by its place in the list; `none` adds "not known" before them.
    fn choice<T: Copy + PartialEq>(
        &mut self,
        id: impl Into<String>,
        label: &str,
        (all, words): (&[T], impl Fn(T) -> String),
        now: Option<T>,
        none: bool,
    ) {
        let value = now.map_or("not known".to_owned(), &words);
        let unknown = none.then(|| (String::new(), "not known".to_owned()));
        let offered = all
            .iter()
            .enumerate()
            .map(|(at, one)| (at.to_string(), words(*one)));
        self.add(
            id,
            label,
            &value,
            Kind::Choice(unknown.into_iter().chain(offered).collect()),
        );
    }

    fn material(&mut self, id: impl Into<String>, label: &str, now: Material) {
        let words = |material: Material| material.words().to_owned();
        self.choice(id, label, (&Material::ALL, words), Some(now), false);
    }

    fn work(&mut self, work: &Work) {
        match work {
            Work::Clean(clean) => {
                self.flag("solvent", "a solvent is used", clean.solvent);
                self.flag("air", "compressed air is used", clean.compressed_air);
            }
            Work::Check(check) => self.check(check),
            Work::Fit(fit) => {
                self.add("fit/part", "part", &fit.part, Kind::Words);
                self.add("fit/way", "way round", &fit.orientation, Kind::Words);
                self.flag("fit/new", "must be new", fit.new_part);
                self.flag("fit/spring", "a spring is held back", fit.spring);
            }
            Work::Fasten(fasten) => self.fasten(fasten),
            Work::Bond(bond) => {
                self.add("bond/joint", "the joint in words", &bond.joint, Kind::Words);
                self.joint(&bond.application);
            }
            Work::Seat(seat) => self.seat(seat),
            Work::Lift(lift) => self.lift(lift),
            Work::Turn(turn) => {
                self.add("turn/what", "what is turned", &turn.what, Kind::Words);
                self.add("turn/expect", "how it must feel", &turn.expect, Kind::Words);
            }
            Work::Fill(fill) => {
                self.add("fill/fluid", "fluid", &fill.fluid, Kind::Words);
                self.number("fill/litres", "how much", Some(fill.litres), "L", false);
                self.flag("fill/hot", "it is hot when handled", fill.hot);
            }
        }
    }

    fn check(&mut self, check: &Check) {
        for (at, limit) in check.readings.iter().enumerate() {
            self.reading(at, limit);
        }
        self.press("reading/add", "add a reading");
        for (at, bore) in check.bores.iter().enumerate() {
            self.bore(at, bore);
        }
        self.press("bore/add", "add a bore, read at six places");
    }

    fn reading(&mut self, at: usize, limit: &Limit) {
        self.head(&format!(
            "{}: {}",
            limit.name,
            limit_words(limit.least, limit.most, &limit.unit)
        ));
        self.add(
            format!("reading/{at}/name"),
            "what is measured",
            &limit.name,
            Kind::Words,
        );
        self.add(format!("reading/{at}/unit"), "unit", &limit.unit, Kind::Words);
        self.number(
            format!("reading/{at}/least"),
            "not less than",
            limit.least,
            "",
            true,
        );
        self.number(
            format!("reading/{at}/most"),
            "not more than",
            limit.most,
            "",
            true,
        );
        self.press(
            format!("reading/{at}/remove"),
            &format!("take out “{}”", limit.name),
        );
    }

    fn bore(&mut self, at: usize, bore: &Bore) {
        self.head(&format!("{}, six places", bore.name));
        self.add(format!("bore/{at}/name"), "bore", &bore.name, Kind::Words);
        self.material(format!("bore/{at}/material"), "made of", bore.material);
        for (name, label, value) in [
            ("least", "not under", bore.least_mm),
            ("most", "not over", bore.most_mm),
            ("round", "out-of-round up to", bore.out_of_round_mm),
            ("taper", "taper up to", bore.taper_mm),
        ] {
            self.number(format!("bore/{at}/{name}"), label, value, "mm", true);
        }
        self.flag(
            format!("bore/{at}/journal"),
            "a journal runs in it",
            bore.journal.is_some(),
        );
        if let Some(journal) = &bore.journal {
            self.add(
                format!("bore/{at}/journal_name"),
                "journal",
                &journal.name,
                Kind::Words,
            );
            self.material(
                format!("bore/{at}/journal_material"),
                "journal made of",
                journal.material,
            );
            let (least, most) = (journal.clearance_least_mm, journal.clearance_most_mm);
            self.number(
                format!("bore/{at}/clear_least"),
                "clearance at least",
                least,
                "mm",
                true,
            );
            self.number(
                format!("bore/{at}/clear_most"),
                "clearance at most",
                most,
                "mm",
                true,
            );
        }
        self.press(format!("bore/{at}/remove"), &format!("take out “{}”", bore.name));
    }

    fn fasten(&mut self, fasten: &Fasten) {
        let threads: Vec<(String, String)> = Thread::all()
            .map(|thread| (thread.name(), thread.name()))
            .collect();
        self.add(
            "fasten/torque",
            "manual says",
            &fasten.torque.text(),
            Kind::Torque,
        );
        self.add(
            "fasten/thread",
            "thread",
            &fasten.thread.name(),
            Kind::Choice(threads),
        );
        self.number(
            "fasten/count",
            "how many",
            Some(fasten.layout.count() as f64),
            "",
            false,
        );
        let layouts = ["line", "two rows", "circle", "as numbered"];
        self.add(
            "fasten/layout",
            "how they lie",
            layout_words(&fasten.layout),
            Kind::Choice(
                layouts
                    .iter()
                    .map(|words| ((*words).to_owned(), (*words).to_owned()))
                    .collect(),
            ),
        );
        let passes: Vec<String> = fasten
            .passes
            .iter()
            .map(|pass| format!("{:.0}", pass.share * 100.0))
            .collect();
        self.add(
            "fasten/passes",
            "passes, % of the torque",
            &passes.join(" "),
            Kind::Words,
        );
        self.number(
            "fasten/length",
            "length under the head",
            fasten.length_mm,
            "mm",
            true,
        );
        let class = |class: Strength| class.name().to_owned();
        self.choice(
            "fasten/class",
            "class",
            (&Strength::ALL, class),
            fasten.strength,
            true,
        );
        let into = |into: FemaleMaterial| into.words().to_owned();
        self.choice(
            "fasten/into",
            "screwed into",
            (&FemaleMaterial::ALL, into),
            fasten.into,
            true,
        );
        self.number(
            "fasten/engagement",
            "engaged depth",
            fasten.engagement_mm,
            "mm",
            true,
        );
        self.choice(
            "fasten/condition",
            "thread",
            (&CONDITIONS, |condition| condition.words().to_owned()),
            Some(fasten.condition),
            false,
        );
        self.flag("fasten/locking", "self-locking nuts", fasten.self_locking);
        self.flag("fasten/seal", "it seals: a plug, a union, a sensor", fasten.seal);
        self.flag("fasten/new", "new ones only", fasten.reuse == Reuse::New);
        self.flag(
            "fasten/compound",
            "a compound or washer goes with it",
            fasten.compound.is_some(),
        );
        if let Some(joint) = &fasten.compound {
            self.joint(joint);
        }
    }

    fn joint(&mut self, joint: &Application) {
        let words = |kind: JointKind| kind.words().to_owned();
        self.choice(
            "joint/kind",
            "the joint",
            (JointKind::ALL, words),
            Some(joint.kind),
            false,
        );
        for question in questions(joint) {
            let chosen = question
                .chosen
                .and_then(|id| question.choices.iter().find(|choice| choice.id == id));
            let offered = question
                .choices
                .iter()
                .map(|choice| (choice.id.to_owned(), choice.words.to_owned()));
            self.add(
                format!("joint/answer/{}", question.id),
                question.words,
                chosen.map_or("Don't know", |choice| choice.words),
                Kind::Choice(offered.collect()),
            );
        }
    }

    fn seat(&mut self, seat: &Seat) {
        self.add("seat/part", "part", &seat.part, Kind::Words);
        self.add(
            "seat/hole",
            "bore: size and class, or measured mm",
            &size_words(&seat.hole),
            Kind::Words,
        );
        self.add(
            "seat/shaft",
            "part: “62 bearing”, size and class, or measured mm",
            &size_words(&seat.shaft),
            Kind::Words,
        );
        self.material("seat/housing", "housing", seat.housing);
        self.material("seat/part_material", "part made of", seat.part_material);
        for (name, label, value, unit) in [
            ("length", "length of the fit", seat.length_mm, "mm"),
            (
                "inside",
                "inside of the part, 0 if solid",
                seat.part_inside_mm,
                "mm",
            ),
            ("boss", "outside of the boss", seat.boss_outside_mm, "mm"),
            ("wall", "wall that holds the heat", seat.wall_mm, "mm"),
            (
                "housing_limit",
                "housing not hotter than",
                seat.housing_limit_c,
                "°C",
            ),
            ("part_limit", "part not hotter than", seat.part_limit_c, "°C"),
        ] {
            self.number(format!("seat/{name}"), label, Some(value), unit, false);
        }
        self.flag("seat/seals", "seals or cured compound in it", seat.holds_seals);
        self.flag(
            "seat/heat",
            "the housing may be heated",
            seat.way == SeatWay::Heat,
        );
    }

    fn lift(&mut self, lift: &LiftWork) {
        self.add("lift/load", "what is lifted", &lift.load, Kind::Words);
        self.number("lift/mass", "how heavy", Some(lift.mass_kg), "kg", false);
        self.flag(
            "lift/sling",
            "by sling",
            matches!(lift.way, LiftWay::Sling { .. }),
        );
        match lift.way {
            LiftWay::Hands {
                reach_cm,
                from_cm,
                to_cm,
                turn_deg,
                ..
            } => {
                self.number("lift/reach", "hands from ankles", Some(reach_cm), "cm", false);
                self.number("lift/from", "from height", Some(from_cm), "cm", false);
                self.number("lift/to", "to height", Some(to_cm), "cm", false);
                self.number("lift/turn", "the body turns", Some(turn_deg), "°", false);
            }
            LiftWay::Sling { legs, angle_deg } => {
                self.number("lift/legs", "sling legs", Some(f64::from(legs)), "", false);
                self.number("lift/angle", "angle from level", Some(angle_deg), "°", false);
            }
        }
        self.flag("lift/under", "somebody reaches under it", lift.under_load);
    }
}

/// A size as it is typed: "62 N7", "62 bearing", "61.982".
pub(super) fn size_words(size: &SizeSource) -> String {
    let mm = |length: &crate::trade::quantity::Length| {
        let mm = (length.get::<millimeter>() * 1e6).round() / 1e6;
        if mm == 0.0 { String::new() } else { mm.to_string() }
    };
    match size {
        SizeSource::Class { nominal, class } => format!("{} {class}", mm(nominal)),
        SizeSource::BearingOuter { nominal } => format!("{} bearing", mm(nominal)),
        SizeSource::BearingBore { nominal } => format!("{} bearing bore", mm(nominal)),
        SizeSource::Measured { size, .. } => mm(size),
    }
}

/// A layout of that name and count.
pub(super) fn layout(words: &str, count: usize) -> Layout {
    match words {
        _ if count == 1 => Layout::Single,
        "line" => Layout::Line { count },
        "two rows" if count.is_multiple_of(2) => Layout::PairedRows { pairs: count / 2 },
        "circle" => Layout::Circle { count },
        _ => Layout::Free { count },
    }
}
