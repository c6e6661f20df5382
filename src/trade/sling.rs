//! sling
