//! Changing one field of a step by its name.

use super::CONDITIONS;
use super::fields::layout;
use crate::job::fasteners::layout_words;
use crate::job::id::{PartId, ReadingId};
use crate::job::kinds::seat::source::follow_materials;
use crate::job::kinds::{self, Bore, Fasten, Journal, LiftWay, Limit, Reuse, Seat, SeatWay, Work};
use crate::job::parts::{Part, PartPlace};
use crate::job::planning::PlanRefused;
use crate::job::sheet::{Sheet, Step, StepId};
use crate::trade::application::{Application, JointKind, answer};
use crate::trade::fit::{FitCode, SizeSource};
use crate::trade::material::Material;
use crate::trade::order::{MOST_BOLTS, Pass};
use crate::trade::quantity::{Length, ThermodynamicTemperature, decimal, parse_torque};
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

type Set = Result<(), PlanRefused>;

fn refuse<T>(words: impl Into<String>) -> Result<T, PlanRefused> {
    Err(PlanRefused::Field(words.into()))
}

/// Changes the field `id` of `step` to what was entered; where it is refused nothing is changed.
///
/// # Errors
/// A sentence that says what to enter.
pub fn set(sheet: &Sheet, step: &mut Step, id: &str, value: &str) -> Set {
    let mut path = id.split('/');
    let (first, second, third) = (
        path.next().unwrap_or_default(),
        path.next().unwrap_or_default(),
        path.next().unwrap_or_default(),
    );
    match (first, second, third) {
        ("title", ..) if value.trim().is_empty() => return refuse("A step needs a title."),
        ("title", ..) => step.title = value.trim().to_owned(),
        ("notes", ..) => step.notes = value.trim().to_owned(),
        ("minutes", ..) => step.minutes = maybe(value, 0.0, 10_000.0)?,
        ("kind", ..) => {
            step.work = kinds::blank(value).ok_or(PlanRefused::Field("Choose a kind of work.".to_owned()))?
        }
        ("wait", "add", _) => return wait_for(sheet, step, value),
        ("wait", ..) => step.waits_for.retain(|id| id.0.to_string() != second),
        ("part", "add", _) => step.parts.push(Part {
            id: PartId::default(),
            name: free_name("part", step.parts.iter().map(|part| part.name.as_str())),
            count: 1,
            new_part: false,
            place: PartPlace::NotSaid,
        }),
        ("part", at, "remove") => drop(step.parts.remove(index(at, step.parts.len())?)),
        ("part", at, field) => {
            let at = index(at, step.parts.len())?;
            let part = step.parts.get_mut(at).ok_or(PlanRefused::NoStep)?;
            match field {
                "name" => part.name = named(value)?,
                "count" => part.count = whole(value, 1, 9_999)? as u32,
                _ => part.new_part = value == "yes",
            }
        }
        _ => set_work(&mut step.work, [first, second, third], value)?,
    }
    step.number();
    Ok(())
}

fn wait_for(sheet: &Sheet, step: &mut Step, value: &str) -> Set {
    let id = value.parse().map(StepId).map_err(|_| PlanRefused::NoStep)?;
    let before = match sheet.place(step.id) {
        Some(_) => sheet.before(step.id),
        None => &sheet.steps,
    };
    if !before.iter().any(|earlier| earlier.id == id) {
        return Err(PlanRefused::Order);
    }
    if !step.waits_for.contains(&id) {
        step.waits_for.push(id);
    }
    Ok(())
}

