//! How a fit with interference goes together: the mildest of heat, cold and press that keeps within
//! every limit.

mod means;
mod request;
mod soak;
mod words;

pub use means::{ChillMeans, HeatMeans};
pub use request::{CoolMeans, HoleIn, PlanError, PlanRequest, usual_slip_clearance};
pub use soak::oven_time;

use crate::trade::growth::{COLDEST_CELSIUS, HOTTEST_CELSIUS, REFERENCE_CELSIUS, cold_rise_for_strain};
use crate::trade::quantity::{Length, ThermodynamicTemperature};
use crate::trade::stored;
use request::Checked;
use serde::{Deserialize, Serialize};
use uom::si::length::meter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// A way to bring the two parts together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PlanKind {
    /// There is clearance at room temperature: by hand.
    SlideCold,
    /// Heat the housing.
    HeatHousing,
    /// Heat the part, which carries the hole.
    HeatPart,
    /// Cool the part.
    CoolPart,
    /// Cool the shaft that the part goes onto.
    CoolShaft,
    /// Heat the one with the hole and cool the other.
    HeatAndCool,
    /// Press at room temperature.
    PressCold,
    /// Nothing allowed works: see the reasons.
    NoPlan,
}

/// Whose limit stops the heat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LimitOf {
    /// The limit stated for the housing.
    Housing,
    /// The limit stated for the part.
    Part,
    /// What the housing's material stands.
    HousingMaterial,
    /// What the part's material stands.
    PartMaterial,
}

/// Why a way was passed over.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Rejection {
    /// It was not allowed.
    NotAllowed,
    /// It would take more heat than a limit leaves, all in °C.
    TooHot {
        /// The temperature it would take.
        needed_c: f64,
        /// The limit.
        limit_c: f64,
        /// Whose limit it is.
        whose: LimitOf,
    },
    /// It gives too little clearance, in mm; negative is interference left.
    TooLittle {
        /// What it gives.
        clearance_mm: f64,
        /// What is wanted.
        wanted_mm: f64,
    },
}

/// What to do, and why nothing milder.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct HeatPlan {
    /// The way.
    pub which: PlanKind,
    /// What to bring the housing to (the shaft, where the part carries the hole).
    #[serde(default, rename = "housing_to_c", with = "stored::celsius::maybe")]
    pub housing_to: Option<ThermodynamicTemperature>,
    /// What to bring the part to.
    #[serde(default, rename = "part_to_c", with = "stored::celsius::maybe")]
    pub part_to: Option<ThermodynamicTemperature>,
    /// The housing's temperature at which half of the clearance is used up, the part staying as planned:
    /// the time to be home by.
    #[serde(default, rename = "housing_until_c", with = "stored::celsius::maybe")]
    pub housing_until: Option<ThermodynamicTemperature>,
    /// The same for the part, the housing staying as planned.
    #[serde(default, rename = "part_until_c", with = "stored::celsius::maybe")]
    pub part_until: Option<ThermodynamicTemperature>,
    /// The least clearance while it slips in; negative is interference left.
    #[serde(rename = "clearance_at_fit_mm", with = "stored::millimetres")]
    pub clearance_at_fit: Length,
    /// The ways tried before, each with its reason.
    pub rejected: Vec<(PlanKind, Rejection)>,
}

/// Finds the mildest way: by hand; heat; cold; both; the press.
///
/// Clearance = d·(α_outer·ΔT_outer − α_inner·ΔT_inner) − interference, with the end of each α range that
/// gives less, and the most interference. Heat is limited by both parts: the cold one takes up the hot
/// one's heat as soon as they touch. Rounds a temperature up to a whole degree where the limit allows.
pub fn plan(request: &PlanRequest) -> Result<HeatPlan, PlanError> {
    let checked = request.checked()?;
    let room = checked.room_c;
    let mut rejected = Vec::new();
    let [heat, cool] = match request.hole_in {
        HoleIn::Housing => [PlanKind::HeatHousing, PlanKind::CoolPart],
        HoleIn::Part => [PlanKind::HeatPart, PlanKind::CoolShaft],
    };
    if checked.clearance(room, room) >= 0.0 {
        return Ok(checked.answer(PlanKind::SlideCold, room, room, rejected));
    }
    match checked.heat_for(room) {
        _ if !request.may_heat => rejected.push((heat, Rejection::NotAllowed)),
        Ok(outer) => return Ok(checked.answer(heat, outer, room, rejected)),
        Err(why) => rejected.push((heat, why)),
    }
    match request.may_cool {
        None => {
            rejected.push((cool, Rejection::NotAllowed));
            rejected.push((PlanKind::HeatAndCool, Rejection::NotAllowed));
        }
        Some(means) => {
            // A room colder than the freezer is the colder of the two.
            let cold = means.celsius().min(room);
            let clearance = checked.clearance(room, cold);
            if clearance >= checked.slip_m {
                return Ok(checked.answer(cool, room, cold, rejected));
            }
            rejected.push((cool, checked.too_little(clearance)));
            match checked.heat_for(cold) {
                _ if !request.may_heat => rejected.push((PlanKind::HeatAndCool, Rejection::NotAllowed)),
                Ok(outer) => return Ok(checked.answer(PlanKind::HeatAndCool, outer, cold, rejected)),
                Err(why) => rejected.push((PlanKind::HeatAndCool, why)),
            }
        }
    }
    if request.may_press {
        return Ok(checked.answer(PlanKind::PressCold, room, room, rejected));
    }
    rejected.push((PlanKind::PressCold, Rejection::NotAllowed));
    Ok(checked.answer(PlanKind::NoPlan, room, room, rejected))
}

