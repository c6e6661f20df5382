//! What things are known by: numbers of their own, so that a new name loses nothing.

use serde::{Deserialize, Deserializer, Serialize, de::Error};

/// The greatest number a thing may bear: what is written with a greater one can't be read back.
pub const MOST: u64 = 1_000_000_000;

/// A number that none of these has: the next higher, or where there is none left the lowest that is free.
pub fn free(taken: impl Iterator<Item = u32> + Clone) -> u32 {
    let next = taken.clone().max().map_or(1, |most| most.saturating_add(1));
    if u64::from(next) <= MOST {
        return next;
    }
    let taken: Vec<u32> = taken.collect();
    (1..next).find(|id| !taken.contains(id)).unwrap_or(next)
}

pub(super) fn bounded<'de, D: Deserializer<'de>, T: Deserialize<'de> + Copy + Into<u64>>(
    from: D,
) -> Result<T, D::Error> {
    let number = T::deserialize(from)?;
    match number.into() {
        0..=MOST => Ok(number),
        _ => Err(D::Error::custom("its number is above 1 000 000 000")),
    }
}

/// A step's own number within its job; it stays the same when steps are moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct StepId(#[serde(deserialize_with = "bounded")] pub u32);

/// A job's own number on this bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct JobId(#[serde(deserialize_with = "bounded")] pub u32);

impl JobId {
    /// The number, where a job may bear it.
    pub fn within(self) -> Option<Self> {
        (u64::from(self.0) <= MOST).then_some(self)
    }
}

/// A clock's own number on this bench.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ClockId(#[serde(deserialize_with = "bounded")] pub u32);

/// An entry's number within its record, from 0, without gaps.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct EntryId(#[serde(deserialize_with = "bounded")] pub u64);

/// A reading's or a bore's own number within its step, from 1; 0 where none was given yet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ReadingId(#[serde(deserialize_with = "bounded")] pub u32);

/// A part's own number within its step, from 1; 0 where none was given yet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct PartId(#[serde(deserialize_with = "bounded")] pub u32);

/// A row's own number within its table, from 1; 0 where none was given yet.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(transparent)]
pub struct RowId(#[serde(deserialize_with = "bounded")] pub u32);

/// Gives a number of its own to each that has none, or one that stands before it has too.
pub fn number<'a>(ids: impl Iterator<Item = &'a mut u32>) {
    let mut ids: Vec<&mut u32> = ids.collect();
    for at in 0..ids.len() {
        let (own, before) = (*ids[at], ids.iter().take(at).map(|id| **id));
        if own == 0 || before.clone().any(|id| id == own) {
            *ids[at] = free(ids.iter().map(|id| **id));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_gets_a_number_of_its_own_and_keeps_it() {
        let mut ids = [0, 4, 0, 4, 2];
        number(ids.iter_mut());
        assert_eq!(ids, [5, 4, 6, 7, 2]);
        number(ids.iter_mut());
        assert_eq!(ids, [5, 4, 6, 7, 2]);
    }
}
