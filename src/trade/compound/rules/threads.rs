//! Bolts, screws, nuts and studs.

use super::Rule;
use crate::trade::application::JointKind::Stud;
use crate::trade::application::{Apart, ManualWord};
use crate::trade::compound::CompoundClass::{
    self, AnaerobicPipe, AntiSeize, LightOil, SiliconeNeutral, ThreadlockHigh, ThreadlockLow,
    ThreadlockMedium, ThreadlockWicking,
};
use crate::trade::compound::limits::*;

const LOCKS_NOT_SEALS: (CompoundClass, &str) =
    (AnaerobicPipe, "It seals a thread; it is not made to hold one.");

/// Beside medium strength in a thread that it fills, whether or not it reaches a fluid.
const NOT_TO_M20: [(CompoundClass, &str); 3] = [
    (ThreadlockLow, "For threads to about M6 that are often adjusted."),
    (
        ThreadlockHigh,
        "It needs 230 to 320 °C to come apart, which oil, seals and paint may not stand.",
    ),
    LOCKS_NOT_SEALS,
];

/// Threads: where the torque holds them, by the manual’s word, and where it says nothing.
pub(super) static THREAD: &[Rule] = &[
    Rule {
        id: "thread-galls-open",
        when: |j| clamped(j) && j.galls().is_none(),
        class: None,
        reason: "Nothing shakes it: the right torque holds it. Find out what it runs in: stainless seizes on stainless and in aluminium, and then wants anti-seize.",
        not: &[(
            ThreadlockMedium,
            "Not needed, and it changes the friction under the torque.",
        )],
    },
    Rule {
        id: "thread-galls",
        when: |j| clamped(j) && j.galls() == Some(true),
        class: Some(AntiSeize),
        reason: "Nothing shakes it, and stainless seizes on stainless and in aluminium: it must not run dry.",
        not: &[
            (ThreadlockMedium, "For one that shakes."),
            (LightOil, "The load squeezes it out of a stainless thread."),
        ],
    },
    Rule {
        id: "thread-clamp-holds",
        when: clamped,
        class: None,
        reason: "The manual names nothing and nothing shakes it: the right torque holds it.",
        not: &[(
            ThreadlockMedium,
            "Not needed, and it changes the friction under the torque.",
        )],
    },
    Rule {
        id: "thread-plastic-part",
        when: |j| bolt(j) && silent(j) && j.plastic_part,
        class: None,
        reason: "Wet compound creeps to the plastic part and cracks it, there and then or weeks later under load. Lock it another way.",
        not: &[(ThreadlockMedium, "It cracks many plastics that are under load.")],
    },
    Rule {
        id: "held-to-fluid",
        when: |j| bolt(j) && silent(j) && j.locked,
        class: Some(AnaerobicPipe),
        reason: "A part locks it, and its hole goes through into oil or coolant: the thread has to be sealed, not locked.",
        not: &[
            (ThreadlockMedium, "Not beside lock wire or lock plates."),
            (
                SiliconeNeutral,
                "It squeezes out of a thread and its crumbs wander.",
            ),
        ],
    },
    Rule {
        id: "thread-wicking",
        when: |j| bolt(j) && j.assembled,
        class: Some(ThreadlockWicking),
        reason: "It is together and stays together: a thin grade creeps in from outside.",
        not: &[
            (ThreadlockMedium, "Too thick to creep into a closed thread."),
            (ThreadlockHigh, "Too thick to creep into a closed thread."),
        ],
    },
    Rule {
        id: "thread-manual-high",
        when: |j| bolt(j) && named(j, ManualWord::LockHigh),
        class: Some(ThreadlockHigh),
        reason: "The manual names high strength.",
        not: &[(ThreadlockMedium, "Weaker than the manual asks for.")],
    },
    Rule {
        id: "thread-manual-medium",
        when: |j| bolt(j) && named(j, ManualWord::LockMedium),
        class: Some(ThreadlockMedium),
        reason: "The manual names medium strength.",
        not: &[
            (
                ThreadlockHigh,
                "Stronger than the manual asks for: it needs heat to come apart.",
            ),
            (ThreadlockLow, "Weaker than the manual asks for."),
        ],
    },
    Rule {
        id: "thread-manual-low",
        when: |j| bolt(j) && named(j, ManualWord::LockLow),
        class: Some(ThreadlockLow),
        reason: "The manual names low strength.",
        not: &[(ThreadlockMedium, "Stronger than the manual asks for.")],
    },
    Rule {
        id: "thread-manual-sealant",
        when: |j| bolt(j) && named(j, ManualWord::ThreadSealant),
        class: Some(AnaerobicPipe),
        reason: "The manual names a thread sealant: the hole reaches oil or coolant.",
        not: &[(ThreadlockMedium, "It locks more than the manual asks for.")],
    },
    Rule {
        id: "thread-never-aluminium",
        when: |j| {
            bolt(j) && j.apart == Apart::Never && j.thread_mm > HIGH_FROM_MM - WHISKER && j.may_be_aluminium()
        },
        class: Some(ThreadlockMedium),
        reason: "It stays for good, in aluminium: medium strength holds it, and it can still come out. High strength needs 230 to 320 °C to let go, and cast aluminium loses its temper from about 150 °C.",
        not: &[
            (
                ThreadlockHigh,
                "Getting it out would cost the thread or the casting its strength.",
            ),
            (ThreadlockLow, "For threads to about M6 that are often adjusted."),
        ],
    },
    Rule {
        id: "thread-never-large",
        when: |j| bolt(j) && j.apart == Apart::Never && j.thread_mm > HIGH_FROM_MM - WHISKER,
        class: Some(ThreadlockHigh),
        reason: "A large thread that stays for good.",
        not: &[
            (ThreadlockMedium, "Holds less, and coming apart is not asked for."),
            LOCKS_NOT_SEALS,
        ],
    },
    Rule {
        id: "thread-small-to-fluid",
        when: |j| small(j) && to_fluid(j),
        class: Some(ThreadlockLow),
        reason: "Its hole goes through into oil or coolant: round the whole thread it seals, and a small thread, or one that is often adjusted, comes loose again without shearing.",
        not: &[
            (ThreadlockMedium, "It can shear a small fastener at removal."),
            (ThreadlockHigh, "It shears a small fastener at removal."),
            LOCKS_NOT_SEALS,
        ],
    },
    Rule {
        id: "thread-small",
        when: small,
        class: Some(ThreadlockLow),
        reason: "A small thread, or one that is often adjusted: it must come loose without shearing.",
        not: &[
            (ThreadlockMedium, "It can shear a small fastener at removal."),
            (ThreadlockHigh, "It shears a small fastener at removal."),
        ],
    },
    Rule {
        id: "stud-aluminium",
        when: |j| j.is(&[Stud]) && j.in_aluminium() && j.thread_mm < MEDIUM_TO_MM + WHISKER,
        class: Some(ThreadlockMedium),
        reason: "It keeps the stud in when its nut comes off, and lets it out again with hand tools, without heat that the aluminium does not stand.",
        not: &[
            (
                ThreadlockHigh,
                "It needs 230 to 320 °C to come apart, and cast aluminium loses its temper from about 150 °C.",
            ),
            (AntiSeize, "The stud would come out with its nut."),
        ],
    },
    Rule {
        id: "thread-to-fluid",
        when: |j| bolt(j) && to_fluid(j) && j.thread_mm < MEDIUM_TO_MM + WHISKER,
        class: Some(ThreadlockMedium),
        reason: "Its hole goes through into oil or coolant and no part locks it: round the whole thread it seals, holds, and still comes apart with hand tools.",
        not: &NOT_TO_M20,
    },
    Rule {
        id: "thread-to-fluid-large",
        when: |j| bolt(j) && to_fluid(j),
        class: Some(ThreadlockMedium),
        reason: "Its hole goes through into oil or coolant: round the whole thread it seals, and comes apart again. Over about M20 ask the label whether the grade fills the thread.",
        not: &[(
            ThreadlockHigh,
            "A thread this large, locked hard, needs much heat to come apart.",
        )],
    },
    Rule {
        id: "thread-medium",
        when: |j| bolt(j) && j.thread_mm < MEDIUM_TO_MM + WHISKER,
        class: Some(ThreadlockMedium),
        reason: "Holds against shaking and still comes apart with hand tools.",
        not: &NOT_TO_M20,
    },
    Rule {
        id: "thread-medium-large",
        when: bolt,
        class: Some(ThreadlockMedium),
        reason: "It has to come apart again. Over about M20 ask the label whether the grade fills the thread.",
        not: &[(
            ThreadlockHigh,
            "A thread this large, locked hard, needs much heat to come apart.",
        )],
    },
];
