//! A gauge step in words.

use super::answer::{off_card, plastic, taper};
use super::data::{Gauge, Gauged};
use crate::job::kinds::check::bore::limit_words;
use crate::job::kinds::select::words::size_words;
use crate::job::progress::StepProgress;
use crate::job::reading::What;
use crate::trade::gauging::Plastic;
use crate::trade::quantity::{LengthUnit, Unit, shortest};
use crate::trade::selection::tidy;

/// A plastic with what its card tells: "fine, 0.001 to 0.003 in".
pub fn plastic_words(plastic: Plastic, unit: LengthUnit) -> String {
    let (least, most) = plastic.range();
    let size = |length| tidy(unit.value_of(length));
    // A card in mm is printed to the thousandth.
    let round = |size: f64| match unit {
        LengthUnit::Millimetre => (size * 1000.0).round() / 1000.0,
        _ => size,
    };
    let (least, most) = (round(size(least)), round(size(most)));
    format!(
        "{}, {} to {}",
        plastic.words(),
        shortest(least),
        size_words(most, unit.symbol())
    )
}

/// What was done, for the record.
pub fn done_words(done: Gauged) -> String {
    match done {
        Gauged::Laid(plastic) => format!(
            "gauging plastic laid, {}",
            plastic_words(plastic, LengthUnit::Inch)
        ),
        Gauged::Tight => "cap on, at full torque".to_owned(),
        Gauged::Off => "cap off".to_owned(),
        Gauged::Wiped => "gauging plastic wiped away".to_owned(),
    }
}

/// How it is done.
pub fn how_words(done: Gauged) -> &'static str {
    match done {
        Gauged::Laid(_) => {
            "Journal and shell dry and clean. A piece as long as the shell is wide, along the journal, off the oil hole."
        }
        Gauged::Tight => "Cap on the same way round, its bolts to their full torque. Don’t turn the shaft.",
        Gauged::Off => "Bolts out, cap straight off. Don’t turn the shaft.",
        Gauged::Wiped => "Every bit of it off journal and shell, with oil on a cloth.",
    }
}

/// Which plastic to lay, and where none tells the whole of the limits.
pub fn lay_words(gauge: &Gauge) -> Vec<String> {
    match plastic(gauge) {
        None => vec!["The plan has no limits: begin with the fine one.".to_owned()],
        Some(take) => {
            let which = format!("Take the {}.", plastic_words(take.plastic, gauge.unit));
            let part = (!take.whole).then(|| "No card tells all of these limits.".to_owned());
            std::iter::once(which).chain(part).collect()
        }
    }
}

/// The limits in words.
pub fn limits_words(gauge: &Gauge) -> Vec<String> {
    let unit = gauge.unit.symbol();
    let mut lines = vec![format!(
        "Clearance: {}.",
        limit_words(gauge.least, gauge.most, unit)
    )];
    if let Some(worn) = gauge.worn {
        lines.push(format!("May be used up to {} {unit}.", shortest(worn)));
    }
    if let Some(taper) = gauge.taper {
        lines.push(format!("Ends may differ by {} {unit}.", shortest(taper)));
    }
    lines
}

/// What the readings say beyond their limits.
pub fn said_words(gauge: &Gauge, progress: &StepProgress) -> Vec<String> {
    let unit = gauge.unit.symbol();
    let mut lines = Vec::new();
    let widest = super::answer::taken(gauge, progress, &What::Widest).map(|reading| reading.value);
    if let (Some(widest), Some(most), Some(worn)) = (widest, gauge.most, gauge.worn)
        && widest > most
        && widest <= worn
    {
        lines.push("More than new parts have, within what it may be used at.".to_owned());
    }
    if !off_card(gauge, progress).is_empty() {
        lines.push("That is beyond what this card tells: wipe it away and lay another.".to_owned());
    }
    match taper(gauge, progress) {
        Some(taper) if taper < 0.0 => lines.push(
            "The narrow end tells the greater clearance: one of the two was misread, or the card held wrong way round."
                .to_owned(),
        ),
        Some(taper) => lines.push(format!("The ends differ by {}.", size_words(taper, unit))),
        None => {}
    }
    lines
}
