//! What must hold for any input, tried on many.

mod fits;
mod heat;
mod lift;
mod press;
