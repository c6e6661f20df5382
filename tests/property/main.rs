//! What must hold for any input, tried on many.

mod guard;
mod preload;
mod quantity;
mod wrench;
