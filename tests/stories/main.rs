//! The app in a real browser: stories told by role and name, touched with a finger.

mod harness;

// Early in the alphabet, as the longest: begun last, it would keep one core idle for a minute.
mod a_whole_job;
mod at_a_desk;
mod bond_selector;
mod by_keyboard;
mod case_bolts;
mod cautions_page;
mod clocks_cure;
mod faults;
mod find;
mod first_minutes;
mod inch_gearbox;
mod instrument;
mod lift_refused;
mod measure;
mod record_and_plan;
mod seat_heat;
mod sheet_from_desk;
mod start;
mod told_apart;
mod torque_bench;
mod torque_guard;
mod torque_pair;
mod torque_quick;
mod work;
