//! A lift's answer in the words and figures of the screen.

use super::answer::{Farther, Hoisted, LiftingAnswer, LiftingError, RatedBy, eyebolts, farther, heavier};
use super::data::LiftWork;
use crate::job::field::Kept;
use crate::trade::hoist::HoistVerdict;
use crate::trade::lift::{LiftAnswer, LiftVerdict, Station};
use crate::trade::quantity::{Force, Mass, MassUnit, fixed, print_mass, significant};
use crate::trade::sling::{GRAVITY_M_S2, Hitch};
use uom::si::angle::degree;
use uom::si::force::{kilonewton, newton, pound_force};
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;

/// A name and what stands beside it.
pub type Row = (&'static str, String);

/// The one number, and the verdict under it.
#[derive(Debug, Clone, PartialEq)]
pub struct Headline {
    /// What it is.
    pub says: &'static str,
    /// Its digits.
    pub number: String,
    /// Its unit.
    pub unit: String,
    /// What it comes to.
    pub verdict: String,
    /// It must not be done so.
    pub refused: bool,
}

/// The number that matters: what hands may lift here, or what each sling leg must carry.
pub fn headline(answer: &Result<LiftingAnswer, LiftingError>, weighs_in: MassUnit) -> Headline {
    match answer {
        Ok(LiftingAnswer::Hands(hands)) => Headline {
            says: "one person may lift here",
            number: to_safe_side(hands.governing().limit, weighs_in, 2, f64::floor),
            unit: weighs_in.symbol().to_owned(),
            verdict: hands_words(hands.verdict).to_owned(),
            refused: hands.verdict == LiftVerdict::Hoist,
        },
        Ok(LiftingAnswer::Sling {
            leg_rating, hoist, ..
        }) => Headline {
            says: "each leg must be rated for",
            number: to_safe_side(*leg_rating, weighs_in, 3, f64::ceil),
            unit: weighs_in.symbol().to_owned(),
            verdict: hoist_words(hoist),
            refused: over(hoist),
        },
        Err(why) => Headline {
            says: "not so",
            number: "—".to_owned(),
            unit: String::new(),
            verdict: why.to_string(),
            refused: true,
        },
    }
}

/// A limit is never printed above itself, a need never below.
pub(super) fn to_safe_side(mass: Mass, weighs_in: MassUnit, figures: i32, side: fn(f64) -> f64) -> String {
    let value = weighs_in.value_of(mass);
    let step = 10f64.powi(value.max(1e-3).log10().floor() as i32 + 1 - figures);
    // A millionth of a step is dust from the units.
    let steps = side((value / step * 1e6).round() / 1e6);
    significant(steps * step, figures.unsigned_abs())
}

/// The facts under the plate.
pub fn rows(work: &LiftWork, answer: &Result<LiftingAnswer, LiftingError>, weighs_in: MassUnit) -> Vec<Row> {
    let kg = Kept::Kilogram;
    let symbol = kg.symbol(weighs_in);
    let mut mass = format!("{} {symbol}", kg.text(work.mass_kg, weighs_in));
    if !work.load.is_empty() {
        mass = format!("{}, {mass}", work.load);
    }
    let mut rows = vec![(LOAD, mass)];
    match answer {
        Ok(LiftingAnswer::Hands(hands)) => {
            rows.extend(hands_rows(hands));
            rows.extend(ends_rows(hands, weighs_in));
        }
        Ok(LiftingAnswer::Sling { leg, hoist, .. }) => {
            rows.push(("pull in each leg", force_words(*leg, weighs_in)));
            rows.extend(rigging_rows(work, weighs_in));
            rows.extend(hoist_rows(hoist, weighs_in));
        }
        Err(_) => {}
    }
    rows.extend(share_row(work));
    rows.extend(farther_row(work, weighs_in));
    rows
}

/// What was lifted and how, for the record.
pub fn summary(work: &LiftWork, answer: &Result<LiftingAnswer, LiftingError>, weighs_in: MassUnit) -> String {
    let head = headline(answer, weighs_in);
    let both = work.weighs_in.map(|_| other_words(work));
    let facts: Vec<String> = rows(work, answer, weighs_in)
        .into_iter()
        .map(|(name, words)| match (name, &both) {
            (LOAD, Some(other)) => (name, format!("{words} ({other})")),
            _ => (name, words),
        })
        .filter(|(name, _)| !["model", PICKED_UP, SET_DOWN].contains(name))
        .map(|(name, words)| format!("{name}: {words}"))
        .collect();
    format!(
        "{} {} {}; {}; {}",
        head.says,
        head.number,
        head.unit,
        head.verdict,
        facts.join("; ")
    )
}

/// The load as who weighs the other way reads it.
fn other_words(work: &LiftWork) -> String {
    let other = match work.told_in() {
        MassUnit::Kilogram => MassUnit::Pound,
        MassUnit::Pound => MassUnit::Kilogram,
    };
    print_mass(Mass::new::<kilogram>(work.mass_kg), other, 3).to_string()
}

/// The load's own row.
const LOAD: &str = "load";
/// The two ends of a lift by hand.
const PICKED_UP: &str = "where it is picked up";
const SET_DOWN: &str = "where it is set down";

/// The limit at both ends: the smaller one counts.
fn ends_rows(hands: &LiftAnswer, weighs_in: MassUnit) -> Vec<Row> {
    let row = |name, station: &Station| {
        let limit = to_safe_side(station.limit, weighs_in, 2, f64::floor);
        (name, format!("up to {limit} {}", weighs_in.symbol()))
    };
    vec![row(PICKED_UP, &hands.origin), row(SET_DOWN, &hands.destination)]
}

/// What the hitch and the eyebolts ask for.
fn rigging_rows(work: &LiftWork, weighs_in: MassUnit) -> Vec<Row> {
    let hitch = match work.hitch {
        Hitch::Straight => None,
        Hitch::Choker => Some((
            "choker",
            "counted at 75 % of straight, its choke 120° or wider".to_owned(),
        )),
        Hitch::Basket => Some(("basket", "each sling has two parts, at the angle told".to_owned())),
    };
    let eyebolts = eyebolts(work).map(|rating| {
        let words = match rating {
            Ok(rating) => format!(
                "each rated {} {} straight up, with a shoulder, in line with the pull",
                to_safe_side(rating, weighs_in, 3, f64::ceil),
                weighs_in.symbol()
            ),
            Err(why) => why.to_string(),
        };
        ("eyebolts", words)
    });
    hitch.into_iter().chain(eyebolts).collect()
}

/// Who carries more of a load that is off centre.
fn share_row(work: &LiftWork) -> Option<Row> {
    let share = heavier(work).ok().flatten()?.get::<ratio>() * 100.0;
    let words = format!("the nearer one carries {} %", fixed((share - 1e-6).ceil(), 0));
    Some(("off centre", words))
}

/// How the farther leg of a load off centre stands: the flatter of the two.
fn farther_row(work: &LiftWork, weighs_in: MassUnit) -> Option<Row> {
    let leg = farther(work).ok().flatten()?;
    let angle = farther_words(&leg);
    let pull = match leg.pull(Mass::new::<kilogram>(work.mass_kg), work.hitch) {
        Ok(pull) => {
            let pull = Force::new::<newton>(pull.get::<kilogram>() * GRAVITY_M_S2);
            format!(", pulls {}", force_words(pull, weighs_in))
        }
        // What forbids it stands under the number.
        Err(_) => String::new(),
    };
    Some((
        "farther leg",
        format!("{angle}{pull}; the angle told is the nearer leg’s"),
    ))
}

/// "49° from the horizontal": down, so that what is too flat is not told as what is allowed.
pub(super) fn farther_words(leg: &Farther) -> String {
    let degrees = (leg.angle.get::<degree>() + 1e-6).floor();
    format!("{}° from the horizontal", fixed(degrees, 0))
}

fn hands_words(verdict: LiftVerdict) -> &'static str {
    match verdict {
        LiftVerdict::OnePerson => "One person can.",
        LiftVerdict::TwoPeople => "Two people, each with a hold and room to stand.",
        LiftVerdict::Hoist => "Not by hand: use a hoist.",
    }
}

