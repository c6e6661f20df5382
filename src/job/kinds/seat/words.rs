//! A press fit's answer in the words and figures of the screen.

use super::answer::{SeatAnswer, joining_at};
use super::data::Seat;
use crate::trade::cooling::TimeRange;
use crate::trade::heat_plan::{HoleIn, PlanKind};
use crate::trade::press::{Stress, share_of_rating};
use crate::trade::quantity::{
    Force, Length, LengthUnit, Pressure, ThermodynamicTemperature, Time, fixed, shortest,
};
use uom::si::force::kilonewton;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

/// A name and what stands beside it.
pub type Row = (&'static str, String);

/// The one number: what it is, its digits, its unit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Headline {
    /// What it is: "warm the housing evenly to".
    pub says: &'static str,
    /// The digits.
    pub number: String,
    /// The unit's symbol.
    pub unit: &'static str,
    /// The second number, where there are two: "and the part to −18 °C".
    pub also: String,
}

/// The number that matters for the way the plan goes.
pub fn headline(answer: &SeatAnswer) -> Headline {
    let plan = &answer.plan;
    let temperature = |says, to: Option<ThermodynamicTemperature>, also: String| Headline {
        says,
        number: to.map_or("—".to_owned(), celsius_text),
        unit: "°C",
        also,
    };
    let and = |words: &str, to: Option<ThermodynamicTemperature>| {
        to.map_or(String::new(), |to| format!("{words} {} °C", celsius_text(to)))
    };
    match plan.which {
        PlanKind::HeatHousing => temperature("warm the housing evenly to", plan.housing_to, String::new()),
        PlanKind::HeatPart => temperature("warm the part evenly to", plan.part_to, String::new()),
        PlanKind::CoolPart => temperature("cool the part to", plan.part_to, String::new()),
        PlanKind::CoolShaft => temperature("cool the shaft to", plan.housing_to, String::new()),
        // The colder one goes in.
        PlanKind::HeatAndCool if plan.housing_to > plan.part_to => temperature(
            "warm the housing evenly to",
            plan.housing_to,
            and("and cool the part to", plan.part_to),
        ),
        PlanKind::HeatAndCool => temperature(
            "warm the part evenly to",
            plan.part_to,
            and("and cool the shaft to", plan.housing_to),
        ),
        PlanKind::PressCold => Headline {
            says: "press cold with up to",
            number: answer
                .force
                .map_or("—".to_owned(), |force| kilonewtons(force.most)),
            unit: "kN",
            also: String::new(),
        },
        PlanKind::SlideCold => Headline {
            says: "goes in by hand, loose by",
            number: microns(plan.clearance_at_fit),
            unit: "µm",
            also: String::new(),
        },
        PlanKind::NoPlan => Headline {
            says: "no way within these limits",
            number: "—".to_owned(),
            unit: "",
            also: String::new(),
        },
    }
}

/// The facts under the plate; `press_kn` is what my press gives.
pub fn rows(answer: &SeatAnswer, press_kn: Option<f64>) -> Vec<Row> {
    let fit = &answer.interference;
    let mut rows = vec![("fit at 20 °C", fit_words(fit.least, fit.most))];
    if let Some(force) = answer.force {
        rows.push((
            "cold, the press needs",
            format!("{} to {} kN", kilonewtons(force.least), kilonewtons(force.most)),
        ));
        rows.push(("my press", press_words(answer, press_kn)));
    }
    let followed = answer.followed();
    let left = followed.clearance_at_fit;
    if left < Length::new::<millimeter>(0.0) && answer.manual.is_some() {
        rows.push((
            "by the manual’s heat or cold",
            format!("up to {} µm still tight", microns(-left)),
        ));
    } else if warms_or_cools(followed.which) {
        rows.push(("then it is loose by", format!("{} µm at least", microns(left))));
    }
    if let Some(window) = answer.window {
        rows.push(("be home within", window_words(window)));
    }
    if let Some(stress) = &answer.stress {
        rows.push(("pull around the bore", stress_words(stress)));
    }
    rows
}

/// Each way that was passed over, with its reason.
pub fn passed_over(answer: &SeatAnswer) -> Vec<Row> {
    let rejected = &answer.plan.rejected;
    rejected
        .iter()
        .map(|(way, why)| (way.words(), why.to_string()))
        .collect()
}

/// What to look for in the drawer, caliper in hand.
pub fn tool_rows(seat: &Seat, answer: &SeatAnswer) -> Vec<Row> {
    let tools = match &answer.tools {
        Ok(tools) => tools,
        Err(why) => return vec![("tools", why.to_string())],
    };
    let tube = |inside: Length, outside: Length| {
        format!(
            "inside {} or more, outside {} mm or less",
            tenths(inside, true),
            tenths(outside, false)
        )
    };
    let solid = seat.hole_in == HoleIn::Housing && seat.face_mm.unwrap_or(seat.part_inside_mm) <= 0.0;
    let driver = if solid {
        format!(
            "outside {} mm or less, solid or tube",
            tenths(tools.driver_outside, false)
        )
    } else {
        tube(tools.driver_inside, tools.driver_outside)
    };
    vec![
        ("push with", driver),
        ("stand it on", tube(tools.support_inside, tools.support_outside)),
    ]
}

