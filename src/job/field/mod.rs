//! The table of fields: a row is a field of a kind of work, with its id, its label, its unit and range,
//! and how it is read and written.
//!
//! The plan's form, the bench's own screens, the check of an imported file, the columns of the table of
//! fasteners and the schema file all go by the rows, so a number has one range at every door. What stands
//! in storage is never refused on opening, whatever it holds.

mod form;
mod kept;
mod number;
mod read;
mod row;

pub use form::{Entry, Form, Shown};
pub use kept::Kept;
pub use number::{Number, Seen};
pub use read::{Refused, Set, named, pick, pick_maybe, refuse, yes};
pub use row::{Field, set, show, visit};
