//! The bench's storage and commands, on a store that lives in memory.

mod commands;
mod seat_lift;
mod storage;
