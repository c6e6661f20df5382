//! What a seat step holds.

use super::stated::Manual;
use crate::trade::fit::{Feature, Position, SizeSource, ToleranceClass};
use crate::trade::heat_plan::{CoolMeans, HoleIn};
use crate::trade::material::Material;
use crate::trade::quantity::Length;
use serde::{Deserialize, Serialize};
use uom::si::length::millimeter;

/// What an oil-bathed case comes to where it isn't told (common practice, no source).
pub const USUAL_RUNNING_C: f64 = 90.0;

/// A part pressed or shrunk into its bore, or onto its shaft. The housing is what stays (the shaft,
/// where the part carries the hole).
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Seat {
    /// The part.
    pub part: String,
    /// Which of the two carries the hole.
    #[serde(default)]
    pub hole_in: HoleIn,
    /// The hole.
    pub hole: SizeSource,
    /// What goes into it.
    pub shaft: SizeSource,
    /// What the housing is made of.
    pub housing: Material,
    /// What the part is made of.
    pub part_material: Material,
    /// How long the fit is, mm.
    pub length_mm: f64,
    /// Inside diameter of the one that goes in, mm; 0 when it is solid.
    #[serde(default)]
    pub part_inside_mm: f64,
    /// The outside diameter of the boss around the hole, mm.
    pub boss_outside_mm: f64,
    /// The wall that must hold its heat, mm.
    pub wall_mm: f64,
    /// The face that is pushed, mm: the inside of the ring that goes in, the outside of the one that goes on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face_mm: Option<f64>,
    /// The opening that a shoulder behind the bore leaves, mm; none when the bore goes through.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub shoulder_mm: Option<f64>,
    /// The housing may not be hotter than this, °C.
    pub housing_limit_c: f64,
    /// The part may not be hotter than this, °C.
    pub part_limit_c: f64,
    /// It holds seals, O-rings or cured compound.
    #[serde(default)]
    pub holds_seals: bool,
    /// How it is to be done.
    #[serde(default)]
    pub way: SeatWay,
    /// What the one that goes in may be cooled with.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cool: Option<CoolMeans>,
    /// It must not be pressed cold.
    #[serde(default)]
    pub no_press: bool,
    /// The heat is an open flame rather than an oven, a hot plate or hot air.
    #[serde(default, skip_serializing_if = "is_false")]
    pub open_flame: bool,
    /// The push goes through the balls or rollers of a bearing.
    #[serde(default, skip_serializing_if = "is_false")]
    pub through_balls: bool,
    /// It is driven in with a hammer rather than pressed.
    #[serde(default, skip_serializing_if = "is_false")]
    pub struck: bool,
    /// How deep it must sit, where that is stated.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<SeatDepth>,
    /// What the manual says of heat and cold; it goes before our own plan.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub manual: Option<Manual>,
    /// How hot both parts run, °C.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub runs_at_c: Option<f64>,
    /// What holds it should the fit let go; none where nothing is told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held_by: Option<HeldBy>,
    /// Whether the part is a bearing with seals or grease of its own; none where it isn't told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sealed: Option<bool>,
}

fn is_false(it: &bool) -> bool {
    !it
}

/// How deep a part must sit, and what must stay open behind it.
#[derive(Debug, Clone, Copy, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct SeatDepth {
    /// Least depth below the face, mm; negative where it stands proud.
    pub least_mm: f64,
    /// Most depth below the face, mm.
    pub most_mm: f64,
    /// From the face to the shoulder or the end of the bore, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore_mm: Option<f64>,
    /// The gap that must stay open behind it where oil passes, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap_mm: Option<f64>,
}

impl Default for Seat {
    /// A ball bearing into an aluminium case: numbers to put one's own in place of.
    fn default() -> Self {
        let nominal = Length::new::<millimeter>(62.0);
        Self {
            part: String::new(),
            hole_in: HoleIn::Housing,
            hole: SizeSource::Class {
                nominal,
                class: ToleranceClass {
                    feature: Feature::Hole,
                    position: Position::N,
                    grade: 7,
                },
            },
            shaft: SizeSource::BearingOuter { nominal },
            housing: Material::CastAluminium,
            part_material: Material::BearingSteel,
            length_mm: 16.0,
            part_inside_mm: 54.0,
            boss_outside_mm: 84.0,
            wall_mm: 8.0,
            face_mm: None,
            shoulder_mm: None,
            housing_limit_c: 120.0,
            part_limit_c: 120.0,
            holds_seals: false,
            way: SeatWay::Heat,
            cool: None,
            no_press: false,
            open_flame: false,
            through_balls: false,
            struck: false,
            depth: None,
            manual: None,
            runs_at_c: None,
            held_by: None,
            sealed: None,
        }
    }
}

/// How a part is seated.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SeatWay {
    /// Housing warmed, part dropped in.
    #[default]
    Heat,
    /// Pressed in cold.
    Press,
}

/// What holds a part whose fit lets go when it runs hot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HeldBy {
    /// A plate, a cover or a ring over its face.
    Plate,
    /// Retaining compound.
    Compound,
    /// Nothing but the fit.
    Fit,
}

impl HeldBy {
    /// Every one, in the order the screens show them.
    pub const ALL: [Self; 3] = [Self::Plate, Self::Compound, Self::Fit];

    /// "a retainer plate, cover or snap ring".
    pub const fn words(self) -> &'static str {
        match self {
            Self::Plate => "a retainer plate, cover or snap ring",
            Self::Compound => "retaining compound",
            Self::Fit => "the fit alone",
        }
    }
}
