//! The rows: what each field is, its range, how it is read and written.

use crate::job::field::{Field, Kept, Number, pick};
use crate::job::id::RowId;
use crate::job::kinds::select::data::{By, Place, Row, Select, Shim, Trial, UNITS};
use crate::trade::quantity::{TorqueUnit, Unit};
use crate::trade::selection::{Counts, Thicker};

/// A measured size, in mm, inches or thousandths of one; negative where it stands proud.
const SIZE: (f64, f64) = (-5_000.0, 5_000.0);
/// A thickness in the same.
const THICK: (f64, f64) = (0.000_1, 1_000.0);
/// End float or a turning torque.
const READ: (f64, f64) = (0.0, 10_000.0);

/// A box of one size nobody has told yet.
pub fn no_shim() -> Shim {
    Shim {
        id: RowId::default(),
        thick: 0.0,
        count: 1,
        between: false,
    }
}

fn numbered<'a>(all: impl Iterator<Item = &'a str>) -> Vec<(String, String)> {
    all.enumerate()
        .map(|(at, words)| (at.to_string(), words.to_owned()))
        .collect()
}

fn words_of<T: PartialEq + Copy>(all: &[(T, &str)], one: T) -> String {
    let found = all.iter().find(|(own, _)| *own == one);
    found.map_or(String::new(), |(_, words)| (*words).to_owned())
}

pub static HEAD: [Field<Select>; 3] = [
    Field::Words {
        id: "part",
        label: "what is chosen",
        get: |s| &s.part,
        set: |s, words| s.part = words,
    },
    Field::Choice {
        id: "unit",
        label: "sizes in",
        offered: || numbered(UNITS.iter().map(|unit| unit.symbol())),
        get: |s| s.unit.symbol().to_owned(),
        set: |s, value| pick(&UNITS, value).map(|unit| s.unit = unit),
    },
    Field::Choice {
        id: "by",
        label: "chosen by",
        offered: || numbered(By::ALL.iter().map(|(_, words)| *words)),
        get: |s| words_of(&By::ALL, s.by),
        set: |s, value| pick(&By::ALL, value).map(|(by, _)| s.by = by),
    },
];

/// Of what is taken piece by piece.
pub static SHARED: [Field<Select>; 1] = [Field::Words {
    id: "set",
    label: "the box or set they come from, by a name, where other steps take from it too",
    get: |s| &s.set,
    set: |s, words| s.set = words,
}];

pub static PLACE: [Field<Place>; 1] = [Field::Name {
    id: "name",
    label: "what is measured",
    get: |p| &p.name,
    set: |p, name| p.name = name,
}];

pub static MEASURED: [Field<Select>; 1] = [Field::Choice {
    id: "counts",
    label: "of several readings counts",
    offered: || numbered(Counts::ALL.iter().map(|(_, words)| *words)),
    get: |s| words_of(&Counts::ALL, s.counts),
    set: |s, value| pick(&Counts::ALL, value).map(|(counts, _)| s.counts = counts),
}];

static GAPS: [Number<Select>; 2] = [
    Number::new(
        ("allowance", "add to the gap (− takes off)"),
        Kept::Bare,
        SIZE,
        "select/allowance",
        |s| Some(s.allowance),
        |s, value| s.allowance = value,
    ),
    Number::<Select>::new(
        ("tolerance", "the pack may be off by ±"),
        Kept::Bare,
        (0.0, 100.0),
        "select/tolerance",
        |s| s.tolerance,
        |s, value| s.tolerance = Some(value),
    )
    .or_none(|s| s.tolerance = None),
];

pub static GAP: [Field<Select>; 1] = [Field::Numbers(&GAPS)];

static SHIMS: [Number<Shim>; 2] = [
    Number::new(
        ("thick", "thickness"),
        Kept::Bare,
        THICK,
        "select/shims/thick",
        |s| Some(s.thick),
        |s, value| s.thick = value,
    ),
    Number::<Shim>::new(
        ("count", "how many there are"),
        Kept::Bare,
        (1.0, 20.0),
        "select/shims/count",
        |s| Some(f64::from(s.count)),
        |s, value| s.count = value as u32,
    )
    .whole(),
];

