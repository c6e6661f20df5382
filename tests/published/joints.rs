//! Joints where something seizes, cracks, runs off centre or has to come apart again, beside who says so.

use halfcase::trade::application::{Application, JointKind, answer, questions};
use halfcase::trade::compound::CompoundClass::{
    self, AnaerobicPipe, AntiSeize, Grease, LightOil, RetainingCompound, SemiDryingGasket, ThreadlockHigh,
    ThreadlockLow, ThreadlockMedium,
};
use halfcase::trade::compound::{Recommendation, recommend};
use uom::si::f64::Length;
use uom::si::length::millimeter;

const PRACTICE: &str = "common practice, no source";
const MEMORY: &str = "from memory";

/// A kind of joint, its answers, what goes on it, and who says so.
type Check<'a> = (
    JointKind,
    &'a [(&'a str, &'a str)],
    Option<CompoundClass>,
    &'a str,
);

fn joint(kind: JointKind, answers: &[(&str, &str)]) -> Application {
    let mut joint = Application::new(kind);
    for (question, choice) in answers {
        answer(&mut joint, question, choice).unwrap();
        // Only what is asked may be told here: else the check would try nothing.
        assert!(
            questions(&joint).iter().any(|asked| asked.id == *question),
            "{question} is not asked of {joint:?}"
        );
    }
    joint
}

fn card(kind: JointKind, answers: &[(&str, &str)]) -> Recommendation {
    recommend(&joint(kind, answers))
}

fn all_hold(checks: &[Check]) {
    for (kind, answers, class, source) in checks {
        assert_eq!(
            card(*kind, answers).class,
            *class,
            "{kind:?} {answers:?}: {source}"
        );
    }
}

#[test]
fn stainless_that_seizes_runs_in_paste_and_other_metal_dry() {
    use JointKind::ThreadedFastener as Bolt;
    let still = [("hole", "through"), ("vibration", "no")];
    let in_what = |partner| [("face", "stainless"), ("partner", partner), still[0], still[1]];
    all_hold(&[
        // Austenitic stainless on itself galls; lubricate it: from memory of fastener handbooks.
        (Bolt, &in_what("stainless"), Some(AntiSeize), MEMORY),
        (Bolt, &in_what("aluminium"), Some(AntiSeize), PRACTICE),
        (Bolt, &in_what("other"), None, PRACTICE),
        (
            Bolt,
            &[("face", "steel_iron"), still[0], still[1]],
            None,
            PRACTICE,
        ),
        // A self-locking nut is where it seizes first.
        (
            Bolt,
            &[("face", "stainless"), ("locked", "yes"), ("partner", "stainless")],
            Some(AntiSeize),
            PRACTICE,
        ),
        (
            Bolt,
            &[("face", "steel_iron"), ("locked", "yes")],
            None,
            "US Army TM 10-3930-643-20: not with lock wire or plates",
        ),
        // Shaken, it has to be locked, and the wet compound is what keeps it from seizing.
        (
            Bolt,
            &[
                ("face", "stainless"),
                ("thread", "to_m8"),
                ("partner", "stainless"),
                ("hole", "blind"),
                ("vibration", "yes"),
            ],
            Some(ThreadlockMedium),
            PRACTICE,
        ),
    ]);
    let shaken = card(Bolt, &[("face", "stainless"), ("partner", "stainless")]);
    assert!(
        shaken.cautions.iter().any(|line| line.contains("seizes")),
        "{shaken:?}"
    );
    let other = card(Bolt, &[("face", "stainless"), ("partner", "other")]);
    assert!(!other.cautions.iter().any(|line| line.contains("seizes")));
}

#[test]
fn paste_says_its_friction_and_leaves_the_torque_to_the_manual() {
    // Moly or copper paste, friction about 0.06 to 0.12: common practice, no source. Dry stainless on
    // stainless 0.3 to 0.4. A manual may print a factor for its own table, such as 0.70 for moly paste (US
    // Army TM 5-3810-294-34): no figure of that kind may come from us.
    let named = card(JointKind::ThreadedFastener, &[("manual", "anti_seize")]);
    assert_eq!(named.class, Some(AntiSeize), "the manual");
    assert_eq!(named.cure, None, "it never sets");
    let said = named.cautions.join(" ");
    assert!(said.contains("0.06 to 0.12"), "{said}");
    assert!(
        said.contains("Set the torque the manual gives for anti-seize"),
        "{said}"
    );
    for factor in ["%", "0.7", "0.8", "times the torque", "reduce"] {
        assert!(!said.contains(factor), "{factor} in {said}");
    }
}

