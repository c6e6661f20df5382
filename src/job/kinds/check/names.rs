//! Names for what is added to a plan.

/// The first numbered name of that kind that none of those there has.
pub fn free_name<'a>(kind: &str, there: impl Iterator<Item = &'a str>) -> String {
    let there: Vec<&str> = there.collect();
    (1..=there.len() + 1)
        .map(|number| format!("{kind} {number}"))
        .find(|name| !there.contains(&name.as_str()))
        .unwrap_or_default()
}
