//! Who chose the decimal comma reads a comma in every number of ours; files and what is kept have the point, and
//! what a field shows is taken back by it.

use halfcase::job::adapter::Adapter;
use halfcase::job::asked::{self, Question};
use halfcase::job::bonding::Section;
use halfcase::job::example;
use halfcase::job::fasteners;
use halfcase::job::field::{Entry, Shown};
use halfcase::job::figures::Figures;
use halfcase::job::form::{fields, set};
use halfcase::job::guarding::{KnownBolt, guard_fasten};
use halfcase::job::kinds::gauge::words::{lay_words, limits_words};
use halfcase::job::kinds::seat::{after, how as seat_how, words as seat_words};
use halfcase::job::kinds::{Work, fasten, lift, seat};
use halfcase::job::progress::StepProgress;
use halfcase::job::readings::{asked as asked_of, limit_words, said};
use halfcase::job::settings::{PIECES, Settings};
use halfcase::job::sheet::{Sheet, Step, StepId};
use halfcase::job::situation::{Around, cautions_of};
use halfcase::trade::order::Pass;
use halfcase::trade::quantity::{
    DecimalMark, MassUnit, TorqueUnit, choose, decimal, fixed, kept, parse_torque, trimmed,
};

/// Names that bear a point and are no numbers: property classes (ISO 898-1), thread pitches in a thread's name
/// (ISO 261), a standard.
const NAMES: [&str; 11] = [
    "4.6",
    "4.8",
    "5.8",
    "8.8",
    "10.9",
    "12.9",
    "M18×1.5",
    "M14×1.5",
    "M10×1.25",
    "M18x1.5",
    "B30.9",
];

/// Whether a point is left between two digits, outside names.
fn pointed(text: &str) -> bool {
    let words = text.split(|c: char| c.is_whitespace() || "(),;:–“”".contains(c));
    let numbers = words
        .map(|word| word.trim_matches('.'))
        .filter(|word| !NAMES.contains(word));
    numbers
        .map(|word| word.chars().collect::<Vec<_>>())
        .any(|letters| {
            let inside =
                |three: &[char]| three[0].is_ascii_digit() && three[1] == '.' && three[2].is_ascii_digit();
            letters.windows(3).any(inside)
        })
}

/// Everything a step says before it is worked at, but for the words its user wrote.
fn sentences(sheet: &Sheet, step: &Step) -> Vec<String> {
    let mut all = Vec::new();
    let own = |field: &&Shown| field.id != "notes" && field.id != "title";
    for field in fields(sheet, step).iter().filter(own) {
        all.extend([field.label.clone(), field.value.clone()]);
        if let Entry::Choice(offered) = &field.entry {
            all.extend(offered.iter().map(|(_, words)| words.clone()));
        }
    }
    for what in asked_of(step) {
        all.extend([what.name(Some(step)), limit_words(step, &what)]);
    }
    all.extend(
        said(step, &StepProgress::default())
            .into_iter()
            .map(|(_, words)| words),
    );
    let around = Around {
        press_kn: Some(12.5),
        ..Around::default()
    };
    let cautions = cautions_of(&step.work, &around).into_iter();
    all.extend(cautions.map(|caution| caution.danger.to_string()));
    match &step.work {
        Work::Seat(work) => {
            let Ok(answer) = seat::answer(work, None) else {
                return all;
            };
            let rows = seat_words::rows(&answer, Some(12.5)).into_iter();
            let rows = rows
                .chain(after::rows(work, &answer))
                .chain(seat_words::tool_rows(work, &answer));
            all.extend(rows.map(|(_, words)| words));
            all.extend(seat_how::how(work, &answer));
            all.extend(seat_words::warnings(&answer, Some(0.5)));
            all.extend(after::warnings(work, &answer));
            all.extend([seat_words::summary(&answer), seat::own_words(&answer)]);
            all.extend(seat::beside(work, &answer));
            let (cold, joining) = seat_words::drawing_words(work, &answer);
            all.extend(cold.into_iter().chain(joining));
        }
        Work::Lift(work) => {
            let answer = lift::answer(work, lift::Hoist::default());
            for unit in [MassUnit::Kilogram, MassUnit::Pound] {
                let rows = lift::words::rows(work, &answer, unit).into_iter();
                all.extend(rows.map(|(_, words)| words));
                all.extend(lift::how::how(work, &answer, unit));
                all.push(lift::words::headline(&answer, unit).number);
            }
        }
        Work::Fasten(work) => {
            all.extend(
                guard_fasten(work).map(|guard| format!("{} {} {}", guard.line, guard.sentence, guard.pull)),
            );
            all.extend(work.pull_words());
            all.extend([work.share_words(0), work.pass_words(0), work.torque.text()]);
            all.extend(torque_lines(work));
        }
        Work::Fill(work) => all.extend(work.facts().into_iter().map(|(_, words)| words)),
        Work::Run(work) => all.extend(work.facts().into_iter().map(|(_, words)| words)),
        Work::Gauge(work) => all.extend(limits_words(work).into_iter().chain(lay_words(work))),
        _ => {}
    }
    all
}

