//! The Measure screen's calculations: every one answers when filled, asks while it is not, and says what is wrong.

use halfcase::job::measuring::{Answer, Calculation, Field, LIST, MeasureBench, Takes, Trouble, of};
use halfcase::job::settings::{PIECES, Settings};
use halfcase::trade::strip::FemaleMaterial;
use halfcase::trade::thread::Thread;

/// What is filled in: numbers in mm, N and N·m, or a word.
pub type Filled = &'static [(&'static str, &'static str)];

/// A filled example of each calculation, of the walking tractor: what its number and verdict are, by hand.
pub const EXAMPLES: [(&str, Filled, &str, &str); 17] = [
    (
        "float",
        &[
            ("gap_1", "0.62"),
            ("gap_2", "0.66"),
            ("least", "0.05"),
            ("most", "0.15"),
            ("shim_1", "0.3"),
            ("count_1", "1"),
            ("shim_2", "0.2"),
        ],
        "0.500",
        "1 × 0.300 + 1 × 0.200 = 0.500 mm.",
    ),
    (
        "codes",
        &[
            ("down", "A, B"),
            ("across", "1, 2, 3"),
            ("line_1", "green, brown, black"),
            ("line_2", "brown, black, –"),
            ("read_down", "b"),
            ("read_across", "1"),
        ],
        "brown",
        "By the manual’s table. Then measure the clearance.",
    ),
    (
        "shell",
        &[
            ("housing", "56"),
            ("wall_1", "1.98"),
            ("journal", "52"),
            ("least", "0.03"),
            ("most", "0.07"),
        ],
        "0.040",
        "Within its limits.",
    ),
    (
        "plastic",
        &[
            ("least", "0.03"),
            ("most", "0.07"),
            ("wide", "0.05"),
            ("narrow", "0.06"),
        ],
        "0.050",
        "Within its limits.",
    ),
    (
        "preload",
        &[
            ("pull", "50"),
            ("radius", "30"),
            ("seal", "0.3"),
            ("least", "1.5"),
            ("most", "2"),
            ("pack", "0.05"),
            ("for", "0.5"),
        ],
        "1.20",
        "0.30 N·m under the least.",
    ),
    (
        "backlash",
        &[
            ("place_1", "0.15"),
            ("place_2", "0.17"),
            ("place_3", "0.19"),
            ("place_4", "0.17"),
            ("least", "0.1"),
            ("most", "0.25"),
            ("spread", "0.03"),
        ],
        "0.170",
        "It varies too much: look for run-out.",
    ),
    (
        "run-out",
        &[
            ("at_1", "0"),
            ("at_2", "0.02"),
            ("at_3", "0.04"),
            ("at_4", "0.02"),
            ("most", "0.05"),
        ],
        "0.040",
        "Within its limits.",
    ),
    (
        "piston",
        &[
            ("narrowest", "80"),
            ("widest", "80.02"),
            ("piston", "79.95"),
            ("least", "0.04"),
            ("most", "0.06"),
        ],
        "0.060",
        "0.010 mm over the most.",
    ),
    (
        "end-gap",
        &[
            ("gap", "0.2"),
            ("bore", "80"),
            ("share", "0.004"),
            ("most", "0.8"),
        ],
        "0.200",
        "File off 0.120 mm in all.",
    ),
    (
        "side-gap",
        &[("groove", "2.05"), ("ring", "1.99"), ("most", "0.1")],
        "0.060",
        "Within its limits.",
    ),
    (
        "flatness",
        &[("line_1", "0.03"), ("line_5", "0.08"), ("most", "0.05")],
        "0.080",
        "0.030 mm over the most.",
    ),
    (
        "straightness",
        &[("at_1", "0"), ("at_2", "0.02"), ("at_3", "0"), ("most", "0.03")],
        "0.020",
        "Within its limits.",
    ),
    (
        "spring-rate",
        &[("wire", "4"), ("outside", "30"), ("coils", "9")],
        "15.9–16.5",
        "Rate of a sound steel spring of these sizes.",
    ),
    (
        "spring-test",
        &[
            ("free", "60"),
            ("free_least", "61"),
            ("height", "50"),
            ("load", "200"),
            ("least", "180"),
            ("most", "220"),
        ],
        "200",
        "Its free length is 1.000 mm under the least.",
    ),
    (
        "engagement",
        &[
            ("thread", "M8"),
            ("bolt", "30"),
            ("stack", "12"),
            ("threaded", "13"),
        ],
        "13.00",
        "Too short by 3.00 mm, and the thread goes no deeper: an insert. It bottoms 5.00 mm before it clamps: a shorter bolt.",
    ),
    (
        "insert",
        &[("thread", "M6"), ("insert", "9")],
        "6.22–6.40",
        "Then the insert’s own tap, of the same pitch.",
    ),
    (
        "stretch",
        &[
            ("free", "60"),
            ("tight", "60.1"),
            ("least", "0.12"),
            ("most", "0.15"),
            ("thread", "M8"),
            ("grip", "40"),
        ],
        "0.100",
        "0.020 mm under the least. Loosen it and tighten it anew.",
    ),
];

