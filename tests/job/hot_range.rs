//! A fit that runs hot, over the whole range of the alloys.

use halfcase::job::kinds::Seat;
use halfcase::job::kinds::seat::source::{self, Side};
use halfcase::job::kinds::seat::{HeldBy, after, answer};
use halfcase::trade::fit::Grip;

fn race(tight_um: f64) -> Seat {
    let mut seat = Seat::default();
    for (side, mm) in [(Side::Hole, 62.0), (Side::Shaft, 62.0 + tight_um / 1000.0)] {
        source::set_kind(&mut seat, side, source::Kind::Measured);
        source::set_reading(&mut seat, side, mm);
    }
    seat
}

fn warned(seat: &Seat) -> Option<String> {
    let found = answer(seat, None).unwrap();
    let lines = after::warnings(seat, &found);
    lines.into_iter().find(|line| line.starts_with("At 90 °C"))
}

/// 62 mm of cast aluminium 50 µm tight on a steel race, at 90 °C: with the usual alloy 4 µm tight (23 and 12.3 or so
/// × 10⁻⁶/K), with the alloy that grows most 4 µm loose (handbook ranges, common practice).
#[test]
fn a_race_that_one_alloy_lets_go_is_said_to_be_doubtful() {
    let seat = race(50.0);
    let hot = answer(&seat, None).unwrap().running.unwrap();
    assert_eq!(
        (hot.usual.grip(), hot.widest.grip()),
        (Grip::Tight, Grip::Doubtful)
    );
    let words = warned(&seat).unwrap_or_default();
    assert!(words.starts_with("At 90 °C it may be loose."), "{words}");
    let by_fit = Seat {
        held_by: Some(HeldBy::Fit),
        ..race(50.0)
    };
    assert!(
        warned(&by_fit)
            .unwrap()
            .contains("may be loose and has only its fit")
    );
    let by_plate = Seat {
        held_by: Some(HeldBy::Plate),
        ..race(50.0)
    };
    assert_eq!(warned(&by_plate), None);
    // Tight enough for any of them: nothing to say; loose with all: said outright.
    assert_eq!(warned(&race(70.0)), None);
    assert!(warned(&race(20.0)).unwrap().starts_with("At 90 °C it is loose."));
}
