//! Fasteners whose length is read over their ends, free and tight: how far each stretched.

use super::data::Fasten;
use super::lengths::Lengths;
use crate::job::kinds::check::bore::stated_words;
use crate::job::reading::What;
use crate::trade::quantity::Unit;

impl Fasten {
    /// Whether the manual states a stretch.
    pub fn stretches(&self) -> bool {
        let stated = self.stated_lengths();
        stated.stretch_least.is_some() || stated.stretch_most.is_some()
    }

    /// Every length that is read: all free ones before any tight one.
    pub fn lengths(&self) -> Vec<What> {
        let free = self
            .each()
            .filter(|_| self.stretches() || self.longest().is_some());
        let tight = self.each().filter(|_| self.stretches());
        free.map(What::Free).chain(tight.map(What::Tight)).collect()
    }

    /// Every stretch that is worked out.
    pub fn stretch(&self) -> Vec<What> {
        let places = self.each().filter(|_| self.stretches());
        places.map(What::Stretch).collect()
    }

    fn each(&self) -> impl Iterator<Item = u8> + use<> {
        0..self.layout.count() as u8
    }

    /// Whether a stretch, in the unit of its limits, is within the manual's.
    pub fn stretch_holds(&self, value: f64) -> bool {
        let stated = self.stated_lengths();
        Lengths::hold(value, stated.stretch_least, stated.stretch_most)
    }

    /// "stretch 0.13 to 0.15 mm"; empty where none is stated.
    pub fn stretch_words(&self) -> String {
        if !self.stretches() {
            return String::new();
        }
        let stated = self.stated_lengths();
        let limits = stated_words(stated.stretch_least, stated.stretch_most, stated.unit.symbol());
        format!("stretch {limits}")
    }

    /// What the manual says: its torque, and its stretch beside it or in its place.
    pub fn manual_words(&self) -> String {
        let torque = self.torque_words();
        match (self.stretch_words(), self.stretch_decides) {
            (words, _) if words.is_empty() => torque,
            (words, false) => format!("{torque}, {words}"),
            (words, true) => format!("{words}; {torque} to begin with"),
        }
    }
}