/// All that the Torque screen says of a fastener, with an adapter, a nut's running torque and a turn.
fn torque_lines(work: &halfcase::job::kinds::Fasten) -> Vec<String> {
    let settings = Settings::example();
    let bolt = KnownBolt::of(work);
    let adapter = Adapter {
        wrench_mm: 412.5,
        adapter_mm: 50.5,
        angle_deg: 0.0,
    };
    let mut lines = Vec::new();
    for in_hand in 0..settings.wrenches.len() {
        let whole = asked::answer(Question {
            statement: &work.torque,
            also: None,
            bolt: bolt.as_ref(),
            turn_deg: Some(22.5),
            stretch: None,
            running: Some(TorqueUnit::NewtonMetre.torque(1.5)),
            adapter: Some(&adapter),
            wrenches: &settings.wrenches,
            in_hand,
        });
        lines.extend(whole.running.into_iter().chain(whole.pull));
        let Some(set) = whole.set else { continue };
        lines.extend(set.how());
        lines.push(set.number);
        lines.extend([set.rounding, set.band, set.trouble].into_iter().flatten());
    }
    lines
}

fn everything() -> Vec<String> {
    let sheets = [example::sheet(), example::inch()];
    let steps = sheets
        .iter()
        .flat_map(|sheet| sheet.steps.iter().map(move |step| (sheet, step)));
    steps.flat_map(|(sheet, step)| sentences(sheet, step)).collect()
}

/// Only the mark differs, and no point is left between digits.
#[test]
fn every_number_of_ours_has_the_comma_and_nothing_else_changes() {
    let with_point = everything();
    choose(DecimalMark::Comma);
    let with_comma = everything();
    assert_eq!(with_point.len(), with_comma.len());
    let mut marked = 0;
    for (point, comma) in with_point.iter().zip(&with_comma) {
        assert_eq!(point.replace('.', ","), comma.replace('.', ","));
        marked += usize::from(point != comma);
    }
    let left: Vec<&String> = with_comma.iter().filter(|words| pointed(words)).collect();
    assert_eq!(left, Vec::<&String>::new());
    assert!(marked > 150, "only {marked} sentences had a fraction at all");
}

/// The card of a joint speaks of gaps in so many words.
#[test]
fn a_bond_card_has_the_comma_too() {
    use halfcase::job::bonding::{Surroundings, bond};
    let around = Surroundings {
        bottles: &[],
        activator: false,
        today: 0,
        shop_c: Some(22.0),
    };
    choose(DecimalMark::Comma);
    let mut cards = 0;
    for step in example::sheet().steps {
        let Some(joint) = step.work.application() else {
            continue;
        };
        let card = bond(joint, around);
        let lines = card
            .sections()
            .into_iter()
            .flat_map(|section: Section| section.lines);
        lines.for_each(|line| assert!(!pointed(&line), "{line}"));
        cards += 1;
    }
    assert!(cards > 0);
}

