//! The bench's storage and commands, on a store that lives in memory.

mod backup;
mod carbon;
mod chance;
mod clock_stories;
mod clocks;
mod commands;
mod copies;
mod decimal_comma;
mod dying;
mod faults;
mod findings;
mod gaps;
mod jobs;
mod lock;
mod newer;
mod nut;
mod plan;
mod reuse;
mod room;
mod seat_lift;
mod start;
mod storage;
mod storage_faults;
mod stretch;
mod strings;
mod strings_out;
mod vouched;
mod wrenches;

// What the player touches, and what must hold whatever it did.
#[path = "../player/hand.rs"]
mod hand;
#[path = "../player/promises.rs"]
#[allow(dead_code)]
mod promises;
#[path = "../player/stock.rs"]
mod stock;
