//! The parts of an application that questions fill.

use super::Application;

/// Each once, with the name its question is answered by and its place in an application.
macro_rules! fields {
    ($($variant:ident $id:literal $place:ident),+ $(,)?) => {
        /// The part of an application that a question fills.
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(super) enum Field { $($variant,)+ }

        impl Field {
            /// The name its question is answered by.
            pub(super) const fn id(self) -> &'static str {
                match self { $(Self::$variant => $id),+ }
            }

            /// Takes the answer over from another application.
            pub(super) fn copy(self, from: &Application, to: &mut Application) {
                match self { $(Self::$variant => to.$place = from.$place),+ }
            }
        }
    };
}

fields! {
    Manual "manual" manual,
    Precoated "precoated" precoated,
    Locked "locked" locked,
    Face "face" face,
    Assembled "assembled" assembled,
    Thread "thread" thread,
    Hole "hole" hole,
    Apart "apart" apart,
    Vibration "vibration" vibration,
    Seal "seal" seal,
    Rigid "rigid" rigid,
    Gap "gap" gap,
    Fluid "fluid" fluid,
    Temperature "temperature" temperature,
    OxygenSensor "oxygen_sensor" oxygen_sensor,
    OilWays "oil_ways" oil_ways,
    Partner "partner" partner,
    PlasticPart "plastic_part" plastic_part,
    Held "held" held,
    Outside "outside" outside,
}
