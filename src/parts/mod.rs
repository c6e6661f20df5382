//! Controls that several screens share.

pub mod bolts;
pub mod caution_card;
pub mod clock_bar;
pub mod dynamic;
pub mod keypad;
pub mod number_field;
pub mod plate;
pub mod said;
pub mod strip;
pub mod when;
pub mod work_keys;
