//! A joint with every gap filled the cautious way: what the rules look at.

use super::field::Field;
use super::questions::asked;
use super::sizes::OPEN_THREAD_MM;
use super::{Apart, Application, Face, Fluid, Held, Hole, JointKind, ManualWord, Outside, Partner, PlugSeal};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// A "don't know" and what it was taken as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Assumed {
    /// The question left open.
    pub question: &'static str,
    /// What it was taken as, as a sentence.
    pub words: &'static str,
}

/// What "don't know" was taken as, for each question that matters and is open.
pub fn assumed(joint: &Application) -> Vec<Assumed> {
    let rows = asked(joint).0.into_iter();
    rows.filter(|(_, chosen)| chosen.is_none())
        .map(|(row, _)| Assumed {
            question: row.id,
            words: row.assumed,
        })
        .collect()
}

// What an open number is taken as; the words are beside the questions.
const OPEN_MACHINED_GAP_MM: f64 = 0.25;
const OPEN_COVER_GAP_MM: f64 = 3.0;
const OPEN_HEAT_CELSIUS: f64 = 230.0;

/// A joint as the rules see it: only the answers that count, the rest filled in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Known {
    pub(crate) kind: JointKind,
    pub(crate) manual: ManualWord,
    pub(crate) precoated: bool,
    pub(crate) locked: bool,
    /// `None`: some metal that cures slowly.
    pub(crate) face: Option<Face>,
    pub(crate) assembled: bool,
    pub(crate) thread_mm: f64,
    /// `None`: blind, or through to a fluid; both are catered for.
    pub(crate) hole: Option<Hole>,
    pub(crate) apart: Apart,
    pub(crate) vibration: bool,
    /// `None`: find out first.
    pub(crate) seal: Option<PlugSeal>,
    pub(crate) rigid: bool,
    /// `None` only where parts slide together: measure first.
    pub(crate) gap_mm: Option<f64>,
    pub(crate) fluid: Fluid,
    pub(crate) celsius: f64,
    pub(crate) oxygen_sensor: bool,
    pub(crate) oil_ways: bool,
    /// `None`: what suits it worst.
    pub(crate) partner: Option<Partner>,
    pub(crate) plastic_part: bool,
    /// `None`: something that has to run true.
    pub(crate) held: Option<Held>,
    /// `None`: nothing goes on it unless the manual names it.
    pub(crate) outside: Option<Outside>,
}

impl Known {
    pub(crate) fn of(joint: &Application) -> Self {
        let (rows, counted) = asked(joint);
        let asked = |field| rows.iter().any(|(row, _)| row.field == field);
        let mut known = Self::fill(&counted);
        // What is not asked is no reason to refuse anything.
        if !asked(Field::Fluid) {
            known.fluid = Fluid::Nothing;
        }
        known.oxygen_sensor &= asked(Field::OxygenSensor);
        known
    }

    /// Every answer counts, whether it is asked for or not.
    pub(crate) fn fill(joint: &Application) -> Self {
        let open_gap_mm = match joint.kind {
            JointKind::Cylindrical => None,
            JointKind::ShaftSeal | JointKind::CorePlug | JointKind::TaperSeat => Some(0.0),
            JointKind::FlangeFlexible | JointKind::ThreeWay => Some(OPEN_COVER_GAP_MM),
            _ => Some(OPEN_MACHINED_GAP_MM),
        };
        Self {
            kind: joint.kind,
            manual: joint.manual.unwrap_or(ManualWord::NotStated),
            precoated: joint.precoated.unwrap_or(false),
            locked: joint.locked.unwrap_or(false),
            face: joint.face,
            assembled: joint.assembled.unwrap_or(false),
            thread_mm: joint
                .thread
                .map_or(OPEN_THREAD_MM, |size| size.get::<millimeter>()),
            hole: joint.hole,
            apart: joint.apart.unwrap_or(Apart::Service),
            vibration: joint.vibration.unwrap_or(true),
            seal: joint.seal,
            rigid: joint.rigid.unwrap_or(false),
            gap_mm: joint.gap.map(|gap| gap.get::<millimeter>()).or(open_gap_mm),
            fluid: joint.fluid.unwrap_or(Fluid::Fuel),
            celsius: joint
                .temperature
                .map_or(OPEN_HEAT_CELSIUS, |heat| heat.get::<degree_celsius>()),
            oxygen_sensor: joint.oxygen_sensor.unwrap_or(true),
            oil_ways: joint.oil_ways.unwrap_or(true),
            partner: joint.partner,
            plastic_part: joint.plastic_part.unwrap_or(false),
            held: joint.held,
            outside: joint.outside,
        }
    }

