//! Fields as plain data to lay out.

/// How a field is entered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Entry {
    /// A heading over what follows.
    Head,
    /// Something to read: nothing is entered.
    Said,
    /// Words.
    Words,
    /// A number in that unit; it may be cleared when `optional`.
    Number { unit: &'static str, optional: bool },
    /// A torque in the manual's words.
    Torque,
    /// A thread by its designation, or "not stated".
    Thread,
    /// One of several: (value, words).
    Choice(Vec<(String, String)>),
    /// Yes or no: the value is "yes" or "no".
    Flag,
    /// A key that does something at once.
    Press,
}

/// One field as it is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shown {
    /// Its path, to change it by.
    pub id: String,
    /// Its label.
    pub label: String,
    /// What it holds now, as shown.
    pub value: String,
    /// How it is entered.
    pub entry: Entry,
}

/// A form being laid out.
#[derive(Debug, Default)]
pub struct Form {
    /// Its fields, in their order.
    pub fields: Vec<Shown>,
}

impl Form {
    /// Adds a field.
    pub fn add(&mut self, id: impl Into<String>, label: &str, value: &str, entry: Entry) {
        self.fields.push(Shown {
            id: id.into(),
            label: label.to_owned(),
            value: value.to_owned(),
            entry,
        });
    }

    /// Adds a heading.
    pub fn head(&mut self, words: &str) {
        self.add("", words, "", Entry::Head);
    }

    /// Adds a key.
    pub fn press(&mut self, id: impl Into<String>, words: &str) {
        self.add(id, words, "", Entry::Press);
    }

    /// Adds a yes or no.
    pub fn flag(&mut self, id: impl Into<String>, label: &str, value: bool) {
        self.add(id, label, if value { "yes" } else { "no" }, Entry::Flag);
    }
}
