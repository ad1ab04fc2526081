//! Battenbook's pure half: from what was measured in the rig to what to mark, cut, mix, wire and buy.

pub mod carpentry;
pub mod coating;
pub mod electrical;
pub mod energy;
pub mod fastening;
pub mod light;
pub mod mass;
pub mod opening;
pub mod quantity;
pub mod source;
pub mod thermal;

#[cfg(test)]
mod testing;
