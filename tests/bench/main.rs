//! The bench's storage and commands, on a store that lives in memory.

mod backup;
mod clocks;
mod commands;
mod jobs;
mod plan;
mod storage;
mod wrenches;
