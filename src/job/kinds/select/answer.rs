//! What the readings and rounds of a select step say: the aim, what to put in, what to change.

use super::data::{By, Piece, Select, Trial};
use super::shared::{same, take_out};
use crate::job::progress::{Reading, Round, StepProgress};
use crate::job::reading::What;
use crate::trade::quantity::Unit;
use crate::trade::selection::{Change, Found, MOST_SHIMS, Pack, Size, Thicker, change, pack, row_of, tidy};

/// What a pack is to come to, in the step's unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aim {
    /// What was measured: what counts of all readings.
    pub gap: f64,
    /// What the pack is to come to.
    pub pack: f64,
    /// Its least and most, where the manual gives a tolerance.
    pub window: Option<(f64, f64)>,
}

/// A pack that could be put in.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// What it is made of, thickest first.
    pub pieces: Vec<Piece>,
    /// What it comes to.
    pub sum: f64,
}

/// What to put in.
#[derive(Debug, Clone, PartialEq)]
pub enum Advice {
    /// Nothing can be said: readings are missing, or there is nothing to choose from.
    Nothing,
    /// This pack.
    Pack(Offer),
    /// The box can't make what is wanted; the nearest below and above.
    Miss {
        wanted: f64,
        below: Option<Offer>,
        above: Option<Offer>,
    },
    /// This part of the table.
    Part(Piece),
    /// This one, which another step has in.
    InElsewhere(Piece),
    /// What was measured stands in no row of the table.
    OutOfTable(f64),
    /// The table has nothing for these codes.
    NoSuchCodes,
    /// A thicker pack by so much, and nothing to build it from.
    Change(Change),
    /// A thicker pack; by how much, nobody says.
    Thicker(bool),
}

/// What the step wants before anything generic: the first of these that is missing.
#[derive(Debug, Clone, PartialEq)]
pub enum Wants {
    /// Read this.
    Read(What),
    /// Read the codes.
    Code,
    /// Put it in.
    Choose,
}

/// What is missing of a select step, in its order; none when only the findings are left.
pub fn wants(select: &Select, progress: &StepProgress) -> Option<Wants> {
    let read = |what: &What| taken(select, progress, what).is_some();
    if let Some(what) = places(select).find(|what| !read(what)) {
        return Some(Wants::Read(what));
    }
    if select.by == By::Code && progress.codes.is_none() {
        return Some(Wants::Code);
    }
    if round(select, progress).is_none() {
        return Some(Wants::Choose);
    }
    let unread = trials(select).into_iter().find(|what| !read(what));
    unread.map(Wants::Read)
}

/// Every reading the step asks for, in order.
pub fn asked(select: &Select) -> Vec<What> {
    places(select).chain(trials(select)).collect()
}

fn places(select: &Select) -> impl Iterator<Item = What> {
    let places = select.places.iter().filter(|_| select.measured());
    places.map(|place| What::At(place.id))
}

fn trials(select: &Select) -> Vec<What> {
    match &select.trial {
        None => Vec::new(),
        Some(trial) if trial.loose => vec![What::TurnLoose, What::TurnTight],
        Some(_) => vec![What::Trial],
    }
}

/// The latest reading of that in this round, in the unit the plan now asks for.
pub fn taken<'a>(select: &Select, progress: &'a StepProgress, what: &What) -> Option<&'a Reading> {
    let unit = match (what, &select.trial) {
        (What::Trial | What::TurnTight | What::TurnLoose, Some(trial)) => trial.unit(select.unit),
        _ => select.unit.symbol(),
    };
    progress.reading(what).filter(|reading| reading.unit == unit)
}

/// What is in now, where it was said in the step's unit.
pub fn round<'a>(select: &Select, progress: &'a StepProgress) -> Option<&'a Round> {
    let last = progress.rounds.last();
    last.filter(|round| round.unit == select.unit.symbol())
}

/// What was measured and what the pack is to come to; the measured size where no row of the manual's
/// rounding has it; none before every reading is there.
pub fn aim(select: &Select, progress: &StepProgress) -> Option<Result<Aim, f64>> {
    let readings: Option<Vec<f64>> = places(select)
        .map(|what| taken(select, progress, &what).map(|reading| reading.value))
        .collect();
    let gap = select.counts.of(&readings?)?;
    let mut pack = tidy(gap + select.allowance);
    let mut window = select.tolerance;
    if select.by == By::Gap && !select.rows.is_empty() {
        let Some(thick) = row(select, pack).and_then(|row| row.thick) else {
            return Some(Err(pack));
        };
        pack = thick;
        // A rounded thickness is the one to take.
        window = window.or(Some(0.0));
    }
    let window = window.map(|off| (tidy(pack - off), tidy(pack + off)));
    Some(Ok(Aim { gap, pack, window }))
}

/// The row of the table that has a size.
fn row(select: &Select, size: f64) -> Option<Piece> {
    let end = |end: Option<f64>, open: f64| end.unwrap_or(open);
    let ends = select.rows.iter().map(|row| match (row.least, row.most) {
        // Nothing is said of it yet: it is for no size.
        (None, None) => (f64::INFINITY, f64::NEG_INFINITY),
        (least, most) => (end(least, f64::NEG_INFINITY), end(most, f64::INFINITY)),
    });
    let at = row_of(&ends.collect::<Vec<_>>(), size)?;
    let row = select.rows.get(at)?;
    Some(Piece::coded(&row.code, row.thick))
}

/// What to put in, now, out of what is `gone` from the box: at first by what was measured, after a trial by
/// what it read.
pub fn advice(select: &Select, progress: &StepProgress, gone: &[Piece]) -> Advice {
    let Some(round) = round(select, progress) else {
        return first(select, progress, gone);
    };
    match &select.trial {
        None => first(select, progress, gone),
        Some(trial) => match result(select, trial, progress) {
            Some(read) if trial.holds(read) == Some(false) => next(select, trial, round, read, gone),
            _ => Advice::Nothing,
        },
    }
}

