//! guard