    pub(crate) fn is(&self, kinds: &[JointKind]) -> bool {
        kinds.contains(&self.kind)
    }

    pub(crate) fn plastic(&self) -> bool {
        self.face == Some(Face::Thermoplastic)
    }

    /// The threads may be in aluminium: it is told, or what is told doesn't rule it out.
    pub(crate) fn may_be_aluminium(&self) -> bool {
        match self.face {
            None | Some(Face::CastAluminium) => true,
            Some(Face::Stainless | Face::Plated) => matches!(self.partner, None | Some(Partner::Aluminium)),
            Some(Face::BrassOrCopper | Face::SteelOrIron | Face::Thermoplastic) => false,
        }
    }

    /// The threads are in aluminium, for all that is told.
    pub(crate) fn in_aluminium(&self) -> bool {
        let stainless_in = self.face == Some(Face::Stainless) && self.partner == Some(Partner::Aluminium);
        self.face == Some(Face::CastAluminium) || stainless_in
    }

    /// Stainless in what it seizes on: yes, no, or not known.
    pub(crate) fn galls(&self) -> Option<bool> {
        match (self.face, self.partner) {
            (Some(Face::Stainless), None) => None,
            (Some(Face::Stainless), Some(partner)) => Some(partner != Partner::Other),
            _ => Some(false),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What an open number is taken as is what the words beside its question say.
    #[test]
    fn open_numbers_are_what_the_words_say() {
        let open = |kind| Known::of(&Application::new(kind));
        let said = |kind, question: &str| {
            assumed(&Application::new(kind))
                .into_iter()
                .find(|open| open.question == question)
                .map(|open| open.words)
        };
        let bolt = open(JointKind::ThreadedFastener);
        assert_eq!(bolt.thread_mm, 8.0);
        assert!(said(JointKind::ThreadedFastener, "thread").is_some_and(|words| words.contains("M8")));
        assert_eq!(bolt.celsius, 230.0);
        assert!(
            said(JointKind::ThreadedFastener, "temperature").is_some_and(|words| words.contains("230 °C"))
        );
        for kind in [JointKind::FlangeRigid, JointKind::CaseHalves] {
            assert_eq!(open(kind).gap_mm, Some(0.25));
            assert!(said(kind, "gap").is_some_and(|words| words.contains("0.25 mm")));
        }
        for kind in [JointKind::FlangeFlexible, JointKind::ThreeWay] {
            assert_eq!(open(kind).gap_mm, Some(3.0));
            assert!(said(kind, "gap").is_some_and(|words| words.contains("3 mm")));
        }
        assert_eq!(open(JointKind::Cylindrical).gap_mm, None);
        let cover = open(JointKind::FlangeFlexible);
        assert_eq!(cover.fluid, Fluid::Fuel);
        assert!(cover.oil_ways);
        // Not asked where the faces are machined: no reason to refuse a bottle.
        assert_eq!(open(JointKind::FlangeRigid).fluid, Fluid::Nothing);
        assert_eq!(bolt.apart, Apart::Service);
        assert!(bolt.vibration && !bolt.precoated && !bolt.locked && !bolt.assembled);
    }

    #[test]
    fn numbers_that_make_no_sense_count_as_open() {
        use uom::si::f64::Length;
        for thread_mm in [-1.0, f64::NAN, f64::INFINITY] {
            let mut joint = Application::new(JointKind::Stud);
            joint.thread = Some(Length::new::<millimeter>(thread_mm));
            assert_eq!(Known::of(&joint).thread_mm, 8.0);
            assert!(assumed(&joint).iter().any(|open| open.question == "thread"));
        }
    }
}
