//! Bore and journal readings, on an invented bore of a walking tractor's engine.

use halfcase::trade::material::Material;
use halfcase::trade::measure::{Allowed, DiameterGrid, MeasureError, MeasureVerdict, Shape, clearance};
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn grid(at: f64, material: Material, readings: [[f64; 2]; 3]) -> DiameterGrid {
    let at = ThermodynamicTemperature::new::<degree_celsius>(at);
    DiameterGrid {
        at,
        material,
        readings_mm: readings.map(|depth| depth.map(Some)),
    }
}

fn micrometres(ours: Length, theirs: f64) {
    let ours = ours.get::<micrometer>();
    assert!((ours - theirs).abs() < 1e-3, "{ours} µm is not {theirs} µm");
}

fn bore() -> Shape {
    grid(
        20.0,
        Material::CastIron,
        [[70.012, 70.020], [70.015, 70.031], [70.010, 70.014]],
    )
    .shape()
    .unwrap()
}

#[test]
fn shape_of_a_bore() {
    // By hand. Out-of-round: the largest difference in one plane, 16 µm at the middle. Taper: the largest
    // along the axis, across 31 − 14 = 17 µm. Mean (12+20+15+31+10+14)/6 = 17 µm.
    let shape = bore();
    micrometres(shape.out_of_round, 16.0);
    micrometres(shape.taper, 17.0);
    micrometres(shape.mean - mm(70.0), 17.0);
    micrometres(shape.smallest - mm(70.0), 10.0);
    micrometres(shape.largest - mm(70.0), 31.0);
    // Taper along the other direction counts as well.
    let along = grid(
        20.0,
        Material::CastIron,
        [[70.030, 70.020], [70.015, 70.020], [70.010, 70.020]],
    )
    .shape()
    .unwrap();
    micrometres(along.taper, 20.0);
}

#[test]
fn a_warm_aluminium_bore_reads_large() {
    // 62 mm at 30 °C with steel beside it: 62·10·(22 − 11.5)e-6 = 6.51 µm large; a case at the
    // textbook's 23 reads 7.13 µm large (worked).
    let warm = grid(30.0, Material::CastAluminium, [[62.0; 2]; 3])
        .shape()
        .unwrap();
    micrometres(mm(62.0) - warm.mean, 6.51);
}

#[test]
fn clearance_of_a_journal() {
    let journal = grid(
        20.0,
        Material::Steel,
        [[69.950, 69.951], [69.949, 69.950], [69.950, 69.952]],
    )
    .shape()
    .unwrap();
    let clearance = clearance(&bore(), &journal);
    // By hand: 70.010 − 69.952, 70.017 − 69.95033, 70.031 − 69.949.
    micrometres(clearance.least, 58.0);
    micrometres(clearance.mean, 66.667);
    micrometres(clearance.most, 82.0);
    let allowed = Allowed {
        least: Some(mm(0.050)),
        most: Some(mm(0.080)),
    };
    assert_eq!(allowed.judge(clearance.least), Ok(MeasureVerdict::Within));
    match allowed.judge(clearance.most).unwrap() {
        MeasureVerdict::Above { by } => micrometres(by, 2.0),
        verdict => panic!("{verdict:?}"),
    }
}

#[test]
fn a_value_on_its_limit_is_within() {
    let allowed = Allowed {
        least: Some(mm(69.95)),
        most: Some(mm(70.05)),
    };
    assert_eq!(allowed.judge(mm(70.05)), Ok(MeasureVerdict::Within));
    assert_eq!(allowed.judge(mm(69.95)), Ok(MeasureVerdict::Within));
    // Within a tenth of a micrometre it is the limit; past it, not.
    assert_eq!(allowed.judge(mm(70.050_099)), Ok(MeasureVerdict::Within));
    assert!(matches!(
        allowed.judge(mm(70.050_102)),
        Ok(MeasureVerdict::Above { .. })
    ));
    match allowed.judge(mm(69.94)).unwrap() {
        MeasureVerdict::Below { by } => micrometres(by, 10.0),
        verdict => panic!("{verdict:?}"),
    }
    let open = Allowed {
        least: None,
        most: Some(mm(0.1)),
    };
    assert_eq!(open.judge(mm(-5.0)), Ok(MeasureVerdict::Within));
    assert_eq!(
        Allowed {
            least: None,
            most: None
        }
        .judge(mm(1.0)),
        Err(MeasureError::Limits)
    );
    let reversed = Allowed {
        least: Some(mm(2.0)),
        most: Some(mm(1.0)),
    };
    assert_eq!(
        reversed.judge(mm(1.5)).unwrap_err().to_string(),
        "Enter at least one limit, the lower one first."
    );
}

#[test]
fn refusals_say_what_to_do() {
    let mut waiting = grid(20.0, Material::CastIron, [[70.0; 2]; 3]);
    waiting.readings_mm[1][0] = None;
    assert_eq!(
        waiting.shape().unwrap_err().to_string(),
        "One reading is still to be taken."
    );
    waiting.readings_mm[2][1] = None;
    assert_eq!(waiting.missing(), 2);
    assert_eq!(
        waiting.shape().unwrap_err().to_string(),
        "2 readings are still to be taken."
    );
    let say = |grid: DiameterGrid| grid.shape().unwrap_err().to_string();
    assert_eq!(
        say(grid(
            20.0,
            Material::CastIron,
            [[70.0, 70.0], [70.0, 7.0], [70.0, 70.0]]
        )),
        "7.000 mm is far from the other readings: take it again."
    );
    assert_eq!(
        say(grid(20.0, Material::CastIron, [[0.0; 2]; 3])),
        "Enter each reading, above zero and under 1000 mm."
    );
    assert_eq!(
        say(grid(900.0, Material::CastIron, [[70.0; 2]; 3])),
        "Enter a temperature between −100 and 300 °C."
    );
    // A twentieth of the middle reading is where one is stray.
    let off = |by: f64| {
        grid(
            20.0,
            Material::CastIron,
            [[100.0 + by, 100.0], [100.0; 2], [100.0; 2]],
        )
        .shape()
    };
    assert!(off(4.97).is_ok());
    assert!(off(5.03).is_err());
}

#[test]
fn a_grid_is_stored_with_its_units_named() {
    let grid = grid(20.0, Material::CastIron, [[70.0; 2]; 3]);
    let text = serde_json::to_string(&grid).unwrap();
    assert!(
        text.starts_with(r#"{"at_c":20.0,"material":"cast_iron""#),
        "{text}"
    );
    assert_eq!(serde_json::from_str::<DiameterGrid>(&text).unwrap(), grid);
}