fn set_work(work: &mut Work, path: [&str; 3], value: &str) -> Set {
    let yes = value == "yes";
    match (work, path) {
        (Work::Fasten(fasten), ["joint", ..]) => match &mut fasten.compound {
            Some(joint) => return set_joint(joint, path, value),
            None => return Err(PlanRefused::NoStep),
        },
        (Work::Bond(bond), ["joint", ..]) => return set_joint(&mut bond.application, path, value),
        (Work::Bond(bond), _) => bond.joint = value.trim().to_owned(),
        (Work::Clean(clean), ["solvent", ..]) => clean.solvent = yes,
        (Work::Clean(clean), _) => clean.compressed_air = yes,
        (Work::Check(check), ["reading", "add", _]) => check.readings.push(Limit {
            id: ReadingId::default(),
            name: free_name("reading", check.readings.iter().map(|limit| limit.name.as_str())),
            unit: "mm".to_owned(),
            least: None,
            most: None,
        }),
        (Work::Check(check), ["reading", at, "remove"]) => {
            drop(check.readings.remove(index(at, check.readings.len())?));
        }
        (Work::Check(check), ["reading", at, field]) => {
            let at = index(at, check.readings.len())?;
            let others = check.asked();
            if let Some(limit) = check.readings.get_mut(at) {
                return set_limit(limit, field, value, &others);
            }
        }
        (Work::Check(check), ["bore", "add", _]) => check.bores.push(Bore {
            id: ReadingId::default(),
            name: free_name("bore", check.bores.iter().flat_map(Bore::names)),
            material: Material::CastAluminium,
            least_mm: None,
            most_mm: None,
            out_of_round_mm: None,
            taper_mm: None,
            journal: None,
        }),
        (Work::Check(check), ["bore", at, "remove"]) => {
            drop(check.bores.remove(index(at, check.bores.len())?))
        }
        (Work::Check(check), ["bore", at, field]) => {
            let at = index(at, check.bores.len())?;
            let names = check.bores.iter().flat_map(Bore::names);
            let same = names.filter(|name| *name == value.trim()).count();
            if let Some(bore) = check.bores.get_mut(at) {
                let own = match field {
                    "name" => bore.name == value.trim(),
                    "journal_name" => bore.journal.as_ref().is_some_and(|own| own.name == value.trim()),
                    _ => true,
                };
                if same > 0 && !own {
                    return refuse("Another bore or journal of this step has that name.");
                }
                return set_bore(bore, field, value);
            }
        }
        (Work::Fit(fit), [_, field, _]) => match field {
            "part" => fit.part = value.trim().to_owned(),
            "way" => fit.orientation = value.trim().to_owned(),
            "new" => fit.new_part = yes,
            _ => fit.spring = yes,
        },
        (Work::Fasten(fasten), [_, field, _]) => return set_fasten(fasten, field, value),
        (Work::Seat(seat), [_, field, _]) => return set_seat(seat, field, value),
        (Work::Lift(lift), [_, field, _]) => match field {
            "load" => lift.load = value.trim().to_owned(),
            "mass" => lift.mass_kg = number(value, 0.1, 5_000.0)?,
            "under" => lift.under_load = yes,
            _ => return set_lift_way(&mut lift.way, field, value),
        },
        (Work::Turn(turn), [_, field, _]) => match field {
            "what" => turn.what = value.trim().to_owned(),
            _ => turn.expect = value.trim().to_owned(),
        },
        (Work::Fill(fill), [_, field, _]) => match field {
            "fluid" => fill.fluid = value.trim().to_owned(),
            "hot" => fill.hot = yes,
            _ => fill.litres = number(value, 0.01, 1_000.0)?,
        },
        (Work::Check(_), _) => return Err(PlanRefused::NoStep),
    }
    Ok(())
}

fn set_limit(limit: &mut Limit, field: &str, value: &str, others: &[String]) -> Set {
    let old = limit.clone();
    match field {
        "name" if others.iter().any(|name| name == value.trim()) && limit.name != value.trim() => {
            return refuse("Another reading of this step has that name.");
        }
        "name" => limit.name = named(value)?,
        "unit" => limit.unit = value.trim().to_owned(),
        "least" => limit.least = maybe(value, -1e6, 1e6)?,
        _ => limit.most = maybe(value, -1e6, 1e6)?,
    }
    in_order(limit.least, limit.most).inspect_err(|_| *limit = old)
}

fn set_bore(bore: &mut Bore, field: &str, value: &str) -> Set {
    let old = bore.clone();
    let yes = value == "yes";
    let mm = || maybe(value, 0.0, 1_000.0);
    match field {
        "name" => bore.name = named(value)?,
        "material" => bore.material = pick(&Material::ALL, value)?,
        "least" => bore.least_mm = mm()?,
        "most" => bore.most_mm = mm()?,
        "round" => bore.out_of_round_mm = mm()?,
        "taper" => bore.taper_mm = mm()?,
        "journal" => {
            bore.journal = yes.then(|| Journal {
                name: format!("{} journal", bore.name),
                material: Material::Steel,
                clearance_least_mm: None,
                clearance_most_mm: None,
            });
        }
        _ => {
            let journal = bore.journal.as_mut().ok_or(PlanRefused::NoStep)?;
            match field {
                "journal_name" => journal.name = named(value)?,
                "journal_material" => journal.material = pick(&Material::ALL, value)?,
                "clear_least" => journal.clearance_least_mm = maybe(value, -10.0, 10.0)?,
                _ => journal.clearance_most_mm = maybe(value, -10.0, 10.0)?,
            }
        }
    }
    let clearance = bore.journal.as_ref().map_or((None, None), |journal| {
        (journal.clearance_least_mm, journal.clearance_most_mm)
    });
    in_order(bore.least_mm, bore.most_mm)
        .and_then(|()| in_order(clearance.0, clearance.1))
        .inspect_err(|_| *bore = old)
}

