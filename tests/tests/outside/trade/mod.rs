//! What people ask about stretch, with the numbers they gave, and the tables of the trade. Verdicts are arithmetic
//! only; sources are named by what they are, sellers and pattern houses without their names.

mod questions;
mod tables;
