//! Checks against values printed elsewhere: one file a subject, each value beside its source.

mod bearings;
mod cooling;
mod fits;
mod growth;
mod heat_plan;
mod lift;
mod measure;
mod press;
mod sling;
