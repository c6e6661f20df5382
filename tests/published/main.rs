//! Checks against values printed elsewhere: one file a subject, each value beside its source.

mod adapter;
mod order;
mod pair;
mod stages;
mod torque_units;
mod units;
mod wrench;
mod wrench_choice;
