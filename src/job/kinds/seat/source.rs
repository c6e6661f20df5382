//! Where a size comes from, chosen by touch: a fit class, a bearing's tolerance, a reading.

use super::answer::{nominal, outer_and_inner};
use super::data::Seat;
use crate::trade::fit::{Feature, FitCode, FitError, Position, SizeSource, ToleranceClass};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Metres and kelvin leave dust in the last digits of what was typed in millimetres and °C.
fn clean(value: f64) -> f64 {
    (value * 1e6).round() / 1e6
}

/// Which of the two sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Side {
    /// The hole.
    Hole,
    /// What goes into it.
    Shaft,
}

/// The kinds of source, in the order the screen offers them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A tolerance class.
    Class,
    /// A bearing of the Normal class.
    Bearing,
    /// A reading.
    Measured,
    /// The manual's own limits.
    Limits,
}

impl Kind {
    /// Every kind.
    pub const ALL: [Self; 4] = [Self::Class, Self::Bearing, Self::Limits, Self::Measured];

    /// Its words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Class => "fit class",
            Self::Bearing => "bearing, normal class",
            Self::Measured => "measured",
            Self::Limits => "the manual’s limits",
        }
    }

    /// The kind of a source.
    pub const fn of(source: &SizeSource) -> Self {
        match source {
            SizeSource::Class { .. } => Self::Class,
            SizeSource::BearingOuter { .. } | SizeSource::BearingBore { .. } => Self::Bearing,
            SizeSource::Measured { .. } => Self::Measured,
            SizeSource::Between { .. } => Self::Limits,
        }
    }
}

/// A class to begin with: a plain hole, a light press fit.
fn first_class(side: Side) -> ToleranceClass {
    let (feature, position, grade) = match side {
        Side::Hole => (Feature::Hole, Position::H, 7),
        Side::Shaft => (Feature::Shaft, Position::P, 6),
    };
    ToleranceClass {
        feature,
        position,
        grade,
    }
}

/// The size of `side` in `seat`.
pub fn of(seat: &Seat, side: Side) -> &SizeSource {
    match side {
        Side::Hole => &seat.hole,
        Side::Shaft => &seat.shaft,
    }
}

fn of_mut(seat: &mut Seat, side: Side) -> &mut SizeSource {
    match side {
        Side::Hole => &mut seat.hole,
        Side::Shaft => &mut seat.shaft,
    }
}

/// Takes another kind of source, at the size there is.
pub fn set_kind(seat: &mut Seat, side: Side, kind: Kind) {
    // A reading is turned into the whole millimetre it stands for.
    let mm = nominal(of(seat, side)).get::<millimeter>().round().max(1.0);
    let nominal = Length::new::<millimeter>(mm);
    let material = material(seat, side);
    *of_mut(seat, side) = match (kind, side) {
        (Kind::Class, _) => SizeSource::Class {
            nominal,
            class: first_class(side),
        },
        (Kind::Bearing, Side::Hole) => SizeSource::BearingBore { nominal },
        (Kind::Bearing, Side::Shaft) => SizeSource::BearingOuter { nominal },
        (Kind::Measured, _) => SizeSource::Measured {
            size: nominal,
            at: ThermodynamicTemperature::new::<degree_celsius>(20.0),
            material,
        },
        (Kind::Limits, _) => SizeSource::Between {
            least: nominal,
            most: nominal,
        },
    };
}

/// Sets the nominal size on both sides; a reading stays what was read.
pub fn set_nominal(seat: &mut Seat, mm: f64) {
    set_nominal_of(seat, Side::Hole, mm);
    set_nominal_of(seat, Side::Shaft, mm);
}

/// Both sides share one nominal size: where they did (`before`, and the `other` side's), the other goes with the
/// new one of `side`. A reading stays what was read.
pub fn follow_size(seat: &mut Seat, side: Side, before: Option<f64>, other: Option<f64>) {
    let opposite = match side {
        Side::Hole => Side::Shaft,
        Side::Shaft => Side::Hole,
    };
    if let (true, Some(mm)) = (before.is_some() && before == other, nominal_of(seat, side)) {
        set_nominal_of(seat, opposite, mm);
    }
}

/// Sets a reading's size, mm.
pub fn set_reading(seat: &mut Seat, side: Side, mm: f64) {
    if let SizeSource::Measured { size, .. } = of_mut(seat, side) {
        *size = Length::new::<millimeter>(mm);
    }
}

/// The limits of a side, mm, where the manual gives them.
pub fn limits_mm(seat: &Seat, side: Side) -> Option<(f64, f64)> {
    match of(seat, side) {
        SizeSource::Between { least, most } => {
            Some((clean(least.get::<millimeter>()), clean(most.get::<millimeter>())))
        }
        SizeSource::Class { .. }
        | SizeSource::BearingOuter { .. }
        | SizeSource::BearingBore { .. }
        | SizeSource::Measured { .. } => None,
    }
}

