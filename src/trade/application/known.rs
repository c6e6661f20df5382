//! A joint with every gap filled the cautious way: what the rules look at.

use super::questions::asked;
use super::table::Field;
use super::{Apart, Application, Face, Fluid, Hole, JointKind, ManualWord, PlugSeal};
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
    asked(joint)
        .filter(|(_, chosen)| chosen.is_none())
        .map(|(row, _)| Assumed {
            question: row.id,
            words: row.assumed,
        })
        .collect()
}

// What an open number is taken as; the words are beside the questions.
const OPEN_THREAD_MM: f64 = 8.0;
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
}

impl Known {
    pub(crate) fn of(joint: &Application) -> Self {
        let joint = &counted(joint);
        let open_gap_mm = match joint.kind {
            JointKind::Cylindrical => None,
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
        }
    }

    pub(crate) fn is(&self, kinds: &[JointKind]) -> bool {
        kinds.contains(&self.kind)
    }

    pub(crate) fn plastic(&self) -> bool {
        self.face == Some(Face::Thermoplastic)
    }
}

/// The joint with every answer cleared that isn't asked for or makes no sense.
fn counted(joint: &Application) -> Application {
    let mut counts = [false; Field::ALL.len()];
    for (row, chosen) in asked(joint) {
        counts[row.field as usize] = chosen.is_some();
    }
    let mut kept = joint.clone();
    for field in Field::ALL {
        if !counts[field as usize] {
            clear(&mut kept, field);
        }
    }
    kept
}

fn clear(joint: &mut Application, field: Field) {
    match field {
        Field::Manual => joint.manual = None,
        Field::Precoated => joint.precoated = None,
        Field::Locked => joint.locked = None,
        Field::Face => joint.face = None,
        Field::Assembled => joint.assembled = None,
        Field::Thread => joint.thread = None,
        Field::Hole => joint.hole = None,
        Field::Apart => joint.apart = None,
        Field::Vibration => joint.vibration = None,
        Field::Seal => joint.seal = None,
        Field::Rigid => joint.rigid = None,
        Field::Gap => joint.gap = None,
        Field::Fluid => joint.fluid = None,
        Field::Temperature => joint.temperature = None,
        Field::OxygenSensor => joint.oxygen_sensor = None,
        Field::OilWays => joint.oil_ways = None,
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
        assert_eq!(open(JointKind::FlangeRigid).fluid, Fluid::Fuel);
        assert!(open(JointKind::FlangeRigid).oxygen_sensor && open(JointKind::FlangeRigid).oil_ways);
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