pub fn field(calculation: &'static Calculation, id: &str) -> &'static Field {
    let mut fields = calculation.fields.iter();
    fields
        .find(|field| field.id == id)
        .unwrap_or_else(|| panic!("{} has no {id}", calculation.id))
}

pub fn filled(calculation: &'static Calculation, with: &[(&'static str, &'static str)]) -> MeasureBench {
    let mut bench = MeasureBench::default();
    for (id, value) in with {
        let field = field(calculation, id);
        match field.takes {
            Takes::Number(..) => {
                let number = value.parse().unwrap();
                bench.type_number(calculation, field, number).unwrap();
            }
            Takes::Choice(_) | Takes::Thread | Takes::Words | Takes::Line(_) => {
                bench.choose(calculation, field, value);
            }
        }
    }
    bench
}

fn answered(calculation: &'static Calculation, bench: &MeasureBench) -> Answer {
    calculation
        .answer(bench)
        .unwrap_or_else(|why| panic!("{}: {why}", calculation.id))
}

#[test]
fn every_calculation_answers_its_filled_example() {
    assert_eq!(LIST.len(), EXAMPLES.len());
    for (calculation, (id, with, number, verdict)) in LIST.into_iter().zip(EXAMPLES) {
        assert_eq!(calculation.id, id);
        let answer = answered(calculation, &filled(calculation, with));
        assert_eq!(
            (answer.number.as_str(), answer.verdict.as_str()),
            (number, verdict),
            "{id}"
        );
        assert!(!answer.says.is_empty() && !calculation.model.is_empty() && !calculation.how.is_empty());
    }
}

/// The number that a step's reading would be is the number shown; a class or a range to choose from is none.
#[test]
fn the_typed_number_is_the_number_shown() {
    let mut none = Vec::new();
    for (id, with, ..) in EXAMPLES {
        let calculation = of(id);
        let answer = answered(calculation, &filled(calculation, with));
        let Some(reading) = &calculation.reading else {
            assert_eq!(answer.reckoned, None, "{id}");
            none.push(id);
            continue;
        };
        let reckoned = answer.reckoned.unwrap_or_else(|| panic!("{id} tells no number"));
        assert_eq!(reckoned.measure, reading.measure, "{id}");
        assert_eq!(answer.unit, reading.measure.symbol(false), "{id}");
        let shown: Vec<f64> = answer.number.split('–').map(|end| end.parse().unwrap()).collect();
        let (low, high) = reckoned.ends;
        // Shown to a hundredth at the coarsest, a rate to three figures.
        assert!((shown[0] - low).abs() < 0.051, "{id}: {low}");
        assert!((shown[shown.len() - 1] - high).abs() < 0.051, "{id}: {high}");
        assert_eq!(low == high, shown.len() == 1, "{id}");
        for own in reading.own {
            assert!(
                calculation.fields.iter().any(|field| field.id == *own),
                "{id}: {own}"
            );
        }
    }
    assert_eq!(none, ["float", "codes", "plastic", "insert"]);
}

/// With the comma chosen every number of an answer, and of the field it was typed in, has it; nothing else changes.
#[test]
fn answers_have_the_users_decimal_mark() {
    use halfcase::trade::quantity::{DecimalMark, choose};
    let all = || {
        let mut words = Vec::new();
        for (id, with, ..) in EXAMPLES {
            for inch in [false, true] {
                let mut bench = filled(of(id), with);
                bench.inch = inch;
                let Ok(answer) = of(id).answer(&bench) else {
                    continue;
                };
                words.extend([answer.number, answer.verdict]);
                words.extend(answer.rows.into_iter().map(|(_, words)| words));
                let numbers = of(id).fields.iter().map(|field| field.text(62.0125, inch));
                words.extend(numbers);
            }
        }
        words
    };
    let with_point = all();
    choose(DecimalMark::Comma);
    let with_comma = all();
    assert_eq!(with_point.len(), with_comma.len());
    assert!(with_comma.iter().filter(|words| words.contains(',')).count() > 50);
    for (point, comma) in with_point.iter().zip(&with_comma) {
        assert_eq!(point.replace('.', ","), comma.replace('.', ","));
        let letters: Vec<char> = comma.chars().collect();
        let left = letters
            .windows(3)
            .any(|three| three[0].is_ascii_digit() && three[1] == '.' && three[2].is_ascii_digit());
        assert!(!left, "{comma}");
    }
}

/// What has failed is never shown as what passed.
#[test]
fn a_failed_example_is_refused() {
    let failing = [
        "preload",
        "backlash",
        "piston",
        "end-gap",
        "flatness",
        "spring-test",
        "engagement",
        "stretch",
    ];
    for (id, with, ..) in EXAMPLES {
        let answer = answered(of(id), &filled(of(id), with));
        assert_eq!(answer.refused, failing.contains(&id), "{id}");
    }
}

#[test]
fn an_empty_calculation_asks_for_its_first_number() {
    for calculation in LIST {
        let why = calculation.answer(&MeasureBench::default()).unwrap_err();
        let Trouble::Missing(name) = why else {
            panic!("{}: {why}", calculation.id);
        };
        assert!(
            calculation.fields.iter().any(|field| field.name == name),
            "{name}"
        );
    }
}

/// Without any one of its numbers a filled example answers or asks: it never claims nonsense was entered.
#[test]
fn a_number_that_is_missing_is_asked_for() {
    for (id, with, ..) in EXAMPLES {
        for left_out in with {
            let mut bench = filled(of(id), with);
            bench.given.retain(|given| given.field != left_out.0);
            if let Err(why) = of(id).answer(&bench) {
                let few = why == Trouble::Wrong(halfcase::trade::measuring::MeasuringError::Few(3));
                assert!(
                    matches!(why, Trouble::Missing(_) | Trouble::Line(_)) || few,
                    "{id} without {}: {why}",
                    left_out.0
                );
            }
        }
    }
}

/// Readings at equal steps have no holes: a place left out is asked for, not closed up.
#[test]
fn a_place_left_out_of_a_row_is_asked_for() {
    for (id, with, name) in [
        (
            "run-out",
            &[("at_1", "0"), ("at_2", "0.1"), ("at_4", "0.2"), ("at_5", "0.1")] as Filled,
            "third",
        ),
        (
            "straightness",
            &[("at_1", "0"), ("at_3", "0.2"), ("at_4", "0.1")],
            "second place",
        ),
    ] {
        assert_eq!(of(id).answer(&filled(of(id), with)), Err(Trouble::Missing(name)));
    }
}

/// What stands under the number, for some of the examples, by hand.
#[test]
fn the_rows_under_the_number() {
    let row = |id: &'static str, name: &str| {
        let (_, with, ..) = EXAMPLES.into_iter().find(|one| one.0 == id).unwrap();
        let answer = answered(of(id), &filled(of(id), with));
        let row = answer.rows.into_iter().find(|row| row.0 == name);
        row.unwrap_or_else(|| panic!("{id} says no {name}")).1
    };
    for (id, name, words) in [
        // 0.64 in the middle of the readings, less 0.5.
        ("float", "float it leaves", "0.140 mm"),
        ("plastic", "taper", "0.010 mm"),
        // 1.2 N·m is 0.55 short of 1.75: 0.1 mm of pack for each.
        ("preload", "pack, to the middle", "0.055 mm thinner"),
        ("run-out", "high spot", "180° on from the first"),
        ("run-out", "offset", "0.020 mm"),
        ("end-gap", "least by the bore", "0.320 mm"),
        ("flatness", "worst along", "one diagonal"),
        ("flatness", "lines still to read", "4"),
        ("spring-test", "rate", "20.0 N/mm"),
        ("engagement", "turns", "10.4"),
        ("insert", "drilled at least", "18.00 mm"),
        // 207 000·0.1/(40/36.61), and with half a diameter of shank and nine tenths of thread more: 18.9 and 15.1 kN.
        ("stretch", "pull it tells", "15.1 kN to 18.9 kN"),
    ] {
        assert_eq!(row(id, name), words, "{id}, {name}");
    }
}

