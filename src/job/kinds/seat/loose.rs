//! A part that is loose in its bore or on its shaft: the joint that a retaining compound is asked for.

use super::answer::{SeatAnswer, outer_and_inner};
use super::data::Seat;
use crate::job::bonding::Walk;
use crate::trade::application::{Application, Face, Held, JointKind};
use crate::trade::fit::SizeSource;
use crate::trade::heat_plan::HoleIn;
use crate::trade::material::Material;
use crate::trade::quantity::Length;
use uom::si::length::millimeter;

/// The walk that asks what holds it, with the widest gap its sizes allow and both metals told; none where it
/// may still be tight.
pub fn loose(seat: &Seat, answer: &SeatAnswer) -> Option<Walk> {
    let fit = &answer.interference;
    let none = Length::new::<millimeter>(0.0);
    if fit.most > none || fit.least >= none {
        return None;
    }
    // To the tenth of a micrometre: without the dust of the sum it is stored as it is.
    let gap_mm = (-fit.least.get::<millimeter>() * 1e4).round() / 1e4;
    let (outer, inner) = outer_and_inner(seat);
    // The one further down is the more awkward.
    let place = |material| Face::ALL.iter().position(|face| *face == face_of(material));
    let face = if place(outer) > place(inner) { outer } else { inner };
    Some(Walk {
        joint: Some(Application {
            gap: Some(Length::new::<millimeter>(gap_mm)),
            face: Some(face_of(face)),
            held: held(seat),
            ..Application::new(JointKind::Cylindrical)
        }),
        met: Vec::new(),
    })
}

/// What slides in or on, where the sizes or the metal tell it.
pub(super) fn held(seat: &Seat) -> Option<Held> {
    let race = matches!(seat.shaft, SizeSource::BearingOuter { .. });
    match seat.hole_in {
        HoleIn::Part => Some(Held::OnShaft),
        HoleIn::Housing if race || seat.part_material == Material::BearingSteel => Some(Held::Race),
        HoleIn::Housing => None,
    }
}

fn face_of(material: Material) -> Face {
    match material {
        Material::CastAluminium | Material::Magnesium => Face::CastAluminium,
        Material::Steel | Material::BearingSteel | Material::CastIron => Face::SteelOrIron,
        Material::StainlessSteel => Face::Stainless,
        Material::Bronze => Face::BrassOrCopper,
    }
}
