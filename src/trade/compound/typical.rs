//! Typical label figures by class, used until a bottle's own are known.

use super::{CompoundClass, Family};
use crate::trade::application::{Application, Face, JointKind, Known};
use crate::trade::cure::{Chemistry, CureSpec, LabelTimes, Milestone, NoCure, ShopHistory, Substrate};
use crate::trade::moment::Moment;
use crate::trade::quantity::{Length, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};

/// Typical figures of a family.
struct Typical {
    family: Family,
    at_celsius: f64,
    /// The span in which it skins or grips; be done by the lower end.
    grips_min: (f64, f64),
    /// Parts stay where they are; `None`: not before full cure.
    fixture_min: Option<f64>,
    full_h: f64,
}

/// One row a family. Common practice, no source: anaerobics 10 to 30 min fixture and 24 h full at 22 °C
/// on steel; silicone skin in 5 to 20 min, and 2 to 3 mm in the first 24 h at 23 °C and 50 % humidity;
/// liquid gasket joined once tacky, from memory.
const TYPICAL: [Typical; 3] = [
    Typical {
        family: Family::Anaerobic,
        at_celsius: 22.0,
        grips_min: (10.0, 30.0),
        fixture_min: Some(30.0),
        full_h: 24.0,
    },
    Typical {
        family: Family::Silicone,
        at_celsius: 23.0,
        grips_min: (5.0, 20.0),
        fixture_min: None,
        full_h: 24.0,
    },
    Typical {
        family: Family::SolventDrying,
        at_celsius: 23.0,
        grips_min: (10.0, 20.0),
        fixture_min: None,
        full_h: 24.0,
    },
];

/// When oil may touch each at the label's temperature, in a close gap on steel, hours: common practice, no
/// source. Silicone isn't among them: it waits until it has cured through, by its depth, which is never
/// under 12 h. A label's own figure always goes first.
const OIL_H: [(CompoundClass, f64); 8] = [
    (CompoundClass::ThreadlockLow, 6.0),
    (CompoundClass::ThreadlockMedium, 6.0),
    (CompoundClass::ThreadlockHigh, 6.0),
    (CompoundClass::ThreadlockWicking, 6.0),
    (CompoundClass::RetainingCompound, 6.0),
    (CompoundClass::AnaerobicFlange, 6.0),
    (CompoundClass::AnaerobicPipe, 4.0),
    (CompoundClass::SemiDryingGasket, 2.0),
];

/// The depth of edge that a silicone joint must have cured unless it says otherwise, mm: the depth of an open bead.
/// A gap wider than that takes a bead as deep as itself (common practice, no source).
const BEAD_MM: f64 = 2.5;

impl CompoundClass {
    fn typical(self) -> Option<&'static Typical> {
        TYPICAL.iter().find(|row| row.family == self.family())
    }

    fn typical_oil(self) -> Option<Time> {
        let row = OIL_H.iter().find(|row| row.0 == self);
        row.map(|row| Time::new::<hour>(row.1))
    }

    /// The span in which it skins or grips, as labels usually give it: have the joint closed and in
    /// place by the lower end. `None` where nothing presses.
    pub fn assembly_time(self) -> Option<(Time, Time)> {
        if self == Self::ThreadlockWicking {
            return None;
        }
        let (low, high) = self.typical()?.grips_min;
        Some((Time::new::<minute>(low), Time::new::<minute>(high)))
    }

    /// Typical cure figures for this joint; `None` for what doesn't cure. A bottle's own label comes first.
    pub fn typical_cure(self, joint: &Application) -> Option<CureSpec> {
        self.typical_cure_of(&Known::of(joint))
    }

    /// The same for a joint known that far.
    pub(super) fn typical_cure_of(self, known: &Known) -> Option<CureSpec> {
        let typical = self.typical()?;
        let mm = Length::new::<millimeter>;
        let gap_mm = known.gap_mm.filter(|_| faces_or_bore(known.kind)).unwrap_or(0.0);
        let chemistry = match self.family() {
            Family::Anaerobic => Chemistry::Anaerobic {
                substrate: known.face.into(),
                gap: mm(gap_mm),
                activator: false,
            },
            Family::Silicone => Chemistry::MoistureSilicone {
                depth: mm(gap_mm.max(BEAD_MM)),
            },
            Family::SolventDrying => Chemistry::SolventDrying,
            Family::NonCuring => return None,
        };
        let label = LabelTimes {
            assembly: self.assembly_time().map(|(low, _)| low),
            fixture: typical.fixture_min.map(Time::new::<minute>),
            fit_for_oil: self.typical_oil(),
            ..LabelTimes::full_only(
                ThermodynamicTemperature::new::<degree_celsius>(typical.at_celsius),
                Time::new::<hour>(typical.full_h),
            )
        };
        Some(CureSpec { chemistry, label })
    }
}

/// When it skins or grips in a joint it went on at `started`, at the earliest; true where its label names
/// no such time and the kind's usual one was taken, the lower end of [`TYPICAL`], common practice, no source.
///
/// # Errors
/// When the figures make no sense.
pub fn skins_at(spec: &CureSpec, started: Moment, shop: &ShopHistory) -> Result<(Moment, bool), NoCure> {
    let usual = spec.label.assembly.is_none();
    let mut spec = spec.clone();
    if usual {
        let family = match spec.chemistry {
            Chemistry::Anaerobic { .. } => Family::Anaerobic,
            Chemistry::MoistureSilicone { .. } => Family::Silicone,
            Chemistry::SolventDrying => Family::SolventDrying,
        };
        let row = TYPICAL.iter().find(|row| row.family == family);
        let lower = row.map(|row| Time::new::<minute>(row.grips_min.0));
        // Never after the parts hold by themselves.
        let holds = spec.label.time_to(Milestone::Fixture);
        spec.label.assembly = match (lower, holds) {
            (Some(lower), Some(holds)) if holds < lower => Some(holds),
            (lower, _) => lower,
        };
    }
    let milestone = Milestone::AssemblyLimit;
    let done = spec.reached_at(milestone, started, shop)?;
    Ok((done.binding(milestone), usual))
}

/// Threads are what labels are written for; only faces and bores have a gap of their own.
fn faces_or_bore(kind: JointKind) -> bool {
    matches!(
        kind,
        JointKind::FlangeRigid
            | JointKind::FlangeFlexible
            | JointKind::CaseHalves
            | JointKind::ThreeWay
            | JointKind::Cylindrical
            | JointKind::ShaftSeal
    )
}

impl From<Option<Face>> for Substrate {
    /// The metal of a face; plastic and "don't know" count as unknown.
    fn from(face: Option<Face>) -> Self {
        match face {
            Some(Face::BrassOrCopper) => Self::BrassOrCopper,
            Some(Face::SteelOrIron) => Self::SteelOrIron,
            Some(Face::CastAluminium) => Self::Aluminium,
            Some(Face::Stainless) => Self::Stainless,
            Some(Face::Plated) => Self::Plated,
            Some(Face::Thermoplastic) | None => Self::Unknown,
        }
    }
}
