//! Choosing a compound by a few touches: the walk through the questions, and the answer as a card.

use super::bottle::{Bottle, BottleId, with_activator};
use super::record::Compound;
use crate::trade::application::{
    AnswerError, Application, DONT_KNOW, JointKind, Question, answer, questions,
};
use crate::trade::compound::{CompoundClass, Family, Recommendation, recommend};
use crate::trade::cure::{Chemistry, CureSpec};
use crate::trade::quantity::{Time, in_mark, shortest};
use serde::{Deserialize, Serialize};
use uom::si::time::minute;

/// A walk through the questions: the joint so far, and which questions were met. A question met without
/// an answer is one the user doesn't know the answer to.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Walk {
    /// What is known of the joint; none before its kind is chosen.
    pub joint: Option<Application>,
    /// The questions met.
    pub met: Vec<String>,
}

impl Walk {
    /// Chooses what is joined; what is known beyond the kind stays.
    pub fn choose_kind(&mut self, kind: JointKind) {
        self.joint.get_or_insert_default().become_of(kind);
        self.met.clear();
    }

    /// Answers one question by ids; "don't know" is an answer too.
    ///
    /// # Errors
    /// The joint has no such question or choice; nothing is changed then.
    pub fn choose(&mut self, question: &str, choice: &str) -> Result<(), AnswerError> {
        let joint = self.joint.as_mut().ok_or(AnswerError::NoSuchQuestion)?;
        answer(joint, question, choice)?;
        self.meet(question);
        Ok(())
    }

    /// Takes every question left as "don't know".
    pub fn leave_the_rest(&mut self) {
        while let Some(question) = self.next() {
            self.meet(question.id);
        }
    }

    fn meet(&mut self, question: &str) {
        if !self.met.iter().any(|met| met == question) {
            self.met.push(question.to_owned());
        }
    }

    /// Every question that matters, each with whether it was answered or met.
    pub fn asked(&self) -> Vec<(Question, bool)> {
        let all = self.joint.as_ref().map(questions).unwrap_or_default();
        all.into_iter()
            .map(|question| {
                let met = question.chosen.is_some() || self.met.iter().any(|met| met == question.id);
                (question, met)
            })
            .collect()
    }

    /// The next question to ask; none when every one that matters was met.
    pub fn next(&self) -> Option<Question> {
        let open = self.asked().into_iter().find(|(_, met)| !met);
        open.map(|(question, _)| question)
    }

    /// The question of that name, where it matters.
    pub fn question(&self, id: &str) -> Option<Question> {
        let all = self.joint.as_ref().map(questions).unwrap_or_default();
        all.into_iter().find(|question| question.id == id)
    }
}

/// The words of the answer on hand: its tile's, or that it is not known.
pub fn chosen_words(question: &Question) -> &'static str {
    let id = question.chosen.unwrap_or(DONT_KNOW);
    let tile = question.choices.iter().find(|choice| choice.id == id);
    tile.map_or("", |choice| choice.words)
}

/// What goes on a joint, out of which bottle, and how it cures.
#[derive(Debug, Clone, PartialEq)]
pub struct BondAnswer {
    /// What the rules say.
    pub recommendation: Recommendation,
    /// The bottle it is taken from; none: typical figures.
    pub bottle: Option<Bottle>,
    /// How it cures; none for what doesn't.
    pub spec: Option<CureSpec>,
    /// The bottle taken for this class may not be used here: its name and why. Nothing goes on before
    /// another is taken.
    pub refused: Option<String>,
    /// Every bottle on the shelf: whether it may be used here, and why not.
    pub shelf: Vec<Shelved>,
}

/// A bottle beside a joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Shelved {
    /// Which.
    pub id: BottleId,
    /// Its name.
    pub name: String,
    /// Why it must not be used here.
    pub unfit: Option<String>,
}

/// What the bench knows that a joint doesn't.
#[derive(Debug, Clone, Copy)]
pub struct Surroundings<'a> {
    /// My bottles and tubes.
    pub bottles: &'a [Bottle],
    /// An activator goes on first.
    pub activator: bool,
    /// Today, counted from 1970-01-01 by the phone's calendar.
    pub today: i64,
    /// The shop's temperature, where it is known, °C.
    pub shop_c: Option<f64>,
}

