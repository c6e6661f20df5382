//! The bench's storage and commands, on a store that lives in memory.

mod clocks;
mod commands;
mod storage;
mod wrenches;
