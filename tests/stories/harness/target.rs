//! What a story points at: a role and a name, as a screen reader would say them.

use std::fmt;

/// How a name is compared. White space counts as one blank.
#[derive(Clone, Debug)]
pub enum Name {
    /// The whole name.
    Is(String),
    /// A part of the name.
    Has(String),
    /// Whatever it is called.
    Any,
}

impl Name {
    pub fn fits(&self, name: &str) -> bool {
        let name = one_blank(name);
        match self {
            Name::Is(whole) => name == one_blank(whole),
            Name::Has(part) => name.contains(&one_blank(part)),
            Name::Any => true,
        }
    }
}

impl From<&str> for Name {
    fn from(whole: &str) -> Name {
        Name::Is(whole.to_owned())
    }
}

impl From<String> for Name {
    fn from(whole: String) -> Name {
        Name::Is(whole)
    }
}

/// A name that contains this.
pub fn has(part: &str) -> Name {
    Name::Has(part.to_owned())
}

/// Any name.
pub fn any() -> Name {
    Name::Any
}

/// White space as one blank, none at the ends; a no-break space is white space here.
pub fn one_blank(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Something on the page, by role and name.
#[derive(Clone, Debug)]
pub struct Target {
    pub(super) role: &'static str,
    pub(super) name: Name,
    pub(super) within: Option<Box<Target>>,
    pub(super) nth: usize,
}

impl Target {
    /// Only inside that one: `button("Undo").within(region("Clocks"))`.
    pub fn within(mut self, outer: Target) -> Target {
        self.within = Some(Box::new(outer));
        self
    }

    /// The `n`th of those that fit, from 0.
    pub fn nth(mut self, n: usize) -> Target {
        self.nth = n;
        self
    }
}

impl fmt::Display for Target {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.name {
            Name::Is(name) => write!(f, "{} \"{name}\"", self.role)?,
            Name::Has(part) => write!(f, "{} with \"{part}\" in its name", self.role)?,
            Name::Any => write!(f, "{}", self.role)?,
        }
        if self.nth > 0 {
            write!(f, " number {}", self.nth + 1)?;
        }
        match &self.within {
            Some(outer) => write!(f, " in {outer}"),
            None => Ok(()),
        }
    }
}

/// Something with this ARIA role, as Chromium names it: `role("switch", "Dark")`.
pub fn role(role: &'static str, name: impl Into<Name>) -> Target {
    Target {
        role,
        name: name.into(),
        within: None,
        nth: 0,
    }
}

macro_rules! roles {
    ($($(#[$doc:meta])* $function:ident => $role:literal),* $(,)?) => {
        $($(#[$doc])* pub fn $function(name: impl Into<Name>) -> Target { role($role, name) })*
    };
}

roles! {
    /// A key.
    button => "button",
    link => "link",
    heading => "heading",
    /// One line or many of typed words.
    textbox => "textbox",
    checkbox => "checkbox",
    radio => "radio",
    tab => "tab",
    switch => "switch",
    /// A section with a name.
    region => "region",
    navigation => "navigation",
    group => "group",
    dialog => "dialog",
    list => "list",
    list_item => "listitem",
    /// Words that are read aloud when they change.
    status => "status",
    /// Words that are read aloud at once.
    alert => "alert",
    /// A drawing or a photograph.
    image => "image",
    timer => "timer",
    progress => "progressbar",
    table => "table",
    row => "row",
    cell => "cell",
    /// A stretch of plain text.
    words => "StaticText",
}
