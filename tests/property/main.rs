//! What must hold for any input, tried on many.

mod caution;
mod compound;
mod cure;
