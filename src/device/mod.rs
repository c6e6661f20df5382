//! The browser's edges, one ability a file. Every step into JavaScript may fail, and fails softly.

pub mod files;
pub mod paper;
pub mod place;
pub mod release;
pub mod storage;
pub mod time;
pub mod wake_lock;
