//! The job: its steps, what was done to them, and the rules between; pure, no browser, no clock of its own.

pub mod adapter;
pub mod answer;
pub mod asked;
pub mod bonding;
pub mod bottle;
pub mod calendar;
pub mod clock;
pub mod date;
pub mod example;
pub mod fastening;
pub mod gate;
pub mod guarding;
pub mod lifting;
pub mod night;
pub mod pairing;
pub mod progress;
pub mod record;
pub mod scale;
pub mod seating;
pub mod sheet;
pub mod situation;
pub mod tamper;
pub mod text_form;
pub mod turning;
pub mod work;