/// Whatever a number field or a torque shows can be entered as it stands, three decimals included: "62,010".
#[test]
fn what_a_field_shows_is_taken_back() {
    choose(DecimalMark::Comma);
    let mut taken = 0;
    for sheet in [example::sheet(), example::inch()] {
        for step in &sheet.steps {
            let alone = Sheet::new("Plan", vec![step.clone()]);
            for field in fields(&sheet, step) {
                let typed = matches!(field.entry, Entry::Number { .. } | Entry::Torque | Entry::Words);
                if !typed || field.value.is_empty() || !field.value.contains(|c: char| c.is_ascii_digit()) {
                    continue;
                }
                let mut by_point = step.clone();
                let mut by_comma = step.clone();
                let value = kept(|| fields(&sheet, step))
                    .into_iter()
                    .find(|other| other.id == field.id)
                    .map(|other| other.value)
                    .unwrap();
                let before = kept(|| set(&alone, &mut by_point, &field.id, &value));
                let after = set(&alone, &mut by_comma, &field.id, &field.value);
                assert_eq!(after.is_ok(), before.is_ok(), "{}: {}", field.id, field.value);
                assert_eq!(by_comma, by_point, "{}: {}", field.id, field.value);
                taken += usize::from(before.is_ok() && value != field.value);
            }
        }
    }
    assert!(taken > 20, "only {taken} fields with a comma were taken back");
}

#[test]
fn a_seats_size_with_three_decimals_is_no_question() {
    let sheet = Sheet::new("Plan", vec![]);
    let mut step = Step::new(StepId(1), "Seat", Work::Seat(seat::Seat::default()));
    choose(DecimalMark::Comma);
    for (typed, shown) in [
        ("61,982", "61,982"),
        ("61,970–62,000", "61,97–62"),
        ("62,0 N7", "62 N7"),
    ] {
        set(&sheet, &mut step, "seat/hole", typed).unwrap();
        let hole = fields(&sheet, &step)
            .into_iter()
            .find(|field| field.id == "seat/hole");
        assert_eq!(hole.map(|field| field.value).as_deref(), Some(shown));
    }
}

/// The full stop that ends a sentence is none of its numbers, however the sentence comes to the screen.
#[test]
fn a_full_stop_behind_a_number_stays_one() {
    let sheet = Sheet::new("Plan", vec![]);
    let mut step = Step::new(StepId(1), "Seat", Work::Seat(seat::Seat::default()));
    choose(DecimalMark::Comma);
    for (typed, said) in [
        ("62–61,970", "Write the least size first: 61,970–62,000."),
        (
            "wide",
            "Write a size as 62 N7, 62 bearing, 25 bearing bore, 61,982 or 61,970–62,000.",
        ),
    ] {
        let refused = set(&sheet, &mut step, "seat/hole", typed).unwrap_err();
        assert_eq!(refused.to_string(), said);
    }
    let no_sense = halfcase::job::state::Refused::NoSense("Write 0.5 to 62.0.");
    assert_eq!(no_sense.to_string(), "Write 0,5 to 62,0.");
}

/// Passes are a list: its commas part shares unless the comma is the mark.
#[test]
fn shares_of_passes_read_back() {
    let shares = |text: &str| {
        fasten::passes::read(text).map(|all| all.iter().map(|pass| pass.share).collect::<Vec<_>>())
    };
    let passes = [0.333, 0.667, 1.0].map(|share| Pass { share, round: false });
    assert_eq!(fasten::passes::words(&passes), "33.3 66.7 100");
    assert_eq!(shares("30,60,100"), Ok(vec![0.3, 0.6, 1.0]));
    choose(DecimalMark::Comma);
    let words = fasten::passes::words(&passes);
    assert_eq!(words, "33,3 66,7 100");
    assert_eq!(shares(&words), Ok(vec![0.333, 0.667, 1.0]));
    assert_eq!(shares("30,60,100"), Ok(vec![0.3, 0.6, 1.0]));
    assert_eq!(shares("33,3, 66,7, 100"), Ok(vec![0.333, 0.667, 1.0]));
}

