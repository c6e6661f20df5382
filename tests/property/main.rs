//! What must hold for any input, tried on many.

mod quantity;
mod wrench;