/// The way that brings the one with the hole to `heat` and the other to `chill`, each left as the room is
/// where nothing is said of it; whatever the limits are and however much interference is left.
///
/// Growth is reckoned from −100 to 300 °C: past either end as at that end, which gives less clearance than
/// there is.
///
/// # Errors
/// As [`plan`].
pub fn stated(
    request: &PlanRequest,
    heat: Option<ThermodynamicTemperature>,
    chill: Option<ThermodynamicTemperature>,
) -> Result<HeatPlan, PlanError> {
    let checked = request.checked()?;
    let at = |to: Option<ThermodynamicTemperature>| {
        to.map_or(checked.room_c, |to| {
            to.get::<degree_celsius>().clamp(COLDEST_CELSIUS, HOTTEST_CELSIUS)
        })
    };
    let which = stated_kind(request.hole_in, heat.is_some(), chill.is_some());
    Ok(checked.answer(which, at(heat), at(chill), Vec::new()))
}

/// What a plan that heats the one with the hole, and chills the other, is called.
pub const fn stated_kind(hole_in: HoleIn, heats: bool, chills: bool) -> PlanKind {
    match (heats, chills, hole_in) {
        (true, true, _) => PlanKind::HeatAndCool,
        (true, false, HoleIn::Housing) => PlanKind::HeatHousing,
        (true, false, HoleIn::Part) => PlanKind::HeatPart,
        (false, true, HoleIn::Housing) => PlanKind::CoolPart,
        (false, true, HoleIn::Part) => PlanKind::CoolShaft,
        (false, false, _) => PlanKind::PressCold,
    }
}

impl Checked {
    /// Least clearance, m, with the outer and the inner part at these temperatures.
    fn clearance(&self, outer_c: f64, inner_c: f64) -> f64 {
        self.diameter_m * (self.outer_strain(outer_c) - self.inner_strain(inner_c)) - self.interference_m
    }

    fn too_little(&self, clearance_m: f64) -> Rejection {
        Rejection::TooLittle {
            clearance_mm: clearance_m * 1e3,
            wanted_mm: self.slip_m * 1e3,
        }
    }

    /// The outer part's temperature for the slip clearance, with the inner one at `inner_c`.
    fn heat_for(&self, inner_c: f64) -> Result<f64, Rejection> {
        let strain = (self.interference_m + self.slip_m) / self.diameter_m + self.inner_strain(inner_c);
        // Its growth is reckoned from 20 °C; in a colder room it is warmed to 20 °C at least.
        let exact = (REFERENCE_CELSIUS + (strain / self.outer_alpha.0).max(0.0)).max(self.room_c);
        let whole = exact.ceil();
        let (limit_c, whose) = self.limit;
        if whole <= limit_c {
            Ok(whole)
        } else if exact <= limit_c {
            Ok(exact)
        } else {
            Err(Rejection::TooHot {
                needed_c: whole,
                limit_c,
                whose,
            })
        }
    }

    fn answer(
        &self,
        which: PlanKind,
        outer_c: f64,
        inner_c: f64,
        rejected: Vec<(PlanKind, Rejection)>,
    ) -> HeatPlan {
        let clearance = self.clearance(outer_c, inner_c);
        let celsius = ThermodynamicTemperature::new::<degree_celsius>;
        let spare = (clearance / 2.0 / self.diameter_m).max(0.0);
        let outer_until = self.outer_strain(outer_c) - spare;
        let inner_until = self.inner_strain(inner_c) + spare;
        let heats = matches!(
            which,
            PlanKind::HeatHousing | PlanKind::HeatPart | PlanKind::HeatAndCool
        );
        let cools = matches!(
            which,
            PlanKind::CoolPart | PlanKind::CoolShaft | PlanKind::HeatAndCool
        );
        let outer = heats.then(|| {
            (
                celsius(outer_c),
                celsius(temperature(self.outer_alpha, outer_until)),
            )
        });
        let inner = cools.then(|| {
            (
                celsius(inner_c),
                celsius(temperature(self.inner_alpha, inner_until)),
            )
        });
        let (housing, part) = match self.hole_in {
            HoleIn::Housing => (outer, inner),
            HoleIn::Part => (inner, outer),
        };
        HeatPlan {
            which,
            housing_to: housing.map(|(to, _)| to),
            part_to: part.map(|(to, _)| to),
            housing_until: housing.map(|(_, until)| until),
            part_until: part.map(|(_, until)| until),
            clearance_at_fit: Length::new::<meter>(clearance),
            rejected,
        }
    }
}

/// °C at which a part has this strain: α `warm` above 20 °C, `cold` below.
fn temperature((warm, cold): (f64, f64), strain: f64) -> f64 {
    REFERENCE_CELSIUS
        + if strain >= 0.0 {
            strain / warm
        } else {
            cold_rise_for_strain(cold, strain)
        }
}
