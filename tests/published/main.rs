//! Checks against values printed elsewhere: one file a subject, each value beside its source.

mod corpus;
mod guard;
mod guard_rates;
mod preload;
mod strength;
mod strip;
mod threads;
