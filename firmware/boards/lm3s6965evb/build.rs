//! Hands the linker its scripts. Here and not in RUSTFLAGS, which the environment could replace.

use std::{env, fs, io, path::PathBuf};

fn main() -> io::Result<()> {
    println!("cargo:rerun-if-changed=build.rs");
    println!("cargo:rerun-if-changed=memory.x");
    let out = PathBuf::from(env::var_os("OUT_DIR").ok_or(io::ErrorKind::NotFound)?);
    if env::var("TARGET").is_ok_and(|target| target.starts_with("thumb")) {
        fs::copy("memory.x", out.join("memory.x"))?;
        println!("cargo:rustc-link-search={}", out.display());
        println!("cargo:rustc-link-arg-bins=-Tlink.x");
        println!("cargo:rustc-link-arg-bins=--nmagic");
        // Functions with the same code become one; nothing here compares their addresses.
        println!("cargo:rustc-link-arg-bins=--icf=all");
        if env::var_os("CARGO_FEATURE_DEFMT").is_some() {
            println!("cargo:rustc-link-arg-bins=-Tdefmt.x");
        }
    }
    Ok(())
}
