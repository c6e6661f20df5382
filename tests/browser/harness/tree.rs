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

/// The whole page, top to bottom.
pub struct Tree(Vec<Node>);

impl Tree {
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

/// A role whose name is not its content is also known by what it says.
fn fits(node: &Node, target: &Target) -> bool {
    node.role == target.role
        && (target.name.fits(&node.name)
            || (matches!(
                node.role.as_str(),
                "status" | "alert" | "timer" | "listitem" | "row" | "log"
            ) && target.name.fits(&node.text)))
}

/// Adds a node and all below it; gives back the words found.
fn walk(raw: &Value, by_id: &HashMap<&str, &Value>, ancestors: &[usize], nodes: &mut Vec<Node>) -> String {
    let role = raw["role"]["value"].as_str().unwrap_or_default();
    let name = raw["name"]["value"].as_str().unwrap_or_default();
    let seen = raw["ignored"].as_bool() != Some(true);
    let mut path = ancestors.to_vec();
    let place = nodes.len();
    if seen {
        path.push(place);
        nodes.push(node(raw, role, name, ancestors));
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

fn node(raw: &Value, role: &str, name: &str, ancestors: &[usize]) -> Node {
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
        role: role.to_owned(),
        name: name.to_owned(),
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
