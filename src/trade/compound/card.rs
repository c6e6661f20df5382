//! The answer to a joint: the class and all that goes with it, or nothing and why.

use super::rules::{RULES, Rule};
use super::{CompoundClass, words};
use crate::trade::application::{Application, Assumed, Known, assumed};
use crate::trade::cure::CureSpec;
use crate::trade::quantity::Time;

/// What goes on a joint, and everything to know before it does.
#[derive(Debug, Clone, PartialEq)]
pub struct Recommendation {
    /// The id of the rule that answered.
    pub rule: &'static str,
    /// What goes on; `None`: nothing, for the reason given.
    pub class: Option<CompoundClass>,
    /// Why this, or why nothing.
    pub reason: &'static str,
    /// Where it goes and how much.
    pub where_and_how: Vec<&'static str>,
    /// What comes before.
    pub preparation: Vec<&'static str>,
    /// What it must be kept off.
    pub must_not_touch: Vec<&'static str>,
    /// The span, as labels usually give it, in which it skins or grips: be done by its lower end.
    pub assembly_time: Option<(Time, Time)>,
    /// Typical cure figures; the label of the bottle in hand comes first. `None`: it doesn't cure.
    pub cure: Option<CureSpec>,
    /// How it comes apart again.
    pub removal: Option<&'static str>,
    /// What it stands in service.
    pub service_limit: Option<&'static str>,
    /// What to mind with it.
    pub cautions: Vec<&'static str>,
    /// The neighbours and why not them.
    pub rejected: Vec<(CompoundClass, &'static str)>,
    /// What each "don't know" was taken as.
    pub assumed: Vec<Assumed>,
}

/// Answers when no row fits; a test walks every joint to see that this never happens.
static UNANSWERED: Rule = Rule::nothing("unanswered", "No rule covers this joint. Go by the manual.");

/// The first rule that fits the joint.
fn rule_for(joint: &Known) -> &'static Rule {
    RULES
        .iter()
        .copied()
        .flatten()
        .find(|rule| rule.fits(joint))
        .unwrap_or(&UNANSWERED)
}

/// The id, class and reason of the first rule that fits, without the rest of the card.
pub fn first_rule(joint: &Application) -> &'static Rule {
    rule_for(&Known::of(joint))
}

/// What goes on this joint: exactly one class, or nothing and why. Open answers count the cautious way.
///
/// The service manual, the label and the safety sheet come before anything said here.
///
/// ```
/// use halfcase::trade::application::{Application, JointKind, answer};
/// use halfcase::trade::compound::{CompoundClass, recommend};
///
/// let mut joint = Application::new(JointKind::FlangeRigid);
/// answer(&mut joint, "face", "aluminium").unwrap();
/// answer(&mut joint, "gap", "to_0_1").unwrap();
/// assert_eq!(recommend(&joint).class, Some(CompoundClass::AnaerobicFlange));
/// ```
pub fn recommend(joint: &Application) -> Recommendation {
    Recommendation {
        assumed: assumed(joint),
        ..answered(&Known::of(joint))
    }
}

/// The card of a joint known that far, without what it was taken as.
pub(super) fn answered(known: &Known) -> Recommendation {
    let rule = rule_for(known);
    let class = rule.class;
    let lines = |say: fn(CompoundClass, &Known) -> Vec<&'static str>| {
        class.map(|class| say(class, known)).unwrap_or_default()
    };
    Recommendation {
        rule: rule.id,
        class,
        reason: rule.reason,
        where_and_how: lines(words::where_and_how),
        preparation: lines(words::preparation),
        must_not_touch: lines(words::must_not_touch),
        assembly_time: class.and_then(CompoundClass::assembly_time),
        cure: class.and_then(|class| class.typical_cure_of(known)),
        removal: class.map(|class| words::removal(class, known)),
        service_limit: class.map(|class| words::service_limit(class, known)),
        cautions: lines(words::cautions),
        rejected: rule.not.to_vec(),
        assumed: Vec::new(),
    }
}
