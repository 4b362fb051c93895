//! The app for a phone for real: built for a browser, written by `tenter phone`, put on a web space and opened in a
//! browser, offline, killed, renewed and full. Needs the compiler (`tests/install phone`), Chromium and Node.js, and
//! fails without them.

mod budget;
mod firefox;
mod handheld;
mod handing;
mod kills;
mod looks;
mod offline;
mod one_file;
mod same;
mod windows;

use std::path::PathBuf;

use serde_json::{Value, json};
use tempfile::TempDir;
use tenter_tests::browser;
use tenter_tests::phone::{Phone, write_app};

/// Adds a cloth as its form does, by a script of the page it runs in: a function of the name, that fails where the form
/// was refused.
const ADD: &str = "async (name) => {
    const page = new DOMParser().parseFromString(await (await fetch('/cloths/new')).text(), 'text/html');
    const form = page.querySelector('form#cloth');
    const fields = new URLSearchParams(new FormData(form));
    fields.set('name', name);
    const response = await fetch(form.getAttribute('action'), { method: 'POST', body: fields });
    if (!response.ok) throw new Error(`${response.status} ${await response.text()}`);
    return response.url;
}";

/// Every cloth that lies in the browser's database: its tag and its name.
const CLOTHS: &str = "(async () => {
    const done = (request) => new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
    });
    const database = await done(indexedDB.open('tenter'));
    const rows = await done(database.transaction('entries').objectStore('entries').getAll());
    database.close();
    return rows.map((row) => JSON.parse(row.line)).filter(({ kind }) => kind === 'fabric-added').map(({ tag, name }) => [tag, name]);
})()";

/// A phone with the app on it.
struct Shop {
    phone: Phone,
    folder: TempDir,
    origin: String,
    /// Another browser than the usual one.
    program: Option<PathBuf>,
}

impl Shop {
    /// On a web space, opened once.
    fn open() -> Self {
        Self::opened(None)
    }

    /// The same in another browser.
    fn open_in(program: &str) -> Self {
        Self::opened(Some(browser::find(program).unwrap()))
    }

    fn opened(program: Option<PathBuf>) -> Self {
        let folder = tempfile::tempdir().unwrap();
        let site = folder.path().join("site");
        assert!(write_app(&["--out", site.to_str().unwrap()]).contains("https"));
        let mut phone = Phone::start().unwrap();
        let port = phone.tell("serve", json!({ "folder": site })).unwrap();
        let mut shop = Self { phone, folder, origin: format!("http://127.0.0.1:{port}"), program };
        shop.launch();
        shop.tell("install", json!({ "url": shop.at("/") }));
        shop
    }

    fn launch(&mut self) {
        let mut launch = json!({ "profile": self.path("profile") });
        if let Some(program) = &self.program {
            launch["program"] = json!(program);
        }
        self.tell("launch", launch);
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn at(&self, target: &str) -> String {
        format!("{}{target}", self.origin)
    }

    fn tell(&mut self, what: &str, with: Value) -> Value {
        self.phone.tell(what, with).unwrap()
    }

    fn eval(&mut self, script: &str) -> Value {
        self.tell("eval", json!({ "script": script }))
    }

    fn goto(&mut self, target: &str) {
        let url = self.at(target);
        self.tell("open", json!({ "url": url }));
    }

    /// What stands on the page.
    fn text(&mut self) -> String {
        self.eval("document.body.innerText").as_str().unwrap().to_owned()
    }

    fn add(&mut self, name: &str) {
        self.eval(&format!("({ADD})({})", json!(name)));
    }

    /// Tags and names of all cloths, by tag.
    fn cloths(&mut self) -> Vec<(u64, String)> {
        let cloths = self.eval(CLOTHS);
        let pair = |cloth: &Value| (cloth[0].as_u64().unwrap(), cloth[1].as_str().unwrap().to_owned());
        let mut cloths: Vec<(u64, String)> = cloths.as_array().unwrap().iter().map(pair).collect();
        cloths.sort();
        cloths
    }

    /// The names of all cloths, by tag.
    fn names(&mut self) -> Vec<String> {
        self.cloths().into_iter().map(|(_, name)| name).collect()
    }
}