/// Answers a joint. A bottle in use that is unfit here stays out, and is said.
pub fn bond(joint: &Application, around: Surroundings<'_>) -> BondAnswer {
    let recommendation = recommend(joint);
    let unfit = |bottle: &Bottle| bottle.unfit(joint, &recommendation, around.today, around.shop_c);
    let bottle = around
        .bottles
        .iter()
        .find(|bottle| bottle.in_use && unfit(bottle).is_none())
        .cloned();
    let spec = match &bottle {
        Some(bottle) => bottle.cure(joint),
        None => recommendation.cure.clone(),
    };
    let refused = around
        .bottles
        .iter()
        .find(|bottle| bottle.in_use && recommendation.class.is_some_and(|class| bottle.serves(class)))
        .filter(|_| bottle.is_none())
        .and_then(|bottle| Some(format!("“{}”: {}", bottle.name, unfit(bottle)?)));
    let shelf = around.bottles.iter().map(|bottle| Shelved {
        id: bottle.id,
        name: bottle.name.clone(),
        unfit: unfit(bottle).map(|why| why.to_string()),
    });
    BondAnswer {
        shelf: shelf.collect(),
        spec: spec.map(|spec| {
            if around.activator {
                with_activator(spec)
            } else {
                spec
            }
        }),
        recommendation,
        bottle,
        refused,
    }
}

impl BondAnswer {
    /// The class, or "nothing".
    pub fn title(&self) -> &'static str {
        self.recommendation.class.map_or("nothing", CompoundClass::name)
    }

    /// What goes on, for the record: the class and the bottle; none where nothing does.
    pub fn compound(&self) -> Option<Compound> {
        match &self.bottle {
            Some(bottle) => Some(Compound::Bottle {
                class: bottle.class,
                name: bottle.name.clone(),
            }),
            None => self.recommendation.class.map(Compound::Class),
        }
    }

    /// What goes on, in words.
    pub fn compound_words(&self) -> String {
        match &self.bottle {
            Some(bottle) => format!("{} “{}”", bottle.class.name(), bottle.name),
            None => self.title().to_owned(),
        }
    }

    /// Whether an activator makes a difference.
    pub fn takes_activator(&self) -> bool {
        let class = self.recommendation.class;
        self.spec.is_some() && class.is_some_and(|class| class.family() == Family::Anaerobic)
    }

    /// The card, section by section; cure times stand apart, as they move with the shop.
    pub fn sections(&self) -> Vec<Section> {
        let answer = &self.recommendation;
        let mut sections = vec![
            Section::new("where, and how much", &answer.where_and_how),
            Section::new("before", &answer.preparation),
            Section::new("keep it off", &answer.must_not_touch),
            Section {
                title: "join it",
                lines: self.assembly_words().into_iter().collect(),
            },
            Section::new("take care", &answer.cautions),
            Section::new("comes apart", answer.removal.as_slice()),
            Section {
                title: "in service",
                lines: self.service_words(),
            },
        ];
        sections.push(Section {
            title: "not known, so taken the cautious way",
            lines: answer.assumed.iter().map(|open| in_mark(open.words)).collect(),
        });
        let not = |(class, why): &(CompoundClass, &str)| format!("Not {}: {}", class.name(), in_mark(why));
        sections.push(Section {
            title: "why not its neighbours",
            lines: answer.rejected.iter().map(not).collect(),
        });
        sections.retain(|section| !section.lines.is_empty());
        sections
    }

    fn assembly_words(&self) -> Option<String> {
        let own = self.bottle.as_ref().and_then(|bottle| bottle.label.assembly);
        // To the tenth and down: a deadline is never told later than it is.
        let minutes = |time: Time| shortest((time.get::<minute>() * 10.0 + 1e-6).floor() / 10.0);
        let told = match own {
            Some(own) => format!("Within {} min, by its label.", minutes(own)),
            None => {
                let (low, high) = self.recommendation.assembly_time?;
                let (low, high) = (minutes(low), minutes(high));
                format!("Within {low} min: labels give {low} to {high} min until it skins or grips.")
            }
        };
        let hurried = self
            .spec
            .as_ref()
            .is_some_and(|spec| matches!(spec.chemistry, Chemistry::Anaerobic { activator: true, .. }));
        Some(if hurried {
            format!("{told} An activator can halve that.")
        } else {
            told
        })
    }

    fn service_words(&self) -> Vec<String> {
        let own = self.bottle.as_ref().and_then(|bottle| bottle.stands_c);
        match own {
            Some(celsius) => vec![format!("Stands {celsius:.0} °C, by its label.")],
            None => self
                .recommendation
                .service_limit
                .iter()
                .map(|words| (*words).to_owned())
                .collect(),
        }
    }
}

/// A part of the card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// What it is about.
    pub title: &'static str,
    /// Its lines.
    pub lines: Vec<String>,
}

impl Section {
    fn new(title: &'static str, lines: &[&str]) -> Self {
        Self {
            title,
            lines: lines.iter().map(|line| in_mark(line)).collect(),
        }
    }
}
