//! pair