fn hands_rows(hands: &LiftAnswer) -> Vec<Row> {
    let station = hands.governing();
    let index = station
        .index
        .map_or("no weight is light enough".to_owned(), |index| fixed(index, 1));
    let end = if hands.destination_governs {
        SET_DOWN
    } else {
        PICKED_UP
    };
    vec![
        ("lifting index", index),
        ("decided", end.to_owned()),
        ("takes most off", worst(station)),
        (
            "model",
            "revised NIOSH lifting equation, a lift now and then".to_owned(),
        ),
    ]
}

/// The factor that takes most off the limit.
fn worst(station: &Station) -> String {
    let m = station.multipliers;
    let factors = [
        ("the reach", m.horizontal),
        ("the height", m.vertical),
        ("the way up", m.distance),
        ("the turn", m.asymmetry),
        ("the grip", m.coupling),
    ];
    let worst = factors.into_iter().min_by(|a, b| a.1.total_cmp(&b.1));
    match worst {
        Some((name, factor)) if factor < 0.995 => format!("{name}, × {}", fixed(factor, 2)),
        _ => "nothing".to_owned(),
    }
}

fn over(hoist: &Hoisted) -> bool {
    match hoist {
        Hoisted::Refused(_) => true,
        Hoisted::Margin(margin, _) => margin.verdict == HoistVerdict::Refused,
        Hoisted::Unknown => false,
    }
}

fn hoist_words(hoist: &Hoisted) -> String {
    match hoist {
        Hoisted::Unknown => "The hoist’s rating is not known: enter it on Bench.".to_owned(),
        Hoisted::Refused(why) => why.to_string(),
        Hoisted::Margin(margin, _) => match margin.verdict {
            HoistVerdict::Takes => "The hoist takes it.".to_owned(),
            HoistVerdict::Thin => "The hoist takes it, with little left: no jerks, nothing stuck.".to_owned(),
            HoistVerdict::Refused => "Too heavy for the hoist there: bring the boom in.".to_owned(),
        },
    }
}

fn hoist_rows(hoist: &Hoisted, weighs_in: MassUnit) -> Vec<Row> {
    let Hoisted::Margin(margin, by) = hoist else {
        return Vec::new();
    };
    let by = match by {
        RatedBy::Plate => "its plate, there",
        RatedBy::LeastOfPlate => "its plate, boom right out",
        RatedBy::Moment => "estimate by the moment; the plate comes first",
        RatedBy::OneFigure => "as told on Bench",
    };
    // Up, so that what is over its rating is not told as 100 %.
    let share = (margin.share.get::<ratio>() * 100.0 - 1e-6).ceil();
    vec![
        (
            "hoist carries",
            format!("{}, {by}", print_mass(margin.rating, weighs_in, 3)),
        ),
        (
            "left",
            format!(
                "{}; {} % used",
                print_mass(margin.spare, weighs_in, 3),
                fixed(share, 0)
            ),
        ),
    ]
}

pub(super) fn force_words(force: Force, weighs_in: MassUnit) -> String {
    match weighs_in {
        MassUnit::Pound => format!("{} lbf", fixed(force.get::<pound_force>(), 0)),
        MassUnit::Kilogram => format!("{} kN", fixed(force.get::<kilonewton>(), 2)),
    }
}
