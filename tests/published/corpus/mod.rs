//! Published torques by thread, for the slip guard and the preload checks: one file a table, its
//! source in its first lines. A line is: thread, value, unit, class, condition, material (of the
//! female thread); the last three may be empty.

use halfcase::trade::preload::Condition;
use halfcase::trade::quantity::{Torque, TorqueUnit};
use halfcase::trade::strength::Strength;
use halfcase::trade::strip::FemaleMaterial;
use halfcase::trade::thread::Thread;

/// Tables known while the guard's limits were set; none was fitted to.
pub const SEEN: [(&str, &str); 7] = [
    ("FAA AC 43.13-1B", include_str!("faa_ac43_13_1b.csv")),
    ("VDI 2230 fine", include_str!("vdi_2230_fine.csv")),
    ("works standard", include_str!("works_standard.csv")),
    ("implement manual", include_str!("implement_manual.csv")),
    ("Dubbel 18", include_str!("dubbel_18.csv")),
    ("cast aluminium", include_str!("cast_aluminium.csv")),
    ("engine maker", include_str!("engine_maker.csv")),
];

/// Tables looked up only after the limits were fixed.
pub const HELD_OUT: [(&str, &str); 2] = [
    ("TM 10-4320-316-14", include_str!("tm_10_4320_316_14.csv")),
    ("TM 9-2320-362-14&P", include_str!("tm_9_2320_362_14p.csv")),
];

/// One published torque.
#[derive(Debug, Clone, Copy)]
pub struct Pair {
    pub thread: Thread,
    pub value: f64,
    pub unit: TorqueUnit,
    pub class: Option<Strength>,
    pub condition: Condition,
    pub material: Option<FemaleMaterial>,
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

/// Every pair of every table.
pub fn all() -> Vec<Pair> {
    let mut found = pairs(&SEEN);
    found.extend(pairs(&HELD_OUT));
    found
}

fn read(table: &'static str, line: &str) -> Pair {
    let fields: Vec<&str> = line.split(',').collect();
    let [thread, value, unit, class, condition, material] = fields[..] else {
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
            _ => wrong(table, line, "condition"),
        },
        material: match material {
            "" => None,
            "cast aluminium" => Some(FemaleMaterial::CastAluminium),
            _ => wrong(table, line, "material"),
        },
    }
}

fn wrong<T>(table: &str, line: &str, what: &str) -> T {
    panic!("{table}: {line}: no such {what}")
}
