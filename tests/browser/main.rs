//! The app in a real browser: stories told by role and name, touched with a finger.

mod harness;

mod bond_selector;
mod clocks_cure;
mod first_job;
mod start;
mod torque_quick;
