//! Thread sizes against the standards' tables. Marked M where from memory, S where seen in a copy.

use halfcase::trade::thread::{Series, Thread, ThreadError};
use uom::si::area::{square_inch, square_millimeter};
use uom::si::length::{inch, millimeter};

fn thread(name: &str) -> Thread {
    Thread::parse(name).unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn close(got: f64, printed: f64, within: f64, what: &str) {
    assert!(
        (got / printed - 1.0).abs() <= within,
        "{what}: {got}, printed {printed}"
    );
}

/// ISO 724 (M): nominal, pitch, d2, d3 of coarse threads, to the printed micrometre.
#[test]
#[expect(clippy::approx_constant, reason = "3.141 mm is the minor diameter of an M4")]
fn iso_724_diameters() {
    let rows = [
        ("M2", 2.0, 0.4, 1.740, 1.509),
        ("M2.5", 2.5, 0.45, 2.208, 1.948),
        ("M3", 3.0, 0.5, 2.675, 2.387),
        ("M3.5", 3.5, 0.6, 3.110, 2.764),
        ("M4", 4.0, 0.7, 3.545, 3.141),
        ("M5", 5.0, 0.8, 4.480, 4.019),
        ("M6", 6.0, 1.0, 5.350, 4.773),
        ("M7", 7.0, 1.0, 6.350, 5.773),
        ("M8", 8.0, 1.25, 7.188, 6.466),
        ("M9", 9.0, 1.25, 8.188, 7.466),
        ("M10", 10.0, 1.5, 9.026, 8.160),
        ("M11", 11.0, 1.5, 10.026, 9.160),
        ("M12", 12.0, 1.75, 10.863, 9.853),
        ("M14", 14.0, 2.0, 12.701, 11.546),
        ("M16", 16.0, 2.0, 14.701, 13.546),
        ("M18", 18.0, 2.5, 16.376, 14.933),
        ("M20", 20.0, 2.5, 18.376, 16.933),
        ("M22", 22.0, 2.5, 20.376, 18.933),
        ("M24", 24.0, 3.0, 22.051, 20.319),
        ("M27", 27.0, 3.0, 25.051, 23.319),
        ("M30", 30.0, 3.5, 27.727, 25.706),
        ("M33", 33.0, 3.5, 30.727, 28.706),
        ("M36", 36.0, 4.0, 33.402, 31.093),
        ("M39", 39.0, 4.0, 36.402, 34.093),
        ("M42", 42.0, 4.5, 39.077, 36.479),
        ("M45", 45.0, 4.5, 42.077, 39.479),
        ("M48", 48.0, 5.0, 44.752, 41.866),
    ];
    for (name, major, pitch, pitch_diameter, minor) in rows {
        let t = thread(name);
        for (got, printed) in [
            (t.major(), major),
            (t.pitch(), pitch),
            (t.pitch_diameter(), pitch_diameter),
            (t.minor_diameter(), minor),
        ] {
            assert!(
                (got.get::<millimeter>() - printed).abs() < 0.000_55,
                "{name}: {printed}"
            );
        }
    }
    assert_eq!(
        Thread::all()
            .filter(|t| t.series() == Series::MetricCoarse)
            .count(),
        rows.len()
    );
}

/// ISO 898-1 nominal stress areas, mm²: coarse S, fine M.
#[test]
fn iso_898_1_stress_areas() {
    let rows = [
        ("M3", 5.03),
        ("M3.5", 6.78),
        ("M4", 8.78),
        ("M5", 14.2),
        ("M6", 20.1),
        ("M7", 28.9),
        ("M8", 36.6),
        ("M10", 58.0),
        ("M12", 84.3),
        ("M14", 115.0),
        ("M16", 157.0),
        ("M18", 192.0),
        ("M20", 245.0),
        ("M22", 303.0),
        ("M24", 353.0),
        ("M8×1", 39.2),
        ("M10×1.25", 61.2),
        ("M10×1", 64.5),
        ("M12×1.5", 88.1),
        ("M12×1.25", 92.1),
        ("M14×1.5", 125.0),
        ("M16×1.5", 167.0),
        ("M18×1.5", 216.0),
        ("M20×1.5", 272.0),
        ("M22×1.5", 333.0),
        ("M24×2", 384.0),
        // M: from memory, as are all above M24.
        ("M2", 2.07),
        ("M2.5", 3.39),
        ("M27", 459.0),
        ("M30", 561.0),
        ("M33", 694.0),
        ("M36", 817.0),
        ("M39", 976.0),
        ("M42", 1_121.0),
        ("M45", 1_306.0),
        ("M48", 1_473.0),
        ("M27×2", 496.0),
        ("M30×2", 621.0),
        ("M33×2", 761.0),
        ("M36×3", 865.0),
        ("M39×3", 1_030.0),
    ];
    for (name, area) in rows {
        close(
            thread(name).stress_area().get::<square_millimeter>(),
            area,
            0.004,
            name,
        );
    }
}

/// The fine threads, whose names carry diameter and pitch (ISO 261, ISO 262, M).
#[test]
fn fine_threads_are_what_their_names_say() {
    for t in Thread::all().filter(|t| t.series() == Series::MetricFine) {
        let name = t.name();
        let (major, pitch) = name
            .trim_start_matches('M')
            .split_once('×')
            .expect("fine names carry a pitch");
        let number = |text: &str| text.parse::<f64>().expect("a number");
        assert!(
            (t.major().get::<millimeter>() - number(major)).abs() < 1e-9,
            "{name}"
        );
        assert!(
            (t.pitch().get::<millimeter>() - number(pitch)).abs() < 1e-9,
            "{name}"
        );
    }
    assert_eq!(
        Thread::all().filter(|t| t.series() == Series::MetricFine).count(),
        53
    );
}

/// ASME B1.1 (S): tensile stress areas, in², with the basic major diameter, in.
#[test]
fn asme_b1_1_stress_areas() {
    let rows = [
        ("#4", 0.112, 40, 0.006_04, 48, 0.006_61),
        ("#5", 0.125, 40, 0.007_96, 44, 0.008_30),
        ("#6", 0.138, 32, 0.009_09, 40, 0.010_15),
        ("#8", 0.164, 32, 0.014_0, 36, 0.014_74),
        ("#10", 0.190, 24, 0.017_5, 32, 0.020_0),
        ("#12", 0.216, 24, 0.024_2, 28, 0.025_8),
        ("1/4", 0.25, 20, 0.031_8, 28, 0.036_4),
        ("5/16", 0.312_5, 18, 0.052_4, 24, 0.058_0),
        ("3/8", 0.375, 16, 0.077_5, 24, 0.087_8),
        ("7/16", 0.437_5, 14, 0.106_3, 20, 0.118_7),
        ("1/2", 0.5, 13, 0.141_9, 20, 0.159_9),
        ("9/16", 0.562_5, 12, 0.182, 18, 0.203),
        ("5/8", 0.625, 11, 0.226, 18, 0.256),
        ("3/4", 0.75, 10, 0.334, 16, 0.373),
        // M: from memory.
        ("#2", 0.086, 56, 0.003_70, 64, 0.003_94),
        ("#3", 0.099, 48, 0.004_87, 56, 0.005_23),
        ("7/8", 0.875, 9, 0.462, 14, 0.509),
        ("1", 1.0, 8, 0.606, 12, 0.663),
        ("1 1/8", 1.125, 7, 0.763, 12, 0.856),
        ("1 1/4", 1.25, 7, 0.969, 12, 1.073),
        ("1 3/8", 1.375, 6, 1.155, 12, 1.315),
        ("1 1/2", 1.5, 6, 1.405, 12, 1.581),
    ];
    for (size, major, coarse, coarse_area, fine, fine_area) in rows {
        for (per_inch, area, series) in [(coarse, coarse_area, Series::Unc), (fine, fine_area, Series::Unf)] {
            let t = thread(&format!("{size}-{per_inch}"));
            assert_eq!(t.series(), series);
            close(t.major().get::<inch>(), major, 1e-9, size);
            close(t.pitch().get::<inch>() * f64::from(per_inch), 1.0, 1e-9, size);
            // Within half a unit of the last printed digit, at most 0.3 %.
            close(t.stress_area().get::<square_inch>(), area, 0.003, &t.name());
        }
    }
}

/// ASME B1.1 (S): pitch and UNR minor diameters of the fine series, in.
#[test]
fn asme_b1_1_diameters() {
    let rows = [
        ("#4-48", 0.098_5, 0.087_1),
        ("#10-32", 0.169_7, 0.152_8),
        ("1/4-28", 0.226_8, 0.207_4),
        ("3/8-24", 0.347_9, 0.325_4),
        ("1/2-20", 0.467_5, 0.440_5),
        ("5/8-18", 0.588_9, 0.558_9),
    ];
    for (name, pitch_diameter, minor) in rows {
        let t = thread(name);
        let got = t.pitch_diameter().get::<inch>();
        assert!((got - pitch_diameter).abs() < 0.000_06, "{name}: {got}");
        let got = t.minor_diameter().get::<inch>();
        assert!((got - minor).abs() < 0.000_11, "{name}: {got}");
    }
}

/// ISO 273 medium holes (M) and ISO 4014 grade A least bearing diameters (M; M8–M16 agree with the
/// diameters behind the VDI 2230 rows), mm.
#[test]
fn metric_holes_and_bearing_faces() {
    let rows = [
        (3.0, 3.4, 4.57),
        (3.5, 3.9, 5.07),
        (4.0, 4.5, 5.88),
        (5.0, 5.5, 6.88),
        (6.0, 6.6, 8.88),
        (7.0, 7.6, 9.63),
        (8.0, 9.0, 11.63),
        (10.0, 11.0, 14.63),
        (12.0, 13.5, 16.63),
        (14.0, 15.5, 19.64),
        (16.0, 17.5, 22.49),
        (18.0, 20.0, 25.34),
        (20.0, 22.0, 28.19),
        (22.0, 24.0, 31.71),
        (24.0, 26.0, 33.61),
        (2.0, 2.4, 3.07),
        (2.5, 2.9, 4.07),
        // M9 and M11 stand in neither standard: the steps of their neighbours.
        (9.0, 10.0, 12.63),
        (11.0, 12.0, 15.63),
        // Grade B from M27 on.
        (27.0, 30.0, 38.0),
        (30.0, 33.0, 42.75),
        (33.0, 36.0, 46.55),
        (36.0, 39.0, 51.11),
        (39.0, 42.0, 55.86),
        (42.0, 45.0, 59.95),
        (45.0, 48.0, 64.7),
        (48.0, 52.0, 69.45),
    ];
    let metric = |t: &Thread| matches!(t.series(), Series::MetricCoarse | Series::MetricFine);
    for t in Thread::all().filter(metric) {
        let major = t.major().get::<millimeter>();
        let (_, hole, face) = rows
            .iter()
            .find(|row| (row.0 - major).abs() < 1e-9)
            .expect("a row for each diameter");
        close(t.clearance_hole().get::<millimeter>(), *hole, 1e-9, &t.name());
        close(t.head_bearing().get::<millimeter>(), *face, 1e-9, &t.name());
        close(
            t.mean_bearing_diameter().get::<millimeter>(),
            (hole + face) / 2.0,
            1e-9,
            &t.name(),
        );
    }
}

/// ASME B18.2.8 normal holes and ASME B18.2.1, B18.6.3 widths across flats, in (M); the bearing
/// face at 0.95 of the width is common practice, no source.
#[test]
fn inch_holes_and_bearing_faces() {
    let rows = [
        ("#4", 0.128, 3.0 / 16.0),
        ("#5", 0.156, 3.0 / 16.0),
        ("#6", 0.170, 0.25),
        ("#8", 0.196, 0.25),
        ("#10", 0.221, 5.0 / 16.0),
        ("#12", 0.250, 5.0 / 16.0),
        ("1/4", 9.0 / 32.0, 7.0 / 16.0),
        ("5/16", 11.0 / 32.0, 0.5),
        ("3/8", 13.0 / 32.0, 9.0 / 16.0),
        ("7/16", 15.0 / 32.0, 5.0 / 8.0),
        ("1/2", 9.0 / 16.0, 0.75),
        ("9/16", 0.625, 13.0 / 16.0),
        ("5/8", 11.0 / 16.0, 15.0 / 16.0),
        ("3/4", 13.0 / 16.0, 1.125),
        ("7/8", 15.0 / 16.0, 1.312_5),
        ("1", 1.0 + 3.0 / 32.0, 1.5),
        ("1 1/8", 1.0 + 7.0 / 32.0, 1.687_5),
        ("1 1/4", 1.0 + 11.0 / 32.0, 1.875),
        ("1 3/8", 1.5, 2.062_5),
        ("1 1/2", 1.625, 2.25),
    ];
    for (size, hole, flats) in rows {
        let found: Vec<Thread> = Thread::all()
            .filter(|t| matches!(t.series(), Series::Unc | Series::Unf))
            .filter(|t| t.name().starts_with(&format!("{size}-")))
            .collect();
        assert_eq!(found.len(), 2, "{size}");
        for t in found {
            // Printed to three digits.
            close(t.clearance_hole().get::<inch>(), hole, 0.002, size);
            close(t.head_bearing().get::<inch>(), 0.95 * flats, 1e-9, size);
        }
    }
}

#[test]
fn reads_what_people_write() {
    let same = [
        ("M6", "M6"),
        ("m 6", "M6"),
        ("M6x1", "M6"),
        ("M6x1.0", "M6"),
        ("M8x1.25", "M8"),
        ("M8 X 1,25", "M8"),
        ("M8-1.25", "M8"),
        ("M10 × 1", "M10×1"),
        ("M10*1.25", "M10×1.25"),
        ("M12 x 1,5", "M12×1.5"),
        ("1/4-20", "1/4-20 UNC"),
        ("1/4\"-20", "1/4-20 UNC"),
        ("1/4 in - 28", "1/4-28 UNF"),
        ("1/4 UNC", "1/4-20 UNC"),
        ("#10-32 UNF", "#10-32 UNF"),
        ("10-32", "#10-32 UNF"),
        ("No. 10 – 24", "#10-24 UNC"),
        ("3/8-16 UNC", "3/8-16 UNC"),
        ("3/8-16unc", "3/8-16 UNC"),
        ("m9x1", "M9×1"),
        ("M11", "M11"),
        ("M45x1.5", "M45×1.5"),
        ("1-8", "1-8 UNC"),
        ("1 in - 12", "1-12 UNF"),
        ("1-1/8-7", "1 1/8-7 UNC"),
        ("1 1/8 - 12", "1 1/8-12 UNF"),
        ("1\u{a0}1/2 UNC", "1 1/2-6 UNC"),
        ("11/16-24", "11/16-24 UNEF"),
        ("1 1/16-18 UNEF", "1 1/16-18 UNEF"),
        ("1/2-28", "1/2-28 UNEF"),
        ("G1/4", "G 1/4"),
        ("g 1/4", "G 1/4"),
        ("G 1/4-19", "G 1/4"),
        ("R 1/8", "R 1/8"),
        ("Rp3/4", "Rp 3/4"),
        ("1/8 NPT", "1/8-27 NPT"),
        ("1/8-27 NPT", "1/8-27 NPT"),
        ("NPTF 1/16", "1/16-27 NPTF"),
        ("1 npt", "1-11.5 NPT"),
        ("1/2 BSPP", "G 1/2"),
    ];
    for (text, name) in same {
        assert_eq!(
            Thread::parse(text).map(|t| t.name()),
            Ok(name.to_owned()),
            "{text}"
        );
    }
    for t in Thread::all() {
        assert_eq!(Thread::parse(&t.name()), Ok(t));
        assert_eq!(t.to_string(), t.name());
    }
    assert_eq!(Thread::all().count(), 73 + 12 + 23 + 8 + 8 + 22 + 35);
}

#[test]
fn refuses_with_a_sentence() {
    let refused = [
        ("", "Type a thread, such as M8, M10×1.25 or 1/4-20."),
        ("  ", "Type a thread, such as M8, M10×1.25 or 1/4-20."),
        (
            "bolt",
            "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
        ),
        (
            "M",
            "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
        ),
        (
            "M8x",
            "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
        ),
        (
            "M-8",
            "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
        ),
        (
            "Minf",
            "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
        ),
        (
            "M8e0",
            "That is no thread size: write it as M8, M10×1.25, 1/4-20, #10-32, G 1/4 or 1/8 NPT.",
        ),
        (
            "M50",
            "That size is not in the table: metric M2 to M48, inch #2 to 1 1/2 and pipe 1/16 to 1 are.",
        ),
        (
            "7/32-32",
            "That size is not in the table: metric M2 to M48, inch #2 to 1 1/2 and pipe 1/16 to 1 are.",
        ),
        (
            "M8x2",
            "That pitch is not in the table: choose M8, M8×1 or M8×0.75.",
        ),
        (
            "1/4-24",
            "That pitch is not in the table: choose 1/4-20 UNC, 1/4-28 UNF or 1/4-32 UNEF.",
        ),
        (
            "1/4-20 UNF",
            "That pitch is not in the table: choose 1/4-20 UNC, 1/4-28 UNF or 1/4-32 UNEF.",
        ),
        (
            "1/4",
            "An inch size needs its threads per inch: choose 1/4-20 UNC, 1/4-28 UNF or 1/4-32 UNEF.",
        ),
        (
            "11/8-7",
            "That size is not in the table: metric M2 to M48, inch #2 to 1 1/2 and pipe 1/16 to 1 are.",
        ),
        ("G 1/4-18", "That pitch is not in the table: choose G 1/4."),
        (
            "5/16 NPT",
            "That size is not in the table: metric M2 to M48, inch #2 to 1 1/2 and pipe 1/16 to 1 are.",
        ),
    ];
    for (text, sentence) in refused {
        assert_eq!(
            Thread::parse(text).map_err(|error| error.to_string()),
            Err(sentence.to_owned()),
            "{text}"
        );
    }
    assert_eq!(Thread::parse(&"8".repeat(41)), Err(ThreadError::Unreadable));
}

#[test]
fn is_stored_as_its_name() {
    let stored = serde_json::to_string(&thread("M10x1.25")).expect("a string");
    assert_eq!(stored, "\"M10×1.25\"");
    assert_eq!(
        serde_json::from_str::<Thread>(&stored).ok(),
        Some(thread("M10x1.25"))
    );
    assert!(serde_json::from_str::<Thread>("\"M99\"").is_err());
}

/// ISO 228-1 (M): major and minor diameters of parallel pipe threads, mm, to the printed micrometre.
#[test]
fn iso_228_1_diameters() {
    for (name, major, minor) in [
        ("G 1/16", 7.723, 6.561),
        ("G 1/8", 9.728, 8.566),
        ("G 1/4", 13.157, 11.445),
        ("G 3/8", 16.662, 14.950),
        ("G 1/2", 20.955, 18.631),
        ("G 3/4", 26.441, 24.117),
        ("G 1", 33.249, 30.291),
    ] {
        let t = thread(name);
        assert!(t.is_pipe(), "{name}");
        for (got, printed) in [(t.major(), major), (t.minor_diameter(), minor)] {
            assert!(
                (got.get::<millimeter>() - printed).abs() < 0.001,
                "{name}: {printed}"
            );
        }
        // ISO 7-1 (M): those that seal by the thread have the same diameters, at the gauge plane where they taper.
        let size = name.trim_start_matches('G');
        for mark in ["Rp", "R"] {
            let sealing = thread(&format!("{mark}{size}"));
            assert_eq!(sealing.major(), t.major(), "{mark}{size}");
            assert_eq!(sealing.pitch(), t.pitch(), "{mark}{size}");
        }
    }
}

/// ASME B1.20.1 (M): the pipe's outside diameter, in, and threads an inch.
#[test]
fn asme_b1_20_1_sizes() {
    for (size, per_inch, outside) in [
        ("1/16", 27.0, 0.312_5),
        ("1/8", 27.0, 0.405),
        ("1/4", 18.0, 0.540),
        ("3/8", 18.0, 0.675),
        ("1/2", 14.0, 0.840),
        ("3/4", 14.0, 1.050),
        ("1", 11.5, 1.315),
    ] {
        for mark in ["NPT", "NPTF"] {
            let t = thread(&format!("{size} {mark}"));
            close(t.major().get::<inch>(), outside, 1e-9, size);
            close(t.pitch().get::<inch>() * per_inch, 1.0, 1e-9, size);
        }
    }
}

/// A thread is found by any part of its name, as a thumb types it.
#[test]
fn threads_are_found_by_what_is_typed() {
    let found = |typed: &str| -> Vec<String> { Thread::found(typed).iter().map(Thread::name).collect() };
    assert_eq!(found("1/2-20"), ["1/2-20 UNF"]);
    assert_eq!(found("m10x1"), ["M10×1.25", "M10×1"]);
    assert_eq!(found("10-32"), ["#10-32 UNF"]);
    assert_eq!(found("g 1/4"), ["G 1/4"]);
    assert_eq!(found("m45")[0], "M45");
    assert_eq!(found(""), Vec::<String>::new());
    assert_eq!(found("bolt"), Vec::<String>::new());
    for t in Thread::all() {
        assert!(Thread::found(&t.name()).contains(&t), "{t}");
    }
}

/// A thread's diameter that a joint keeps comes back out of its file as it went in, to the last bit.
#[test]
fn a_diameter_comes_back_as_it_was_stored() {
    use halfcase::trade::application::{Application, JointKind};
    for t in Thread::all() {
        let joint = Application {
            thread: Some(t.major()),
            ..Application::new(JointKind::ThreadedFastener)
        };
        let text = serde_json::to_string(&joint).unwrap();
        let back: Application = serde_json::from_str(&text).unwrap();
        assert_eq!(back, joint, "{t}: {text}");
    }
}

/// The number a designation begins with: "M9×1.25", "#12-32 UNEF", "1 3/16-18 UNEF"; mm or in.
fn designated(name: &str) -> f64 {
    if let Some(metric) = name.strip_prefix('M') {
        return metric.split('×').next().unwrap().parse().unwrap();
    }
    let size = name.split('-').next().unwrap();
    if let Some(number) = size.strip_prefix('#') {
        // ASME B1.1 (M): numbered sizes grow by 0.013 in from 0.060.
        return 0.060 + 0.013 * number.parse::<f64>().unwrap();
    }
    let fraction = |text: &str| match text.split_once('/') {
        Some((over, under)) => over.parse::<f64>().unwrap() / under.parse::<f64>().unwrap(),
        None => text.parse().unwrap(),
    };
    size.split(' ').map(fraction).sum()
}

/// A designation names the diameter and the pitch (ISO 965-1, ASME B1.1): every row of the table against its own.
#[test]
fn every_thread_is_what_its_designation_says() {
    let mut seen = 0;
    for t in Thread::all().filter(|t| !t.is_pipe()) {
        let name = t.name();
        let metric = name.starts_with('M');
        let major = match metric {
            true => t.major().get::<millimeter>(),
            false => t.major().get::<inch>(),
        };
        close(major, designated(&name), 1e-9, &name);
        let (_, behind) = name.split_once(['×', '-']).unwrap_or_default();
        match behind.split(' ').next().unwrap().parse::<f64>() {
            Ok(pitch) if metric => close(t.pitch().get::<millimeter>(), pitch, 1e-9, &name),
            Ok(per_inch) => close(t.pitch().get::<inch>() * per_inch, 1.0, 1e-9, &name),
            // A coarse metric pitch is not written.
            Err(_) => assert_eq!(t.series(), Series::MetricCoarse, "{name}"),
        }
        seen += 1;
    }
    assert!(seen > 130, "{seen}");
}

/// From 1/4 in the normal hole is larger than the bolt by 1/32 in, from 1/2 by 1/16, from 1 by 3/32, from 1 3/8 by
/// 1/8 (ASME B18.2.8, M). From 5/8 in a hexagon head is 1.5 diameters wide, to the sixteenth (ASME B18.2.1, M).
#[test]
fn inch_holes_and_heads_grow_by_the_standards_steps() {
    for t in Thread::all().filter(|t| matches!(t.series(), Series::Unc | Series::Unf | Series::Unef)) {
        let (name, major) = (t.name(), t.major().get::<inch>());
        if major < 0.25 {
            continue;
        }
        let step = match major {
            _ if major < 0.5 => 1.0 / 32.0,
            _ if major < 1.0 => 1.0 / 16.0,
            _ if major < 1.375 => 3.0 / 32.0,
            _ => 1.0 / 8.0,
        };
        let hole = t.clearance_hole().get::<inch>();
        assert!((hole - major - step).abs() < 0.001, "{name}: {hole}");
        if major >= 0.625 {
            // 0.95 of the width bears: common practice, no source.
            let wide = t.head_bearing().get::<inch>() / 0.95;
            let sixteenths = wide * 16.0;
            assert!((sixteenths - sixteenths.round()).abs() < 1e-6, "{name}: {wide}");
            assert!((wide - 1.5 * major).abs() <= 1.0 / 32.0 + 1e-9, "{name}: {wide}");
        }
    }
}

/// A head and a hole go by the diameter, whatever the pitch (ISO 273, ISO 4014, ASME B18.2.1).
#[test]
fn head_and_hole_go_by_the_diameter() {
    let all: Vec<Thread> = Thread::all().filter(|t| !t.is_pipe()).collect();
    for one in &all {
        for other in all.iter().filter(|other| other.major() == one.major()) {
            let (name, too) = (one.name(), other.name());
            assert_eq!(one.clearance_hole(), other.clearance_hole(), "{name}, {too}");
            assert_eq!(one.head_bearing(), other.head_bearing(), "{name}, {too}");
        }
    }
}
