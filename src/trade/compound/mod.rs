//! What goes on the joint: classes of compound, the rules that choose one, and the answer with its reasons.

#[cfg(test)]
mod asking;
mod card;
mod class;
mod forbidden;
mod limits;
mod rules;
mod typical;
mod words;

pub use card::{Recommendation, first_rule, recommend};
pub use class::{CompoundClass, Family};
pub use forbidden::{FORBIDDEN, Forbidden};
pub use rules::{RULES, Rule};
pub use typical::skins_at;
