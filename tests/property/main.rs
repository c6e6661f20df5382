//! What must hold for any input, tried on many.

mod caution;
mod compound;
mod cure;
mod edges;
mod fits;
mod guard;
mod heat;
mod lift;
mod measuring;
mod preload;
mod press;
mod quantity;
mod questions;
mod rigging;
mod running;
mod selection;
mod stretch;
mod wrench;