/// What was measured, in the table or out of the box.
pub fn first(select: &Select, progress: &StepProgress, gone: &[Piece]) -> Advice {
    match select.by {
        By::Trial => Advice::Nothing,
        By::Code => match (&progress.codes, &select.codes) {
            (Some((down, across)), Some(codes)) => match codes.at(down, across) {
                Some(code) => Advice::Part(Piece::coded(code, None)),
                None => Advice::NoSuchCodes,
            },
            (Some(_), None) => Advice::NoSuchCodes,
            (None, _) => Advice::Nothing,
        },
        By::Range => match aim(select, progress) {
            None => Advice::Nothing,
            Some(Err(size)) => Advice::OutOfTable(size),
            Some(Ok(aim)) => match row(select, aim.pack) {
                None => Advice::OutOfTable(aim.pack),
                Some(part) if gone.iter().any(|piece| same(piece, &part)) => Advice::InElsewhere(part),
                Some(part) => Advice::Part(part),
            },
        },
        By::Gap => match aim(select, progress) {
            None => Advice::Nothing,
            Some(Err(size)) => Advice::OutOfTable(size),
            Some(Ok(aim)) => from_box(select, aim.pack, aim.window, gone).unwrap_or(Advice::Nothing),
        },
    }
}

/// After a reading outside its limits: the pack that brings it to the middle of them.
fn next(select: &Select, trial: &Trial, round: &Round, read: f64, gone: &[Piece]) -> Advice {
    let per = match (trial.torque, trial.per) {
        (None, _) => Some(1.0),
        (Some(_), per) => per,
    };
    let least = trial.least.unwrap_or(0.0);
    let (Some(per), Some(most)) = (per, trial.most) else {
        let too_little = trial.least.is_some_and(|least| read < least);
        return Advice::Thicker(too_little == (trial.thicker == Thicker::Raises));
    };
    let change = change(read, (least, most), trial.thicker, per);
    let pack = sum(&round.pieces).map(|sum| tidy(sum + change.by));
    let window = sum(&round.pieces).map(|sum| (tidy(sum + change.from), tidy(sum + change.to)));
    pack.and_then(|pack| from_box(select, pack, window, gone))
        .unwrap_or(Advice::Change(change))
}

/// The pack out of the box; without a tolerance the nearest there is. None without a box.
fn from_box(select: &Select, wanted: f64, window: Option<(f64, f64)>, gone: &[Piece]) -> Option<Advice> {
    let (mut sizes, most) = sizes(select);
    take_out(&mut sizes, gone);
    if sizes.is_empty() {
        return None;
    }
    let piece = |at: usize, count: u32| match select.by {
        By::Range => {
            let mut rows = select.rows.iter().filter(|row| row.thick.is_some());
            rows.nth(at)
                .map_or(Piece::default(), |row| Piece::coded(&row.code, row.thick))
        }
        By::Gap | By::Trial | By::Code => Piece::shims(sizes.get(at).map_or(0.0, |size| size.thick), count),
    };
    let offer = |found: Found| {
        let taken = found.taken.iter().enumerate().filter(|(_, count)| **count > 0);
        let mut pieces: Vec<Piece> = taken.map(|(at, count)| piece(at, *count)).collect();
        pieces.sort_by(|a, b| b.thick.unwrap_or(0.0).total_cmp(&a.thick.unwrap_or(0.0)));
        Offer {
            pieces,
            sum: found.sum,
        }
    };
    Some(
        match pack(&sizes, wanted, window.unwrap_or((wanted, wanted)), most) {
            Pack::Hit(found) => Advice::Pack(offer(found)),
            Pack::Miss { below, above } => {
                let (below, above) = (below.map(offer), above.map(offer));
                match (window, below, above) {
                    (None, Some(below), Some(above)) => {
                        let under = wanted - below.sum <= above.sum - wanted;
                        Advice::Pack(if under { below } else { above })
                    }
                    (None, Some(only), None) | (None, None, Some(only)) => Advice::Pack(only),
                    (_, below, above) => Advice::Miss { wanted, below, above },
                }
            }
        },
    )
}

/// What there is to take from, and how many make a pack: shims, or one washer of the table.
fn sizes(select: &Select) -> (Vec<Size>, u32) {
    let size = |thick: f64, count: u32, between: bool| Size {
        thick,
        count,
        between,
    };
    if select.by == By::Range {
        let thick = select.rows.iter().filter_map(|row| row.thick);
        return (thick.map(|thick| size(thick, 1, false)).collect(), 1);
    }
    let shims = select.shims.iter().filter(|shim| shim.thick > 0.0);
    let sizes = shims.map(|shim| size(shim.thick, shim.count, shim.between));
    (sizes.collect(), MOST_SHIMS)
}

/// What pieces come to; none where one has no thickness.
pub fn sum(pieces: &[Piece]) -> Option<f64> {
    let thick: Option<Vec<f64>> = pieces
        .iter()
        .map(|piece| piece.thick.map(|thick| thick * f64::from(piece.count)))
        .collect();
    thick.map(|all| tidy(all.iter().sum()))
}

/// What the present round's trial comes to: the reading, or tight less loose.
pub fn result(select: &Select, trial: &Trial, progress: &StepProgress) -> Option<f64> {
    let read = |what: What| taken(select, progress, &what).map(|reading| reading.value);
    if trial.loose {
        Some(tidy(read(What::TurnTight)? - read(What::TurnLoose)?))
    } else {
        read(What::Trial)
    }
}
