//! A measurement told in part, or swayed by something else, passes nothing.

use halfcase::job::measuring::{Answer, MeasureBench, Takes, of};

fn answer(id: &str, with: &[(&str, &str)]) -> Answer {
    let mut bench = MeasureBench::default();
    for (name, value) in with {
        let field = of(id).fields.iter().find(|field| field.id == *name);
        let field = field.unwrap_or_else(|| panic!("{id} has no {name}"));
        match field.takes {
            Takes::Number(..) => bench.type_number(of(id), field, value.parse().unwrap()).unwrap(),
            Takes::Choice(_) | Takes::Thread => bench.choose(of(id), field, value),
            Takes::Words | Takes::Line(_) => panic!("{name} takes no single value"),
        }
    }
    of(id).answer(&bench).unwrap_or_else(|why| panic!("{id}: {why}"))
}

fn row(answer: &Answer, name: &str) -> Option<String> {
    let mut rows = answer.rows.iter();
    rows.find(|row| row.0 == name).map(|row| row.1.clone())
}

/// An oval journal, 20 µm to either side twice a turn, lies on its centre: the next one, 40 µm high at 141°, runs
/// apart from it by all its 40 µm (harmonics of one turn; no source).
#[test]
fn an_oval_journal_is_not_taken_for_a_bent_shaft() {
    let oval = [
        ("at_1", "0.02"),
        ("at_2", "0"),
        ("at_3", "-0.02"),
        ("at_4", "0"),
        ("at_5", "0.02"),
        ("at_6", "0"),
        ("at_7", "-0.02"),
        ("at_8", "0"),
        ("next", "0.04"),
        ("next_high", "141"),
        ("between", "0.02"),
    ];
    let found = answer("run-out", &oval);
    assert_eq!(found.number, "0.040");
    assert_eq!(row(&found, "offset").as_deref(), Some("0.000 mm"));
    assert_eq!(
        row(&found, "runs apart from journal B").as_deref(),
        Some("0.040 mm")
    );
    assert!(found.refused && found.verdict.contains("bent"), "{found:?}");
    // What is not off centre is high nowhere in particular.
    assert_eq!(row(&found, "high spot"), None);
    // Round and off centre by 20 µm, its high spot at 0: one in line with it runs with it, one opposite 80 µm apart.
    let round = |high: &str| {
        let read = [
            ("at_1", "0.02"),
            ("at_2", "0"),
            ("at_3", "-0.02"),
            ("at_4", "0"),
            ("next", "0.04"),
            ("next_high", high),
        ];
        row(&answer("run-out", &read), "runs apart from journal B")
    };
    assert_eq!(round("0").as_deref(), Some("0.000 mm"));
    assert_eq!(round("180").as_deref(), Some("0.080 mm"));
}

/// Six lines of a face are read, two along, two across, two diagonals (common practice).
#[test]
fn a_face_passes_when_all_its_lines_are_read() {
    let mut read = vec![("most", "0.05"), ("line_1", "0.03")];
    for (line, left) in [
        ("line_2", "5 lines"),
        ("line_3", "4 lines"),
        ("line_4", "3 lines"),
        ("line_5", "2 lines"),
        ("line_6", "1 line"),
    ] {
        let part = answer("flatness", &read);
        assert_eq!(part.verdict, format!("So far within; {left} to read."));
        assert!(!part.refused);
        let sealed = row(&part, "what bridges it").unwrap();
        assert!(sealed.starts_with("so far: "), "{sealed}");
        read.push((line, "0.03"));
    }
    let whole = answer("flatness", &read);
    assert_eq!(whole.verdict, "Within its limits.");
    assert!(row(&whole, "what bridges it").unwrap().starts_with("anaerobic"));
    // One line too many fails the face at once, whatever is left.
    let failed = answer("flatness", &[("most", "0.05"), ("line_1", "0.08")]);
    assert!(failed.refused && failed.verdict.contains("over the most"));
    // With no limit there is nothing to be within.
    let open = answer("flatness", &[("line_1", "0.03")]);
    assert!(open.verdict.starts_with("No limit entered"), "{}", open.verdict);
}

/// M8 through 5 mm into a lug of 8 mm tapped through: 8 mm in mesh, 1.0 d; 2 d are wanted in aluminium (handbooks,
/// from memory).
#[test]
fn a_thin_lug_tapped_through_holds_by_its_own_depth() {
    let lug = |bolt: &str, depth: &str| {
        answer(
            "engagement",
            &[
                ("thread", "M8"),
                ("bolt", bolt),
                ("stack", "5"),
                ("hole", "through"),
                ("threaded", depth),
            ],
        )
    };
    let found = lug("30", "8");
    assert_eq!(found.number, "8.00");
    assert_eq!(row(&found, "diameters").as_deref(), Some("1.00"));
    assert_eq!(row(&found, "left under its point"), None);
    assert!(found.refused);
    assert_eq!(
        found.verdict,
        "Too short by 8.00 mm, and the thread goes no deeper: an insert, or a nut behind it."
    );
    // Its point standing out, the pitch of it costs nothing; flush with the face it does.
    assert_eq!(lug("14.25", "8").number, "8.00");
    let flush = lug("13", "8");
    assert_eq!(flush.number, "6.75");
    assert!(flush.verdict.contains("a longer bolt"), "{}", flush.verdict);
    let thick = lug("30", "20");
    assert!(!thick.refused, "{}", thick.verdict);
    assert_eq!(thick.verdict, "Enough for a bolt of ordinary strength.");
}

/// With the depth not told nothing is said of it.
#[test]
fn engagement_with_no_depth_told_names_the_depth_it_counts_on() {
    let with = |hole: &[(&str, &str)]| {
        let mut all = vec![("thread", "M8"), ("bolt", "30"), ("stack", "12")];
        all.extend(hole);
        answer("engagement", &all).verdict
    };
    // Blind it wants room for its point, through no more than is in mesh.
    let blind = "Enough for a bolt of ordinary strength, if the full thread is 18.00 mm deep.";
    assert_eq!(with(&[]), blind);
    assert_eq!(with(&[("hole", "blind")]), blind);
    assert_eq!(
        with(&[("hole", "through")]),
        "Enough for a bolt of ordinary strength, if the full thread is 16.75 mm deep."
    );
    assert_eq!(
        with(&[("threaded", "18")]),
        "Enough for a bolt of ordinary strength."
    );
}
