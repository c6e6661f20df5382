//! Published torques by thread, and remembered ones, for the slip guard and the preload checks: one file a table, its
//! source in its first lines. A line is: thread, value, unit, class, condition, material (of the
//! female thread), and what it is where that is no bolt; from the class on each may be empty.

use halfcase::trade::guard::Fastener;
use halfcase::trade::preload::Condition;
use halfcase::trade::quantity::{Torque, TorqueUnit};
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;
use halfcase::trade::thread::Thread;

macro_rules! tables {
    ($($name:literal $file:literal)*) => { [$(($name, include_str!($file))),*] };
}

/// Tables the guard's limits were set on, by rule; none was fitted row by row.
pub const SEEN: [(&str, &str); 9] = tables![
    "FAA AC 43.13-1B" "faa_ac43_13_1b.csv"
    "VDI 2230 fine" "vdi_2230_fine.csv"
    "works standard" "works_standard.csv"
    "implement manual" "implement_manual.csv"
    "Dubbel 18" "dubbel_18.csv"
    "cast aluminium" "cast_aluminium.csv"
    "engine maker" "engine_maker.csv"
    "TM 5-3810-294-34" "tm_5_3810_294_34.csv"
    "TM 55-1730-229-12" "tm_55_1730_229_12.csv"
];

/// Tables from memory, no copy at hand: the limits of what is no bolt were set on them too. Nobody can look them up,
/// so that they stand apart from the published ones.
pub const REMEMBERED: [(&str, &str); 4] = tables![
    "ISO 6149, from memory" "iso_6149_memory.csv"
    "banjo bolts, from memory" "banjo_bolts_memory.csv"
    "studs, from memory" "studs_memory.csv"
    "shaft nuts, from memory" "shaft_nuts_memory.csv"
];

/// Tables that only check them.
pub const HELD_OUT: [(&str, &str); 8] = tables![
    "TM 10-4320-316-14" "tm_10_4320_316_14.csv"
    "TM 9-2320-362-14&P" "tm_9_2320_362_14p.csv"
    "TM 9-6150-228-13&P" "tm_9_6150_228_13p.csv"
    "TM 10-4930-247-13&P" "tm_10_4930_247_13p.csv"
    "TM 9-6115-670-14&P" "tm_9_6115_670_14p.csv"
    "TM 9-2815-220-24" "tm_9_2815_220_24.csv"
    "TM 10-4320-315-24" "tm_10_4320_315_24.csv"
    "LSU AgCenter" "lsu_spark_plugs.csv"
];

/// One torque of a table.
#[derive(Debug, Clone, Copy)]
pub struct Pair {
    pub thread: Thread,
    pub value: f64,
    pub unit: TorqueUnit,
    pub class: Option<Strength>,
    pub condition: Condition,
    pub material: Option<FemaleMaterial>,
    pub fastener: Fastener,
}

impl Pair {
    pub fn torque(&self) -> Torque {
        self.unit.torque(self.value)
    }
}

/// Every pair of the given tables.
pub fn pairs(tables: &[(&'static str, &'static str)]) -> Vec<Pair> {
    tables
        .iter()
        .flat_map(|&(table, text)| {
            text.lines()
                .filter(|line| !line.starts_with("# ") && !line.starts_with("thread,"))
                .map(move |line| read(table, line))
        })
        .collect()
}

/// Every pair of every published table.
pub fn published() -> Vec<Pair> {
    let mut found = pairs(&SEEN);
    found.extend(pairs(&HELD_OUT));
    found
}

/// Those and the remembered ones.
pub fn all() -> Vec<Pair> {
    let mut found = published();
    found.extend(pairs(&REMEMBERED));
    found
}

fn read(table: &'static str, line: &'static str) -> Pair {
    let fields: Vec<&str> = line.split(',').collect();
    let [thread, value, unit, class, condition, material, ref what @ ..] = fields[..] else {
        panic!("{table}: {line}: six fields wanted")
    };
    Pair {
        thread: Thread::parse(thread).unwrap_or_else(|error| panic!("{table}: {line}: {error}")),
        value: value.parse().unwrap_or_else(|_| wrong(table, line, "value")),
        unit: TorqueUnit::ALL
            .into_iter()
            .find(|u| u.symbol() == unit)
            .unwrap_or_else(|| wrong(table, line, "unit")),
        class: (!class.is_empty()).then(|| {
            Strength::ALL
                .into_iter()
                .find(|c| c.name() == class)
                .unwrap_or_else(|| wrong(table, line, "class"))
        }),
        condition: match condition {
            "" => Condition::Unknown,
            "dry" => Condition::Dry,
            "oiled" => Condition::Oiled,
            "plated" => Condition::Plated,
            _ => wrong(table, line, "condition"),
        },
        material: match material {
            "" => None,
            "cast aluminium" => Some(FemaleMaterial::CastAluminium),
            _ => wrong(table, line, "material"),
        },
        fastener: match what.first().copied().unwrap_or("bolt") {
            "bolt" => Fastener::Bolt,
            "stud" => Fastener::Stud,
            "plug" => Fastener::Plug,
            "banjo bolt" => Fastener::Banjo,
            "head plug" => Fastener::HeadPlug,
            "shaft nut" => Fastener::ShaftNut,
            "soft clamp" => Fastener::SoftClamp,
            _ => wrong(table, line, "fastener"),
        },
    }
}

fn wrong<T>(table: &str, line: &str, what: &str) -> T {
    panic!("{table}: {line}: no such {what}")
}
