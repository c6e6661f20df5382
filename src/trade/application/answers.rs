//! The answers a joint can be given, each with its stored name and its words on the tile.

use super::choice::Choice;
use serde::{Deserialize, Serialize};

/// An enum of answers: each variant once, with its id and its words.
macro_rules! answers {
    ($(#[$doc:meta])* $name:ident { $($variant:ident $id:literal $words:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
        pub enum $name {
            $(#[doc = $words] #[serde(rename = $id)] $variant,)+
        }

        impl $name {
            /// Every one, in the order the tiles show them.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The name it is stored under.
            pub fn id(self) -> &'static str {
                match self { $(Self::$variant => $id),+ }
            }

            /// The words on its tile.
            pub fn words(self) -> &'static str {
                match self { $(Self::$variant => $words),+ }
            }

            /// The one stored under this name.
            pub fn from_id(id: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|answer| answer.id() == id)
            }

            /// Its tile.
            pub const fn choice(self) -> Choice {
                match self { $(Self::$variant => Choice { id: $id, words: $words }),+ }
            }
        }
    };
}

answers! {
    /// What is joined.
    JointKind {
        ThreadedFastener "fastener" "Bolt, screw or nut",
        Stud "stud" "Stud in a case",
        PlugOrPipeThread "plug" "Plug, fitting or pipe thread",
        FlangeRigid "flange_rigid" "Stiff machined faces, metal to metal",
        FlangeFlexible "flange_flexible" "Stamped or flexible cover",
        CaseHalves "case_halves" "Case halves without a gasket",
        ThreeWay "three_way" "Where three parts or a gasket end meet",
        Cylindrical "cylindrical" "Bearing, bush or sleeve in a bore or on a shaft",
        HoseSpigot "hose" "Hose on a spigot",
        ORing "o_ring" "O-ring",
        BondedOrCrushWasher "washer" "Crush washer or bonded washer",
        Gasket "gasket" "Gasket",
    }
}

answers! {
    /// What the service manual names for the joint.
    ManualWord {
        NotStated "not_stated" "Nothing named",
        LockLow "lock_low" "Low-strength threadlocker",
        LockMedium "lock_medium" "Medium-strength threadlocker",
        LockHigh "lock_high" "High-strength threadlocker",
        ThreadSealant "thread_sealant" "Thread sealant",
        Retaining "retaining" "Retaining compound",
        AnaerobicSealant "anaerobic_sealant" "Anaerobic sealant",
        Silicone "silicone" "Silicone",
        LiquidGasket "liquid_gasket" "Liquid gasket",
        Oil "oil" "Oil",
        Dry "dry" "Dry, or nothing allowed",
    }
}

answers! {
    /// What the faces are made of, from the easiest to the most awkward.
    Face {
        BrassOrCopper "brass_copper" "Brass, bronze or copper",
        SteelOrIron "steel_iron" "Bare steel or iron",
        CastAluminium "aluminium" "Aluminium or magnesium",
        Stainless "stainless" "Stainless steel or titanium",
        Plated "plated" "Plated, anodised or painted",
        Thermoplastic "plastic" "Plastic",
    }
}

answers! {
    /// Where a threaded hole ends.
    Hole {
        Blind "blind" "Blind",
        Through "through" "Through, or a nut",
        ThroughToFluid "to_fluid" "Through, into oil or coolant",
    }
}

answers! {
    /// How often the joint has to come apart.
    Apart {
        Often "often" "Often, for adjustment",
        Service "service" "At a service or repair",
        Never "never" "Never",
    }
}

answers! {
    /// What makes a plug or fitting tight.
    PlugSeal {
        Taper "taper" "The thread: it is tapered",
        Parallel "parallel" "The thread: straight, no washer",
        Washer "washer" "A washer under the head",
        Ring "ring" "An O-ring",
    }
}

answers! {
    /// What wets the joint.
    Fluid {
        Nothing "nothing" "Nothing, or splash",
        Oil "oil" "Oil",
        Coolant "coolant" "Coolant or water",
        Fuel "fuel" "Fuel",
    }
}