/// Of two values outside the same limit the further one speaks, once.
#[test]
fn a_span_is_judged_by_its_ends() {
    let piston = of("piston");
    let with = |least, most| {
        let all = [
            ("narrowest", "80"),
            ("widest", "80.02"),
            ("piston", "79.95"),
            ("least", least),
            ("most", most),
        ];
        let mut bench = MeasureBench::default();
        for (id, value) in all {
            bench
                .type_number(piston, field(piston, id), value.parse().unwrap())
                .unwrap();
        }
        piston.answer(&bench).map(|answer| answer.verdict)
    };
    for (least, most, verdict) in [
        ("0.01", "0.03", "0.040 mm over the most."),
        ("0.09", "0.1", "0.040 mm under the least."),
        (
            "0.06",
            "0.065",
            "0.010 mm under the least. 0.005 mm over the most.",
        ),
        ("0.05", "0.07", "Within its limits."),
    ] {
        assert_eq!(with(least, most), Ok(verdict.to_owned()));
    }
    assert_eq!(
        with("0.1", "0.05").unwrap_err().to_string(),
        "Enter the limits with the lower one first."
    );
}

/// A strip: its narrow end tells the wider gap, and that one has the upper limit.
#[test]
fn both_ends_of_a_strip_count() {
    let plastic = of("plastic");
    for (wide, narrow, verdict) in [
        ("0.05", "0.07", "Within its limits."),
        ("0.05", "0.08", "0.010 mm over the most."),
        (
            "0.02",
            "0.05",
            "0.010 mm under the least. That is outside what this card tells.",
        ),
        (
            "0.06",
            "0.05",
            "The narrow end tells the wider gap: read both again.",
        ),
    ] {
        let mut bench = MeasureBench::default();
        for (id, value) in [
            ("least", "0.03"),
            ("most", "0.07"),
            ("wide", wide),
            ("narrow", narrow),
        ] {
            bench
                .type_number(plastic, field(plastic, id), value.parse().unwrap())
                .unwrap();
        }
        let answer = answered(plastic, &bench);
        assert_eq!(
            (answer.verdict.as_str(), answer.refused),
            (verdict, verdict != "Within its limits.")
        );
    }
}

