//! The job: its steps, what was done to them, and the rules between; pure, no browser, no clock of its own.

pub mod answer;
pub mod backup;
pub mod bag;
pub mod bore;
pub mod clock;
pub mod csv;
pub mod example;
pub mod fasteners;
pub mod form;
pub mod gate;
pub mod journal;
pub mod lifting;
pub mod overview;
pub mod parts;
pub mod planning;
pub mod progress;
pub mod record;
pub mod seating;
pub mod sheet;
pub mod situation;
pub mod text_form;
pub mod work;
