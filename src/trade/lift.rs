//! lift
