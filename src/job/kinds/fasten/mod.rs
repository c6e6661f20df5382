//! Fasten: fasteners brought to torque.

pub mod bag;
mod data;
pub mod fastening;
pub mod fields;
mod group;
mod groups;
mod lengths;
pub mod passes;
pub mod pull;
mod reuse;
mod stage_fields;
mod stated;
mod stretch;

pub use data::{
    CONDITIONS, Fasten, Front, Lock, Reuse, layout, layout_words, rectangle, sealing, size_words,
};
pub use group::Group;
pub use lengths::Lengths;

use crate::job::field::{self, Form, Seen, Set};
use crate::job::kinds::around::Around;
use crate::job::kinds::joint;
use crate::job::kinds::kind::{Kind, OwnPart, puts_solvent_on};
use crate::job::text_form::{said, thread};
use crate::trade::application::Application;
use crate::trade::caution::Situation;
use crate::trade::cure::Milestone;
use crate::trade::order::Layout;

/// Fasteners of that thread, where it is stated, to that torque in the manual's words: what a fasten step
/// begins with.
///
/// # Errors
/// The reader's sentence.
pub fn begin(thread: &str, torque: &str) -> Result<Fasten, String> {
    let thread = thread::read(thread)?;
    let said = said::read(torque, None)?;
    Ok(Fasten {
        stages: said.stages,
        ..Fasten::new(thread, said.torque, Layout::Single)
    })
}

impl Kind for Fasten {
    fn word(&self) -> &'static str {
        "Fasten"
    }

    fn application(&self) -> Option<&Application> {
        self.compound.as_ref()
    }

    fn solvent(&self) -> bool {
        self.compound.as_ref().is_some_and(puts_solvent_on)
    }

    fn situation(&self, _: &Around<'_>, with: Situation) -> Situation {
        Situation {
            high_strength_removal: self.old_locked,
            ..with
        }
    }

    fn part(&self) -> Option<OwnPart> {
        Some(OwnPart {
            name: size_words(self),
            count: self.layout.count() as u32,
            new_part: self.reuse == Reuse::New,
            fastener: true,
        })
    }

    fn usual_minutes(&self) -> f64 {
        2.0 + 0.5 * self.tally_count() as f64
    }

    fn needs_cured(&self, waits: bool) -> Option<Milestone> {
        waits.then_some(Milestone::Handling)
    }

    fn waits_for_all(&self) -> bool {
        false
    }

    fn fields(&self, form: &mut Form) {
        field::show(form, "fasten", &fields::TABLE, self);
        groups::show(form, self);
        stage_fields::show(form, self);
        if let Some(joint) = &self.compound {
            joint::show(form, joint);
        }
    }

    fn set(&mut self, path: &str, value: &str) -> Set {
        match &mut self.compound {
            Some(joint) if path.starts_with("joint/") => joint::set(joint, path, value),
            _ if path.starts_with("group/") => groups::set(self, path, value),
            _ if path.starts_with("stage/") => stage_fields::set(self, path, value),
            _ => field::set(&fields::TABLE, self, "fasten", path, value),
        }
    }

    fn visit(&self, see: &mut dyn FnMut(Seen)) {
        field::visit(&fields::TABLE, self, None, see);
    }
}
