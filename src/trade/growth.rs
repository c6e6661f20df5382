//! growth
