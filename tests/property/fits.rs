//! Fits: the code reader never panics, and the standard's own relations hold.

use halfcase::trade::bearing;
use halfcase::trade::fit::{
    Feature, FitCode, Position, SizeSource, ToleranceClass, interference, limits, size_range,
};
use halfcase::trade::material::Material;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use proptest::prelude::*;
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn position() -> impl Strategy<Value = Position> {
    prop::sample::select(Position::ALL.to_vec())
}

fn class() -> impl Strategy<Value = ToleranceClass> {
    (prop::bool::ANY, position(), 5_u8..=11).prop_map(|(hole, position, grade)| ToleranceClass {
        feature: if hole { Feature::Hole } else { Feature::Shaft },
        position,
        grade,
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(256))]

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,24}") {
        let _ = text.parse::<FitCode>();
        let _ = text.parse::<ToleranceClass>();
    }

    #[test]
    fn likely_text_is_read_or_refused(text in "[Øø]? ?[0-9.,eE+-]{0,6} ?(mm)? ?[A-Za-z]{0,2}[0-9]{0,3}[/ -]?[a-z]{0,2}[0-9]{0,2}") {
        let _ = text.parse::<FitCode>();
    }

    #[test]
    fn what_is_printed_reads_back(hole in class(), tenths in 10_u32..6300) {
        prop_assert_eq!(hole.to_string().parse::<ToleranceClass>().unwrap(), hole);
        let text = format!("{} {hole}", f64::from(tenths) / 10.0);
        prop_assert_eq!(text.parse::<FitCode>().unwrap().to_string(), text);
    }

    #[test]
    fn any_size_is_answered_or_refused(size in prop::num::f64::ANY, class in class()) {
        if let Ok(found) = limits(mm(size), class) {
            prop_assert!(found.lower < found.upper);
            prop_assert!(found.upper.get::<micrometer>().is_finite());
        }
        let _ = bearing::outer_limits(mm(size));
        let _ = bearing::bore_limits(mm(size));
    }

    #[test]
    fn any_measured_size_is_answered_or_refused(
        size in prop::num::f64::ANY,
        at in prop::num::f64::ANY,
    ) {
        let source = SizeSource::Measured {
            size: mm(size),
            at: ThermodynamicTemperature::new::<degree_celsius>(at),
            material: Material::CastAluminium,
        };
        if let Ok((least, most)) = size_range(&source) {
            prop_assert!(least == most && least > mm(0.0));
        }
    }

    /// ISO 286-1: the limits of a hole mirror those of the shaft of its letter where there is no Δ, and a
    /// fit is the same on either basis where there is: H7/p6 is P7/h6.
    #[test]
    fn a_fit_is_the_same_on_either_basis(tenths in 31_u32..=5000, letter in position(), grade in 6_u8..=8) {
        let nominal = mm(f64::from(tenths) / 10.0);
        // J has no rule; k sits on the nominal size from grade 8 on; P to U keep to grade 7.
        prop_assume!(letter != Position::J && (letter <= Position::N || grade <= 7));
        // M6 from 250 to 315 mm is the standard's own exception.
        prop_assume!(letter != Position::M || grade != 6 || !(2501..=3150).contains(&tenths));
        let make = |feature, position, grade| SizeSource::Class {
            nominal,
            class: ToleranceClass { feature, position, grade },
        };
        let hole_basis = interference(
            &make(Feature::Hole, Position::H, grade),
            &make(Feature::Shaft, letter, grade - 1),
        );
        let shaft_basis = interference(
            &make(Feature::Hole, letter, grade),
            &make(Feature::Shaft, Position::H, grade - 1),
        );
        match (hole_basis, shaft_basis) {
            (Ok(one), Ok(other)) if letter != Position::Js => {
                prop_assert!((one.least - other.least).abs() < mm(1e-9));
                prop_assert!((one.most - other.most).abs() < mm(1e-9));
            }
            (one, other) => prop_assert_eq!(one.is_ok(), other.is_ok()),
        }
    }

    #[test]
    fn coarser_grades_and_larger_sizes_are_wider(tenths in 10_u32..1800, more in 0_u32..400, grade in 5_u8..11) {
        let width = |tenths: u32, grade| {
            let class = ToleranceClass { feature: Feature::Hole, position: Position::H, grade };
            limits(mm(f64::from(tenths.min(1800)) / 10.0), class).map(|found| found.upper - found.lower).unwrap()
        };
        prop_assert!(width(tenths, grade) < width(tenths, grade + 1));
        prop_assert!(width(tenths, grade) <= width(tenths + more, grade));
    }

    /// From k to u, each letter sits at least as deep as the one before, and so does its hole.
    #[test]
    fn later_letters_are_tighter(tenths in 241_u32..1800, grade in 5_u8..=8) {
        let nominal = mm(f64::from(tenths) / 10.0);
        let of = |feature, position| limits(nominal, ToleranceClass { feature, position, grade }).unwrap();
        let letters = Position::ALL.into_iter().filter(|p| *p != Position::J && *p != Position::Js);
        let letters: Vec<_> = letters.collect();
        for pair in letters.windows(2) {
            prop_assert!(of(Feature::Shaft, pair[0]).lower <= of(Feature::Shaft, pair[1]).lower);
            // Δ ends at grade 7 for P and later, at 8 for the letters before: no order across at grade 8.
            if grade < 8 {
                prop_assert!(of(Feature::Hole, pair[0]).upper >= of(Feature::Hole, pair[1]).upper);
            }
        }
    }
}
