//! Gauging plastic: US Army TM 5-2420-222-34 names three, 0.001–0.003, 0.002–0.006 and 0.004–0.009 in.

use halfcase::trade::gauging::{Plastic, Take, take};
use halfcase::trade::quantity::{Length, LengthUnit};

fn inch(value: f64) -> Length {
    LengthUnit::Inch.length(value)
}

fn mm(value: f64) -> Length {
    LengthUnit::Millimetre.length(value)
}

#[test]
fn the_ranges_are_those_of_the_manual() {
    let printed = [(0.001, 0.003), (0.002, 0.006), (0.004, 0.009)];
    for (plastic, (least, most)) in Plastic::ALL.into_iter().zip(printed) {
        assert_eq!(plastic.range(), (inch(least), inch(most)));
    }
}

/// The finest that tells all of the limits: derived from the ranges.
#[test]
fn one_is_taken_by_the_limits() {
    let whole = |plastic| Take { plastic, whole: true };
    for (limits, expected) in [
        ((0.001, 0.003), whole(Plastic::Fine)),
        ((0.0015, 0.0025), whole(Plastic::Fine)),
        ((0.002, 0.004), whole(Plastic::Medium)),
        ((0.002, 0.003), whole(Plastic::Fine)),
        ((0.004, 0.008), whole(Plastic::Coarse)),
        // No card tells all of these.
        (
            (0.001, 0.004),
            Take {
                plastic: Plastic::Medium,
                whole: false,
            },
        ),
        (
            (0.0005, 0.002),
            Take {
                plastic: Plastic::Fine,
                whole: false,
            },
        ),
        (
            (0.003, 0.008),
            Take {
                plastic: Plastic::Coarse,
                whole: false,
            },
        ),
        (
            (0.010, 0.012),
            Take {
                plastic: Plastic::Coarse,
                whole: false,
            },
        ),
    ] {
        assert_eq!(take(inch(limits.0), inch(limits.1)), expected, "{limits:?}");
    }
}

/// 0.003 in is 0.0762 mm; a card in mm prints 0.076, and 0.08 is read off it.
#[test]
fn what_a_card_in_millimetres_rounds_is_still_on_it() {
    assert!(Plastic::Fine.tells(mm(0.025)) && Plastic::Fine.tells(mm(0.08)));
    assert!(!Plastic::Fine.tells(mm(0.02)) && !Plastic::Fine.tells(mm(0.09)));
    assert!(Plastic::Coarse.tells(mm(0.23)) && !Plastic::Coarse.tells(mm(0.24)));
}
