//! What the program is, for tools that ask the board in its boot loader.

use rp2040_hal::binary_info::{self, EntryAddr};

#[unsafe(link_section = ".bi_entries")]
#[used]
#[allow(unsafe_code, reason = "a section name is the only way to place it")]
static ENTRIES: [EntryAddr; 4] = [
    binary_info::rp_program_name!(c"tenter handheld"),
    binary_info::rp_cargo_version!(),
    binary_info::rp_program_description!(c"marked-length pull tests of cloth"),
    binary_info::rp_pico_board!(c"pico"),
];