#[test]
fn what_is_hot_comes_apart_again_and_what_burns_stays_off() {
    all_hold(&[
        (JointKind::Exhaust, &[], Some(AntiSeize), PRACTICE),
        (
            JointKind::Exhaust,
            &[("manual", "anti_seize")],
            Some(AntiSeize),
            "the manual",
        ),
        (JointKind::Exhaust, &[("manual", "dry")], None, "the manual"),
        (JointKind::Exhaust, &[("precoated", "yes")], None, PRACTICE),
        // A spark plug's torque is for clean, dry threads; its crush washer takes no oil.
        (JointKind::SparkPlug, &[("seal", "washer")], None, PRACTICE),
        (JointKind::SparkPlug, &[("seal", "cone")], None, PRACTICE),
        (
            JointKind::SparkPlug,
            &[("manual", "anti_seize")],
            Some(AntiSeize),
            "the manual",
        ),
    ]);
    let plug = joint(JointKind::SparkPlug, &[("seal", "washer")]);
    assert!(
        LightOil.refused_for(&plug).is_some(),
        "no oil on a spark plug's washer"
    );
    assert_eq!(
        LightOil.refused_for(&joint(JointKind::BondedOrCrushWasher, &[])),
        None,
        "a drain plug's washer takes a trace"
    );
    let sensor = |yes| {
        card(JointKind::Exhaust, &[("oxygen_sensor", yes)])
            .cautions
            .join(" ")
    };
    assert!(
        sensor("yes").contains("oxygen sensor") && !sensor("no").contains("oxygen sensor"),
        "{PRACTICE}"
    );
}

#[test]
fn high_strength_stays_out_of_aluminium_or_says_what_it_costs() {
    use JointKind::{Stud, ThreadedFastener as Bolt};
    let never = |face| [("face", face), ("thread", "to_m12"), ("apart", "never")];
    all_hold(&[
        // Coming apart takes 230 to 320 °C (a manual's removal figure, seen); age-hardened castings soften from
        // about 150 °C (handbook, from memory).
        (Stud, &never("aluminium"), Some(ThreadlockMedium), MEMORY),
        (Bolt, &never("aluminium"), Some(ThreadlockMedium), MEMORY),
        (Stud, &never("steel_iron"), Some(ThreadlockHigh), PRACTICE),
        (Stud, &never("brass_copper"), Some(ThreadlockHigh), PRACTICE),
        (
            Stud,
            &[("face", "aluminium"), ("thread", "to_m8")],
            Some(ThreadlockMedium),
            PRACTICE,
        ),
    ]);
    // Zinc plated says nothing of what it runs in.
    let plated = |partner| {
        let [face, thread, apart] = never("plated");
        card(Stud, &[face, thread, apart, ("partner", partner)]).class
    };
    assert_eq!(plated("aluminium"), Some(ThreadlockMedium), "{PRACTICE}");
    assert_eq!(plated("other"), Some(ThreadlockHigh), "{PRACTICE}");
    let removal = |face| {
        let card = card(
            Bolt,
            &[("manual", "lock_high"), ("face", face), ("thread", "to_m12")],
        );
        assert_eq!(card.class, Some(ThreadlockHigh), "the manual");
        card.removal.unwrap()
    };
    for face in ["aluminium", "steel_iron"] {
        assert!(removal(face).contains("230 to 320 °C"), "{}", removal(face));
    }
    assert!(removal("aluminium").contains("150 °C") && !removal("steel_iron").contains("150 °C"));
}

#[test]
fn a_retaining_compound_holds_by_gap_and_by_what_is_held() {
    let class = |gap_mm: f64, held: &str| {
        let mut joint = joint(JointKind::Cylindrical, &[("gap", "to_0_1"), ("held", held)]);
        joint.gap = Some(Length::new::<millimeter>(gap_mm));
        recommend(&joint)
    };
    // Off centre by half the gap: 0.1 mm at most for a bearing or a gear, 0.25 mm for a bush: common practice.
    for (held, most) in [("race", 0.1), ("on_shaft", 0.1), ("unknown", 0.1), ("bush", 0.25)] {
        assert_eq!(class(most, held).class, Some(RetainingCompound), "{held}");
        assert_eq!(class(most + 0.001, held).class, None, "{held}");
    }
    // Best at 0.05 to 0.13 mm on the diameter: a bearing supplier's note.
    let strongest = |gap_mm: f64| {
        let card = class(gap_mm, "bush");
        !card
            .cautions
            .iter()
            .any(|line| line.starts_with("Strongest at 0.05 to 0.13 mm"))
    };
    assert!([0.0501, 0.1, 0.13].into_iter().all(strongest));
    assert!(![0.02, 0.05, 0.1301, 0.25].into_iter().any(strongest));
    // Nothing goes into a bearing.
    assert!(
        class(0.1, "race")
            .cautions
            .iter()
            .any(|line| line.starts_with("Never into the bearing"))
    );
    assert!(
        class(0.1, "race")
            .must_not_touch
            .contains(&"Bearings, oil ways and jets.")
    );
    // The manual's word stands, with what it costs.
    let named = card(
        JointKind::Cylindrical,
        &[("manual", "retaining"), ("gap", "to_0_25"), ("held", "on_shaft")],
    );
    assert_eq!(named.class, Some(RetainingCompound));
    assert!(named.cautions.iter().any(|line| line.contains("off centre")));
}

