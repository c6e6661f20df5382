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
        ShaftSeal "shaft_seal" "Shaft seal, its outside in the bore",
        CorePlug "core_plug" "Core plug (cup plug) in its bore",
        TaperSeat "taper_seat" "Hub or wheel on a tapered seat",
        SparkPlug "spark_plug" "Spark plug",
        Exhaust "exhaust" "Exhaust stud, bolt or nut",
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
        Grease "grease" "Grease",
        AntiSeize "anti_seize" "Anti-seize paste",
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
        Cone "cone" "A cone: flare, union or tapered seat",
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

answers! {
    /// What a stainless or plated thread runs in.
    Partner {
        Stainless "stainless" "Stainless steel or titanium",
        Aluminium "aluminium" "Aluminium or magnesium",
        Other "other" "Another metal",
    }
}

answers! {
    /// What slides in or on.
    Held {
        Race "race" "A bearing's outer ring in a bore",
        OnShaft "on_shaft" "A bearing or gear on a shaft",
        Bush "bush" "A bush or sleeve",
    }
}

answers! {
    /// What the outside of a shaft seal is.
    Outside {
        Rubber "rubber" "Rubber",
        Coated "coated" "Metal, with a dry coating",
        Metal "metal" "Bare metal",
    }
}
