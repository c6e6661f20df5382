//! Fasteners by size: what to lay out, and from which bag.

use super::data::{Fasten, Reuse, size_words};
use crate::job::kinds::Work;
use crate::job::parts::Listed;
use crate::job::sheet::{Sheet, StepId};
use std::collections::BTreeMap;

/// One size of fastener over the whole job.
#[derive(Debug, Clone, PartialEq)]
pub struct BagLine {
    /// "M6 × 20, 8.8".
    pub size: String,
    /// How many in all.
    pub count: usize,
    /// How many of them must be new.
    pub new_ones: usize,
    /// The steps that take them.
    pub steps: Vec<StepId>,
    /// Where they are, each place once.
    pub places: Vec<String>,
}

/// Every size once, thin before thick, with its count and where the list of parts says it is.
pub fn list(sheet: &Sheet, parts: &[Listed]) -> Vec<BagLine> {
    let mut lines: BTreeMap<(u64, String), BagLine> = BTreeMap::new();
    for step in &sheet.steps {
        let Work::Fasten(fasten) = &step.work else {
            continue;
        };
        let size = size_words(fasten);
        let line = lines
            .entry((nanometres(fasten), size.clone()))
            .or_insert_with(|| BagLine {
                size: size.clone(),
                count: 0,
                new_ones: 0,
                steps: Vec::new(),
                places: Vec::new(),
            });
        let count = fasten.layout.count();
        line.count += count;
        line.new_ones += if fasten.reuse == Reuse::New { count } else { 0 };
        line.steps.push(step.id);
        let place = parts
            .iter()
            .find(|part| part.step == step.id && part.fastener)
            .map(|part| part.place.words());
        if let Some(place) = place.filter(|place| !line.places.contains(place)) {
            line.places.push(place);
        }
    }
    lines.into_values().collect()
}

/// The diameter as a whole number, for sorting.
fn nanometres(fasten: &Fasten) -> u64 {
    let major = fasten.thread.map(|thread| thread.major());
    major.map_or(0, |major| {
        major.get::<uom::si::length::nanometer>().round() as u64
    })
}
