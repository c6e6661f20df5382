//! stages
