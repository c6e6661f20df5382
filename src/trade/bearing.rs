//! bearing
