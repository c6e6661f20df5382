//! Bearing tolerances against ISO 492.

use halfcase::trade::bearing::{bore_limits, outer_limits};
use halfcase::trade::quantity::Length;
use uom::si::length::{micrometer, millimeter};

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

#[test]
fn normal_class_of_radial_bearings() {
    // ISO 492, Normal class, seen in stored copies of its table: upper end of the band, mm, and how far
    // below nominal the mean diameter may lie, µm; over 180 mm from memory.
    let bores = [
        (10.0, 8.0),
        (18.0, 8.0),
        (30.0, 10.0),
        (50.0, 12.0),
        (80.0, 15.0),
        (120.0, 20.0),
        (180.0, 25.0),
        (250.0, 30.0),
        (315.0, 35.0),
        (400.0, 40.0),
        (500.0, 45.0),
        (630.0, 50.0),
    ];
    let outsides = [
        (18.0, 8.0),
        (30.0, 9.0),
        (50.0, 11.0),
        (80.0, 13.0),
        (120.0, 15.0),
        (150.0, 18.0),
        (180.0, 25.0),
        (250.0, 30.0),
        (315.0, 35.0),
        (400.0, 40.0),
        (500.0, 45.0),
        (630.0, 50.0),
    ];
    for (table, find) in [
        (&bores[..], bore_limits as fn(Length) -> _),
        (&outsides[..], outer_limits),
    ] {
        for (place, &(edge, depth)) in table.iter().enumerate() {
            let limits = find(mm(edge)).unwrap();
            assert_eq!(limits.upper, mm(0.0));
            assert!((limits.lower.get::<micrometer>() + depth).abs() < 1e-6, "{edge}");
            if let Some((_, next)) = table.get(place + 1) {
                let beyond = find(mm(edge * 1.002)).unwrap();
                assert!(
                    (beyond.lower.get::<micrometer>() + next).abs() < 1e-6,
                    "over {edge}"
                );
            }
        }
        assert!(find(mm(631.0)).is_err());
    }
}