/// Sets the least of a side's limits, mm; the most goes with it, never below.
pub fn set_least(seat: &mut Seat, side: Side, mm: f64) {
    if let SizeSource::Between { least, most } = of_mut(seat, side) {
        *least = Length::new::<millimeter>(mm);
        *most = most.max(*least);
    }
}

/// Sets the most of a side's limits, mm; the least goes with it, never above.
pub fn set_most(seat: &mut Seat, side: Side, mm: f64) {
    if let SizeSource::Between { least, most } = of_mut(seat, side) {
        *most = Length::new::<millimeter>(mm);
        *least = least.min(*most);
    }
}

/// The interference as the manual gives it: the hole at its size, what goes in larger by so much.
pub fn set_tight(seat: &mut Seat, least: Length, most: Length) {
    // What is kept comes back from the store as it is.
    let size = |more: Length| {
        let mm = (nominal(&seat.hole) + more).get::<millimeter>();
        Length::new::<millimeter>(clean(mm))
    };
    let (hole, least, most) = (size(Length::default()), size(least), size(most));
    seat.hole = SizeSource::Between {
        least: hole,
        most: hole,
    };
    seat.shaft = SizeSource::Between { least, most };
}

/// The interference, mm, where it was given as such.
pub fn tight_mm(seat: &Seat) -> Option<(f64, f64)> {
    let (hole, hole_most) = limits_mm(seat, Side::Hole)?;
    let (least, most) = limits_mm(seat, Side::Shaft)?;
    (hole == hole_most).then_some((clean(least - hole), clean(most - hole)))
}

/// Sets the temperature of the part when it was read, °C.
pub fn set_read_at(seat: &mut Seat, side: Side, celsius: f64) {
    if let SizeSource::Measured { at, .. } = of_mut(seat, side) {
        *at = ThermodynamicTemperature::new::<degree_celsius>(celsius);
    }
}

/// A reading's size, mm.
pub fn reading_mm(seat: &Seat, side: Side) -> Option<f64> {
    match of(seat, side) {
        SizeSource::Measured { size, .. } => Some(clean(size.get::<millimeter>())),
        _ => None,
    }
}

/// The temperature a reading was taken at, °C.
pub fn read_at_c(seat: &Seat, side: Side) -> Option<f64> {
    match of(seat, side) {
        SizeSource::Measured { at, .. } => Some(clean(at.get::<degree_celsius>())),
        _ => None,
    }
}

/// The nominal size, mm, where a side has one.
pub fn nominal_mm(seat: &Seat) -> Option<f64> {
    nominal_of(seat, Side::Hole).or_else(|| nominal_of(seat, Side::Shaft))
}

/// The nominal size of a side, mm; none where it was read.
pub fn nominal_of(seat: &Seat, side: Side) -> Option<f64> {
    let source = of(seat, side);
    matches!(Kind::of(source), Kind::Class | Kind::Bearing)
        .then(|| clean(nominal(source).get::<millimeter>()))
}

/// Sets the nominal size of one side; a reading stays what was read.
pub fn set_nominal_of(seat: &mut Seat, side: Side, mm: f64) {
    if let SizeSource::Class { nominal, .. }
    | SizeSource::BearingOuter { nominal }
    | SizeSource::BearingBore { nominal } = of_mut(seat, side)
    {
        *nominal = Length::new::<millimeter>(mm);
    }
}

/// The class of a side.
pub fn class(seat: &Seat, side: Side) -> Option<ToleranceClass> {
    match of(seat, side) {
        SizeSource::Class { class, .. } => Some(*class),
        _ => None,
    }
}

/// Changes the class of a side.
pub fn set_class(seat: &mut Seat, side: Side, change: impl FnOnce(&mut ToleranceClass)) {
    if let SizeSource::Class { class, .. } = of_mut(seat, side) {
        change(class);
    }
}

/// Takes a fit as the drawing writes it: `52 H7/p6`, `62 N7`, `k6`. What it leaves out stays.
///
/// # Errors
/// [`FitError`] with what to write.
pub fn set_code(seat: &mut Seat, text: &str) -> Result<(), FitError> {
    let code: FitCode = text.parse()?;
    for (side, class) in [(Side::Hole, code.hole), (Side::Shaft, code.shaft)] {
        if let Some(class) = class {
            let nominal = nominal(of(seat, side));
            *of_mut(seat, side) = SizeSource::Class { nominal, class };
        }
    }
    if let Some(nominal) = code.nominal {
        set_nominal(seat, nominal.get::<millimeter>());
    }
    Ok(())
}

/// What a side is made of.
fn material(seat: &Seat, side: Side) -> Material {
    let (outer, inner) = outer_and_inner(seat);
    match side {
        Side::Hole => outer,
        Side::Shaft => inner,
    }
}

/// Keeps the material of a reading with the material of its part.
pub fn follow_materials(seat: &mut Seat) {
    for side in [Side::Hole, Side::Shaft] {
        let now = material(seat, side);
        if let SizeSource::Measured { material, .. } = of_mut(seat, side) {
            *material = now;
        }
    }
}
