//! A tile, and the answer that is none.

/// The id of the answer "don't know", the last choice of every question.
pub const DONT_KNOW: &str = "unknown";

/// One tile of a question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Choice {
    /// The name to answer with.
    pub id: &'static str,
    /// The words on the tile.
    pub words: &'static str,
}
