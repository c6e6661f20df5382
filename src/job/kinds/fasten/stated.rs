//! A fastening's lengths over the ends, whichever way its file states them.

use super::data::Fasten;
use super::lengths::Lengths;
use crate::job::field::{Refused, Set};
use crate::trade::quantity::{LengthUnit, Stated, Unit};

impl Fasten {
    /// What is stated of lengths over the ends.
    pub fn stated_lengths(&self) -> Lengths {
        self.lengths_stated.unwrap_or_else(|| Lengths {
            unit: LengthUnit::Millimetre,
            stretch_least: self.stretch_least_mm.map(Stated::plain),
            stretch_most: self.stretch_most_mm.map(Stated::plain),
            longest: self.longest_mm.map(Stated::plain),
        })
    }

    /// Takes what is stated, and writes it as every release knows it where that says all of it.
    pub fn state_lengths(&mut self, lengths: Lengths) {
        let plain = |stated: &Stated| *stated == Stated::plain(stated.value);
        let usual = lengths.unit == LengthUnit::Millimetre && lengths.all().iter().flatten().all(plain);
        let usual = usual && lengths.said();
        let mm = |stated: Option<Stated>| stated.filter(|_| usual).map(|stated| stated.value);
        self.stretch_least_mm = mm(lengths.stretch_least);
        self.stretch_most_mm = mm(lengths.stretch_most);
        self.longest_mm = mm(lengths.longest);
        self.lengths_stated = (!usual).then_some(lengths);
    }

    /// Begins in the job's unit where nothing is stated yet.
    pub fn begin_lengths(&mut self, unit: LengthUnit) {
        if self.lengths_stated.is_none() && !self.stated_lengths().said() {
            self.lengths_stated = Some(Lengths::of(unit));
        }
    }

    /// Leaves the job's unit unsaid where nothing is stated in it.
    pub fn end_lengths(&mut self, unit: LengthUnit) {
        let usual = |lengths: &Lengths| lengths.unit == unit && !lengths.said();
        if self.lengths_stated.as_ref().is_some_and(usual) {
            self.lengths_stated = None;
        }
    }

    /// The unit lengths are asked for in.
    pub fn length_unit(&self) -> LengthUnit {
        self.stated_lengths().unit
    }

    /// Takes another unit for the same figures, as a manual was misread rather than another bolt meant.
    ///
    /// # Errors
    /// Figures that make no sense in it, by `makes_sense`, which is asked in mm.
    pub(super) fn take_length_unit(
        &mut self,
        unit: LengthUnit,
        makes_sense: impl Fn(&Lengths) -> bool,
    ) -> Set {
        let lengths = Lengths {
            unit,
            ..self.stated_lengths()
        };
        if !makes_sense(&lengths) {
            return Err(Refused::Said(format!(
                "In {} the stretch or length entered makes no sense: clear it first, then enter it anew.",
                unit.symbol()
            )));
        }
        if lengths.said() {
            self.state_lengths(lengths);
        } else {
            self.lengths_stated = Some(lengths);
        }
        Ok(())
    }
}
