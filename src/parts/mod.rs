//! Controls that several screens share.

pub mod adapter_drawing;
pub mod angle_gauge;
pub mod bolts;
pub mod caution_card;
pub mod choice_tiles;
pub mod clock_bar;
pub mod clock_doubt;
pub mod dynamic;
pub mod hand_over;
pub mod keypad;
pub mod number_field;
pub mod pick;
pub mod plate;
pub mod said;
pub mod share_bar;
pub mod shop;
pub mod strip;
pub mod thimble;
pub mod when;
pub mod work_keys;
