//! Thread strip against a handbook example, FED-STD-H28 and ISO 965-2.

use halfcase::trade::quantity::{Force, Length};
use halfcase::trade::strip::{FemaleMaterial, shear_area, strip_load};
use halfcase::trade::thread::Thread;
use uom::si::area::{square_inch, square_millimeter};
use uom::si::force::newton;
use uom::si::length::{inch, millimeter};
use uom::si::pressure::megapascal;

fn thread(name: &str) -> Thread {
    Thread::parse(name).unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn close(got: f64, printed: f64, within: f64, what: &str) {
    assert!(
        (got / printed - 1.0).abs() <= within,
        "{what}: {got}, printed {printed}"
    );
}

/// Handbook example (S): M10×1.5, 69 600 N in aluminium of 130 MPa shear strength wants 21.6 mm.
/// Its "least" crest diameter 9.968 mm is in fact the greatest of 6g; the sum is checked as printed.
#[test]
fn handbook_m10_in_aluminium() {
    let area = shear_area(mm(1.5), mm(9.968), mm(9.206), mm(21.6));
    close(area.get::<square_millimeter>() * 130.0, 69_600.0, 0.003, "load");
}

/// FED-STD-H28 strip areas of the female thread, in² an inch of engagement (S, second hand), with
/// the 2A crest and 2B pitch diameters of ASME B1.1 (M).
#[test]
fn fed_std_h28_strip_areas() {
    let rows = [
        ("1/4-20", 0.240_8, 0.222_4, 0.539),
        ("3/8-16", 0.364_3, 0.340_1, 0.828),
        ("1/2-13", 0.487_6, 0.456_5, 1.12),
    ];
    for (name, crest, pitch_diameter, printed) in rows {
        let area = shear_area(
            thread(name).pitch(),
            Length::new::<inch>(crest),
            Length::new::<inch>(pitch_diameter),
            Length::new::<inch>(1.0),
        );
        close(area.get::<square_inch>(), printed, 0.005, name);
    }
}

/// Weak end an mm of engagement against the 6g crest and 6H pitch diameters of ISO 965-2 (M), worked
/// by hand, mm²/mm; the standard rounds its tolerances.
#[test]
fn weak_end_uses_iso_965_2_limits() {
    let rows = [
        ("M6", 5.794, 5.500),
        ("M8", 7.760, 7.348),
        ("M10", 9.732, 9.206),
        ("M12", 11.701, 11.063),
        ("M16", 15.682, 14.913),
        ("M20", 19.623, 18.600),
        ("M24", 23.577, 22.316),
    ];
    for (name, crest, pitch_diameter) in rows {
        let t = thread(name);
        let area = shear_area(t.pitch(), mm(crest), mm(pitch_diameter), mm(1.0)).get::<square_millimeter>();
        let (weak, _) = strip_load(t, FemaleMaterial::CastAluminium, mm(1.0));
        close(weak.get::<newton>(), 108.0 * area, 0.008, name);
    }
}

/// The formulas worked apart from this code: mm² an mm of engagement, loosest and closest.
#[test]
fn areas_worked_by_hand() {
    let rows = [
        ("M4", 7.777_563_4, 10.995_573_9),
        ("M6", 12.266_455_8, 16.493_360_9),
        ("M10", 21.621_067_2, 27.488_934_8),
        ("M16", 35.605_491_3, 43.982_295_6),
        ("M24", 55.107_229_5, 65.973_443_4),
    ];
    for (name, loose, tight) in rows {
        let (weak, strong) = strip_load(thread(name), FemaleMaterial::Steel, mm(5.0));
        close(weak.get::<newton>(), 5.0 * loose * 222.0, 3e-5, name);
        close(strong.get::<newton>(), 5.0 * tight * 360.0, 2e-6, name);
    }
}

/// Shear strength, MPa, and engagement, diameters. Aluminium 0.6 of 180–240 MPa, two diameters;
/// steel and iron 1.25 (handbook, S). The others: common practice, no source.
#[test]
fn materials() {
    let rows = [
        (FemaleMaterial::CastAluminium, 108.0, 144.0, 2.0),
        (FemaleMaterial::WroughtAluminium, 156.0, 186.0, 2.0),
        (FemaleMaterial::Magnesium, 96.0, 138.0, 2.5),
        (FemaleMaterial::CastIron, 165.0, 275.0, 1.25),
        (FemaleMaterial::Steel, 222.0, 360.0, 1.25),
        (FemaleMaterial::Bronze, 144.0, 186.0, 1.5),
    ];
    assert_eq!(rows.map(|row| row.0), FemaleMaterial::ALL);
    for (material, weak, strong, diameters) in rows {
        let (got_weak, got_strong) = material.shear_strength();
        close(got_weak.get::<megapascal>(), weak, 1e-9, material.words());
        close(got_strong.get::<megapascal>(), strong, 1e-9, material.words());
        assert!((material.recommended_diameters() - diameters).abs() < 1e-12);
        let length = material.recommended_engagement(thread("M8"));
        close(
            length.get::<millimeter>(),
            8.0 * diameters,
            1e-9,
            material.words(),
        );
        assert!(!material.reason().is_empty());
    }
}

#[test]
fn counts_no_engagement_below_none_or_beyond_three_diameters() {
    let at = |length_mm: f64| strip_load(thread("M8"), FemaleMaterial::Bronze, mm(length_mm));
    let none = Force::new::<newton>(0.0);
    assert_eq!(at(-3.0), (none, none));
    assert_eq!(at(24.0), at(1e300));
    assert!(at(24.0).0 > at(23.9).0);
    assert_eq!(shear_area(mm(0.0), mm(8.0), mm(7.0), mm(5.0)).value, 0.0);
}
