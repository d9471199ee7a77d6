//! The nouns of the shop: plain types, parsed once, without SQL or HTTP.

pub mod ids;
