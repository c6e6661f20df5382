//! What nothing goes on before something is put right or found out, however cool it stays.

use super::Rule;
use crate::trade::application::JointKind::{CorePlug, Gasket, SparkPlug, TaperSeat};
use crate::trade::application::{Apart, ManualWord, PlugSeal};
use crate::trade::compound::CompoundClass::{
    AnaerobicFlange, AntiSeize, LightOil, RetainingCompound, SemiDryingGasket, SiliconeNeutral,
    ThreadlockHigh, ThreadlockMedium, ThreadlockWicking,
};
use crate::trade::compound::limits::*;

/// Contradictions, parts that hold already, fits that no compound mends.
pub(super) static UNFIT: &[Rule] = &[
    Rule {
        id: "held-conflict",
        when: |j| bolt(j) && j.locked && lock_named(j),
        class: None,
        reason: "The manual names a compound and the fastener is locked by a part as well: check the page before anything goes on.",
        not: &[(
            ThreadlockMedium,
            "Not beside lock wire or lock plates, unless the manual says both.",
        )],
    },
    Rule {
        id: "held-galls-open",
        when: |j| held_dry(j) && j.galls().is_none(),
        class: None,
        reason: "It is locked by its plate, wire, pin or nut. Find out what it runs in: stainless seizes on stainless and in aluminium, and then wants anti-seize.",
        not: &[(ThreadlockMedium, "Not beside lock wire or lock plates.")],
    },
    Rule {
        id: "held-otherwise",
        when: |j| held_dry(j) && j.galls() == Some(false),
        class: None,
        reason: "It is locked by its plate, wire, pin or nut; one lock, properly fitted, is enough.",
        not: &[(ThreadlockMedium, "Not beside lock wire or lock plates.")],
    },
    Rule {
        id: "thread-take-out",
        when: |j| {
            bolt(j)
                && j.assembled
                && !(j.locked && silent(j))
                && (!named(j, ManualWord::NotStated) || j.thread_mm > WICKING_TO_MM + WHISKER)
        },
        class: None,
        reason: "It is together already, and what it needs goes on a clean, dry thread: take it out first.",
        not: &[(
            ThreadlockWicking,
            "It creeps only into threads to about M12, and is not what the manual names.",
        )],
    },
    Rule {
        id: "thread-high-conflict",
        when: |j| bolt(j) && named(j, ManualWord::LockHigh) && shears(j),
        class: None,
        reason: "The manual's word and the other answers disagree: high strength shears a thread under M10 when it comes apart. Check the page and the thread before anything goes on.",
        not: &[(ThreadlockHigh, "Taking it out would shear the fastener.")],
    },
    Rule {
        id: "taper-dry",
        when: |j| j.is(&[TaperSeat]) && silent(j),
        class: None,
        reason: "A taper holds by clean, dry metal: oil or paste lets it climb until the hub splits, and compound keeps it from seating. Lap it if it does not bear.",
        not: &[
            (
                RetainingCompound,
                "Only where the manual names it: it keeps the taper from seating.",
            ),
            (AntiSeize, "A greased taper climbs, and does not hold."),
        ],
    },
    Rule {
        id: "spark-plug-washer",
        when: |j| j.is(&[SparkPlug]) && !named(j, ManualWord::AntiSeize) && j.seal == Some(PlugSeal::Washer),
        class: None,
        reason: "Its crush washer is the seal and takes no oil: clean and dry, into a cold head, by hand until it seats. Oil or paste pulls the thread harder at the same torque.",
        not: &[
            (
                LightOil,
                "No oil on the crush washer of a spark plug: its torque is for dry threads.",
            ),
            (
                AntiSeize,
                "Only where the manual names it, with its torque for that.",
            ),
        ],
    },
    Rule {
        id: "spark-plug-cone",
        when: |j| j.is(&[SparkPlug]) && !named(j, ManualWord::AntiSeize) && j.seal == Some(PlugSeal::Cone),
        class: None,
        reason: "Its cone is the seal, without a washer: clean and dry, into a cold head, by hand until it seats. It needs far less of a turn than one with a washer.",
        not: &[
            (LightOil, "An oiled cone is driven in, and is hard to get out."),
            (
                AntiSeize,
                "Only where the manual names it, with its torque for that.",
            ),
        ],
    },
    Rule {
        id: "spark-plug-look",
        when: |j| j.is(&[SparkPlug]) && !named(j, ManualWord::AntiSeize) && j.seal.is_none(),
        class: None,
        reason: "It goes in clean and dry, into a cold head, by hand until it seats. Look whether it seals by a washer or a cone before the torque.",
        not: &[
            (LightOil, "Its torque is for dry threads."),
            (
                AntiSeize,
                "Only where the manual names it, with its torque for that.",
            ),
        ],
    },
    Rule {
        id: "core-plug-loose",
        when: |j| j.is(&[CorePlug]) && !gap_within(j, 0.0),
        class: None,
        reason: "A core plug holds by its press: one that slides in comes out under pressure. The next size up, or a repair of the bore.",
        not: &[(
            RetainingCompound,
            "It seals a pressed plug; it does not hold a loose one against pressure.",
        )],
    },
    Rule {
        id: "seal-loose",
        when: |j| {
            seal(j)
                && !seal_dry(j)
                && j.manual != ManualWord::Grease
                && !gap_within(
                    j,
                    if silent(j) {
                        CENTRED_GAP_MM
                    } else {
                        ANAEROBIC_GAP_MM
                    },
                )
        },
        class: None,
        reason: "Too loose for a seal: it runs off centre and leaks at its lip. Check the part; the bore needs a repair.",
        not: &[(
            RetainingCompound,
            "It holds in a small gap; here the lip would run off centre.",
        )],
    },
    Rule {
        id: "bore-measure",
        when: |j| bore(j) && j.gap_mm.is_none(),
        class: None,
        reason: "Measure the fit first: a press fit needs no compound, a worn bore more than compound.",
        not: &[(RetainingCompound, "It holds only in a small, known gap.")],
    },
    Rule {
        id: "bore-press",
        when: |j| bore(j) && silent(j) && gap_within(j, 0.0),
        class: None,
        reason: "A press fit holds by itself.",
        not: &[(
            RetainingCompound,
            "Not needed, and it can be pushed into the bearing.",
        )],
    },
    Rule {
        id: "bore-worn",
        when: |j| bore(j) && !gap_within(j, ANAEROBIC_GAP_MM),
        class: None,
        reason: "Too loose for a compound to hold or to centre: the bore needs a repair.",
        not: &[(RetainingCompound, "Trusted to about 0.25 mm on the diameter.")],
    },
    Rule {
        id: "bore-off-centre",
        when: |j| bore(j) && silent(j) && off_centre(j),
        class: None,
        reason: "Too loose for what has to run true: it sits off centre by up to half the gap, so 0.1 mm on the diameter is the most for a bearing or gear. The bore or shaft needs a sleeve, or the case is done.",
        not: &[(
            RetainingCompound,
            "Up to 0.25 mm is for bushes and sleeves alone.",
        )],
    },
    Rule {
        id: "bore-often",
        when: |j| bore(j) && silent(j) && j.apart == Apart::Often,
        class: None,
        reason: "It comes apart often, and a retaining compound needs heat or a press to let go: a ring or plate has to hold it.",
        not: &[(RetainingCompound, "It needs heat or a press to come apart.")],
    },
    Rule {
        id: "gasket-dry",
        when: |j| j.is(&[Gasket]) && silent(j),
        class: None,
        reason: "A gasket goes on dry unless the manual names something: sealant lets it slip and squeeze out.",
        not: &[
            (SiliconeNeutral, "It lets the gasket slide out under load."),
            (SemiDryingGasket, "Only where the manual names it."),
        ],
    },
    Rule {
        id: "manual-solvent-plastic",
        when: |j| j.is(FACES_AND_GASKET) && named(j, ManualWord::LiquidGasket) && j.plastic(),
        class: None,
        reason: "The manual names a liquid gasket and a face is plastic: its solvent can attack that. Check the page.",
        not: &[(SemiDryingGasket, "Its solvent attacks many plastics.")],
    },
    Rule {
        id: "manual-anaerobic-plastic",
        when: |j| faces(j) && named(j, ManualWord::AnaerobicSealant) && j.plastic(),
        class: None,
        reason: "The manual names an anaerobic sealant, and a face is plastic, which it can crack. Check the page.",
        not: &[(AnaerobicFlange, "It cracks many plastics.")],
    },
];
