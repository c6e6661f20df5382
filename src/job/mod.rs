//! The job: its steps, what was done to them, and the rules between; pure, no browser, no clock of its own.

pub mod answer;
pub mod clock;
pub mod example;
pub mod field;
pub mod gate;
pub mod lifting;
pub mod progress;
pub mod record;
pub mod seating;
pub mod sheet;
pub mod situation;
pub mod text_form;
pub mod work;
