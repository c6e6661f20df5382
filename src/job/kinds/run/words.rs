//! A run step in words.

use super::Run;
use crate::trade::quantity::shortest;

impl Run {
    /// What it says, by name.
    pub fn facts(&self) -> Vec<(&'static str, String)> {
        let until = match (self.until, self.never_over) {
            (Some(until), Some(most)) => format!("it reads {}, never over {}", until.text(), most.text()),
            (Some(until), None) => format!("it reads {}", until.text()),
            (None, Some(most)) => format!("never over {}", most.text()),
            (None, None) => String::new(),
        };
        let minutes = self.minutes.map_or(String::new(), |minutes| {
            format!("{} min at least", shortest(minutes))
        });
        vec![
            ("start", self.what.clone()),
            ("run until", until),
            ("run for", minutes),
            (
                "then",
                if self.cool {
                    "let it cool".to_owned()
                } else {
                    String::new()
                },
            ),
            ("level again", self.level.clone()),
        ]
    }
}
