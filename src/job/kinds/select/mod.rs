//! Select: shims, thrust washers, bearing shells and snap rings, chosen by size.

pub mod answer;
mod data;
mod fields;
pub mod judge;
pub mod shared;
pub mod words;

pub use data::{By, Piece, Place, Row, Select, Shim, Trial};

use crate::job::field::{Form, Seen, Set};
use crate::job::id;
use crate::job::kinds::around::Around;
use crate::job::kinds::kind::{Kind, OwnPart};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;

impl Select {
    /// Work that asks for one gap and has nothing to choose from yet.
    pub fn blank() -> Self {
        let place = Place {
            id: id::ReadingId(1),
            name: "gap".to_owned(),
        };
        Self {
            places: vec![place],
            ..Self::default()
        }
    }

    /// Gives every place and row without a number one of its own.
    pub fn number(&mut self) {
        id::number(self.places.iter_mut().map(|place| &mut place.id.0));
        id::number(self.shims.iter_mut().map(|shim| &mut shim.id.0));
        id::number(self.rows.iter_mut().map(|row| &mut row.id.0));
    }
}

impl Kind for Select {
    fn word(&self) -> &'static str {
        "Select"
    }

    fn application(&self) -> Option<&Application> {
        None
    }

    fn solvent(&self) -> bool {
        false
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        with
    }

    fn part(&self) -> Option<OwnPart> {
        OwnPart::named(&self.part, false)
    }

    fn usual_minutes(&self) -> f64 {
        // A trial is rarely right the first time.
        if self.trial.is_some() { 20.0 } else { 8.0 }
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        fields::show(form, self);
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        fields::set(self, path, value)
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        fields::visit(self, see);
    }
}
