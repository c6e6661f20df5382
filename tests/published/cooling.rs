//! Newton's cooling of a heated wall.

use halfcase::trade::cooling::{CoolingError, Faces, Wall, window};
use halfcase::trade::material::Material;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

fn wall(material: Material, thickness: f64, faces: Faces) -> Wall {
    Wall {
        material,
        thickness: Length::new::<millimeter>(thickness),
        faces,
    }
}

fn near(ours: Time, seconds: f64, share: f64) {
    let ours = ours.get::<second>();
    assert!(
        (ours / seconds - 1.0).abs() < share,
        "{ours} s is not {seconds} s"
    );
}

#[test]
fn a_six_millimetre_case() {
    // Worked, h 10 to 15 W/m²K being common practice: τ = ρ·c·s/h = 2700·920·0.003/h, 745.2 s and
    // 496.8 s; about 600 s in between.
    let case = wall(Material::CastAluminium, 6.0, Faces::Both);
    let tau = case.time_constant().unwrap();
    near(tau.longest, 745.2, 1e-6);
    near(tau.shortest, 496.8, 1e-6);
    assert!(tau.shortest < Time::new::<second>(600.0) && Time::new::<second>(600.0) < tau.longest);
    // From 110 to 90 °C in a 20 °C room: ln(90/70) = 0.251314 of them, about 150 s.
    let open = window(&case, celsius(110.0), celsius(90.0), celsius(20.0)).unwrap();
    near(open.longest, 187.279, 1e-5);
    near(open.shortest, 124.853, 1e-5);
    // One face holds twice as long.
    let face_down = wall(Material::CastAluminium, 6.0, Faces::One);
    near(face_down.time_constant().unwrap().longest, 1490.4, 1e-6);
}

#[test]
fn every_material_stores_its_own_heat() {
    // ρ·c·s for 10 mm, one face, at h 10: handbook ρ and c, multiplied by hand.
    for (material, seconds) in [
        (Material::CastAluminium, 2484.0),
        (Material::Magnesium, 1836.0),
        (Material::Steel, 3689.5),
        (Material::StainlessSteel, 3950.0),
        (Material::BearingSteel, 3709.75),
        (Material::CastIron, 3600.0),
        (Material::Bronze, 3317.6),
    ] {
        near(
            wall(material, 10.0, Faces::One).time_constant().unwrap().longest,
            seconds,
            1e-6,
        );
    }
}

#[test]
fn a_chilled_ring_warms_the_same_way() {
    // From −18 to −1 °C in a 20 °C room: ln(38/21) = 0.593064 of ρ·c·s/h, s half of 4 mm.
    let ring = wall(Material::BearingSteel, 4.0, Faces::Both);
    let open = window(&ring, celsius(-18.0), celsius(-1.0), celsius(20.0)).unwrap();
    near(open.shortest, 0.593_064 * 7810.0 * 475.0 * 0.002 / 15.0, 1e-5);
}

#[test]
fn after_one_time_constant() {
    // After one τ, 36.788 % of the difference is left (e⁻¹): 20 + 90·0.36788 = 53.109 °C.
    let case = wall(Material::CastAluminium, 6.0, Faces::Both);
    let until = |end| window(&case, celsius(110.0), celsius(end), celsius(20.0)).unwrap();
    near(until(53.1092).longest, 745.2, 1e-5);
    near(until(53.1092).shortest, 496.8, 1e-5);
    assert_eq!(until(110.0).longest, Time::new::<second>(0.0));
}

#[test]
fn refusals_say_what_to_do() {
    let case = wall(Material::CastAluminium, 6.0, Faces::Both);
    let say = |start, until| {
        window(&case, celsius(start), celsius(until), celsius(20.0))
            .unwrap_err()
            .to_string()
    };
    assert_eq!(
        say(110.0, 20.0),
        "The room never brings the part to that temperature: it stays good."
    );
    assert_eq!(
        say(90.0, 110.0),
        "The part is past that temperature at the start: warm it (or chill it) further."
    );
    assert_eq!(say(400.0, 110.0), "Enter a temperature between −100 and 300 °C.");
    let thick = |thickness| wall(Material::Steel, thickness, Faces::One).time_constant();
    assert_eq!(thick(0.0), Err(CoolingError::Thickness));
    assert!(thick(0.1).is_ok() && thick(0.0995).is_err());
    assert!(thick(200.0).is_ok() && thick(201.0).is_err());
    assert_eq!(
        CoolingError::Thickness.to_string(),
        "Enter a wall thickness between 0.1 and 200 mm."
    );
}