/// What must be taken care of beyond the plan: a boss that stretches, a press too small.
pub fn warnings(answer: &SeatAnswer, press_kn: Option<f64>) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(stress) = &answer.stress {
        let share = stress.housing_share.get::<ratio>();
        if share > 1.0 {
            lines.push(
                "The boss is too thin for this fit: it stretches for good or cracks. Ask for a looser fit."
                    .to_owned(),
            );
        } else if share > 0.8 {
            lines.push("The boss is close to what the weakest common alloy stands.".to_owned());
        }
    }
    let too_small = share(answer, press_kn).is_some_and(|share| share > 1.0);
    let pressed = match &answer.manual {
        Some(manual) => manual.clearance_at_fit < Length::new::<millimeter>(0.0),
        None => answer.plan.which == PlanKind::PressCold,
    };
    if pressed && too_small {
        lines.push("Your press may not give that: use heat, cold, or a larger press.".to_owned());
    }
    lines
}

/// What was done, for the record.
pub fn summary(answer: &SeatAnswer) -> String {
    let Headline {
        says,
        number,
        unit,
        also,
    } = headline(answer);
    let mut words = format!("{says} {number} {unit}");
    if !also.is_empty() {
        words = format!("{words} {also}");
    }
    let fit = &answer.interference;
    words = format!("{words}; {}", fit_words(fit.least, fit.most));
    words
}

/// Lines for the drawing: (cold, joining), each its title and its sizes.
pub fn drawing_words(seat: &Seat, answer: &SeatAnswer) -> ([String; 4], [String; 4]) {
    let sizes = &answer.sizes;
    let (hole_at, part_at) = joining_at(seat, answer.followed(), answer.room);
    let (outer, inner) = match seat.hole_in {
        HoleIn::Housing => ("bore", "part"),
        HoleIn::Part => ("bore", "shaft"),
    };
    let side = |first: String, other: String, hole: Length, part: Length| {
        [
            first,
            other,
            format!("{outer} {}", thousandths(hole)),
            format!("{inner} {}", thousandths(part)),
        ]
    };
    (
        side(
            "both".to_owned(),
            "at 20 °C".to_owned(),
            sizes.hole_cold,
            sizes.part_cold,
        ),
        side(
            format!("{outer} {} °C", celsius_text(hole_at)),
            format!("{inner} {} °C", celsius_text(part_at)),
            sizes.hole_joining,
            sizes.part_joining,
        ),
    )
}

/// "4 µm loose to 39 µm tight".
pub(super) fn fit_words(least: Length, most: Length) -> String {
    let zero = Length::new::<millimeter>(0.0);
    if least >= zero {
        format!("{} to {} µm tight", microns(least), microns(most))
    } else if most > zero {
        format!("{} µm loose to {} µm tight", microns(-least), microns(most))
    } else {
        format!("{} to {} µm loose", microns(-most), microns(-least))
    }
}

/// "2:05 min, 3:07 in still air".
pub fn window_words(window: TimeRange) -> String {
    format!(
        "{} min, {} in still air",
        clock_text(window.shortest),
        clock_text(window.longest)
    )
}

/// Minutes and seconds, never more than there are.
pub fn clock_text(time: Time) -> String {
    let seconds = time.get::<second>().clamp(0.0, 359_999.0) as u32;
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// Whether something is warmed or cooled on the way.
pub const fn warms_or_cools(which: PlanKind) -> bool {
    !matches!(
        which,
        PlanKind::SlideCold | PlanKind::PressCold | PlanKind::NoPlan
    )
}

fn share(answer: &SeatAnswer, press_kn: Option<f64>) -> Option<f64> {
    let rating = Force::new::<kilonewton>(press_kn?);
    share_of_rating(&answer.force?, rating).map(|share| share.get::<ratio>())
}

fn press_words(answer: &SeatAnswer, press_kn: Option<f64>) -> String {
    match (press_kn, share(answer, press_kn)) {
        (Some(rating), Some(share)) => format!("{:.0} % of its {} kN", share * 100.0, shortest(rating)),
        _ => "rating not known: enter it on Bench".to_owned(),
    }
}

fn stress_words(stress: &Stress) -> String {
    let pull: Pressure = stress.housing_hoop;
    format!(
        "{:.0} MPa; {:.0} % of the weakest common alloy",
        pull.get::<megapascal>(),
        stress.housing_share.get::<ratio>() * 100.0
    )
}

pub(super) fn kilonewtons(force: Force) -> String {
    fixed(force.get::<kilonewton>(), 1)
}

pub(super) fn microns(length: Length) -> String {
    fixed(LengthUnit::Micrometre.value_of(length), 0)
}

pub(super) fn thousandths(length: Length) -> String {
    fixed(length.get::<millimeter>(), 3)
}

/// To the tenth, to the safe side: an inside up, an outside down.
fn tenths(length: Length, up: bool) -> String {
    // A nanometre is dust from the units.
    let tenths = (length.get::<millimeter>() * 10.0 * 1e5).round() / 1e5;
    fixed(if up { tenths.ceil() } else { tenths.floor() } / 10.0, 1)
}

/// Whole degrees where it is a whole number, else to the tenth.
pub(super) fn celsius_text(temperature: ThermodynamicTemperature) -> String {
    let celsius = (temperature.get::<degree_celsius>() * 1e6).round() / 1e6;
    fixed(celsius, u8::from(celsius.fract() != 0.0))
}
