//! Limits of holes and shafts against ISO 286 tables, and fits worked from them.

use halfcase::trade::fit::{FitCode, FitError, SizeSource, ToleranceClass, interference, limits, size_range};
use halfcase::trade::material::Material;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use uom::si::length::{inch, micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn class(text: &str) -> ToleranceClass {
    text.parse().unwrap()
}

fn micrometres(size: f64, text: &str) -> (f64, f64) {
    let limits = limits(mm(size), class(text)).unwrap_or_else(|why| panic!("{size} {text}: {why}"));
    (limits.lower.get::<micrometer>(), limits.upper.get::<micrometer>())
}

fn agree(size: f64, text: &str, lower: f64, upper: f64) {
    let (ours_lower, ours_upper) = micrometres(size, text);
    let near = (ours_lower - lower).abs() < 1e-6 && (ours_upper - upper).abs() < 1e-6;
    assert!(
        near,
        "{size} {text}: {ours_lower}/{ours_upper} is not {lower}/{upper}"
    );
}

/// One size inside each intermediate band up to 180 mm.
const SIZES: [f64; 15] = [
    2.0, 4.0, 8.0, 14.0, 22.0, 25.0, 35.0, 45.0, 62.0, 72.0, 90.0, 110.0, 130.0, 150.0, 170.0,
];

/// Lower/upper deviation at each of [`SIZES`], µm. Written once from the Python package pressfit 0.1.0
/// (its tables are its own, entered from ISO 286-1 by its author): fit("62 H7/k6") and so on, fields
/// hole_ei_um, hole_es_um, shaft_ei_um and shaft_es_um.
#[rustfmt::skip]
const INDEPENDENT: [(&str, &str); 22] = [
    ("H5", "0/4 0/5 0/6 0/8 0/9 0/9 0/11 0/11 0/13 0/13 0/15 0/15 0/18 0/18 0/18"),
    ("H6", "0/6 0/8 0/9 0/11 0/13 0/13 0/16 0/16 0/19 0/19 0/22 0/22 0/25 0/25 0/25"),
    ("H7", "0/10 0/12 0/15 0/18 0/21 0/21 0/25 0/25 0/30 0/30 0/35 0/35 0/40 0/40 0/40"),
    ("H8", "0/14 0/18 0/22 0/27 0/33 0/33 0/39 0/39 0/46 0/46 0/54 0/54 0/63 0/63 0/63"),
    ("H9", "0/25 0/30 0/36 0/43 0/52 0/52 0/62 0/62 0/74 0/74 0/87 0/87 0/100 0/100 0/100"),
    ("H10", "0/40 0/48 0/58 0/70 0/84 0/84 0/100 0/100 0/120 0/120 0/140 0/140 0/160 0/160 0/160"),
    ("H11", "0/60 0/75 0/90 0/110 0/130 0/130 0/160 0/160 0/190 0/190 0/220 0/220 0/250 0/250 0/250"),
    ("d6", "-26/-20 -38/-30 -49/-40 -61/-50 -78/-65 -78/-65 -96/-80 -96/-80 -119/-100 -119/-100 -142/-120 -142/-120 -170/-145 -170/-145 -170/-145"),
    ("e6", "-20/-14 -28/-20 -34/-25 -43/-32 -53/-40 -53/-40 -66/-50 -66/-50 -79/-60 -79/-60 -94/-72 -94/-72 -110/-85 -110/-85 -110/-85"),
    ("f6", "-12/-6 -18/-10 -22/-13 -27/-16 -33/-20 -33/-20 -41/-25 -41/-25 -49/-30 -49/-30 -58/-36 -58/-36 -68/-43 -68/-43 -68/-43"),
    ("g6", "-8/-2 -12/-4 -14/-5 -17/-6 -20/-7 -20/-7 -25/-9 -25/-9 -29/-10 -29/-10 -34/-12 -34/-12 -39/-14 -39/-14 -39/-14"),
    ("h6", "-6/0 -8/0 -9/0 -11/0 -13/0 -13/0 -16/0 -16/0 -19/0 -19/0 -22/0 -22/0 -25/0 -25/0 -25/0"),
    ("js6", "-3/3 -4/4 -4.5/4.5 -5.5/5.5 -6.5/6.5 -6.5/6.5 -8/8 -8/8 -9.5/9.5 -9.5/9.5 -11/11 -11/11 -12.5/12.5 -12.5/12.5 -12.5/12.5"),
    ("k5", "0/4 1/6 1/7 1/9 2/11 2/11 2/13 2/13 2/15 2/15 3/18 3/18 3/21 3/21 3/21"),
    ("k6", "0/6 1/9 1/10 1/12 2/15 2/15 2/18 2/18 2/21 2/21 3/25 3/25 3/28 3/28 3/28"),
    ("k7", "0/10 1/13 1/16 1/19 2/23 2/23 2/27 2/27 2/32 2/32 3/38 3/38 3/43 3/43 3/43"),
    ("k8", "0/14 0/18 0/22 0/27 0/33 0/33 0/39 0/39 0/46 0/46 0/54 0/54 0/63 0/63 0/63"),
    ("m6", "2/8 4/12 6/15 7/18 8/21 8/21 9/25 9/25 11/30 11/30 13/35 13/35 15/40 15/40 15/40"),
    ("n6", "4/10 8/16 10/19 12/23 15/28 15/28 17/33 17/33 20/39 20/39 23/45 23/45 27/52 27/52 27/52"),
    ("p6", "6/12 12/20 15/24 18/29 22/35 22/35 26/42 26/42 32/51 32/51 37/59 37/59 43/68 43/68 43/68"),
    ("s6", "14/20 19/27 23/32 28/39 35/48 35/48 43/59 43/59 53/72 59/78 71/93 79/101 92/117 100/125 108/133"),
    ("u6", "18/24 23/31 28/37 33/44 41/54 48/61 60/76 70/86 87/106 102/121 124/146 144/166 170/195 190/215 210/235"),
];

#[test]
fn an_independent_library_gives_the_same_limits() {
    for (text, row) in INDEPENDENT {
        let pairs: Vec<&str> = row.split(' ').collect();
        assert_eq!(pairs.len(), SIZES.len());
        for (size, pair) in SIZES.into_iter().zip(pairs) {
            let (lower, upper) = pair.split_once('/').unwrap();
            agree(size, text, lower.parse().unwrap(), upper.parse().unwrap());
        }
    }
}

/// One size in each main band above 3 mm.
const MAIN_SIZES: [f64; 8] = [5.0, 8.0, 15.0, 25.0, 40.0, 62.0, 100.0, 150.0];

/// Upper/lower deviation, µm.
#[rustfmt::skip]
const HOLES: [(&str, [(f64, f64); 8]); 12] = [
    // ISO 286-2, seen in stored copies of its tables.
    ("K7", [(3.0, -9.0), (5.0, -10.0), (6.0, -12.0), (6.0, -15.0), (7.0, -18.0), (9.0, -21.0), (10.0, -25.0), (12.0, -28.0)]),
    ("M7", [(0.0, -12.0), (0.0, -15.0), (0.0, -18.0), (0.0, -21.0), (0.0, -25.0), (0.0, -30.0), (0.0, -35.0), (0.0, -40.0)]),
    ("N7", [(-4.0, -16.0), (-4.0, -19.0), (-5.0, -23.0), (-7.0, -28.0), (-8.0, -33.0), (-9.0, -39.0), (-10.0, -45.0), (-12.0, -52.0)]),
    ("P7", [(-8.0, -20.0), (-9.0, -24.0), (-11.0, -29.0), (-14.0, -35.0), (-17.0, -42.0), (-21.0, -51.0), (-24.0, -59.0), (-28.0, -68.0)]),
    ("J6", [(5.0, -3.0), (5.0, -4.0), (6.0, -5.0), (8.0, -5.0), (10.0, -6.0), (13.0, -6.0), (16.0, -6.0), (18.0, -7.0)]),
    ("J7", [(6.0, -6.0), (8.0, -7.0), (10.0, -8.0), (12.0, -9.0), (14.0, -11.0), (18.0, -12.0), (22.0, -13.0), (26.0, -14.0)]),
    ("J8", [(10.0, -8.0), (12.0, -10.0), (15.0, -12.0), (20.0, -13.0), (24.0, -15.0), (28.0, -18.0), (34.0, -20.0), (41.0, -22.0)]),
    ("M8", [(2.0, -16.0), (1.0, -21.0), (2.0, -25.0), (4.0, -29.0), (5.0, -34.0), (5.0, -41.0), (6.0, -48.0), (8.0, -55.0)]),
    ("N8", [(-2.0, -20.0), (-3.0, -25.0), (-3.0, -30.0), (-3.0, -36.0), (-3.0, -42.0), (-4.0, -50.0), (-4.0, -58.0), (-4.0, -67.0)]),
    // ISO 286-2, from memory.
    ("K5", [(0.0, -5.0), (1.0, -5.0), (2.0, -6.0), (1.0, -8.0), (2.0, -9.0), (3.0, -10.0), (2.0, -13.0), (3.0, -15.0)]),
    ("P6", [(-9.0, -17.0), (-12.0, -21.0), (-15.0, -26.0), (-18.0, -31.0), (-21.0, -37.0), (-26.0, -45.0), (-30.0, -52.0), (-36.0, -61.0)]),
    ("N9", [(0.0, -30.0), (0.0, -36.0), (0.0, -43.0), (0.0, -52.0), (0.0, -62.0), (0.0, -74.0), (0.0, -87.0), (0.0, -100.0)]),
];

#[test]
fn holes_of_iso_286_2() {
    for (text, row) in HOLES {
        for (size, (upper, lower)) in MAIN_SIZES.into_iter().zip(row) {
            agree(size, text, lower, upper);
        }
    }
    // ISO 286-2, seen: R7 on its intermediate bands.
    for (size, upper, lower) in [
        (5.0, -11.0, -23.0),
        (8.0, -13.0, -28.0),
        (15.0, -16.0, -34.0),
        (25.0, -20.0, -41.0),
        (40.0, -25.0, -50.0),
        (62.0, -30.0, -60.0),
        (72.0, -32.0, -62.0),
        (90.0, -38.0, -73.0),
        (110.0, -41.0, -76.0),
        (130.0, -48.0, -88.0),
        (150.0, -50.0, -90.0),
        (170.0, -53.0, -93.0),
    ] {
        agree(size, "R7", lower, upper);
    }
    // ISO 286-2, seen: small sizes have no Δ.
    for (text, upper, lower) in [
        ("J6", 2.0, -4.0),
        ("J7", 4.0, -6.0),
        ("J8", 6.0, -8.0),
        ("M7", -2.0, -12.0),
        ("N7", -4.0, -14.0),
    ] {
        agree(2.0, text, lower, upper);
    }
    // ISO 286-2, seen: JS is half to each side.
    for (text, half) in [("JS6", 9.5), ("JS7", 15.0), ("JS8", 23.0), ("JS9", 37.0)] {
        agree(62.0, text, -half, half);
    }
    // Just over 3 mm the Δ begins.
    agree(3.01, "N7", -16.0, -4.0);
    // From memory.
    for (text, upper, lower) in [("K7", 0.0, -10.0), ("N9", -4.0, -29.0), ("P7", -6.0, -16.0)] {
        agree(2.0, text, lower, upper);
    }
}

/// Upper deviation of holes coarser than grade 7, below nominal, µm, one a size of [`SIZES`]
/// (ISO 286-1:2010, table 3, seen in a stored copy of it).
#[rustfmt::skip]
const COARSE: [(&str, [f64; 15]); 4] = [
    ("R8", [10.0, 15.0, 19.0, 23.0, 28.0, 28.0, 34.0, 34.0, 41.0, 43.0, 51.0, 54.0, 63.0, 65.0, 68.0]),
    ("S8", [14.0, 19.0, 23.0, 28.0, 35.0, 35.0, 43.0, 43.0, 53.0, 59.0, 71.0, 79.0, 92.0, 100.0, 108.0]),
    ("T8", [0.0, 0.0, 0.0, 0.0, 0.0, 41.0, 48.0, 54.0, 66.0, 75.0, 91.0, 104.0, 122.0, 134.0, 146.0]),
    ("U8", [18.0, 23.0, 28.0, 33.0, 41.0, 48.0, 60.0, 70.0, 87.0, 102.0, 124.0, 144.0, 170.0, 190.0, 210.0]),
];

#[test]
fn coarse_holes_and_their_shafts_sit_at_the_tables_deviation() {
    for (text, row) in COARSE {
        let shaft = text.to_lowercase().replace('8', "6");
        for (size, amount) in SIZES.into_iter().zip(row) {
            if amount == 0.0 {
                assert_eq!(
                    limits(mm(size), class(text)),
                    Err(FitError::NotDefined(class(text)))
                );
                assert_eq!(
                    limits(mm(size), class(&shaft)),
                    Err(FitError::NotDefined(class(&shaft)))
                );
            } else {
                assert!((micrometres(size, text).1 + amount).abs() < 1e-6, "{size} {text}");
                assert!(
                    (micrometres(size, &shaft).0 - amount).abs() < 1e-6,
                    "{size} {shaft}"
                );
            }
        }
    }
}

/// Upper/lower deviation of shafts j from 2 mm up, µm (ISO 286-2, from memory).
#[rustfmt::skip]
const SHAFTS_J: [(&str, [(f64, f64); 9]); 3] = [
    ("j5", [(2.0, -2.0), (3.0, -2.0), (4.0, -2.0), (5.0, -3.0), (5.0, -4.0), (6.0, -5.0), (6.0, -7.0), (6.0, -9.0), (7.0, -11.0)]),
    ("j6", [(4.0, -2.0), (6.0, -2.0), (7.0, -2.0), (8.0, -3.0), (9.0, -4.0), (11.0, -5.0), (12.0, -7.0), (13.0, -9.0), (14.0, -11.0)]),
    ("j7", [(6.0, -4.0), (8.0, -4.0), (10.0, -5.0), (12.0, -6.0), (13.0, -8.0), (15.0, -10.0), (18.0, -12.0), (20.0, -15.0), (22.0, -18.0)]),
];

#[test]
fn shafts_j() {
    for (text, row) in SHAFTS_J {
        for (size, (upper, lower)) in [2.0].into_iter().chain(MAIN_SIZES).zip(row) {
            agree(size, text, lower, upper);
        }
    }
}

#[test]
fn a_band_ends_at_its_own_upper_end() {
    // ISO 286-1: over … up to and including. IT7 names the main band, u the intermediate one.
    let main = [3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0];
    for (place, edge) in main.into_iter().enumerate() {
        let row = [10.0, 12.0, 15.0, 18.0, 21.0, 25.0, 30.0, 35.0, 40.0];
        assert!((micrometres(edge, "H7").1 - row[place]).abs() < 1e-6);
        if let Some(next) = row.get(place + 1) {
            assert!((micrometres(edge * 1.002, "H7").1 - next).abs() < 1e-6);
        }
    }
    let fine = [
        3.0, 6.0, 10.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0, 180.0,
    ];
    let (_, row) = COARSE[3];
    for (place, edge) in fine.into_iter().enumerate() {
        assert!((micrometres(edge, "U8").1 + row[place]).abs() < 1e-6);
        if let Some(next) = row.get(place + 1) {
            assert!((micrometres(edge * 1.002, "U8").1 + next).abs() < 1e-6);
        }
    }
    // 30 mm that came through inches is still 30 mm.
    let by_inches = Length::new::<inch>(30.0 / 25.4);
    assert_eq!(limits(by_inches, class("H7")), limits(mm(30.0), class("H7")));
    assert!(limits(mm(1.0), class("H7")).is_ok());
}

#[test]
fn refusals_say_what_to_do() {
    let refusal = |size: f64, text: &str| match text.parse::<ToleranceClass>() {
        Ok(class) => limits(mm(size), class).unwrap_err().to_string(),
        Err(why) => why.to_string(),
    };
    assert_eq!(
        refusal(631.0, "H7"),
        "631 mm is outside the tables: enter a nominal size from 1 to 630 mm."
    );
    assert_eq!(
        refusal(0.995, "H7"),
        "0.995 mm is outside the tables: enter a nominal size from 1 to 630 mm."
    );
    assert_eq!(refusal(f64::NAN, "H7"), "Enter a nominal size from 1 to 630 mm.");
    assert_eq!(
        refusal(62.0, "H12"),
        "Grade 12 is outside the tables: use a grade from 5 to 11."
    );
    assert_eq!(
        refusal(62.0, "H4"),
        "Grade 4 is outside the tables: use a grade from 5 to 11."
    );
    assert_eq!(
        refusal(62.0, "7"),
        "“7” is no tolerance class: write a letter and a grade, as in N7 or k6."
    );
    for text in ["K9", "J5", "J9", "j8"] {
        assert_eq!(
            refusal(62.0, text),
            format!("{text} is not defined at this size: check the drawing, or enter measured sizes.")
        );
    }
    for text in [
        "",
        "62",
        "62 N7 N6",
        "-62 N7",
        "N7/",
        "Q7",
        "62 N7/k6/k5",
        "62mm",
        "1e400 N7",
    ] {
        let code = text.parse::<FitCode>();
        assert_eq!(code.is_ok(), text == "N7/", "{text}: {code:?}");
    }
    assert_eq!(
        "62".parse::<FitCode>().unwrap_err().to_string(),
        "“62” is no fit: write it as 62 N7, 25 k6 or 52 H7/p6."
    );
}

#[test]
fn fits_are_read_as_drawings_write_them() {
    for (text, printed) in [
        ("52 H7/p6", "52 H7/p6"),
        ("52H7/p6", "52 H7/p6"),
        ("Ø 62 N7", "62 N7"),
        ("⌀62N7", "62 N7"),
        ("62,5 JS7", "62.5 JS7"),
        ("62 mm N7", "62 N7"),
        ("  25 k6 ", "25 k6"),
        ("k6", "k6"),
        ("js5", "js5"),
        ("p6/H7", "H7/p6"),
        ("H7 - h6", "H7/h6"),
    ] {
        assert_eq!(text.parse::<FitCode>().unwrap().to_string(), printed);
    }
}

#[test]
fn a_class_is_stored_as_it_is_written() {
    let class = class("N7");
    assert_eq!(serde_json::to_string(&class).unwrap(), "\"N7\"");
    assert_eq!(serde_json::from_str::<ToleranceClass>("\"N7\"").unwrap(), class);
    assert!(serde_json::from_str::<ToleranceClass>("\"N77\"").is_err());
}

fn worked(hole: &SizeSource, part: &SizeSource) -> (f64, f64) {
    let found = interference(hole, part).unwrap();
    (found.least.get::<micrometer>(), found.most.get::<micrometer>())
}

#[test]
fn bearings_in_their_seats() {
    // From ISO 286-2 and ISO 492, worked by hand: least = smallest part − largest hole.
    let outer = SizeSource::BearingOuter { nominal: mm(62.0) };
    let bore = |text| SizeSource::Class {
        nominal: mm(62.0),
        class: class(text),
    };
    for (text, least, most) in [("N7", -4.0, 39.0), ("K7", -22.0, 21.0), ("P7", 8.0, 51.0)] {
        let (ours_least, ours_most) = worked(&bore(text), &outer);
        assert!(
            (ours_least - least).abs() < 1e-6 && (ours_most - most).abs() < 1e-6,
            "{text}"
        );
    }
    let shaft = SizeSource::Class {
        nominal: mm(25.0),
        class: class("k6"),
    };
    let (least, most) = worked(&SizeSource::BearingBore { nominal: mm(25.0) }, &shaft);
    assert!((least - 2.0).abs() < 1e-6 && (most - 25.0).abs() < 1e-6);
}

#[test]
fn a_measured_bore_is_carried_to_20_degrees() {
    // 22 − 11.5 millionths a kelvin over 10 K on 62 mm: 6.51 µm of the reading is warmth.
    let source = SizeSource::Measured {
        size: mm(62.000),
        at: ThermodynamicTemperature::new::<degree_celsius>(30.0),
        material: Material::CastAluminium,
    };
    let (least, most) = size_range(&source).unwrap();
    assert_eq!(least, most);
    assert!(((least - mm(62.0)).get::<micrometer>() + 6.51).abs() < 1e-3);
}

#[test]
fn a_hole_must_be_a_hole_and_near_its_part() {
    let sized = |nominal, text| SizeSource::Class {
        nominal: mm(nominal),
        class: class(text),
    };
    let say = |hole: &SizeSource, part: &SizeSource| interference(hole, part).unwrap_err().to_string();
    assert_eq!(
        say(&sized(25.0, "k6"), &sized(25.0, "k6")),
        "The outer part needs a hole: a capital letter, or a bearing's bore."
    );
    assert_eq!(
        say(&sized(25.0, "H7"), &SizeSource::BearingBore { nominal: mm(25.0) }),
        "The inner part needs a shaft: a small letter, or a bearing's outside."
    );
    assert_eq!(
        say(&sized(52.0, "H7"), &sized(62.0, "p6")),
        "A 62.051 mm part does not belong in a 52.030 mm hole: check both sizes."
    );
    // A hundredth of the hole is where a slip begins: 1 mm past its largest, on the part's smallest.
    assert!(interference(&sized(100.0, "H7"), &sized(101.05, "h6")).is_ok());
    assert!(interference(&sized(100.0, "H7"), &sized(101.06, "h6")).is_err());
}

/// Upper edges of the main bands, mm, and IT7 in each, µm (ISO 286-1, table 1, from memory).
const EDGES: [(f64, f64); 13] = [
    (3.0, 10.0),
    (6.0, 12.0),
    (10.0, 15.0),
    (18.0, 18.0),
    (30.0, 21.0),
    (50.0, 25.0),
    (80.0, 30.0),
    (120.0, 35.0),
    (180.0, 40.0),
    (250.0, 46.0),
    (315.0, 52.0),
    (400.0, 57.0),
    (500.0, 63.0),
];

/// A band has its upper edge in it, and what is a hair larger is in the next.
#[test]
fn a_band_ends_at_its_upper_edge() {
    for (at, (edge, tolerance)) in EDGES.into_iter().enumerate() {
        agree(edge, "H7", 0.0, tolerance);
        agree(edge * 0.998, "H7", 0.0, tolerance);
        if let Some((_, next)) = EDGES.get(at + 1) {
            agree(edge * 1.002, "H7", 0.0, *next);
        }
    }
    // Coarse K is a hole's to 3 mm alone, and N of such grades begins above it.
    agree(3.0, "K9", -25.0, 0.0);
    assert!(limits(mm(3.01), class("K9")).is_err());
}

/// Holes J and shafts j follow no rule: each value of ISO 286-2 for them (from memory), upper and lower, µm, at the
/// upper edge of each main band.
#[rustfmt::skip]
const J_TABLES: [(&str, &str); 5] = [
    ("J6", "-4/2 -3/5 -4/5 -5/6 -5/8 -6/10 -6/13 -6/16 -7/18 -7/22 -7/25 -7/29 -7/33"),
    ("J7", "-6/4 -6/6 -7/8 -8/10 -9/12 -11/14 -12/18 -13/22 -14/26 -16/30 -16/36 -18/39 -20/43"),
    ("J8", "-8/6 -8/10 -10/12 -12/15 -13/20 -15/24 -18/28 -20/34 -22/41 -25/47 -26/55 -29/60 -31/66"),
    ("j6", "-2/4 -2/6 -2/7 -3/8 -4/9 -5/11 -7/12 -9/13 -11/14 -13/16 -16/16 -18/18 -20/20"),
    ("j7", "-4/6 -4/8 -5/10 -6/12 -8/13 -10/15 -12/18 -15/20 -18/22 -21/25 -26/26 -28/29 -32/31"),
];

#[test]
fn j_stands_in_tables() {
    for (class, row) in J_TABLES {
        for ((edge, _), both) in EDGES.into_iter().zip(row.split(' ')) {
            let (lower, upper) = both.split_once('/').unwrap();
            agree(edge, class, lower.parse().unwrap(), upper.parse().unwrap());
        }
    }
}

/// Upper edges of the intermediate bands above 180 mm, and IT6 there, µm (ISO 286-1, from memory).
const LARGE: [(f64, f64); 11] = [
    (200.0, 29.0),
    (225.0, 29.0),
    (250.0, 29.0),
    (280.0, 32.0),
    (315.0, 32.0),
    (355.0, 36.0),
    (400.0, 36.0),
    (450.0, 40.0),
    (500.0, 40.0),
    (560.0, 44.0),
    (630.0, 44.0),
];

/// Fundamental deviations of shafts at [`LARGE`], µm: the lower one of k to u, the upper of d to g (ISO 286-1, from
/// memory).
#[rustfmt::skip]
const LARGE_SHAFTS: [(&str, [f64; 11]); 12] = [
    ("d", [-170.0, -170.0, -170.0, -190.0, -190.0, -210.0, -210.0, -230.0, -230.0, -260.0, -260.0]),
    ("e", [-100.0, -100.0, -100.0, -110.0, -110.0, -125.0, -125.0, -135.0, -135.0, -145.0, -145.0]),
    ("f", [-50.0, -50.0, -50.0, -56.0, -56.0, -62.0, -62.0, -68.0, -68.0, -76.0, -76.0]),
    ("g", [-15.0, -15.0, -15.0, -17.0, -17.0, -18.0, -18.0, -20.0, -20.0, -22.0, -22.0]),
    ("k", [4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 4.0, 5.0, 5.0, 0.0, 0.0]),
    ("m", [17.0, 17.0, 17.0, 20.0, 20.0, 21.0, 21.0, 23.0, 23.0, 26.0, 26.0]),
    ("n", [31.0, 31.0, 31.0, 34.0, 34.0, 37.0, 37.0, 40.0, 40.0, 44.0, 44.0]),
    ("p", [50.0, 50.0, 50.0, 56.0, 56.0, 62.0, 62.0, 68.0, 68.0, 78.0, 78.0]),
    ("r", [77.0, 80.0, 84.0, 94.0, 98.0, 108.0, 114.0, 126.0, 132.0, 150.0, 155.0]),
    ("s", [122.0, 130.0, 140.0, 158.0, 170.0, 190.0, 208.0, 232.0, 252.0, 280.0, 310.0]),
    ("t", [166.0, 180.0, 196.0, 218.0, 240.0, 268.0, 294.0, 330.0, 360.0, 400.0, 450.0]),
    ("u", [236.0, 258.0, 284.0, 315.0, 350.0, 390.0, 435.0, 490.0, 540.0, 600.0, 660.0]),
];

#[test]
fn large_shafts_stand_as_the_standard_has_them() {
    for (letter, deviations) in LARGE_SHAFTS {
        for ((edge, tolerance), deviation) in LARGE.into_iter().zip(deviations) {
            let (lower, upper) = match deviation < 0.0 {
                true => (deviation - tolerance, deviation),
                false => (deviation, deviation + tolerance),
            };
            agree(edge, &format!("{letter}6"), lower, upper);
        }
    }
    // The grades themselves: 5 to 11 above 180, 250, 315 and 400 mm.
    for (edge, grades) in [
        (250.0, [20.0, 29.0, 46.0, 72.0, 115.0, 185.0, 290.0]),
        (315.0, [23.0, 32.0, 52.0, 81.0, 130.0, 210.0, 320.0]),
        (400.0, [25.0, 36.0, 57.0, 89.0, 140.0, 230.0, 360.0]),
        (500.0, [27.0, 40.0, 63.0, 97.0, 155.0, 250.0, 400.0]),
    ] {
        for (grade, tolerance) in (5..).zip(grades) {
            agree(edge, &format!("H{grade}"), 0.0, tolerance);
        }
    }
}

/// Just above an intermediate band's edge the next value holds: shafts s and t, lower deviation and IT6, µm, of the
/// band above each edge (ISO 286-1, from memory).
#[test]
fn an_intermediate_band_ends_at_its_upper_edge() {
    for (edge, letter, below, above, tolerance) in [
        (30.0, "t", 41.0, 48.0, [13.0, 16.0]),
        (40.0, "t", 48.0, 54.0, [16.0, 16.0]),
        (50.0, "t", 54.0, 66.0, [16.0, 19.0]),
        (65.0, "s", 53.0, 59.0, [19.0, 19.0]),
        (80.0, "s", 59.0, 71.0, [19.0, 22.0]),
        (100.0, "s", 71.0, 79.0, [22.0, 22.0]),
        (120.0, "s", 79.0, 92.0, [22.0, 25.0]),
        (140.0, "s", 92.0, 100.0, [25.0, 25.0]),
        (160.0, "s", 100.0, 108.0, [25.0, 25.0]),
        (180.0, "s", 108.0, 122.0, [25.0, 29.0]),
    ] {
        let class = format!("{letter}6");
        agree(edge, &class, below, below + tolerance[0]);
        agree(edge * 1.002, &class, above, above + tolerance[1]);
    }
    let shafts = LARGE_SHAFTS.iter().find(|(letter, _)| *letter == "s");
    let (_, deviations) = shafts.expect("s is in the table");
    for (pair, deviation) in LARGE.windows(2).zip(&deviations[1..]) {
        agree(pair[0].0 * 1.002, "s6", *deviation, deviation + pair[1].1);
    }
    // t begins above 24 mm.
    assert!(limits(mm(24.0), class("t6")).is_err());
    agree(24.05, "t6", 41.0, 54.0);
}
