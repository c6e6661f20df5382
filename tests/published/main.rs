//! Checks against values printed elsewhere: one file a subject, each value beside its source.

mod compound;
mod cure;
