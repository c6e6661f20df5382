//! The manual's heat and cold in words, and how our own plan differs from it.

use super::after;
use super::answer::SeatAnswer;
use super::data::Seat;
use super::manual::{ManualChill, ManualHeat, Stated, both_scales};
use super::words::{Headline, fit_words, headline, microns, summary};
use crate::trade::heat_plan::{self, HoleIn, PlanKind, Rejection};
use crate::trade::quantity::{Length, TemperatureUnit, Unit, print_temperature};
use uom::si::length::millimeter;

/// What the manual has done, to show before anything of ours.
pub fn order(seat: &Seat) -> Option<Headline> {
    let manual = seat.manual?;
    match (manual.heat, manual.chill) {
        (Some(heat), chill) => {
            let also = [
                heat_details(&heat),
                chill.map_or(String::new(), |chill| chilled(seat, &chill)),
            ];
            Some(plate(heat_says(seat), heat.to, also))
        }
        (None, Some(chill)) => {
            let means = chill
                .means
                .map_or(String::new(), |means| means.words().to_owned());
            Some(plate(chill_says(seat), chill.to, [means, String::new()]))
        }
        (None, None) => None,
    }
}

fn plate(says: &'static str, to: Option<Stated>, also: [String; 2]) -> Headline {
    let also: Vec<String> = also.into_iter().filter(|words| !words.is_empty()).collect();
    let also = also.join("; ");
    match to {
        Some(to) => {
            let scales = both_scales(&to);
            let text = to.text();
            let number = text.strip_suffix(to.unit.symbol()).unwrap_or(&text).trim_end();
            // The other scale stands in brackets behind the stated figure.
            let other = scales.strip_prefix(&text).unwrap_or("").trim_start();
            Headline {
                says,
                number: number.to_owned(),
                unit: to.unit.symbol(),
                also: format!("{other} {also}").trim().to_owned(),
            }
        }
        None => Headline {
            says,
            number: "—".to_owned(),
            unit: "",
            also: format!("no temperature stated; {also}")
                .trim_end_matches("; ")
                .to_owned(),
        },
    }
}

const fn heat_says(seat: &Seat) -> &'static str {
    match seat.hole_in {
        HoleIn::Housing => "the manual: heat the case to",
        HoleIn::Part => "the manual: heat the ring to",
    }
}

const fn chill_says(seat: &Seat) -> &'static str {
    match seat.hole_in {
        HoleIn::Housing => "the manual: chill the part to",
        HoleIn::Part => "the manual: chill the shaft to",
    }
}

/// "never over 375 °F (191 °C), in an oil bath with a flash point of 230 °C (446 °F)".
fn heat_details(heat: &ManualHeat) -> String {
    let never = heat
        .never_over
        .map(|limit| format!("never over {}", both_scales(&limit)));
    let means = heat.means.map(|means| match heat.flash_point {
        Some(flash) => format!("{} with a flash point of {}", means.words(), both_scales(&flash)),
        None => means.words().to_owned(),
    });
    let details: Vec<String> = never.into_iter().chain(means).collect();
    details.join(", ")
}

/// "and chill the shaft to −78 °C (−108 °F) in dry ice".
fn chilled(seat: &Seat, chill: &ManualChill) -> String {
    let what = match seat.hole_in {
        HoleIn::Housing => "and chill the part",
        HoleIn::Part => "and chill the shaft",
    };
    let to = chill.to.map(|to| format!("to {}", both_scales(&to)));
    let means = chill.means.map(|means| means.words().to_owned());
    let words: Vec<String> = std::iter::once(what.to_owned()).chain(to).chain(means).collect();
    words.join(" ")
}

/// What a plan that heats and chills what the manual says is called.
pub fn stated_kind(seat: &Seat) -> PlanKind {
    let manual = seat.manual.unwrap_or_default();
    heat_plan::stated_kind(seat.hole_in, manual.heat.is_some(), manual.chill.is_some())
}