fn set_fasten(fasten: &mut Fasten, field: &str, value: &str) -> Set {
    match field {
        "torque" => {
            fasten.torque =
                parse_torque(value, None).map_err(|error| PlanRefused::Field(error.to_string()))?;
        }
        "thread" => {
            fasten.thread = Thread::parse(value).map_err(|error| PlanRefused::Field(error.to_string()))?;
        }
        "count" => fasten.layout = layout(layout_words(&fasten.layout), whole(value, 1, MOST_BOLTS)?),
        "layout" if value == "two rows" && !fasten.layout.count().is_multiple_of(2) => {
            return refuse("Two rows need an even count: change how many first.");
        }
        "layout" => fasten.layout = layout(value, fasten.layout.count()),
        "passes" => fasten.passes = passes(value)?,
        "length" => fasten.length_mm = maybe(value, 1.0, 1_000.0)?,
        "class" => fasten.strength = pick_maybe(&Strength::ALL, value)?,
        "into" => fasten.into = pick_maybe(&FemaleMaterial::ALL, value)?,
        "engagement" => fasten.engagement_mm = maybe(value, 0.5, 500.0)?,
        "condition" => fasten.condition = pick(&CONDITIONS, value)?,
        "locking" => fasten.self_locking = value == "yes",
        "seal" => fasten.seal = value == "yes",
        "new" => fasten.reuse = if value == "yes" { Reuse::New } else { Reuse::Again },
        _ => {
            let joint = || Application {
                thread: Some(fasten.thread.major()),
                ..Application::new(JointKind::ThreadedFastener)
            };
            fasten.compound = (value == "yes").then(joint);
        }
    }
    Ok(())
}

/// "30 60 100": shares in percent, the last the whole torque; empty for one pass.
fn passes(value: &str) -> Result<Vec<Pass>, PlanRefused> {
    let shares: Option<Vec<f64>> = value
        .split([' ', '%', ',', ';', '/'])
        .filter(|word| !word.is_empty())
        .map(|word| decimal(word).filter(|share| *share > 0.0 && *share <= 100.0))
        .collect();
    match shares {
        Some(shares) if shares.is_empty() => Ok(Vec::new()),
        Some(shares) if shares.len() < 10 && shares.last() == Some(&100.0) => Ok(shares
            .into_iter()
            .map(|share| Pass {
                share: share / 100.0,
                round: false,
            })
            .collect()),
        _ => refuse("Write the share of each pass in percent, ending in 100: 30 60 100."),
    }
}

fn set_joint(joint: &mut Application, [_, field, question]: [&str; 3], value: &str) -> Set {
    if field == "kind" {
        joint.kind = pick(JointKind::ALL, value)?;
        return Ok(());
    }
    answer(joint, question, value).map_err(|error| PlanRefused::Field(error.to_string()))
}

fn set_seat(seat: &mut Seat, field: &str, value: &str) -> Set {
    let yes = value == "yes";
    let mm = |least: f64| number(value, least, 2_000.0);
    let celsius = || number(value, 20.0, 300.0);
    match field {
        "part" => seat.part = value.trim().to_owned(),
        "hole" => seat.hole = size(value, seat.housing)?,
        "shaft" => seat.shaft = size(value, seat.part_material)?,
        "housing" => seat.housing = pick(&Material::ALL, value)?,
        "part_material" => seat.part_material = pick(&Material::ALL, value)?,
        "length" => seat.length_mm = mm(0.1)?,
        "inside" => seat.part_inside_mm = mm(0.0)?,
        "boss" => seat.boss_outside_mm = mm(0.1)?,
        "wall" => seat.wall_mm = mm(0.1)?,
        "housing_limit" => seat.housing_limit_c = celsius()?,
        "part_limit" => seat.part_limit_c = celsius()?,
        "seals" => seat.holds_seals = yes,
        _ => seat.way = if yes { SeatWay::Heat } else { SeatWay::Press },
    }
    follow_materials(seat);
    Ok(())
}

