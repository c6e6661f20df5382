//! What our own figures are said in: the user's choice, whatever the manual writes. What the manual or the
//! user wrote stays as it was written, and so do the plan, the record and every file.
//!
//! All our sentences are made in °C, kN and kg; [`Figures::said`] is the one place that says them otherwise.

use crate::trade::quantity::{MassUnit, TemperatureUnit, Unit, decimal, fixed, trimmed};
use uom::si::force::{kilonewton, pound_force};

/// The units of temperatures, and of masses and forces.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Figures {
    /// °C or °F.
    pub temperature: TemperatureUnit,
    /// kg and kN, or lb and lbf.
    pub mass: MassUnit,
}

impl Default for Figures {
    fn default() -> Self {
        MassUnit::Kilogram.into()
    }
}

impl From<MassUnit> for Figures {
    fn from(mass: MassUnit) -> Self {
        Self {
            temperature: TemperatureUnit::Celsius,
            mass,
        }
    }
}

/// Figures of a force or a mass in other units: as many as a press's gauge or a scale is read to.
const FIGURES: u32 = 3;
/// What a sentence of ours may put between two figures of one unit.
const BETWEEN: [&str; 3] = ["to", "and", "or"];
/// Temperatures of ours lie between these, °C: a number outside them before "to" is none.
const CELSIUS: std::ops::RangeInclusive<f64> = -273.0..=2_000.0;

impl Figures {
    /// The temperatures offered.
    pub const TEMPERATURES: [TemperatureUnit; 2] = [TemperatureUnit::Celsius, TemperatureUnit::Fahrenheit];

    /// The symbol of a temperature.
    pub fn degree(self) -> &'static str {
        self.temperature.symbol()
    }

    /// What the user's thermometer reads at so many °C.
    pub fn of_celsius(self, celsius: f64) -> f64 {
        // A millionth is dust from the units.
        (self
            .temperature
            .value_of(TemperatureUnit::Celsius.temperature(celsius))
            * 1e6)
            .round()
            / 1e6
    }

    /// The °C of what the user's thermometer reads.
    pub fn celsius(self, read: f64) -> f64 {
        (TemperatureUnit::Celsius.value_of(self.temperature.temperature(read)) * 1e6).round() / 1e6
    }

    /// The symbol of a force.
    pub fn force(self) -> &'static str {
        match self.mass {
            MassUnit::Kilogram => "kN",
            MassUnit::Pound => "lbf",
        }
    }

    /// How many kN one of the user's units of force is.
    pub fn kilonewtons(self) -> f64 {
        match self.mass {
            MassUnit::Kilogram => 1.0,
            MassUnit::Pound => crate::trade::quantity::Force::new::<pound_force>(1.0).get::<kilonewton>(),
        }
    }

    /// A sentence of ours in the user's units: "warm it to 120 °C" is "warm it to 248 °F", and "5 to 60 °C"
    /// is "41 to 140 °F". A unit without a number before it stays.
    pub fn said(self, words: &str) -> String {
        if self == Self::default() {
            return words.to_owned();
        }
        let mut said: Vec<String> = words.split(' ').map(str::to_owned).collect();
        for at in 1..said.len() {
            let Some((kind, rest)) = said.get(at).and_then(|token| self.kind(token)) else {
                continue;
            };
            // "5 000 kN": a limit of ours in thousands; no reading of anyone's.
            let digits = |at: usize| said[at].bytes().all(|byte| byte.is_ascii_digit());
            if at >= 2
                && said[at - 1].len() == 3
                && digits(at - 1)
                && !said[at - 2].is_empty()
                && digits(at - 2)
            {
                continue;
            }
            let Some(number) = self.other(kind, &said[at - 1]) else {
                continue;
            };
            // "5 to 60 °C": the first figure is one too.
            let first = at.checked_sub(3).filter(|first| {
                BETWEEN.contains(&said[first + 1].as_str())
                    && plain(&said[*first]).is_some_and(|it| CELSIUS.contains(&it))
            });
            if let Some(first) = first
                && let Some(other) = self.other(kind, &said[first])
            {
                said[first] = other;
            }
            said[at - 1] = number;
            said[at] = format!("{}{rest}", self.symbol(kind));
        }
        said.join(" ")
    }

    /// Which of ours the token is the unit of, and what follows the unit in it; none where it is to stay.
    fn kind(self, token: &str) -> Option<(Kind, String)> {
        let kinds = [
            (Kind::Celsius, "°C"),
            (Kind::Kilonewton, "kN"),
            (Kind::Kilogram, "kg"),
        ];
        let (kind, rest) = kinds
            .into_iter()
            .find_map(|(kind, symbol)| Some((kind, token.strip_prefix(symbol)?)))?;
        let apart = !rest.starts_with(|c: char| c.is_alphanumeric() || matches!(c, '·' | '/'));
        let stays = match kind {
            Kind::Celsius => self.temperature == TemperatureUnit::Celsius,
            Kind::Kilonewton | Kind::Kilogram => self.mass == MassUnit::Kilogram,
        };
        (apart && !stays).then(|| (kind, rest.to_owned()))
    }

    fn symbol(self, kind: Kind) -> &'static str {
        match kind {
            Kind::Celsius => self.degree(),
            Kind::Kilonewton => self.force(),
            Kind::Kilogram => self.mass.symbol(),
        }
    }

    /// A figure, or two with a dash between them, in the user's unit; none where it is no figure.
    fn other(self, kind: Kind, token: &str) -> Option<String> {
        let bare = token.trim_start_matches(['(', '“']);
        let opened = token.get(..token.len() - bare.len()).unwrap_or_default();
        let figure = |text: &str| {
            let value = plain(text)?;
            Some(match kind {
                Kind::Celsius => {
                    let decimals = text
                        .split_once(['.', ','])
                        .map_or(0, |(_, behind)| behind.len() as u8);
                    fixed(self.of_celsius(value), decimals)
                }
                Kind::Kilonewton => trimmed(value / self.kilonewtons(), FIGURES),
                Kind::Kilogram => trimmed(value / self.mass.kilograms(), FIGURES),
            })
        };
        let other = match bare.split_once('–') {
            Some((low, high)) => format!("{}–{}", figure(low)?, figure(high)?),
            None => figure(bare)?,
        };
        Some(format!("{opened}{other}"))
    }
}

/// What the units of our sentences are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Celsius,
    Kilonewton,
    Kilogram,
}

/// A figure as we print it.
fn plain(text: &str) -> Option<f64> {
    let digits = text.strip_prefix('−').unwrap_or(text);
    let is_figure = digits.starts_with(|c: char| c.is_ascii_digit());
    let value = decimal(digits).filter(|_| is_figure)?;
    Some(if digits.len() < text.len() { -value } else { value })
}
