//! adapter
