//! hoist
