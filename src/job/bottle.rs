//! My bottles and tubes: the label's own figures in place of the typical ones, and when a bottle may not be used.

use super::date::{day_of, written};
use super::id::bounded;
use crate::trade::application::{Application, Known};
use crate::trade::compound::{CompoundClass, Family, Recommendation};
use crate::trade::cure::{Chemistry, CureSpec, LabelError, LabelTimes};
use crate::trade::quantity::{ThermodynamicTemperature, Time, shortest};
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;

/// A bottle's own number on this bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct BottleId(#[serde(deserialize_with = "bounded")] pub u32);

/// A bottle, tube or cartridge with what its label says.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bottle {
    /// Unique on this bench.
    pub id: BottleId,
    /// The user's own name for it.
    pub name: String,
    /// What it is.
    pub class: CompoundClass,
    /// The label's times; nothing that doesn't cure needs them.
    pub label: LabelTimes,
    /// Not to be put on in a shop colder than this, °C.
    #[serde(default)]
    pub apply_from_c: Option<f64>,
    /// The hottest it stands in service, °C.
    #[serde(default)]
    pub stands_c: Option<f64>,
    /// The widest gap it fills, mm.
    #[serde(default)]
    pub fills_mm: Option<f64>,
    /// The year printed on it.
    #[serde(default)]
    pub expires_year: Option<i32>,
    /// The month printed on it, 1–12; good until its last day.
    #[serde(default)]
    pub expires_month: Option<u32>,
    /// The day it was opened, counted from 1970-01-01.
    #[serde(default)]
    pub opened: Option<i64>,
    /// How many months it keeps once open.
    #[serde(default)]
    pub keeps_months: Option<f64>,
    /// It is the one taken for its class.
    #[serde(default)]
    pub in_use: bool,
}

/// Why a bottle must not go on this joint today.
#[derive(Debug, Clone, PartialEq)]
pub enum Unfit {
    /// Its label's figures make no sense.
    Label(LabelError),
    /// Past the printed date: its last good day.
    Expired(i64),
    /// Open for too long: the last good day.
    OpenTooLong(i64),
    /// It must not be on such a joint at all.
    Forbidden(&'static str),
    /// The joint asks for another class; why not this one, where that is known.
    OtherClass(CompoundClass, Option<&'static str>),
    /// The joint asks for nothing.
    NothingWanted(&'static str),
    /// The joint gets hotter than the label allows, °C: joint, label.
    TooHot(f64, f64),
    /// The gap is wider than the label allows, mm: joint, label.
    GapTooWide(f64, f64),
    /// The shop is colder than the label allows, °C: shop, label.
    TooColdToApply(f64, f64),
}

impl fmt::Display for Unfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Label(error) => error.fmt(f),
            Self::Expired(day) => write!(f, "Expired: good until {}.", written(*day)),
            Self::OpenTooLong(day) => write!(f, "Open for too long: good until {}.", written(*day)),
            Self::Forbidden(why) | Self::NothingWanted(why) => f.write_str(why),
            Self::OtherClass(wanted, None) => write!(f, "This joint wants {}.", wanted.name()),
            Self::OtherClass(wanted, Some(why)) => write!(f, "This joint wants {}. {why}", wanted.name()),
            Self::TooHot(joint, label) => {
                write!(
                    f,
                    "Stands {label:.0} °C; the joint gets, or may get, {joint:.0} °C."
                )
            }
            Self::GapTooWide(joint, label) => {
                // Metres leave dust in the last digits of millimetres.
                let clean = |mm: f64| (mm * 1e6).round() / 1e6;
                let (joint, label) = (shortest(clean(*joint)), shortest(clean(*label)));
                write!(f, "Fills {label} mm; the gap is, or may be, {joint} mm.")
            }
            Self::TooColdToApply(shop, label) => {
                write!(f, "Put on from {label:.0} °C; the shop is {shop:.0} °C.")
            }
        }
    }
}

impl Bottle {
    /// A new one of that class with the class's typical figures, to be replaced by its label's.
    pub fn new(id: BottleId, class: CompoundClass) -> Self {
        let typical = class.typical_cure(&Application::default()).map(|spec| spec.label);
        let by_the_day = || {
            LabelTimes::full_only(
                ThermodynamicTemperature::new::<degree_celsius>(22.0),
                Time::new::<hour>(24.0),
            )
        };
        Self {
            id,
            name: String::new(),
            class,
            label: typical.unwrap_or_else(by_the_day),
            apply_from_c: None,
            stands_c: None,
            fills_mm: None,
            expires_year: None,
            expires_month: None,
            opened: None,
            keeps_months: None,
            in_use: true,
        }
    }

