//! Many at once, a log on a server, and the end.

use std::collections::BTreeSet;
use std::process::Command;
use std::thread;

use tenter_tests::cluster;
use tenter_tests::program::program;

use crate::server::{Server, field};

/// Thirty people add five cloths each, at once: all are there, each under a tag of its own.
#[test]
fn thirty_at_once_lose_nothing() {
    let server = Server::empty(&[]);
    thread::scope(|scope| {
        for person in 0..30 {
            let server = &server;
            scope.spawn(move || {
                for cloth in 0..5 {
                    let once = field(&server.get("/cloths/new").text(), "cloth", "once");
                    let name = format!("Cloth {cloth} of {person}");
                    let stored =
                        server.post("/cloths/new", &[("once", &once), ("name", &name), ("construction", "knit")]);
                    assert_eq!(stored.status, 303, "{}", stored.text());
                }
            });
        }
    });
    let log = server.get("/log/tenter-log.jsonl").text();
    let tags: BTreeSet<&str> =
        log.lines().filter_map(|line| line.split("\"tag\":").nth(1)?.split([',', '}']).next()).collect();
    assert_eq!((log.matches("fabric-added").count(), tags.len()), (150, 150));
}

#[test]
fn it_ends_when_asked_and_the_log_is_whole() {
    for signal in ["-INT", "-TERM"] {
        let server = Server::evening();
        let db = server.db();
        let kept = tempfile::tempdir().unwrap();
        // A connection that stays open does not hold it up for ever.
        let idle = std::net::TcpStream::connect(&server.host).unwrap();
        assert_eq!(server.get("/cloths").status, 200);
        let copy = kept.path().join("log.sqlite3");
        drop(idle);
        std::fs::copy(&db, &copy).unwrap();
        let (code, said) = server.end(signal);
        assert_eq!(code, Some(0), "{signal}");
        assert!(said.ends_with("ended; everything you sent is stored\n"), "{said}");
        let check = Command::new(program()).arg("--db").arg(&copy).args(["log", "check"]).output().unwrap();
        assert!(check.status.success(), "{}", String::from_utf8_lossy(&check.stderr));
    }
}

/// The same pages over a log on a server of PostgreSQL.
#[test]
fn a_log_on_a_server_is_served() {
    let address = cluster::shared().database();
    let server = Server::over(&address, &[], tempfile::tempdir().unwrap());
    let once = field(&server.get("/cloths/new").text(), "cloth", "once");
    for _ in 0..2 {
        let stored = server.post("/cloths/new", &[("once", &once), ("name", "Slate rib"), ("construction", "knit")]);
        assert_eq!(stored.status, 303, "{}", stored.text());
    }
    let page = server.get("/cloths").text();
    assert_eq!(page.matches("Slate rib</bdi>").count(), 1, "{page}");
    // A test that is being made is kept too.
    let begun = server.post("/measure", &[("construction", "knit"), ("unit", "cm")]);
    let step = server.get(begun.head("location"));
    assert!(step.text().contains("Mark and hold the cloth"), "{}", step.text());
}

/// A connection to the server is used again, and one that was lost is made anew.
#[test]
fn connections_to_a_server_are_used_again() {
    let cluster = cluster::Cluster::start(&["-c", "log_connections=on"], |_| {});
    let server = Server::over(&cluster.database(), &[], tempfile::tempdir().unwrap());
    let made = || cluster.log().matches("connection authorized").count();
    assert_eq!(server.get("/cloths").status, 200);
    let before = made();
    for _ in 0..30 {
        assert_eq!(server.get("/cloths").status, 200);
    }
    let more = made() - before;
    assert!(more < 10, "{more} connections for 30 pages");
    cluster.kill();
    drop(cluster.client("postgres"));
    let once = field(&server.get("/cloths/new").text(), "cloth", "once");
    let stored = server.post("/cloths/new", &[("once", &once), ("name", "Slate rib"), ("construction", "knit")]);
    assert_eq!(stored.status, 303, "{}", stored.text());
    assert!(server.get("/cloths").text().contains("Slate rib"));
}

#[test]
fn a_port_that_is_taken_is_said() {
    let server = Server::empty(&[]);
    let port = server.host.rsplit(':').next().unwrap();
    let other = Command::new(program())
        .args(["--db", server.db().to_str().unwrap(), "serve", "--no-open", "--port", port])
        .output()
        .unwrap();
    let said = String::from_utf8_lossy(&other.stderr).into_owned();
    assert_eq!(other.status.code(), Some(2));
    assert!(said.contains("cannot listen at 127.0.0.1 port") && said.contains("--port"), "{said}");
}