/// A reckoned load is a range: one that reaches past a limit is not passed.
#[test]
fn a_range_that_reaches_past_its_limit_is_not_passed() {
    let spring = |least, most| {
        let with = [
            ("wire", "4"),
            ("outside", "30"),
            ("coils", "9"),
            ("free", "70"),
            ("height", "60"),
            ("least", least),
            ("most", most),
        ];
        let calculation = of("spring-rate");
        let mut bench = MeasureBench::default();
        for (id, value) in with {
            bench
                .type_number(calculation, field(calculation, id), value.parse().unwrap())
                .unwrap();
        }
        let answer = answered(calculation, &bench);
        (answer.verdict, answer.refused)
    };
    // 10 mm of 15.88 to 16.49 N/mm.
    assert_eq!(spring("150", "170"), ("Within its limits.".to_owned(), false));
    assert_eq!(
        spring("160", "170"),
        (
            "It may lie outside its limits: read it on a tester.".to_owned(),
            true
        )
    );
    assert_eq!(spring("170", "190"), ("5 N under the least.".to_owned(), true));
    assert_eq!(spring("100", "150"), ("9 N over the most.".to_owned(), true));
}

#[test]
fn bad_input_gets_its_sentence() {
    let rows: [(&str, Filled, &str); 15] = [
        (
            "spring-test",
            &[("free", "50"), ("height", "51"), ("load", "200")],
            "The height must be under the free length: measure both again.",
        ),
        (
            "spring-test",
            &[
                ("height", "50"),
                ("load", "200"),
                ("height_2", "40"),
                ("load_2", "150"),
            ],
            "A spring bears more when it is shorter: read both loads again.",
        ),
        (
            "float",
            &[("gap_1", "0.02"), ("least", "0.05"), ("most", "0.1")],
            "The gap is smaller than the float wanted: no shim makes it larger. Measure it again without shims.",
        ),
        (
            "float",
            &[("gap_1", "1"), ("least", "0.2"), ("most", "0.1")],
            "Enter the limits with the lower one first.",
        ),
        (
            "plastic",
            &[("least", "0.2"), ("most", "0.1")],
            "Enter the limits with the lower one first.",
        ),
        (
            "preload",
            &[("torque", "1"), ("seal", "2")],
            "The seal alone can’t drag more than all of it: read both again.",
        ),
        ("backlash", &[("place_1", "0.1")], "Take at least 2 readings."),
        (
            "run-out",
            &[("at_1", "0"), ("at_2", "0.1")],
            "Take at least 3 readings.",
        ),
        (
            "piston",
            &[("narrowest", "80"), ("widest", "79"), ("piston", "79.9")],
            "Enter the limits with the lower one first.",
        ),
        (
            "straightness",
            &[("at_1", "0"), ("at_2", "0")],
            "Take at least 3 readings.",
        ),
        (
            "spring-rate",
            &[("wire", "4"), ("outside", "7"), ("coils", "9")],
            "The coil’s mean diameter must be larger than its wire: measure both again.",
        ),
        (
            "spring-test",
            &[
                ("height", "50"),
                ("load", "200"),
                ("height_2", "50"),
                ("load_2", "300"),
            ],
            "Read the spring at two different heights.",
        ),
        (
            "engagement",
            &[("thread", "M8"), ("bolt", "10"), ("stack", "12")],
            "The bolt does not reach the thread: its length under the head must be more than what it clamps.",
        ),
        (
            "insert",
            &[("thread", "G 1/4"), ("insert", "9")],
            "Choose a bolt’s thread: nothing is reckoned of a pipe thread.",
        ),
        (
            "stretch",
            &[("free", "60"), ("tight", "59")],
            "The tight length is under the free one: measure both again.",
        ),
    ];
    for (id, with, sentence) in rows {
        let why = of(id).answer(&filled(of(id), with)).unwrap_err();
        assert_eq!(why.to_string(), sentence, "{id}");
        assert!(matches!(why, Trouble::Wrong(_)));
    }
}