pub static SHIM: [Field<Shim>; 2] = [
    Field::Numbers(&SHIMS),
    Field::Flag {
        id: "between",
        label: "only between two others",
        get: |s| s.between,
        set: |s, yes| s.between = yes,
    },
];

static ENDS: [Number<Row>; 3] = [
    Number::<Row>::new(
        ("least", "measured from"),
        Kept::Bare,
        SIZE,
        "select/rows/least",
        |r| r.least,
        |r, value| r.least = Some(value),
    )
    .or_none(|r| r.least = None),
    Number::<Row>::new(
        ("most", "measured to"),
        Kept::Bare,
        SIZE,
        "select/rows/most",
        |r| r.most,
        |r, value| r.most = Some(value),
    )
    .or_none(|r| r.most = None),
    Number::<Row>::new(
        ("thick", "gives thickness"),
        Kept::Bare,
        THICK,
        "select/rows/thick",
        |r| r.thick,
        |r, value| r.thick = Some(value),
    )
    .or_none(|r| r.thick = None),
];

pub static ROW: [Field<Row>; 2] = [
    Field::Numbers(&ENDS),
    Field::Words {
        id: "code",
        label: "gives the part marked",
        get: |r| &r.code,
        set: |r, words| r.code = words,
    },
];

pub static WITH_TRIAL: [Field<Select>; 1] = [Field::Flag {
    id: "trial",
    label: "tighten, read, change until it is right",
    get: |s| s.trial.is_some(),
    set: |s, yes| s.trial = yes.then(Trial::default),
}];

static LIMITS: [Number<Trial>; 3] = [
    Number::<Trial>::new(
        ("least", "then at least"),
        Kept::Bare,
        READ,
        "select/trial/least",
        |t| t.least,
        |t, value| t.least = Some(value),
    )
    .or_none(|t| t.least = None),
    Number::<Trial>::new(
        ("most", "then at most"),
        Kept::Bare,
        READ,
        "select/trial/most",
        |t| t.most,
        |t, value| t.most = Some(value),
    )
    .or_none(|t| t.most = None),
    Number::<Trial>::new(
        ("per", "change of pack for one of torque"),
        Kept::Bare,
        (0.000_001, 1_000.0),
        "select/trial/per",
        |t| t.per,
        |t, value| t.per = Some(value),
    )
    .or_none(|t| t.per = None),
];

/// What is read, with end float first.
const END_FLOAT: &str = "end float";

pub static TRIAL: [Field<Trial>; 4] = [
    Field::Choice {
        id: "torque",
        label: "what is read",
        offered: || {
            let torques = TorqueUnit::ALL.map(|unit| format!("turning torque, {}", unit.symbol()));
            let torques = torques.iter().map(String::as_str);
            numbered(std::iter::once(END_FLOAT).chain(torques))
        },
        get: |t| match t.torque {
            None => END_FLOAT.to_owned(),
            Some(unit) => format!("turning torque, {}", unit.symbol()),
        },
        set: |t, value| {
            let all = std::iter::once(None).chain(TorqueUnit::ALL.map(Some));
            pick(&all.collect::<Vec<_>>(), value).map(|torque| t.torque = torque)
        },
    },
    Field::Flag {
        id: "loose",
        label: "what it reads loose is taken off",
        get: |t| t.loose,
        set: |t, yes| t.loose = yes,
    },
    Field::Numbers(&LIMITS),
    Field::Choice {
        id: "thicker",
        label: "a thicker pack",
        offered: || numbered(Thicker::ALL.iter().map(|(_, words)| *words)),
        get: |t| words_of(&Thicker::ALL, t.thicker),
        set: |t, value| pick(&Thicker::ALL, value).map(|(thicker, _)| t.thicker = thicker),
    },
];