    /// Makes it one of another class: a time nobody took from a label is the new class's typical one; what
    /// was typed stays.
    pub fn become_of(&mut self, class: CompoundClass) {
        let old = Self::new(self.id, self.class).label;
        let new = Self::new(self.id, class).label;
        let own = &mut self.label;
        // The times hold at one temperature: typed, they keep it.
        let typed = *own != old;
        let take = |own: &mut Option<Time>, old: Option<Time>, new: Option<Time>| {
            if *own == old {
                *own = new;
            }
        };
        if !typed {
            own.at = new.at;
        }
        take(&mut own.assembly, old.assembly, new.assembly);
        take(&mut own.fixture, old.fixture, new.fixture);
        take(&mut own.handling, old.handling, new.handling);
        // Another full cure than is usual took the usual time for oil away: no class brings one back.
        if own.full == old.full {
            take(&mut own.fit_for_oil, old.fit_for_oil, new.fit_for_oil);
        } else if own.fit_for_oil == old.fit_for_oil {
            own.fit_for_oil = None;
        }
        take(
            &mut own.fit_for_pressure,
            old.fit_for_pressure,
            new.fit_for_pressure,
        );
        if own.full == old.full {
            own.full = new.full;
        }
        self.class = class;
    }

    /// Takes full cure from its label. Another than is usual for the class tells that the class's usual time for
    /// oil is not this bottle's either: where nobody has put another in its place it goes, and oil waits for full
    /// cure.
    pub fn take_full(&mut self, full: Time) {
        let usual = Self::new(self.id, self.class).label;
        self.label.full = full;
        if full != usual.full && self.label.fit_for_oil == usual.fit_for_oil {
            self.label.fit_for_oil = None;
        }
    }

    /// The last day it may be used, by date and by opening, whichever comes first.
    fn last_good_day(&self) -> (Option<i64>, Option<i64>) {
        let printed = self.expires_year.map(|year| {
            let month = self.expires_month.unwrap_or(12).clamp(1, 12);
            day_of(year, month + 1, 1) - 1
        });
        let months = self.keeps_months.filter(|months| months.is_finite());
        let open = self
            .opened
            .zip(months)
            .map(|(day, months)| day.saturating_add((months * DAYS_A_MONTH).floor() as i64));
        (printed, open)
    }

    /// Why it must not be used at all today.
    pub fn spoiled(&self, today: i64) -> Option<Unfit> {
        if self.class.family() != Family::NonCuring
            && let Err(error) = self.label.check()
        {
            return Some(Unfit::Label(error));
        }
        let (printed, open) = self.last_good_day();
        let past = |day: &i64| today > *day;
        printed
            .filter(past)
            .map(Unfit::Expired)
            .or(open.filter(past).map(Unfit::OpenTooLong))
    }

    /// Why it must not go on that joint today; the joint's open answers count the cautious way.
    /// `shop_c` is the shop's temperature, where it is known.
    pub fn unfit(
        &self,
        joint: &Application,
        wanted: &Recommendation,
        today: i64,
        shop_c: Option<f64>,
    ) -> Option<Unfit> {
        let known = Known::of(joint);
        let over =
            |asked: Option<f64>, limit: Option<f64>| asked.zip(limit).filter(|(a, l)| *a > l + WHISKER);
        self.spoiled(today)
            .or_else(|| self.class.refused_for(joint).map(Unfit::Forbidden))
            .or_else(|| match wanted.class {
                None => Some(Unfit::NothingWanted(wanted.reason)),
                Some(class) if self.serves(class) => None,
                Some(class) => Some(Unfit::OtherClass(class, why_not(wanted, self.class))),
            })
            .or_else(|| over(Some(known.celsius), self.stands_c).map(|(a, l)| Unfit::TooHot(a, l)))
            .or_else(|| over(known.gap_mm, self.fills_mm).map(|(a, l)| Unfit::GapTooWide(a, l)))
            .or_else(|| over(self.apply_from_c, shop_c).map(|(l, s)| Unfit::TooColdToApply(s, l)))
    }

    /// Whether it can be taken where that class is wanted: a sensor-safe silicone serves as a plain one.
    pub fn serves(&self, class: CompoundClass) -> bool {
        self.class == class
            || (self.class == CompoundClass::SiliconeSensorSafe && class == CompoundClass::SiliconeNeutral)
    }

    /// How it cures in that joint, by its own label.
    pub fn cure(&self, joint: &Application) -> Option<CureSpec> {
        let typical = self.class.typical_cure(joint)?;
        Some(CureSpec {
            label: self.label.clone(),
            ..typical
        })
    }
}

/// An activator was put on: an anaerobic compound cures on any metal as on steel, and grips sooner.
pub fn with_activator(spec: CureSpec) -> CureSpec {
    match spec.chemistry {
        Chemistry::Anaerobic { substrate, gap, .. } => CureSpec {
            chemistry: Chemistry::Anaerobic {
                substrate,
                gap,
                activator: true,
            },
            ..spec
        },
        _ => spec,
    }
}

fn why_not(wanted: &Recommendation, class: CompoundClass) -> Option<&'static str> {
    let row = wanted.rejected.iter().find(|(other, _)| *other == class);
    row.map(|(_, why)| *why)
}

/// A month of a shelf life: the year's twelfth part.
const DAYS_A_MONTH: f64 = 365.25 / 12.0;
/// A whisker, so that a limit is not passed by the last bit of a conversion.
const WHISKER: f64 = 1e-6;
