//! The app in a real browser: stories told by role and name, touched with a finger.

mod harness;

mod start;