/// A number beyond its range is refused in the unit shown and changes nothing.
#[test]
fn a_number_has_one_range_in_both_units() {
    let calculation = of("float");
    let gap = field(calculation, "gap_1");
    let mut bench = filled(calculation, &[("gap_1", "0.5")]);
    assert_eq!(
        bench.type_number(calculation, gap, 101.0),
        Err("Enter a number from 0 to 100 mm.".to_owned())
    );
    bench.inch = true;
    assert_eq!(bench.shown(calculation, gap), "0.019685");
    assert_eq!(
        bench.type_number(calculation, gap, 4.0),
        Err("Enter a number from 0 to 3.937008 in.".to_owned())
    );
    let count = field(calculation, "count_1");
    assert_eq!(
        bench.type_number(calculation, count, 1.5),
        Err("Enter a whole number from 0 to 20.".to_owned())
    );
    let at = field(of("piston"), "at");
    assert_eq!(
        bench.type_number(of("piston"), at, 400.0),
        Err("Enter a number from −40 to 302 °F.".to_owned())
    );
    assert_eq!(
        bench,
        MeasureBench {
            inch: true,
            ..filled(calculation, &[("gap_1", "0.5")])
        }
    );
    // What was typed in inches is shown as it was typed.
    for typed in [0.0315, 0.001, 3.1496, 0.00075] {
        bench.type_number(calculation, gap, typed).unwrap();
        assert_eq!(bench.shown(calculation, gap), typed.to_string());
    }
}

#[test]
fn the_same_example_answers_in_inches() {
    for (id, with, ..) in EXAMPLES {
        let mut bench = filled(of(id), with);
        let metric = answered(of(id), &bench);
        bench.inch = true;
        let inches = answered(of(id), &bench);
        assert_eq!(metric.refused, inches.refused, "{id}");
        let units = ["in", "lb", "lb/in", "in·lb"];
        // A class has no unit.
        let bare = id == "codes" && inches == metric && inches.unit.is_empty();
        assert!(
            bare || units.contains(&inches.unit) && !units.contains(&metric.unit),
            "{id}: {}",
            inches.unit
        );
        let all = inches
            .rows
            .iter()
            .map(|(_, words)| words.as_str())
            .chain([inches.verdict.as_str()]);
        assert!(
            all.clone()
                .all(|words| !words.contains(" mm") && !words.contains(" kN")),
            "{id}: {inches:?}"
        );
    }
}

#[test]
fn fields_have_names_ranges_and_ids_of_their_own() {
    for calculation in LIST {
        for (at, field) in calculation.fields.iter().enumerate() {
            let others = &calculation.fields[at + 1..];
            assert!(
                others
                    .iter()
                    .all(|other| other.id != field.id && other.name != field.name),
                "{}",
                field.id
            );
            if let Takes::Number(_, (least, most)) = field.takes {
                assert!(
                    least < most && least.is_finite() && most.is_finite(),
                    "{}",
                    field.id
                );
            }
        }
    }
    for id in ["engagement", "insert"] {
        let Takes::Choice(offered) = field(of(id), "into").takes else {
            panic!("a choice");
        };
        assert_eq!(offered, FemaleMaterial::ALL.map(FemaleMaterial::words));
    }
}

