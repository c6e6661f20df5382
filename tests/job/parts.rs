//! The parts of all steps: what is needed, where it is, what came back from the shop.

use super::{MORNING, done, sheet};
use halfcase::job::kinds::fasten::bag;
use halfcase::job::parts::{Listed, PartPlace, PartsTally, list};
use halfcase::job::progress::Progress;
use halfcase::job::record::{Event, Record};
use halfcase::job::sheet::{Sheet, StepId};

fn gearbox() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Jet","work":{"fit":{"part":"restrictor jet","new_part":true}},
            "parts":[{"name":"O-ring 8 × 1.5","count":2,"new_part":true},{"name":"baffle","place":"at_shop"}]},
           {"id":2,"title":"Baffle screws","work":{"fasten":{"thread":"M6","strength":"8.8","length_mm":20,"torque":"9 N·m","layout":{"free":{"count":4}}}}},
           {"id":3,"title":"Cover","work":{"fasten":{"thread":"M6","strength":"8.8","length_mm":20,"torque":"9 N·m","layout":{"free":{"count":6}},"reuse":"new"}},
            "parts":[{"name":"M6 × 20 mm, 8.8","count":6,"place":{"bag":"3"}}]},
           {"id":4,"title":"Plug","work":{"fasten":{"thread":"M14x1.5","torque":"25 N·m","layout":"single"}}}"#,
    )
}

fn place(record: &mut Record, part: &Listed, place: PartPlace, here: u32) {
    let event = Event::Placed {
        part: part.key,
        place,
        here,
        of: part.of,
    };
    record.add(MORNING, Some(part.step), "", event);
}

fn named<'a>(parts: &'a [Listed], name: &str) -> &'a Listed {
    parts.iter().find(|part| part.name == name).unwrap()
}

#[test]
fn the_list_gathers_what_every_step_needs_in_order() {
    let parts = list(&gearbox(), &Progress::default());
    let lines: Vec<(u32, &str, bool)> = parts
        .iter()
        .map(|p| (p.of, p.name.as_str(), p.new_part))
        .collect();
    assert_eq!(
        lines,
        [
            (1, "restrictor jet", true),
            (2, "O-ring 8 × 1.5", true),
            (1, "baffle", false),
            (4, "M6 × 20 mm, 8.8", false),
            (6, "M6 × 20 mm, 8.8", true),
            (1, "M14×1.5", false),
        ]
    );
    // A fastener said again under parts is one line, and is where that line says.
    assert_eq!(parts[4].place, PartPlace::Bag("3".to_owned()));
    assert_eq!(named(&parts, "baffle").place, PartPlace::AtShop);
}

#[test]
fn what_came_back_from_the_shop_is_told_from_what_was_sent() {
    let sheet = gearbox();
    let mut record = Record::default();
    let parts = list(&sheet, &Progress::default());
    place(&mut record, named(&parts, "O-ring 8 × 1.5"), PartPlace::AtShop, 0);
    let away = PartsTally::of(&list(&sheet, &Progress::of(&record)));
    assert_eq!((away.sent, away.back), (2, 0));

    // One of the two rings comes back: that is not the whole line.
    place(
        &mut record,
        named(&parts, "O-ring 8 × 1.5"),
        PartPlace::OnBench,
        1,
    );
    place(&mut record, named(&parts, "baffle"), PartPlace::OnBench, 1);
    let back = PartsTally::of(&list(&sheet, &Progress::of(&record)));
    assert_eq!((back.sent, back.back), (2, 1));
    assert_eq!(
        back.words(),
        [
            "1 of 6 counted and at hand.",
            "Sent to the shop: 2. Not back or not whole: 1."
        ]
    );
    place(
        &mut record,
        named(&parts, "O-ring 8 × 1.5"),
        PartPlace::OnBench,
        2,
    );
    let whole = PartsTally::of(&list(&sheet, &Progress::of(&record)));
    assert_eq!(whole.words()[1], "Everything sent to the shop is back: 2 of 2.");
}

#[test]
fn a_part_taken_back_is_where_it_was_and_none_is_fitted_that_was_not_said() {
    let sheet = gearbox();
    let mut record = Record::default();
    let parts = list(&sheet, &Progress::default());
    place(
        &mut record,
        named(&parts, "restrictor jet"),
        PartPlace::Bag("1".to_owned()),
        1,
    );
    place(
        &mut record,
        named(&parts, "restrictor jet"),
        PartPlace::OnOrder,
        0,
    );
    let entry = record.entries().last().unwrap().id;
    assert_eq!(PartsTally::of(&list(&sheet, &Progress::of(&record))).on_order, 1);
    record.add(MORNING, None, "", Event::TakenBack { entry });
    let seen = list(&sheet, &Progress::of(&record));
    assert_eq!(named(&seen, "restrictor jet").words(), "all 1 here, in bag 1");
    assert!(named(&seen, "restrictor jet").ticked());

    done(&mut record, 1);
    let seen = list(&sheet, &Progress::of(&record));
    let words: Vec<String> = seen.iter().take(4).map(Listed::words).collect();
    assert_eq!(
        words,
        [
            "its step is done; last in bag 1",
            "its step is done",
            "its step is done; last at the shop",
            "not said where"
        ]
    );
    assert!(seen.iter().take(3).all(Listed::ticked));
    let event = Event::NewOn { part: seen[0].key };
    record.add(MORNING, Some(seen[0].step), "", event);
    let seen = list(&sheet, &Progress::of(&record));
    assert_eq!((seen[0].step, seen[0].words().as_str()), (StepId(1), "fitted"));
}

#[test]
fn bags_are_by_size_thin_before_thick() {
    let sheet = gearbox();
    let bags = bag::list(&sheet, &list(&sheet, &Progress::default()));
    let lines: Vec<(&str, usize, usize)> = bags
        .iter()
        .map(|b| (b.size.as_str(), b.count, b.new_ones))
        .collect();
    assert_eq!(lines, [("M6 × 20 mm, 8.8", 10, 6), ("M14×1.5", 1, 0)]);
    assert_eq!(bags[0].steps, [StepId(2), StepId(3)]);
    assert_eq!(bags[0].places, ["not said where", "in bag 3"]);
}
