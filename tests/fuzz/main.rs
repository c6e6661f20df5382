//! Everything that reads a quantity out of text: spellings, refusals, and texts no one would type.
//!
//! `HALFCASE_FUZZ=100000 cargo test --test fuzz` tries more; the seed is fixed, so a failure repeats.

mod csv;
mod json;
mod readers;
mod refusals;
mod sheet;
mod spellings;