/// Every thread there is, every choice there is: an answer or a sentence.
#[test]
fn every_thread_and_choice_is_taken() {
    for thread in Thread::all() {
        for (id, with, ..) in EXAMPLES {
            let mut bench = filled(of(id), with);
            for field in of(id).fields {
                match field.takes {
                    Takes::Thread => bench.choose(of(id), field, &thread.name()),
                    Takes::Choice(_) | Takes::Number(..) | Takes::Words | Takes::Line(_) => {}
                }
            }
            let answer = of(id).answer(&bench);
            assert!(
                answer.is_ok() || thread.is_pipe() || thread.major().value > 0.01,
                "{id} {thread}"
            );
        }
    }
    for (id, with, ..) in EXAMPLES {
        for field in of(id).fields {
            let Takes::Choice(offered) = field.takes else {
                continue;
            };
            for word in offered {
                let mut bench = filled(of(id), with);
                bench.choose(of(id), field, word);
                assert_eq!(bench.word(of(id), field), *word);
                answered(of(id), &bench);
            }
        }
    }
}

/// What is typed comes back after a reload; an older store opens, and nothing typed writes nothing.
#[test]
fn what_is_typed_is_kept() {
    let blank = serde_json::to_string(&Settings::default()).unwrap();
    assert!(!blank.contains("measure"));
    assert_eq!(
        serde_json::from_str::<Settings>(&blank).unwrap(),
        Settings::default()
    );
    let mut settings = Settings {
        measure: filled(of("engagement"), EXAMPLES[14].1),
        ..Settings::default()
    };
    settings.measure.calculation = "engagement".to_owned();
    let text = serde_json::to_string(&settings).unwrap();
    assert_eq!(serde_json::from_str::<Settings>(&text).unwrap(), settings);
    let changed: Vec<&str> = PIECES
        .iter()
        .filter(|piece| !(piece.same)(&settings, &Settings::default()))
        .map(|piece| piece.name)
        .collect();
    assert_eq!(changed, ["measure"], "nothing else is written by it");
    // An id of another release opens the first; clearing one calculation leaves the others.
    settings.measure.calculation = "gone".to_owned();
    assert_eq!(settings.measure.at_hand().id, "float");
    settings
        .measure
        .type_number(of("float"), field(of("float"), "gap_1"), 0.5)
        .unwrap();
    settings.measure.clear(of("engagement"));
    assert_eq!(settings.measure.given.len(), 1);
}

/// One row of an answer; none where it has none of that name.
fn row_of(id: &'static str, with: Filled, name: &str) -> Option<String> {
    let answer = answered(of(id), &filled(of(id), with));
    answer.rows.into_iter().find(|row| row.0 == name).map(|row| row.1)
}

/// 2·tan 20° = 0.7279 (handbooks of gears, from memory): 0.1 mm apart adds 0.073 mm, and takes as much together.
#[test]
fn backlash_grows_as_the_centres_move_apart() {
    const NAME: &str = "mean, with the centres moved";
    const APART: Filled = &[
        ("place_1", "0.1"),
        ("place_2", "0.1"),
        ("apart", "0.1"),
        ("angle", "20"),
    ];
    assert_eq!(row_of("backlash", APART, NAME).as_deref(), Some("0.173 mm"));
    const TOGETHER: Filled = &[
        ("place_1", "0.1"),
        ("place_2", "0.1"),
        ("apart", "-0.1"),
        ("angle", "20"),
    ];
    assert_eq!(row_of("backlash", TOGETHER, NAME).as_deref(), Some("0.027 mm"));
    const STILL: Filled = &[("place_1", "0.1"), ("place_2", "0.1")];
    assert_eq!(row_of("backlash", STILL, NAME), None);
    const UNTOLD: Filled = &[("place_1", "0.1"), ("place_2", "0.1"), ("apart", "0.1")];
    assert_eq!(
        of("backlash").answer(&filled(of("backlash"), UNTOLD)),
        Err(Trouble::Missing("their pressure angle"))
    );
}

