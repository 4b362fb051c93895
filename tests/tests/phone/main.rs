//! The app for a phone for real: built for a browser, written by `tenter phone`, put on a web space and opened in a
//! browser, offline, killed, renewed and full. Needs the compiler (`tests/install phone`), Chromium and Node.js, and
//! fails without them.

mod budget;
mod handing;
mod kills;
mod offline;
mod one_file;
mod same;
mod windows;

use std::path::PathBuf;

use serde_json::{Value, json};
use tempfile::TempDir;
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

/// Every cloth of the list: its tag and its name, as it stands on its own page.
const CLOTHS: &str = "(async () => {
    const parsed = async (address) => new DOMParser().parseFromString(await (await fetch(address)).text(), 'text/html');
    const list = await parsed('/cloths');
    const links = [...list.querySelectorAll('main a')].map((link) => link.getAttribute('href'));
    const cloths = new Set(links.filter((link) => /^\\/cloths\\/[0-9a-z]{26}$/.test(link)));
    return Promise.all([...cloths].map(async (address) => {
        const page = await parsed(address);
        return [page.querySelector('p.tag').lastChild.textContent.trim(), page.querySelector('h1').textContent];
    }));
})()";

/// A phone with the app on it.
struct Shop {
    phone: Phone,
    folder: TempDir,
    origin: String,
}

impl Shop {
    /// On a web space, opened once.
    fn open() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let site = folder.path().join("site");
        write_app(&["--out", site.to_str().unwrap()]);
        let mut phone = Phone::start().unwrap();
        let port = phone.tell("serve", json!({ "folder": site })).unwrap();
        let mut shop = Self { phone, folder, origin: format!("http://127.0.0.1:{port}") };
        shop.launch();
        shop.tell("install", json!({ "url": shop.at("/") }));
        shop
    }

    fn launch(&mut self) {
        let profile = self.path("profile");
        self.tell("launch", json!({ "profile": profile }));
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
    fn cloths(&mut self) -> Vec<(u32, String)> {
        let cloths = self.eval(CLOTHS);
        let text = |value: &Value| value.as_str().unwrap().to_owned();
        let pair = |cloth: &Value| (text(&cloth[0]).parse().unwrap(), text(&cloth[1]));
        let mut cloths: Vec<(u32, String)> = cloths.as_array().unwrap().iter().map(pair).collect();
        cloths.sort();
        cloths
    }
}