/// "62 N7", "62 bearing", "25 bearing bore", "61.982": a size as it is typed.
fn size(value: &str, material: Material) -> Result<SizeSource, PlanRefused> {
    let text = value.trim();
    let bearing = |end: &str| text.strip_suffix(end).map(|size| number(size, 1.0, 2_000.0));
    if let Some(mm) = bearing("bearing bore") {
        return Ok(SizeSource::BearingBore {
            nominal: Length::new::<millimeter>(mm?),
        });
    }
    if let Some(mm) = bearing("bearing") {
        return Ok(SizeSource::BearingOuter {
            nominal: Length::new::<millimeter>(mm?),
        });
    }
    if let Ok(mm) = number(text.trim_end_matches("mm"), 1.0, 2_000.0) {
        return Ok(SizeSource::Measured {
            size: Length::new::<millimeter>(mm),
            at: ThermodynamicTemperature::new::<degree_celsius>(20.0),
            material,
        });
    }
    let code: FitCode = text.parse().map_err(|_| {
        PlanRefused::Field("Write a size as 62 N7, 62 bearing, 25 bearing bore or 61.982.".to_owned())
    })?;
    match (code.nominal, code.hole.or(code.shaft)) {
        (Some(nominal), Some(class)) => Ok(SizeSource::Class { nominal, class }),
        _ => refuse("Write the size before the class: 62 N7."),
    }
}

fn set_lift_way(way: &mut LiftWay, field: &str, value: &str) -> Set {
    match (way, field) {
        (way, "sling") => {
            *way = if value == "yes" {
                LiftWay::Sling {
                    legs: 2,
                    angle_deg: 60.0,
                }
            } else {
                LiftWay::hands()
            };
        }
        (LiftWay::Hands { reach_cm, .. }, "reach") => *reach_cm = number(value, 1.0, 200.0)?,
        (LiftWay::Hands { from_cm, .. }, "from") => *from_cm = number(value, 0.0, 300.0)?,
        (LiftWay::Hands { to_cm, .. }, "to") => *to_cm = number(value, 0.0, 300.0)?,
        (LiftWay::Hands { turn_deg, .. }, "turn") => *turn_deg = number(value, 0.0, 135.0)?,
        (LiftWay::Sling { legs, .. }, "legs") => *legs = whole(value, 1, 4)? as u8,
        (LiftWay::Sling { angle_deg, .. }, "angle") => *angle_deg = number(value, 1.0, 90.0)?,
        _ => return Err(PlanRefused::NoStep),
    }
    Ok(())
}

fn in_order(least: Option<f64>, most: Option<f64>) -> Set {
    match (least, most) {
        (Some(least), Some(most)) if least > most => refuse("The lower limit is above the upper one."),
        _ => Ok(()),
    }
}

fn named(value: &str) -> Result<String, PlanRefused> {
    match value.trim() {
        "" => refuse("Give it a name."),
        name => Ok(name.to_owned()),
    }
}

/// The first numbered name of that kind that none of those there has.
fn free_name<'a>(kind: &str, there: impl Iterator<Item = &'a str>) -> String {
    let there: Vec<&str> = there.collect();
    (1..=there.len() + 1)
        .map(|number| format!("{kind} {number}"))
        .find(|name| !there.contains(&name.as_str()))
        .unwrap_or_default()
}

fn index(at: &str, len: usize) -> Result<usize, PlanRefused> {
    at.parse().ok().filter(|at| *at < len).ok_or(PlanRefused::NoStep)
}

fn maybe(value: &str, least: f64, most: f64) -> Result<Option<f64>, PlanRefused> {
    if value.trim().is_empty() {
        return Ok(None);
    }
    number(value, least, most).map(Some)
}

fn number(value: &str, least: f64, most: f64) -> Result<f64, PlanRefused> {
    match decimal(value) {
        Some(number) if (least..=most).contains(&number) => Ok(number),
        Some(_) => refuse(format!("Enter a number from {least} to {most}.").replace('-', "−")),
        None => refuse("Enter a number: digits and one point."),
    }
}

fn whole(value: &str, least: usize, most: usize) -> Result<usize, PlanRefused> {
    match value.trim().parse::<usize>() {
        Ok(number) if (least..=most).contains(&number) => Ok(number),
        _ => refuse(format!("Enter a whole number from {least} to {most}.")),
    }
}

fn pick<T: Copy>(all: &[T], value: &str) -> Result<T, PlanRefused> {
    let at = value.parse::<usize>().ok();
    at.and_then(|at| all.get(at))
        .copied()
        .ok_or_else(|| PlanRefused::Field("Choose one of those shown.".to_owned()))
}

fn pick_maybe<T: Copy>(all: &[T], value: &str) -> Result<Option<T>, PlanRefused> {
    if value.is_empty() {
        Ok(None)
    } else {
        pick(all, value).map(Some)
    }
}