/// Readings 0, 0.02, 0.04, 0.02: total 0.04, high half a turn on. A next journal of 0.03, high at the first
/// reading, lies opposite: the sum, 0.07; high where this one is, in line: the difference, 0.01 (the rule of
/// TM 9-2815-202-34 for neighbouring journals).
#[test]
fn neighbouring_journals_run_apart_by_their_high_spots() {
    const NAME: &str = "runs apart from journal B";
    const OPPOSITE: Filled = &[
        ("at_1", "0"),
        ("at_2", "0.02"),
        ("at_3", "0.04"),
        ("at_4", "0.02"),
        ("next", "0.03"),
        ("next_high", "0"),
        ("between", "0.05"),
    ];
    assert_eq!(row_of("run-out", OPPOSITE, NAME).as_deref(), Some("0.070 mm"));
    let answer = answered(of("run-out"), &filled(of("run-out"), OPPOSITE));
    assert!(answer.refused, "{}", answer.verdict);
    assert!(answer.verdict.contains("too far apart"), "{}", answer.verdict);
    const IN_LINE: Filled = &[
        ("at_1", "0"),
        ("at_2", "0.02"),
        ("at_3", "0.04"),
        ("at_4", "0.02"),
        ("next", "0.03"),
        ("next_high", "180"),
        ("between", "0.05"),
    ];
    assert_eq!(row_of("run-out", IN_LINE, NAME).as_deref(), Some("0.010 mm"));
    assert!(!answered(of("run-out"), &filled(of("run-out"), IN_LINE)).refused);
    // By the total alone nobody knows where it is high.
    const TOTAL: Filled = &[("total", "0.04"), ("next", "0.03"), ("next_high", "0")];
    assert_eq!(
        of("run-out").answer(&filled(of("run-out"), TOTAL)),
        Err(Trouble::Missing("or round the turn: first"))
    );
}

/// On centres, worked by hand: readings 0, 0.02, 0.04, 0.02 are (−0.04, 0) of total reading. Journals of (0.03, 0)
/// and (−0.05, 0), 200 mm apart: halfway their line is at (−0.01, 0), so that the place is 0.03 off it, towards 180°.
#[test]
fn on_centres_a_bend_is_what_lies_off_the_line_of_the_journals() {
    const TOLD: Filled = &[
        ("at_1", "0"),
        ("at_2", "0.02"),
        ("at_3", "0.04"),
        ("at_4", "0.02"),
        ("most", "0.035"),
        ("next", "0.05"),
        ("next_high", "180"),
        ("before", "0.03"),
        ("before_high", "0"),
        ("from_before", "100"),
        ("span", "200"),
    ];
    let answer = answered(of("run-out"), &filled(of("run-out"), TOLD));
    assert_eq!(
        (answer.says, answer.number.as_str()),
        ("total reading off the line of the journals", "0.030")
    );
    // Judged by what the shaft has of its own: 0.04 as read would be out.
    assert!(!answer.refused, "{}", answer.verdict);
    let row = |name| row_of("run-out", TOLD, name);
    // The shaft lies half of what it reads off the line; what was read is told apart from that.
    assert_eq!(row("bend").as_deref(), Some("0.015 mm"));
    assert_eq!(row("total reading as read").as_deref(), Some("0.040 mm"));
    assert_eq!(row("offset as read").as_deref(), Some("0.020 mm"));
    assert_eq!(
        row("high spot as read").as_deref(),
        Some("180° on from the first")
    );
    assert_eq!((row("offset"), row("high spot")), (None, None));
    assert_eq!(row("bent towards").as_deref(), Some("180° on from the first"));
    // Overhung before the first by half the span the line is at (0.07, 0): 0.11 off it.
    let overhung: Vec<(&'static str, &'static str)> = TOLD
        .iter()
        .map(|&(id, told)| (id, if id == "from_before" { "-100" } else { told }))
        .collect();
    let answer = answered(of("run-out"), &filled(of("run-out"), &overhung));
    assert_eq!((answer.number.as_str(), answer.refused), ("0.110", true));
    // Straight: as far off as the line is halfway between (−0.04, 0) and (−0.04, 0). It is bent no way.
    let straight: Vec<(&'static str, &'static str)> = TOLD
        .iter()
        .map(|&(id, told)| match id {
            "next" | "before" => (id, "0.04"),
            "before_high" => (id, "180"),
            _ => (id, told),
        })
        .collect();
    let answer = answered(of("run-out"), &filled(of("run-out"), &straight));
    assert_eq!(answer.number, "0.000");
    assert!(
        answer.rows.iter().all(|row| row.0 != "bent towards"),
        "{:?}",
        answer.rows
    );
    // Straight in tilted centres: 0 at the one, 0.05 at 80° halfway, 0.10 at 80° at the other. Not bent, and not
    // bent between them either.
    let tilted: Vec<(&'static str, &'static str)> = TOLD
        .iter()
        .map(|&(id, told)| match id {
            // 0.05/2 · cos(θ − 80°) every quarter turn.
            "at_1" => (id, "0.0043"),
            "at_2" => (id, "0.0246"),
            "at_3" => (id, "-0.0043"),
            "at_4" => (id, "-0.0246"),
            "next" => (id, "0.1"),
            "next_high" => (id, "80"),
            "before" | "before_high" => (id, "0"),
            _ => (id, told),
        })
        .chain([("between", "0.03")])
        .collect();
    let answer = answered(of("run-out"), &filled(of("run-out"), &tilted));
    assert_eq!(
        (answer.number.as_str(), answer.verdict.as_str()),
        ("0.000", "Within its limits.")
    );
    // A bend of 0.03 between them is one by either.
    let bent = [TOLD, &[("between", "0.02")]].concat();
    let answer = answered(of("run-out"), &filled(of("run-out"), &bent));
    assert!(answer.verdict.contains("bent between them"), "{}", answer.verdict);
    // Each of them is asked for, once anything of the journal on the other side is told.
    for (left_out, name) in [
        ("at_1", "or round the turn: first"),
        ("before", "journal A, total reading"),
        ("next", "journal B, total reading"),
        ("next_high", "journal B, high spot on from the first"),
        ("before_high", "journal A, high spot on from the first"),
        ("from_before", "from journal A to here, − beyond A"),
        ("span", "from journal A to journal B"),
    ] {
        let with: Vec<(&'static str, &'static str)> =
            TOLD.iter().copied().filter(|one| one.0 != left_out).collect();
        assert_eq!(
            of("run-out").answer(&filled(of("run-out"), &with)),
            Err(Trouble::Missing(name)),
            "{left_out}"
        );
    }
}

