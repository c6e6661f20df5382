//! A fill step in words.

use super::{Amount, Fill};
use crate::trade::quantity::{VolumeUnit, print_volume};

/// Figures of a converted volume: a jug is read to no more.
const FIGURES: u32 = 3;

impl Fill {
    /// What it says, by name: the fluid, how much this time, how much the other time, to which level.
    pub fn facts(&self) -> Vec<(&'static str, String)> {
        let amount =
            |amount: Option<Amount>| amount.map_or(String::new(), |amount| self.amount_words(amount));
        let dry = ("dry fill", amount(self.dry()));
        let refill = ("refill after draining", amount(self.refill));
        let [now, else_] = if self.drained {
            [refill, dry]
        } else {
            [dry, refill]
        };
        let unstated = now.1.is_empty() && !else_.1.is_empty();
        let now = if unstated {
            (now.0, "not stated".to_owned())
        } else {
            now
        };
        let else_ = match else_.1.is_empty() {
            true => ("", String::new()),
            false => ("not this time", format!("{}: {}", else_.0, else_.1)),
        };
        vec![
            ("fluid", self.fluid.clone()),
            now,
            ("to the level", self.level.clone()),
            else_,
        ]
    }

    /// An amount as the manual states it, then in litres and in the unit it is measured in:
    /// "2.5 US qt (2.37 L, 2.08 imp qt)".
    pub fn amount_words(&self, amount: Amount) -> String {
        let mut others = vec![VolumeUnit::Litre];
        // A manual in litres is read beside American jugs more often than beside any other.
        others.push(self.measured_in.unwrap_or(VolumeUnit::UsQuart));
        others.dedup();
        others.retain(|unit| *unit != amount.unit);
        // What stands in another unit already needs no American one that nobody asked for.
        if self.measured_in.is_none() && others.len() > 1 {
            others.truncate(1);
        }
        let others: Vec<String> = others
            .into_iter()
            .map(|unit| print_volume(amount.volume(), unit, FIGURES).to_string())
            .collect();
        if others.is_empty() {
            amount.text()
        } else {
            format!("{} ({})", amount.text(), others.join(", "))
        }
    }

    /// Which amount is meant this time, as the record calls it.
    pub fn amount_name(&self) -> &'static str {
        if self.drained { "refill, put in" } else { "put in" }
    }
}