/// "30,60 100" may be two shares or three: it is asked, and what the app writes itself is never asked about.
#[test]
fn a_comma_that_may_part_two_shares_is_refused() {
    let shares = |text: &str| {
        fasten::passes::read(text).map(|all| all.iter().map(|pass| pass.share).collect::<Vec<_>>())
    };
    choose(DecimalMark::Comma);
    for text in ["30,60 100", "30 60,100 100", "30,60/100", "30,60, 100"] {
        let refused = shares(text).unwrap_err();
        assert!(refused.contains("33,33% 66,67% 100%"), "{text}: {refused}");
    }
    assert_eq!(shares("33,3 66,7 100"), Ok(vec![0.333, 0.667, 1.0]));
    assert_eq!(shares("33,33% 66,67 % 100%"), Ok(vec![0.3333, 0.6667, 1.0]));
    let passes = [0.3333, 0.6667, 1.0].map(|share| Pass { share, round: true });
    let words = fasten::passes::words(&passes);
    assert_eq!(words, "33,33% round 66,67% round 100 round");
    assert_eq!(fasten::passes::read(&words), Ok(passes.to_vec()));
    choose(DecimalMark::Point);
    assert_eq!(shares("30,60 100"), Ok(vec![0.3, 0.6, 1.0]));
}

/// The user's units and the user's mark together.
#[test]
fn our_figures_are_said_in_other_units_with_the_comma() {
    let us = Figures {
        mass: MassUnit::Pound,
        temperature: halfcase::trade::quantity::TemperatureUnit::Fahrenheit,
    };
    choose(DecimalMark::Comma);
    for (ours, said) in [
        (format!("{} °C", fixed(87.5, 1)), "189,5 °F"),
        (
            format!("{} to {} kN", fixed(0.4, 1), fixed(15.0, 1)),
            "89,9 to 3370 lbf",
        ),
        (format!("{}–{} kN", fixed(1.0, 1), fixed(2.0, 1)), "225–450 lbf"),
    ] {
        assert_eq!(us.said(&ours), said);
    }
}

/// Files are the same to the byte, and are read as the point's: a torque of thousands is asked about.
#[test]
fn files_have_the_point() {
    for sheet in [example::sheet(), example::inch()] {
        let (json, table) = (sheet.to_json(), fasteners::write(&sheet));
        choose(DecimalMark::Comma);
        assert_eq!(sheet.to_json(), json);
        assert_eq!(fasteners::write(&sheet), table);
        assert_eq!(Sheet::from_json(&json), Ok(sheet));
        let again = fasteners::read(&table, StepId(1)).unwrap();
        choose(DecimalMark::Point);
        assert_eq!(fasteners::read(&table, StepId(1)).unwrap(), again);
    }
    choose(DecimalMark::Comma);
    let thousands = example::sheet().to_json().replace("7.2 ft·lb", "1,200 ft·lb");
    assert!(Sheet::from_json(&thousands).is_err());
    assert_eq!(parse_torque("1,200 ft·lb", None).map(|read| read.target), Ok(1.2));
}

#[test]
fn the_choice_is_kept_and_says_nothing_where_it_is_the_usual() {
    let text = |settings: &Settings| halfcase::job::json::write(settings).unwrap();
    assert!(!text(&Settings::default()).contains("decimal"));
    let chosen = Settings {
        decimal: DecimalMark::Comma,
        ..Settings::default()
    };
    assert!(text(&chosen).contains("\"decimal\":\"comma\""));
    assert_eq!(
        halfcase::job::json::read::<Settings>(&text(&chosen)).unwrap(),
        chosen
    );
    assert_eq!(
        halfcase::job::json::read::<Settings>("{}").unwrap().decimal,
        DecimalMark::Point
    );
    assert!(PIECES.iter().any(|piece| piece.fields.contains(&"decimal")));
}

/// A printed number is the same number, whichever mark it has.
#[test]
fn a_number_is_read_with_either_mark() {
    for mark in DecimalMark::ALL {
        choose(mark);
        for value in [0.5, 1.2, 62.01, 1234.567, -0.02] {
            assert_eq!(decimal(&trimmed(value, 7)), Some(value));
            assert_eq!(decimal(&fixed(value, 3)), Some(value));
        }
    }
}
