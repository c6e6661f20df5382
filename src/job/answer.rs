//! What a screen shows of a torque, worked out once: the view only lays it out.

use super::adapter::{Adapter, scaled};
use crate::trade::quantity::{
    Printed, StatementForm, TorqueStatement, TorqueUnit, fixed, print_torque, shortest, trimmed,
};
use crate::trade::wrench::{RangeVerdict, Setting, Wrench, choose};

/// Figures in a converted torque: a manual's two or three, and no more pretended.
const FIGURES: u32 = 3;

/// A torque for the wrench in the hand.
#[derive(Debug, Clone, PartialEq)]
pub struct TorqueAnswer {
    /// What is asked for at the bolt.
    pub asked: TorqueStatement,
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
    /// What the wrench may be off by at this setting, and how that lies to the manual's own limits.
    pub band: Option<String>,
    /// Why the number can't be set, and what to do.
    pub trouble: Option<String>,
    /// A wrench of mine that suits better, by its place.
    pub take: Option<usize>,
    /// The setting allows for an adapter.
    pub adapted: bool,
    /// The torque at the bolt in the other units.
    pub others: Vec<Printed>,
}

/// Works `asked` out for the wrench at `in_hand` of `wrenches`, with the adapter on it, if there is one.
pub fn torque(
    asked: &TorqueStatement,
    wrenches: &[Wrench],
    in_hand: usize,
    adapter: Option<&Adapter>,
) -> TorqueAnswer {
    let factor = adapter.map_or(Ok(1.0), Adapter::factor);
    let at_wrench = scaled(asked, *factor.as_ref().unwrap_or(&1.0));
    let wrench = wrenches.get(in_hand).filter(|_| factor.is_ok());
    let set = wrench.map(|wrench| wrench.setting_for(&at_wrench));
    let usable = set
        .and_then(Result::ok)
        .filter(|s| matches!(s.range, RangeVerdict::Inside | RangeVerdict::LowPart));
    let better = choose(wrenches, at_wrench.torque(), Some(at_wrench.band())).filter(|at| *at != in_hand);
    let take = better.filter(|_| usable.is_none_or(|setting| setting.range == RangeVerdict::LowPart));
    let trouble = match (&factor, &set) {
        (Err(error), _) => Some(error.to_string()),
        (_, Some(Err(error))) => Some(error.to_string()),
        // Nobody told of a wrench: the torque stands for itself.
        (_, None) if wrenches.is_empty() => None,
        (_, None) => Some("No wrench is chosen: add yours on Bench.".to_owned()),
        (_, Some(Ok(setting))) => {
            wrench.and_then(|wrench| range_words(wrench, setting.range, take.and_then(|at| wrenches.get(at))))
        }
    };
    let (number, unit) = match usable {
        Some(setting) => (setting.text(), setting.unit),
        None => (
            print_torque(asked.torque(), asked.unit, FIGURES).number,
            asked.unit,
        ),
    };
    TorqueAnswer {
        asked: *asked,
        number,
        unit,
        wrench: usable.and(wrench).map(|wrench| wrench.name.clone()),
        setting: usable,
        rounding: usable.map(rounding_words),
        band: usable
            .zip(wrench)
            .map(|(setting, wrench)| band_words(&setting, wrench, &at_wrench)),
        trouble,
        take: take.filter(|_| factor.is_ok()),
        adapted: adapter.is_some() && usable.is_some(),
        others: TorqueUnit::ALL
            .into_iter()
            .filter(|other| *other != unit || adapter.is_some())
            .map(|other| print_torque(asked.torque(), other, FIGURES))
            .collect(),
    }
}

impl TorqueAnswer {
    /// Whether its number must not be set as it stands: there are wrenches, and the one in the hand can't.
    pub fn is_barred(&self) -> bool {
        self.setting.is_none() && self.trouble.is_some()
    }

    /// How the number came about, a sentence each: what the manual says, turned into the wrench's unit, and
    /// what its divisions make of it.
    pub fn how(&self) -> Vec<String> {
        let mut lines = Vec::new();
        let at_bolt = self.asked.torque();
        if self.asked.unit != self.unit {
            let factor = self.unit.value_of(self.asked.unit.torque(1.0));
            lines.push(format!(
                "{} × {} = {} {}.",
                self.asked.text(),
                trimmed(factor, FACTOR_FIGURES),
                trimmed(self.unit.value_of(at_bolt), FACTOR_FIGURES - 1),
                self.unit.symbol()
            ));
            lines.push("The units’ exact definitions (NIST SP 811).".to_owned());
        }
        if self.adapted {
            lines.push("Less what the adapter adds (force times the longer arm).".to_owned());
        }
        let rounded = self.setting.zip(self.rounding.as_ref());
        lines.extend(rounded.map(|(setting, rounding)| {
            format!(
                "The nearest line of the wrench is {} {}: {rounding}.",
                setting.text(),
                setting.unit.symbol()
            )
        }));
        lines.extend(
            self.band
                .as_ref()
                .map(|band| format!("Its scale may be off by {band}.")),
        );
        lines
    }
}

/// Figures of a unit's factor.
const FACTOR_FIGURES: u32 = 5;

/// "rounding −0.5 %", "no rounding".
fn rounding_words(setting: Setting) -> String {
    let tenths = (setting.rounding * 1_000.0).round() / 10.0;
    if tenths == 0.0 {
        "no rounding".to_owned()
    } else {
        let sign = if tenths < 0.0 { '−' } else { '+' };
        format!("rounding {sign}{} %", fixed(tenths.abs(), 1))
    }
}

/// "±4 %: 82.6–89.4 in·lb, inside the manual’s limits".
fn band_words(setting: &Setting, wrench: &Wrench, at_wrench: &TorqueStatement) -> String {
    let end = |torque| print_torque(torque, setting.unit, FIGURES).number;
    let band = at_wrench.band();
    let lies = match at_wrench.form {
        StatementForm::AtMost if setting.low > band.1 => ", over the manual’s most",
        StatementForm::AtMost if setting.high <= band.1 => ", under the manual’s most",
        StatementForm::AtMost => ", may pass the manual’s most",
        StatementForm::Single if setting.inside(band) => "",
        StatementForm::Single => ", beside the manual’s value",
        _ if setting.surely_inside(band) => ", inside the manual’s limits",
        _ if setting.inside(band) => ", may leave the manual’s limits",
        _ => ", outside the manual’s limits",
    };
    format!(
        "±{} %: {}–{} {}{lies}",
        percent(wrench.accuracy),
        end(setting.low),
        end(setting.high),
        setting.unit.symbol()
    )
}

/// A fraction as a percentage without idle zeros: "4", "0.5".
pub fn percent(fraction: f64) -> String {
    shortest((fraction * 1_000.0).round() / 10.0)
}

/// What is wrong with the range; a wrench that suits better is offered beside it, not in the words.
fn range_words(wrench: &Wrench, range: RangeVerdict, other: Option<&Wrench>) -> Option<String> {
    let (name, unit) = (&wrench.name, wrench.unit.symbol());
    let said = match range {
        RangeVerdict::Inside => return None,
        RangeVerdict::LowPart => {
            return Some(format!(
                "In the lowest fifth of {name}’s scale, where it is least certain."
            ));
        }
        RangeVerdict::BelowScale => format!("Below {name}’s scale ({} {unit}).", shortest(wrench.min)),
        RangeVerdict::AboveScale => format!("Above {name}’s scale ({} {unit}).", shortest(wrench.max)),
    };
    Some(match other {
        Some(_) => said,
        None => format!("{said} None of your wrenches reaches it."),
    })
}
