//! Checks against values printed elsewhere: one file a subject, each value beside its source.

mod adapter;
mod bearings;
mod compound;
mod cooling;
mod corpus;
mod cure;
mod fits;
mod growth;
mod guard;
mod guard_rates;
mod heat_plan;
mod lift;
mod measure;
mod order;
mod pair;
mod preload;
mod press;
mod sling;
mod stages;
mod strength;
mod strip;
mod threads;
mod torque_units;
mod units;
mod wrench;
mod wrench_choice;
