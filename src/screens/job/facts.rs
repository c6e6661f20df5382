//! A short table of facts.

pub use crate::parts::facts::Facts;