#[test]
fn plastic_near_a_metal_thread_keeps_wet_compound_away() {
    use JointKind::ThreadedFastener as Bolt;
    let near = [("thread", "to_m8"), ("hole", "blind"), ("plastic_part", "yes")];
    all_hold(&[
        // Polycarbonate, ABS and acrylic crack under load when wetted by it: common practice.
        (Bolt, &near, None, PRACTICE),
        (
            Bolt,
            &[("assembled", "yes"), ("plastic_part", "yes")],
            None,
            PRACTICE,
        ),
        (
            Bolt,
            &[("manual", "lock_medium"), ("plastic_part", "yes")],
            Some(ThreadlockMedium),
            "the manual",
        ),
        (Bolt, &[("plastic_part", "no")], Some(ThreadlockMedium), PRACTICE),
    ]);
    let named = card(Bolt, &[("manual", "lock_medium"), ("plastic_part", "yes")]);
    assert!(named.cautions.iter().any(|line| line.contains("plastic")));
    assert!(ThreadlockMedium.refused_for(&joint(Bolt, &near)).is_some());
}

#[test]
fn a_hole_into_oil_is_sealed_whatever_locks_it() {
    use JointKind::ThreadedFastener as Bolt;
    all_hold(&[
        (Bolt, &[("hole", "to_fluid")], Some(ThreadlockMedium), PRACTICE),
        (
            Bolt,
            &[("locked", "yes"), ("hole", "to_fluid")],
            Some(AnaerobicPipe),
            PRACTICE,
        ),
        (Bolt, &[("locked", "yes"), ("hole", "blind")], None, PRACTICE),
        (
            Bolt,
            &[("manual", "thread_sealant")],
            Some(AnaerobicPipe),
            "the manual",
        ),
    ]);
    // A locker in it is there to seal first, and says so: most anaerobic lockers seal a thread against oil
    // (common practice, no source).
    for thread in ["to_m8", "to_m12", "over_m20"] {
        let found = card(Bolt, &[("thread", thread), ("hole", "to_fluid")]);
        assert_eq!(found.class, Some(ThreadlockMedium), "{thread}");
        assert!(found.reason.contains("it seals"), "{thread}: {}", found.reason);
    }
    let small = card(Bolt, &[("thread", "to_m5"), ("hole", "to_fluid")]);
    assert_eq!(small.class, Some(ThreadlockLow));
    assert!(small.reason.contains("it seals"), "{}", small.reason);
    let blind = card(
        Bolt,
        &[("thread", "to_m8"), ("hole", "blind"), ("vibration", "yes")],
    );
    assert!(blind.reason.contains("shaking"), "{}", blind.reason);
}

#[test]
fn seals_core_plugs_cones_and_tapers() {
    use JointKind::{CorePlug, PlugOrPipeThread, ShaftSeal, TaperSeat};
    all_hold(&[
        // Rubber seals by its squeeze; its lip must not start dry.
        (ShaftSeal, &[("outside", "rubber")], Some(Grease), PRACTICE),
        (ShaftSeal, &[("outside", "coated")], Some(Grease), PRACTICE),
        (
            ShaftSeal,
            &[("outside", "metal")],
            Some(SemiDryingGasket),
            PRACTICE,
        ),
        (
            ShaftSeal,
            &[("outside", "metal"), ("gap", "to_0_1")],
            Some(RetainingCompound),
            PRACTICE,
        ),
        (
            ShaftSeal,
            &[("outside", "metal"), ("gap", "to_0_25")],
            None,
            PRACTICE,
        ),
        (
            ShaftSeal,
            &[("manual", "retaining"), ("outside", "rubber")],
            None,
            PRACTICE,
        ),
        (CorePlug, &[], Some(RetainingCompound), PRACTICE),
        (
            CorePlug,
            &[("manual", "liquid_gasket")],
            Some(SemiDryingGasket),
            "the manual",
        ),
        (CorePlug, &[("precoated", "yes")], None, PRACTICE),
        (CorePlug, &[("gap", "to_0_05")], None, PRACTICE),
        (PlugOrPipeThread, &[("seal", "cone")], None, PRACTICE),
        (
            PlugOrPipeThread,
            &[("manual", "thread_sealant"), ("seal", "cone")],
            None,
            PRACTICE,
        ),
        (TaperSeat, &[], None, PRACTICE),
        (
            TaperSeat,
            &[("manual", "retaining")],
            Some(RetainingCompound),
            "the manual",
        ),
    ]);
}
