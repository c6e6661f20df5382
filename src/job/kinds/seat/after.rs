//! What becomes of a fit once it is seated: what is left of it when the machine runs, what holds the part
//! then, and what it takes from a bearing.

use super::answer::{SeatAnswer, nominal};
use super::data::{HeldBy, Seat};
use super::loose::held;
use super::words::{Row, fit_words, microns};
use crate::trade::application::Held;
use crate::trade::application::sizes::{ANAEROBIC_GAP_MM, CENTRED_GAP_MM};
use crate::trade::bearing_fit::{Ring, SEALED_LIMIT_C, clearance_lost};
use crate::trade::cooling::TimeRange;
use crate::trade::fit::{Grip, RunningFit, SizeSource};
use crate::trade::heat_plan::{HeatMeans, HoleIn, PlanKind, oven_time};
use crate::trade::material::Material;
use crate::trade::quantity::{Length, ThermodynamicTemperature, Time, fixed, shortest};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

fn celsius(c: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(c)
}

/// The bearing's ring that is fitted, where the part is a rolling bearing.
pub fn ring(seat: &Seat) -> Option<Ring> {
    let bearing = seat.part_material == Material::BearingSteel
        || matches!(seat.shaft, SizeSource::BearingOuter { .. })
        || matches!(seat.hole, SizeSource::BearingBore { .. });
    bearing.then_some(match seat.hole_in {
        HoleIn::Housing => Ring::Outer,
        HoleIn::Part => Ring::Inner,
    })
}

/// The facts of the fit once it is seated, and of the heat it is seated with.
pub fn rows(seat: &Seat, answer: &SeatAnswer) -> Vec<Row> {
    let mut rows = soak_rows(seat, answer);
    if let Some(hot) = &answer.running {
        rows.push(("fit as it runs", running_words(seat, hot)));
    }
    if let Some(held_by) = seat.held_by {
        rows.push(("held by", held_by.words().to_owned()));
    }
    if let Some(ring) = ring(seat) {
        let (least, most) = clearance_lost(ring, &answer.interference);
        rows.push((
            "the fit takes off the bearing",
            format!(
                "{} to {} µm of its clearance, about {} % of what is tight",
                microns(least),
                microns(most),
                fixed(ring.share() * 100.0, 0)
            ),
        ));
    }
    rows
}

/// "at 90 °C, 7 to 50 µm loose".
fn running_words(seat: &Seat, hot: &RunningFit) -> String {
    let at = format!("at {} °C", fixed(hot.at.get::<degree_celsius>(), 0));
    let told = match seat.runs_at_c {
        Some(_) => at,
        None => format!("{at} (usual, not told)"),
    };
    let spread = hot.usual.least - hot.widest.least;
    let alloys = match microns(spread).as_str() {
        "0" => String::new(),
        spread => format!("; by the alloy up to {spread} µm either way"),
    };
    format!("{told}, {}{alloys}", fit_words(hot.usual.least, hot.usual.most))
}

/// How long in the oven, or what to go by on a hot plate: only for what the manual leaves open.
fn soak_rows(seat: &Seat, answer: &SeatAnswer) -> Vec<Row> {
    let heat = seat.manual.and_then(|manual| manual.heat);
    let heats = heat.is_some()
        || (seat.manual.is_none()
            && matches!(
                answer.plan.which,
                PlanKind::HeatHousing | PlanKind::HeatPart | PlanKind::HeatAndCool
            ));
    let oven = || {
        let time = oven_time(section(seat))?;
        Some(("in an oven up to heat", soak_words(time, section(seat))))
    };
    let plate = (
        "on a hot plate",
        "no time to go by: turn it, and read the side away from the plate".to_owned(),
    );
    if !heats {
        return Vec::new();
    }
    match heat.and_then(|heat| heat.means) {
        None => oven().into_iter().chain([plate]).collect(),
        Some(HeatMeans::Oven) => oven().into_iter().collect(),
        Some(HeatMeans::HotPlate) => vec![plate],
        Some(HeatMeans::OilBath | HeatMeans::Induction | HeatMeans::HotAir) => Vec::new(),
    }
}

/// The thickest section of what is heated: the wall told, or the ring around the hole.
fn section(seat: &Seat) -> Length {
    let around = (seat.boss_outside_mm - nominal(&seat.hole).get::<millimeter>()) / 2.0;
    Length::new::<millimeter>(seat.wall_mm.max(around))
}

/// "9 to 14 min for 11 mm of section".
fn soak_words(time: TimeRange, section: Length) -> String {
    // Up to the next minute: cold in the middle is worse than a minute more.
    let minutes = |time: Time| fixed((time.get::<minute>() - 1e-9).ceil(), 0);
    format!(
        "{} to {} min for {} mm of section",
        minutes(time.shortest),
        minutes(time.longest),
        fixed(section.get::<millimeter>(), 0)
    )
}

