//! application