/// "Total reading, at most" means the same with the journals told as without: an oval of 0.06 that turns true on true
/// journals is 0.06 of total reading, and the offset of a place off the line counts whole where few places were read.
#[test]
fn with_the_journals_told_an_oval_is_still_read() {
    const OVAL: [(&str, &str); 5] = [
        ("at_1", "0"),
        ("at_2", "0.06"),
        ("at_3", "0"),
        ("at_4", "0.06"),
        ("most", "0.05"),
    ];
    const TRUE_ONES: [(&str, &str); 6] = [
        ("before", "0"),
        ("before_high", "0"),
        ("next", "0"),
        ("next_high", "0"),
        ("from_before", "100"),
        ("span", "200"),
    ];
    let alone = answered(of("run-out"), &filled(of("run-out"), &OVAL));
    let told = [OVAL.as_slice(), &TRUE_ONES].concat();
    let told = answered(of("run-out"), &filled(of("run-out"), &told));
    // What runs true is high nowhere: nobody is asked where.
    let unasked: Vec<(&'static str, &'static str)> = [OVAL.as_slice(), &TRUE_ONES]
        .concat()
        .into_iter()
        .filter(|one| !one.0.ends_with("_high"))
        .collect();
    let unasked = answered(of("run-out"), &filled(of("run-out"), &unasked));
    for answer in [&alone, &told, &unasked] {
        assert_eq!((answer.number.as_str(), answer.refused), ("0.060", true));
        assert_eq!(answer.verdict, "0.010 mm over the most.");
    }
    // What it is allowed for each of radius is a face's, along the shaft.
    for told in [("each", "25"), ("radius", "80")] {
        let with = [OVAL.as_slice(), &TRUE_ONES, &[told]].concat();
        let said = of("run-out").answer(&filled(of("run-out"), &with));
        let Err(Trouble::Said(why)) = said else {
            panic!("{told:?}: {said:?}")
        };
        assert!(
            why.starts_with("A limit for each of radius is for a face,"),
            "{why}"
        );
        // And half of it told judged nothing.
        let with = [OVAL.as_slice(), &[told]].concat();
        let said = of("run-out").answer(&filled(of("run-out"), &with));
        assert!(matches!(said, Err(Trouble::Missing(_))), "{told:?}: {said:?}");
    }
    // Of a neighbour too the rest is asked for: its limit alone judged nothing.
    for told in [("between", "0.02"), ("next_high", "90")] {
        let with = [OVAL.as_slice(), &[told]].concat();
        assert_eq!(
            of("run-out").answer(&filled(of("run-out"), &with)),
            Err(Trouble::Missing("journal B, total reading")),
            "{told:?}"
        );
    }
}

/// M8: nominal + 0.6495 P = 8 + 0.6495 × 1.25 = 8.812 mm (ISO 68-1 profile on the enlarged diameter).
#[test]
fn an_insert_tells_the_pitch_diameter_of_its_hole() {
    const M8: Filled = &[("thread", "M8"), ("insert", "12")];
    assert_eq!(
        row_of("insert", M8, "its pitch diameter").as_deref(),
        Some("8.812 mm")
    );
}
