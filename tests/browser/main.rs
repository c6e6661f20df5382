//! The app in a real browser: stories told by role and name, touched with a finger.

mod harness;

mod cautions_page;
mod first_job;
mod lift_refused;
mod seat_heat;
mod start;
mod torque_quick;
