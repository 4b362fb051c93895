//! x
#![no_std]
