//! The slip guard's measured rates over the published corpus.

use crate::corpus::{self, Pair};
use halfcase::trade::guard::{Joint, Verdict, judge};
use halfcase::trade::quantity::TorqueUnit;

/// What the guard is told besides the thread.
#[derive(Debug, Clone, Copy)]
enum Told {
    /// Nothing.
    Thread,
    /// The class, where the table gives one.
    Class,
    /// Class, condition and material.
    Everything,
}

fn joint(pair: &Pair, told: Told) -> Joint {
    let bare = Joint::of(pair.thread);
    match told {
        Told::Thread => bare,
        Told::Class => Joint {
            strength: pair.class,
            ..bare
        },
        Told::Everything => Joint {
            strength: pair.class,
            material: pair.material,
            condition: pair.condition,
            ..bare
        },
    }
}

/// One way of typing a pair wrongly: the torque it makes over the true one, and what is typed.
struct Mistake {
    ratio: f64,
    value: f64,
    unit: TorqueUnit,
}

/// Every unit swap (the true torque printed in each unit, its digits read in each other) and the
/// point moved one and two places.
fn mistakes(pair: &Pair) -> Vec<Mistake> {
    let mut found = Vec::new();
    for printed in TorqueUnit::ALL {
        let value = printed.value_of(pair.torque());
        for unit in TorqueUnit::ALL {
            if unit != printed {
                found.push(Mistake {
                    ratio: unit.newton_metres() / printed.newton_metres(),
                    value,
                    unit,
                });
            }
        }
    }
    for ratio in [0.01, 0.1, 10.0, 100.0] {
        found.push(Mistake {
            ratio,
            value: pair.value * ratio,
            unit: pair.unit,
        });
    }
    found
}

/// Of `seen` torques, how many stopped the screen (absurd) and how many drew a quiet note.
#[derive(Debug, Default, Clone, Copy)]
struct Rate {
    seen: usize,
    stopped: usize,
    noted: usize,
    right_first: usize,
    right_offered: usize,
}

impl Rate {
    fn take(&mut self, value: f64, unit: TorqueUnit, joint: &Joint, truth: Option<&Pair>) {
        let judged = judge(value, unit, joint).expect("corpus values can be judged");
        self.seen += 1;
        match judged.verdict {
            Verdict::Absurd => self.stopped += 1,
            Verdict::High | Verdict::Low => self.noted += 1,
            Verdict::Plausible => {}
        }
        let Some(pair) = truth else { return };
        if judged.verdict == Verdict::Absurd {
            let right = |value: f64, unit: TorqueUnit| {
                ((unit.torque(value) / pair.torque()).value - 1.0).abs() < 1e-6
            };
            self.right_first += usize::from(judged.readings.first().is_some_and(|r| right(r.value, r.unit)));
            self.right_offered += usize::from(judged.readings.iter().any(|r| right(r.value, r.unit)));
        }
    }

    fn share(count: usize, of: usize) -> f64 {
        if of == 0 { 0.0 } else { count as f64 / of as f64 }
    }

    fn stopped(&self) -> f64 {
        Self::share(self.stopped, self.seen)
    }

    fn stopped_or_noted(&self) -> f64 {
        Self::share(self.stopped + self.noted, self.seen)
    }
}

/// The rates over one set of pairs.
#[derive(Debug, Default)]
struct Measured {
    truths: Rate,
    /// Slips of eight times and more, either way.
    large: Rate,
    /// Slips between 1.4 and eight times: kgf·m for ft·lb and back, 7.2 times.
    middling: Rate,
    /// N·m read as ft·lb, 1.36 times too high.
    foot_pounds: Rate,
    /// ft·lb read as N·m, 0.74 of the torque.
    newton_metres: Rate,
    /// kgf·cm for in·lb and back, 1.15 times.
    smallest: Rate,
}

fn measure(pairs: &[Pair], told: Told) -> Measured {
    let mut measured = Measured::default();
    for pair in pairs {
        let joint = joint(pair, told);
        measured.truths.take(pair.value, pair.unit, &joint, None);
        for slip in mistakes(pair) {
            let rate = match slip.ratio {
                ratio if !(1.0 / 7.999..7.999).contains(&ratio) => &mut measured.large,
                ratio if !(0.7..1.4).contains(&ratio) => &mut measured.middling,
                ratio if ratio > 1.3 => &mut measured.foot_pounds,
                ratio if ratio < 0.8 => &mut measured.newton_metres,
                _ => &mut measured.smallest,
            };
            rate.take(slip.value, slip.unit, &joint, Some(pair));
        }
    }
    measured
}

fn row(what: &str, rate: &Rate) {
    println!(
        "  {what:<34} {:>6}  stopped {:>6.2} %  stopped or noted {:>6.2} %",
        rate.seen,
        100.0 * rate.stopped(),
        100.0 * rate.stopped_or_noted(),
    );
    if rate.right_offered > 0 {
        println!(
            "  {:<34} of those stopped, the right reading stands first in {:.1} %, is offered in {:.1} %",
            "",
            100.0 * Rate::share(rate.right_first, rate.stopped),
            100.0 * Rate::share(rate.right_offered, rate.stopped),
        );
    }
}

fn print(title: &str, measured: &Measured) {
    println!("{title}");
    row("true torques (false alarms)", &measured.truths);
    row("slips of 8 times and more", &measured.large);
    row("kgf·m / ft·lb, 7.2 times", &measured.middling);
    row("N·m read as ft·lb, 1.36 times", &measured.foot_pounds);
    row("ft·lb read as N·m, 0.74 times", &measured.newton_metres);
    row("kgf·cm / in·lb, 1.15 times", &measured.smallest);
}

/// Prints the rates: `cargo test --test published measured -- --nocapture`. A slip is caught, and a
/// true torque falsely alarmed, when the verdict is absurd: only that stops the screen. Both are
/// also counted with the quiet notes (high, low).
#[test]
fn measured_rates_meet_the_bars() {
    let everything = corpus::all();
    assert!(everything.len() >= 120);
    let held_out = corpus::pairs(&corpus::HELD_OUT);
    let with_class: Vec<Pair> = everything
        .iter()
        .filter(|pair| pair.class.is_some())
        .copied()
        .collect();
    let unknown = measure(&everything, Told::Thread);
    print(
        &format!("Class unknown, all {} pairs", everything.len()),
        &unknown,
    );
    let unseen = measure(&held_out, Told::Thread);
    print(
        &format!("Class unknown, {} held-out pairs", held_out.len()),
        &unseen,
    );
    let known = measure(&with_class, Told::Class);
    print(&format!("Class known, {} pairs", with_class.len()), &known);
    let told = measure(&with_class, Told::Everything);
    print(
        &format!(
            "Class, condition and material as printed, {} pairs",
            with_class.len()
        ),
        &told,
    );
    for (table, text) in corpus::SEEN.into_iter().chain(corpus::HELD_OUT) {
        let pairs = corpus::pairs(&[(table, text)]);
        let measured = measure(&pairs, Told::Thread);
        println!("{table}: {} pairs, class unknown", pairs.len());
        row("true torques", &measured.truths);
        row("slips of 8 times and more", &measured.large);
    }
    for measured in [&unknown, &unseen, &known, &told] {
        assert!(
            measured.large.stopped() >= 0.99,
            "caught {}",
            measured.large.stopped()
        );
        assert!(
            measured.truths.stopped() <= 0.02,
            "false alarms {}",
            measured.truths.stopped()
        );
    }
}
