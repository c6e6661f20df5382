//! Checks against values printed elsewhere: one file a subject, each value beside its source.

mod adapter;
mod corpus;
mod guard;
mod guard_rates;
mod order;
mod pair;
mod preload;
mod stages;
mod strength;
mod strip;
mod threads;
mod torque_units;
mod units;
mod wrench;
mod wrench_choice;