/// What has to be thought of before it is seated, since nothing is seen of it afterwards.
pub fn warnings(seat: &Seat, answer: &SeatAnswer) -> Vec<String> {
    let mut lines = Vec::new();
    lines.extend(seals_asked(seat, answer));
    match answer.interference.grip() {
        Grip::Loose => lines.extend(loose_cold(seat, answer)),
        Grip::Doubtful | Grip::Tight => lines.extend(loose_hot(seat, answer)),
    }
    lines
}

/// A bearing that nobody has said anything of may have seals.
fn seals_asked(seat: &Seat, answer: &SeatAnswer) -> Option<String> {
    let plan = answer.followed();
    let hottest = plan.housing_to.into_iter().chain(plan.part_to);
    let over = hottest.into_iter().any(|to| to > celsius(SEALED_LIMIT_C));
    (ring(seat).is_some() && seat.sealed.is_none() && over).then(|| {
        format!(
            "Has the bearing seals or grease of its own? Then {SEALED_LIMIT_C:.0} °C is its limit: say so under “When it runs”."
        )
    })
}

/// A part that is to stay put and is loose at 20 °C.
fn loose_cold(seat: &Seat, answer: &SeatAnswer) -> Option<String> {
    let least = answer.interference.least;
    // What has to run true sits off centre by up to half the gap.
    let (what, gap_mm) = match held(seat) {
        Some(Held::Race) => ("race", CENTRED_GAP_MM),
        Some(Held::OnShaft) => ("part", CENTRED_GAP_MM),
        Some(Held::Bush) | None => ("part", ANAEROBIC_GAP_MM),
    };
    let gap = -least.get::<millimeter>();
    let filled = seat.held_by == Some(HeldBy::Compound) && gap <= gap_mm + 1e-9;
    if filled || seat.held_by == Some(HeldBy::Plate) {
        return None;
    }
    let remedy = if gap <= gap_mm + 1e-9 {
        format!(
            "Retaining compound fills up to {} mm on the diameter here, in clean and dry bores; else a sleeve or a new case",
            shortest(gap_mm)
        )
    } else {
        format!(
            "That is more than the {} mm a retaining compound is good for here: a sleeve, or a new case",
            shortest(gap_mm)
        )
    };
    Some(format!(
        "Loose at 20 °C by up to {} µm: the {what} will turn in its seat. {remedy}. \
         Leave it only where the manual wants it loose.",
        microns(-least)
    ))
}

/// A part whose fit lets go when it runs hot.
fn loose_hot(seat: &Seat, answer: &SeatAnswer) -> Option<String> {
    let hot = answer.running.as_ref()?;
    // What the usual alloy holds, another of the same name may let go.
    let loose = match (hot.usual.grip(), hot.widest.grip()) {
        (Grip::Tight, Grip::Tight) => return None,
        (Grip::Tight, Grip::Doubtful | Grip::Loose) | (Grip::Doubtful, _) => "may be loose",
        (Grip::Loose, _) => "is loose",
    };
    let at = fixed(hot.at.get::<degree_celsius>(), 0);
    match seat.held_by {
        Some(HeldBy::Plate | HeldBy::Compound) => None,
        Some(HeldBy::Fit) => Some(format!(
            "At {at} °C it {loose} and has only its fit: a tighter class, a retainer plate or retaining compound would hold it."
        )),
        None => Some(format!(
            "At {at} °C it {loose}. Look what holds it then: a retainer plate, a snap ring, retaining compound. \
             With none of them it wants a tighter class."
        )),
    }
}

/// How the plan is done: a part that is loose is no plain slide fit.
pub fn how(seat: &Seat, answer: &SeatAnswer) -> &'static str {
    let kept = seat.held_by.is_some_and(|by| by != HeldBy::Fit);
    match answer.plan.which {
        PlanKind::SlideCold if answer.interference.grip() == Grip::Loose && !kept => {
            "It goes in by hand, and would come out by hand: see below before it goes in."
        }
        which => which.how(),
    }
}

/// For the record: ", hot, at 90 °C, 7 to 50 µm loose, held by a retainer plate".
pub(super) fn recorded(seat: &Seat, answer: &SeatAnswer) -> String {
    let mut words = String::new();
    if let (Some(hot), true) = (&answer.running, seat.runs_at_c.is_some()) {
        words = format!("; {}", running_words(seat, hot));
    }
    if let Some(held_by) = seat.held_by {
        words = format!("{words}; held by {}", held_by.words());
    }
    words
}
