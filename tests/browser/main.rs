//! The app in a real browser: stories told by role and name, touched with a finger.

mod harness;

mod bond_selector;
// Early in the alphabet, as the longest: begun last, it kept one core idle for a minute.
mod case_bolts;
mod cautions_page;
mod clocks_cure;
mod first_job;
mod lift_refused;
mod record_and_plan;
mod seat_heat;
mod sheet_from_desk;
mod start;
mod torque_bench;
mod torque_guard;
mod torque_pair;
mod torque_quick;