/// Our own plan beside the manual's, and why it differs; none where the manual states nothing to reckon with.
pub fn beside(seat: &Seat, answer: &SeatAnswer) -> Option<String> {
    let stated = answer.manual.as_ref()?;
    let figure = seat.manual.and_then(|manual| {
        let heat = manual.heat.and_then(|heat| heat.to);
        heat.or(manual.chill.and_then(|chill| chill.to))
    });
    let stands = match figure {
        Some(figure) => format!("the manual’s {} stands", figure.text()),
        None => "the manual’s way stands".to_owned(),
    };
    let zero = Length::new::<millimeter>(0.0);
    let left = stated.clearance_at_fit;
    if left < zero {
        return Some(format!(
            "By our figures that leaves {} µm of interference at the tightest sizes: expect to press; {stands}.",
            microns(-left)
        ));
    }
    if left < answer.slip {
        return Some(format!(
            "By our figures that clears the tightest sizes by only {} µm, where {} µm are usual: \
             be quick, with the press at hand; {stands}.",
            microns(left),
            microns(answer.slip)
        ));
    }
    let own = match seat.hole_in {
        HoleIn::Housing => answer.plan.housing_to,
        HoleIn::Part => answer.plan.part_to,
    };
    Some(match answer.plan.which {
        PlanKind::SlideCold => format!("By the fit’s sizes it goes in by hand; {stands}."),
        PlanKind::HeatHousing | PlanKind::HeatPart => {
            let unit = figure.map_or(TemperatureUnit::Celsius, |figure| figure.unit);
            let own = own.map(|own| print_temperature(own, unit, 0));
            let own = own.map_or(String::new(), |own| format!("{} {}", own.number, unit.symbol()));
            format!("By the fit’s sizes {own} would already slip; {stands}.")
        }
        PlanKind::CoolPart | PlanKind::CoolShaft | PlanKind::HeatAndCool => {
            format!(
                "By the fit’s sizes and the limits here: {}; {stands}.",
                own_words(answer)
            )
        }
        PlanKind::PressCold | PlanKind::NoPlan => {
            let hot = answer.plan.rejected.iter().find_map(|(_, why)| match why {
                Rejection::TooHot { .. } => Some(why.to_string()),
                Rejection::NotAllowed | Rejection::TooLittle { .. } => None,
            });
            let why = hot.unwrap_or_else(|| "Neither heat nor cold is allowed here.".to_owned());
            format!("Our own plan: {}. {why} But {stands}.", own_words(answer))
        }
    })
}

/// "warm the housing evenly to 74 °C".
pub fn own_words(answer: &SeatAnswer) -> String {
    let Headline {
        says,
        number,
        unit,
        also,
    } = headline(answer);
    format!("{says} {number} {unit} {also}").trim_end().to_owned()
}

/// What was done, for the record: the manual's way where it has one, and what our figures said of it.
pub fn recorded(seat: &Seat, answer: Option<&SeatAnswer>) -> String {
    let after = answer.map_or(String::new(), |answer| after::recorded(seat, answer));
    let Some(order) = order(seat) else {
        return answer.map_or(String::new(), summary) + &after;
    };
    let Headline {
        says,
        number,
        unit,
        also,
    } = order;
    let to = match unit {
        "" => says.trim_end_matches(" to").to_owned(),
        unit => format!("{says} {number} {unit}"),
    };
    let mut words = [to, also].join(if unit.is_empty() { ", " } else { " " });
    if let Some(answer) = answer {
        let fit = &answer.interference;
        words = format!("{words}; {}", fit_words(fit.least, fit.most));
        if let Some(stated) = &answer.manual {
            let left = stated.clearance_at_fit;
            let zero = Length::new::<millimeter>(0.0);
            words = if left < zero {
                format!("{words}, {} µm of it left by our figures", microns(-left))
            } else {
                format!("{words}, then loose by {} µm by our figures", microns(left))
            };
        }
    }
    words + &after
}
