//! Core is `no_std` and no input reaches a panic: see `no-std-probe/src/lib.rs`.

use std::process::Command;

#[test]
fn core_is_no_std_and_cannot_panic() {
    let check = concat!(env!("CARGO_MANIFEST_DIR"), "/no-std-probe/check");
    let output = Command::new(check).output().unwrap();
    let (stdout, stderr) = (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert!(output.status.success(), "{stderr}");
    assert!(stdout.ends_with("entry points, no reachable panic\n"), "{stdout}");
}
