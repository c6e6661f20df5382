//! What a refusal says of a range is where it begins: just inside is taken, just outside is not. The ranges are
//! ours, chosen wide enough for any engine (no source).

use halfcase::trade::cooling::{Faces, Wall};
use halfcase::trade::material::Material;
use halfcase::trade::measuring::backlash;
use halfcase::trade::measuring::spring::Coil;
use halfcase::trade::press::{Push, tools};
use halfcase::trade::quantity::{Angle, Length, Mass};
use halfcase::trade::sling::{angle_factor, eyebolt_rating};
use halfcase::trade::stretch::Shank;
use halfcase::trade::thread::Thread;
use uom::si::angle::degree;
use uom::si::f64::Pressure;
use uom::si::length::millimeter;
use uom::si::mass::kilogram;
use uom::si::pressure::gigapascal;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn degrees(value: f64) -> Angle {
    Angle::new::<degree>(value)
}

/// The least and the most that are taken; half a percent beyond either is not.
fn ends_at(what: &str, (least, most): (f64, f64), taken: impl Fn(f64) -> bool) {
    for (inside, outside) in [(least, least * 0.995), (most, most * 1.005)] {
        assert!(taken(inside), "{what}: {inside} is refused");
        assert!(!taken(outside), "{what}: {outside} is taken");
    }
}

#[test]
fn what_is_measured_ends_where_it_is_said_to() {
    // The ends themselves may be lost to the last bit on the way through a unit.
    let (up, down) = (1.0 + 1e-9, 1.0 - 1e-9);
    ends_at("pressure angle", (10.0 * up, 30.0 * down), |angle| {
        backlash::grown_by(mm(0.1), degrees(angle)).is_ok()
    });
    let coil = |working| Coil {
        wire: mm(2.0),
        mean: mm(16.0),
        working,
    };
    ends_at("shear modulus", (1.0 * up, 500.0 * down), |gpa| {
        coil(6.0).rate(Pressure::new::<gigapascal>(gpa)).is_ok()
    });
    assert!(coil(200.0).steel_rate().is_ok() && coil(201.0).steel_rate().is_err());
}

#[test]
fn a_bolt_that_is_stretched_ends_where_it_is_said_to() {
    let shank = |grip: f64, diameter: Option<f64>| Shank {
        thread: Thread::parse("M9×1.25").unwrap(),
        strength: None,
        grip: mm(grip),
        plain: mm(0.0),
        diameter: diameter.map(mm),
    };
    let (up, down) = (1.0 + 1e-9, 1.0 - 1e-9);
    ends_at("grip", (up, 1_000.0 * down), |grip| {
        shank(grip, None).compliance().is_ok()
    });
    ends_at("shank", (3.0 * up, 13.5 * down), |diameter| {
        shank(50.0, Some(diameter)).compliance().is_ok()
    });
}

#[test]
fn press_and_heat_end_where_they_are_said_to() {
    let (up, down) = (1.0 + 1e-9, 1.0 - 1e-9);
    ends_at("wall", (0.1 * up, 200.0 * down), |thick| {
        let (material, faces) = (Material::CastIron, Faces::Both);
        let thickness = mm(thick);
        let wall = Wall {
            material,
            thickness,
            faces,
        };
        wall.time_constant().is_ok()
    });
    let ring = |outside: f64| {
        tools(&Push::OntoShaft {
            shaft: mm(20.0),
            ring_outside: mm(outside),
        })
    };
    assert!(ring(999.9).is_ok() && ring(1_005.0).is_err());
}

#[test]
fn slings_end_upright() {
    assert!(angle_factor(degrees(90.0)).is_ok() && angle_factor(degrees(90.5)).is_err());
    let ton = Mass::new::<kilogram>(1_000.0);
    assert!(eyebolt_rating(ton, degrees(90.0)).is_ok() && eyebolt_rating(ton, degrees(90.5)).is_err());
}
