//! compound
