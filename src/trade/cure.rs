//! cure
