//! cooling
