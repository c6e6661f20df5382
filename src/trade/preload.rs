//! preload
