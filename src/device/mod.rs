//! The browser's edges, one ability a file. Every step into JavaScript may fail, and fails softly.

pub mod alarm;
pub mod files;
pub mod focus;
pub mod paper;
pub mod place;
pub mod release;
pub mod storage;
pub mod tilt;
pub mod time;
pub mod wake_lock;
