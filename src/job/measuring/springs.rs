//! Coil springs.

use super::answer::{Answer, Asked, Reckoned, Trouble};
use super::field::{Field, Measure};
use super::{Calculation, as_reading};
use crate::trade::measuring::MeasuringError;
use crate::trade::measuring::spring::{Coil, LoadRead, Rate, load_at, tested};
use crate::trade::quantity::significant;
use uom::si::radiant_exposure::joule_per_square_meter;

fn per_mm(rate: Rate) -> f64 {
    rate.get::<joule_per_square_meter>() / 1000.0
}

fn rate_text(asked: &Asked<'_>, rate: Rate) -> String {
    significant(Measure::Rate.out(per_mm(rate), asked.bench.inch), 3)
}

fn rate_unit(asked: &Asked<'_>) -> &'static str {
    Measure::Rate.symbol(asked.bench.inch)
}

static RATE_FIELDS: [Field; 7] = [
    Field::size("wire", "wire"),
    Field::size("outside", "outside of the coil"),
    Field::number("coils", "coils that work", Measure::Count, (0.25, 200.0)),
    Field::size("free", "free length"),
    Field::size("height", "height under load"),
    Field::load("least", "load there, at least"),
    Field::load("most", "load there, at most"),
];

/// Rate of a spring by its sizes.
pub static RATE: Calculation = Calculation {
    id: "spring-rate",
    name: "Spring, by its sizes",
    how: "Coils that work: all but the two end ones, where the ends are closed. A worn spring is judged by its load, not by this.",
    model: "rate = G·d⁴/(8·D³·n), round steel wire, G 78.5 to 81.5 GPa",
    fields: &RATE_FIELDS,
    reading: as_reading(Measure::Rate, &[]),
    answer: by_sizes,
};

fn by_sizes(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let coil = Coil::by_outside(
        asked.need_length("wire")?,
        asked.need_length("outside")?,
        asked.need("coils")?,
    );
    let (low, high) = coil.steel_rate()?;
    let mut rows = vec![("coil on coil, ends closed", asked.rough_words(coil.solid()))];
    let mut verdict = "Rate of a sound steel spring of these sizes.".to_owned();
    let mut refused = false;
    if let (Some(free), Some(height)) = (asked.length("free"), asked.length("height")) {
        let (least, most) = (load_at(low, free, height)?, load_at(high, free, height)?);
        rows.push((
            "load at that height",
            format!("{} to {}", asked.force_words(least), asked.force_words(most)),
        ));
        if height < coil.solid() {
            refused = true;
            verdict = "It is coil on coil before that height.".to_owned();
        } else {
            let ends = [least, most].map(|load| asked.judge_force(load, "least", "most"));
            let [low, high] = ends;
            let (low, high) = (low?, high?);
            if low.refused != high.refused {
                refused = true;
                verdict = "It may lie outside its limits: read it on a tester.".to_owned();
            } else if !low.open {
                // Of two outside the same limit the nearer one speaks.
                let under = low.refused && high.words.ends_with("under the least.");
                (verdict, refused) = if under {
                    (high.words, high.refused)
                } else {
                    (low.words, low.refused)
                };
            }
        }
    }
    Ok(Answer {
        says: "rate",
        number: format!("{}–{}", rate_text(asked, low), rate_text(asked, high)),
        unit: rate_unit(asked),
        reckoned: Some(Reckoned {
            measure: Measure::Rate,
            ends: (per_mm(low), per_mm(high)),
        }),
        verdict,
        refused,
        open: false,
        rows,
    })
}

static TEST_FIELDS: [Field; 8] = [
    Field::size("free", "free length, as measured"),
    Field::size("free_least", "free length, at least"),
    Field::size("height", "height on the tester"),
    Field::load("load", "load at that height"),
    Field::load("least", "load, at least"),
    Field::load("most", "load, at most"),
    Field::size("height_2", "second height"),
    Field::load("load_2", "load at the second"),
];

/// Free length and load of a spring on a tester.
pub static TEST: Calculation = Calculation {
    id: "spring-test",
    name: "Spring, on a tester",
    how: "Free length with a caliper, standing; then the load at the manual’s height. A second height tells the rate.",
    model: "rate = difference of the loads over difference of the heights",
    fields: &TEST_FIELDS,
    reading: as_reading(Measure::Force, &["least", "most"]),
    answer: on_tester,
};

fn on_tester(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let free = asked.length("free");
    let free_judged = match (free, asked.length("free_least")) {
        (Some(free), least @ Some(_)) => {
            let mut judged = asked.judge(free, least, None)?;
            if judged.refused {
                judged.words = format!("Its free length is {}", judged.words);
            }
            Some(judged)
        }
        _ => None,
    };
    let height = asked.need_length("height")?;
    let load = asked.force("load").ok_or_else(|| asked.missing("load"))?;
    if free.is_some_and(|free| height >= free) {
        return Err(MeasuringError::Height.into());
    }
    let mut judged = asked.judge_force(load, "least", "most")?;
    if let Some(free_judged) = free_judged {
        judged = judged.and(free_judged);
    }
    let mut rows = Vec::new();
    let second = match (asked.length("height_2"), asked.force("load_2")) {
        (Some(height), Some(load)) => Some(LoadRead { load, height }),
        _ => None,
    };
    if let Some(second) = second {
        let found = tested(LoadRead { load, height }, second)?;
        rows.push((
            "rate",
            format!("{} {}", rate_text(asked, found.rate), rate_unit(asked)),
        ));
        rows.push(("free length they lead to", asked.rough_words(found.free)));
    } else if let Some(free) = free {
        // The load of a spring read once, over what it was shortened by.
        let none = LoadRead {
            load: load * 0.0,
            height: free,
        };
        let found = tested(none, LoadRead { load, height })?;
        rows.push((
            "rate",
            format!("{} {}", rate_text(asked, found.rate), rate_unit(asked)),
        ));
    }
    Ok(Answer::of("load", asked.force_figure(load), judged, rows))
}
