//! The page as a screen reader gets it: Chromium's accessibility tree.

use std::collections::HashMap;

use serde_json::{Value, json};
use thirtyfour::WebDriver;

use super::target::{Target, one_blank};
use super::{Failure, Told};

/// One thing on the page.
#[derive(Clone, Debug)]
pub struct Node {
    pub role: String,
    pub name: String,
    /// All words inside it.
    pub text: String,
    /// What is entered or chosen in it.
    pub value: String,
    pub disabled: bool,
    /// Pressed, checked or selected.
    pub on: bool,
    pub(super) backend: i64,
    ancestors: Vec<usize>,
}

/// The page, or what was asked for of it, top to bottom.
pub struct Tree(Vec<Node>);

/// What may be asked for by its role alone. Chromium knows some others under names of its own; those in [`SAID`] are
/// also found by what is in them, which that question doesn't tell.
const ASKED: [&str; 8] = [
    "button", "dialog", "heading", "radio", "region", "switch", "tab", "textbox",
];

/// Roles whose name is not their content are also known by what they say.
const SAID: [&str; 6] = ["status", "alert", "timer", "listitem", "row", "log"];

impl Tree {
    /// As much of the page as it takes to find the target again: the whole is some 60 kB, and most looks are for
    /// one key that rests after a touch. Only on a page that stays: the browser's tab dies of this question when
    /// the page is replaced meanwhile.
    pub async fn of_role(driver: &WebDriver, target: &Target) -> Told<Tree> {
        if !ASKED.contains(&target.role) || target.within.is_some() {
            return Tree::read(driver).await;
        }
        let document = driver
            .cdp()
            .send_raw("DOM.getDocument", json!({ "depth": 0 }))
            .await?;
        let what = json!({ "backendNodeId": document["root"]["backendNodeId"], "role": target.role });
        let answer = driver.cdp().send_raw("Accessibility.queryAXTree", what).await?;
        let raw = answer["nodes"].as_array().into_iter().flatten();
        let seen = raw.filter(|node| node["ignored"].as_bool() != Some(true));
        Ok(Tree(seen.map(|raw| node(raw, &[])).collect()))
    }

    /// The whole page.
    pub async fn read(driver: &WebDriver) -> Told<Tree> {
        let answer = driver
            .cdp()
            .send_raw("Accessibility.getFullAXTree", json!({}))
            .await?;
        let raw = answer["nodes"]
            .as_array()
            .ok_or_else(|| Failure::new("the page has no tree"))?;
        let by_id: HashMap<&str, &Value> = raw
            .iter()
            .filter_map(|node| Some((node["nodeId"].as_str()?, node)))
            .collect();
        let mut nodes = Vec::new();
        if let Some(root) = raw.first() {
            walk(root, &by_id, &[], &mut nodes);
        }
        Ok(Tree(nodes))
    }

    /// All that fit, in the order of the page.
    pub fn all(&self, target: &Target) -> Vec<&Node> {
        let outer = target.within.as_deref().map(|outer| self.place(outer));
        self.0
            .iter()
            .filter(|node| match outer {
                None => true,
                Some(None) => false,
                Some(Some(outer)) => node.ancestors.contains(&outer),
            })
            .filter(|node| fits(node, target))
            .collect()
    }

    /// The one that is meant.
    pub fn find(&self, target: &Target) -> Option<&Node> {
        self.all(target).into_iter().nth(target.nth)
    }

    fn place(&self, target: &Target) -> Option<usize> {
        let found: *const Node = self.find(target)?;
        self.0.iter().position(|node| std::ptr::eq(node, found))
    }

    /// What is there, for a failure's words.
    pub fn outline(&self) -> String {
        let lines: Vec<String> = self
            .0
            .iter()
            .filter(|node| !node.name.is_empty() && node.role != "StaticText" && node.role != "RootWebArea")
            .take(80)
            .map(|node| {
                let off = if node.disabled { ", shut" } else { "" };
                format!("  {} \"{}\"{off}", node.role, one_blank(&node.name))
            })
            .collect();
        let text = self
            .0
            .first()
            .map(|root| one_blank(&root.text))
            .unwrap_or_default();
        let short: String = text.chars().take(600).collect();
        format!("\non the page:\n{}\n  words: {short}", lines.join("\n"))
    }
}

fn fits(node: &Node, target: &Target) -> bool {
    node.role == target.role
        && (target.name.fits(&node.name)
            || (SAID.contains(&node.role.as_str()) && target.name.fits(&node.text)))
}

/// Adds a node and all below it; gives back the words found.
fn walk(raw: &Value, by_id: &HashMap<&str, &Value>, ancestors: &[usize], nodes: &mut Vec<Node>) -> String {
    let (role, name) = (value(raw, "role"), value(raw, "name"));
    let seen = raw["ignored"].as_bool() != Some(true);
    let mut path = ancestors.to_vec();
    let place = nodes.len();
    if seen {
        path.push(place);
        nodes.push(node(raw, ancestors));
    }
    if role == "StaticText" {
        if let Some(node) = nodes.get_mut(place).filter(|_| seen) {
            node.text = name.to_owned();
        }
        return name.to_owned();
    }
    let children = raw["childIds"].as_array().into_iter().flatten();
    let words: Vec<String> = children
        .filter_map(|id| by_id.get(id.as_str()?))
        .map(|child| walk(child, by_id, &path, nodes))
        .filter(|words| !words.is_empty())
        .collect();
    let words = words.join(" ");
    if let Some(node) = nodes.get_mut(place).filter(|_| seen) {
        node.text.clone_from(&words);
    }
    words
}

fn value<'a>(raw: &'a Value, what: &str) -> &'a str {
    raw[what]["value"].as_str().unwrap_or_default()
}

fn node(raw: &Value, ancestors: &[usize]) -> Node {
    let property = |wanted: &str| {
        raw["properties"]
            .as_array()
            .and_then(|all| all.iter().find(|property| property["name"] == wanted))
            .map(|property| &property["value"]["value"])
    };
    let set = |wanted: &str| {
        property(wanted).is_some_and(|value| *value == Value::Bool(true) || value.as_str() == Some("true"))
    };
    Node {
        role: value(raw, "role").to_owned(),
        name: value(raw, "name").to_owned(),
        text: String::new(),
        value: match &raw["value"]["value"] {
            Value::String(words) => words.clone(),
            Value::Null => String::new(),
            other => other.to_string(),
        },
        disabled: set("disabled"),
        on: set("pressed") || set("checked") || set("selected"),
        backend: raw["backendDOMNodeId"].as_i64().unwrap_or_default(),
        ancestors: ancestors.to_vec(),
    }
}
