//! Controls that several screens share.

pub mod ask_words;
pub mod bolts;
pub mod caution_card;
pub mod clock_bar;
pub mod dynamic;
pub mod file_key;
pub mod keypad;
pub mod keys;
pub mod number_field;
pub mod plate;
pub mod progress_bar;
pub mod said;
pub mod strip;
pub mod when;
pub mod work_keys;
