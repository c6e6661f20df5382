//! What a screen shows of a torque, worked out once: the view only lays it out.

use super::work::Fasten;
use crate::trade::guard::{Judgement, judge};
use crate::trade::quantity::{Printed, Torque, TorqueStatement, TorqueUnit, print_torque};
use crate::trade::wrench::{RangeVerdict, Setting, Wrench, choose};

/// Figures in a converted torque: a manual's two or three, and no more pretended.
const FIGURES: u32 = 3;

/// A torque for the wrench in the hand.
#[derive(Debug, Clone, PartialEq)]
pub struct TorqueAnswer {
    /// What is asked for.
    pub target: Torque,
    /// The number to set; where no wrench can be set, the torque in its own unit.
    pub number: String,
    /// Its unit.
    pub unit: TorqueUnit,
    /// The wrench it is set on, by name.
    pub wrench: Option<String>,
    /// The setting, when the wrench can be set to it.
    pub setting: Option<Setting>,
    /// Rounding to the wrench's division, in words: "rounding −0.5 %".
    pub rounding: Option<String>,
    /// Why the number can't be set, and what to do.
    pub trouble: Option<String>,
    /// The same torque in the other units.
    pub others: Vec<Printed>,
}

/// Works `target` out for the wrench at `in_hand` of `wrenches`; `unit` is the one it was stated in.
pub fn torque(target: Torque, unit: TorqueUnit, wrenches: &[Wrench], in_hand: usize) -> TorqueAnswer {
    let wrench = wrenches.get(in_hand);
    let set = wrench.map(|wrench| wrench.setting(target));
    let setting = set.and_then(Result::ok);
    let usable = setting.filter(|s| matches!(s.range, RangeVerdict::Inside | RangeVerdict::LowPart));
    let shown = match usable {
        Some(setting) => Printed {
            number: setting.text(),
            unit: setting.unit.symbol(),
        },
        None => print_torque(target, unit, FIGURES),
    };
    let shown_unit = usable.map_or(unit, |setting| setting.unit);
    TorqueAnswer {
        target,
        number: shown.number,
        unit: shown_unit,
        wrench: usable.and(wrench).map(|wrench| wrench.name.clone()),
        setting: usable,
        rounding: usable.map(rounding_words),
        trouble: trouble(target, wrenches, in_hand, setting),
        others: TorqueUnit::ALL
            .into_iter()
            .filter(|other| *other != shown_unit)
            .map(|other| print_torque(target, other, FIGURES))
            .collect(),
    }
}

/// The torque of that pass of a fasten step, for the wrench in the hand.
pub fn fasten(fasten: &Fasten, pass: usize, wrenches: &[Wrench], in_hand: usize) -> TorqueAnswer {
    torque(
        fasten.pass(pass).torque(fasten.torque.torque()),
        fasten.torque.unit,
        wrenches,
        in_hand,
    )
}

/// What the slip guard says of a fasten step's full torque.
pub fn guard(fasten: &Fasten) -> Option<Judgement> {
    judge_statement(&fasten.torque, fasten)
}

fn judge_statement(statement: &TorqueStatement, fasten: &Fasten) -> Option<Judgement> {
    judge(statement.target, statement.unit, &fasten.joint()).ok()
}

/// "rounding −0.5 %", "no rounding".
fn rounding_words(setting: Setting) -> String {
    let tenths = (setting.rounding * 1_000.0).round() / 10.0;
    if tenths == 0.0 {
        "no rounding".to_owned()
    } else {
        let sign = if tenths < 0.0 { '−' } else { '+' };
        format!("rounding {sign}{:.1} %", tenths.abs())
    }
}

fn trouble(target: Torque, wrenches: &[Wrench], in_hand: usize, setting: Option<Setting>) -> Option<String> {
    let Some(wrench) = wrenches.get(in_hand) else {
        return Some("No wrench is chosen: add yours on Bench.".to_owned());
    };
    let setting = match setting {
        Some(setting) => setting,
        None => return wrench.setting(target).err().map(|error| error.to_string()),
    };
    let (where_it_is, end) = match setting.range {
        RangeVerdict::Inside => return None,
        RangeVerdict::LowPart => {
            return Some(format!(
                "In the lowest fifth of the {} wrench’s scale, where it is least certain.",
                wrench.name
            ));
        }
        RangeVerdict::BelowScale => ("below", wrench.min),
        RangeVerdict::AboveScale => ("above", wrench.max),
    };
    let then = match choose(wrenches, target, None).and_then(|at| wrenches.get(at)) {
        Some(other) => format!("Take the {} wrench.", other.name),
        None => "None of your wrenches reaches it.".to_owned(),
    };
    let unit = wrench.unit.symbol();
    Some(format!(
        "This is {where_it_is} the {} wrench’s scale ({end} {unit}). {then}",
        wrench.name
    ))
}
