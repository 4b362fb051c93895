//! Gives the linker its memory map. Link arguments live here, since RUSTFLAGS from outside would replace those of a
//! configuration file.

use std::{env, fs, io, path::PathBuf};

fn main() -> io::Result<()> {
    println!("cargo:rerun-if-changed=memory.x");
    println!("cargo:rerun-if-changed=build.rs");
    let (Ok(target), Some(out)) = (env::var("TARGET"), env::var_os("OUT_DIR")) else {
        return Err(io::Error::other("cargo sets TARGET and OUT_DIR"));
    };
    if target.starts_with("thumb") {
        let out = PathBuf::from(out);
        fs::copy("memory.x", out.join("memory.x"))?;
        println!("cargo:rustc-link-search={}", out.display());
        println!("cargo:rustc-link-arg-bins=--nmagic");
        println!("cargo:rustc-link-arg-bins=-Tlink.x");
        // Functions with the same code become one; nothing here compares their addresses.
        println!("cargo:rustc-link-arg-bins=--icf=all");
    }
    Ok(())
}
