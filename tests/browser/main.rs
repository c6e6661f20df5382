//! The app in a real browser: stories told by role and name, touched with a finger.

mod harness;

mod first_job;
mod record_and_plan;
mod sheet_from_desk;
mod start;
mod torque_quick;
