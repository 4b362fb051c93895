//! Handing over: what was not handed over goes to the desk, and what the desk has comes here. Either way twice is once.

use std::collections::BTreeSet;

use tenter::exchange::jsonl::{self, Exported};
use tenter::log::{Entry, Fact, PhotoName};
use tenter::store::memory::Memory;
use tenter::store::{Change as _, LogPiece, Merged, Read, StoreError};
use tenter::web::{Place, Response, Shell};
use tenter::words::errors;

use crate::dress;
use crate::message::{Asked, Waiting};
use crate::tags::{self, Chosen};

/// The name of the file that is handed over. Phones hand on files that end so, where others are refused.
const FILE: &str = "tenter-log.txt";

/// What was made of a request.
#[derive(Debug)]
pub struct HandedOver {
    /// The answer.
    pub response: Response,
    /// Which of the entries that waited are known to have arrived.
    pub arrived: Vec<String>,
    /// What waits still.
    pub waiting: Waiting,
    /// Whether entries came from elsewhere.
    pub foreign: bool,
}

impl HandedOver {
    /// Nothing went to and fro.
    pub fn nothing(response: Response, asked: &Asked) -> Self {
        Self { response, arrived: Vec::new(), waiting: asked.waiting.clone(), foreign: false }
    }
}

/// Answers what is asked below the address that hands over; none where there is nothing of that name.
pub fn answer(asked: &Asked, body: &[u8], log: &mut Memory) -> Option<HandedOver> {
    let path = asked.target.split('?').next().unwrap_or_default();
    // The first page leads to the desk's end of this; here is the phone's.
    if path == "/exchange" {
        return Some(HandedOver::nothing(Response::see(dress::HAND_OVER), asked));
    }
    let response = match (asked.post, path.strip_prefix(dress::HAND_OVER)?) {
        (false, "") => page(log, &asked.waiting, 200, ""),
        (false, "/tenter-log.txt") => match package(asked, log) {
            Ok(package) => Response::kept("text/plain; charset=utf-8", FILE, package),
            Err(error) => page(log, &asked.waiting, 500, &errors::store(&error)),
        },
        (true, "") => return Some(take(asked, body, log)),
        (true, "/tags") => match tags::choose(log, body) {
            Ok(Chosen::Done) => page(log, &asked.waiting, 200, "Cloths that you store from now on get these tags."),
            Ok(Chosen::NoRange) => page(log, &asked.waiting, 422, "Type the first and the last tag, such as 300-399."),
            Ok(Chosen::Held(words)) => page(log, &asked.waiting, 422, &words),
            Err(error) => page(log, &asked.waiting, 500, &errors::store(&error)),
        },
        _ => return None,
    };
    Some(HandedOver::nothing(response, asked))
}

/// The entries that wait, with the photographs that they name, and which tags are whose.
fn package(asked: &Asked, log: &mut Memory) -> Result<String, StoreError> {
    tags::take(log)?;
    let waiting: BTreeSet<&str> = asked.waiting.ids().map(String::as_str).collect();
    let mut lines = Vec::new();
    let mut names: BTreeSet<PhotoName> = BTreeSet::new();
    log.each_entry(&mut |line| {
        let Ok(entry) = serde_json::from_str::<Entry>(line) else { return Ok(()) };
        let is_of_tags = matches!(entry.fact, Fact::TagsTaken { .. });
        if is_of_tags || waiting.contains(entry.id.to_string().as_str()) {
            if let Fact::PhotoAdded { said, .. } = entry.fact {
                names.extend([said.photo, said.thumbnail]);
            }
            lines.push(line.to_owned());
        }
        Ok(())
    })?;
    let mut photos = Vec::new();
    for name in names {
        photos.extend(log.photo(name)?.map(|photo| jsonl::photo_line(&photo)));
    }
    Ok(jsonl::file_of(&lines, &photos))
}

/// Takes in what the desk wrote. What waits here and is in it has arrived there.
fn take(asked: &Asked, body: &[u8], log: &mut Memory) -> HandedOver {
    let mut seen = BTreeSet::new();
    let merged = Exported::begin(body, "what came", log.here().latest()).and_then(|exported| {
        log.merge_all(exported.inspect(|piece| {
            if let Ok(LogPiece::Entry(entry)) = piece {
                seen.insert(entry.id.to_string());
            }
        }))
    });
    match merged {
        Ok(merged) => {
            let arrived: Vec<String> = asked.waiting.ids().filter(|id| seen.contains(*id)).cloned().collect();
            let waiting = asked.waiting.less(&arrived);
            let response = page(log, &waiting, 200, &told(merged, arrived.len()));
            HandedOver { response, arrived, waiting, foreign: true }
        }
        Err(error) => HandedOver::nothing(page(log, &asked.waiting, 422, &errors::imported(&error)), asked),
    }
}

fn told(merged: Merged, arrived: usize) -> String {
    let entries = if merged.new == 1 { "entry" } else { "entries" };
    let here = format!("{} new {entries} came to this phone.", merged.new);
    let there = match arrived {
        0 => String::new(),
        1 => " 1 of yours has arrived at the desk.".to_owned(),
        arrived => format!(" {arrived} of yours have arrived at the desk."),
    };
    here + &there
}

/// The page that hands over. What was done is plain words of ours or an error, and neither is trusted as HTML.
fn page(log: &Memory, waiting: &Waiting, status: u16, done: &str) -> Response {
    let waits =
        dress::waiting(waiting.tests, waiting.others).unwrap_or_else(|| "Everything was handed over".to_owned());
    let done = match (done, status) {
        ("", _) => String::new(),
        (done, 200) => format!("<p role=\"status\" id=\"done\">{}</p>\n", escaped(done)),
        (done, _) => format!("<p role=\"alert\" id=\"done\">{}</p>\n", escaped(done)),
    };
    let tags = tags::told(log);
    let parts = format!(
        r#"{done}<p id="waits">{waits}.</p>
<section class="patch" id="live" hidden>
<h2>With the desk's page</h2>
<p id="asking"></p>
<p><button type="button" id="yes">Exchange with this desk</button> <button type="button" id="no">Do not</button></p>
</section>
<section class="patch">
<h2>With a file</h2>
<ol>
<li><p class="links"><a href="/hand-over/{FILE}">Save what the desk does not have yet</a></p> It is a file with the name {FILE}. Send it to your computer.</li>
<li>At the computer type <code>tenter import {FILE}</code>, then <code>tenter export for-phone.txt</code>. Send that file back.</li>
<li>Choose it here. This phone then knows what has arrived, and has everything that the desk has.</li>
</ol>
<form id="bring" method="post" action="/hand-over">
<p><label for="file">The file from the desk</label> <input type="file" id="file" accept=".txt,.jsonl,text/plain"></p>
<p><button>Take it in</button></p>
</form>
</section>
<section class="patch" id="handheld" hidden>
<h2>From the handheld</h2>
<p>Plug the handheld into this device, and press the button. The browser asks which port it is. Its tests come here, and it forgets them only after they are stored.</p>
<p><button type="button" id="fetch">Fetch its tests</button></p>
<p id="fetched" role="status"></p>
<p class="links"><a href="/inbox">Tests without a cloth</a></p>
</section>
<section class="patch">
<h2>Tags of this phone</h2>
<p>Cloths that you store here get tags of their own, so that they are not those that the desk gives in the meantime.</p>
<form id="tags" method="post" action="/hand-over/tags">
<p><label for="range">First and last tag</label> <input id="range" name="tags" value="{tags}" inputmode="numeric" required></p>
<p><button>Use these tags</button></p>
</form>
</section>
<script src="/app/hand-over.js" defer></script>
"#
    );
    let mut response = Shell::new(Place::More, "Hand over to the desk").with_status(status);
    let html = String::from_utf8(response.body).unwrap_or_default();
    response.body = html.replacen("</main>", &format!("{parts}</main>"), 1).into_bytes();
    for (name, value) in &mut response.headers {
        // The desk's page opened this one, and they talk.
        if *name == "cross-origin-opener-policy" {
            "unsafe-none".clone_into(value);
        }
    }
    response
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('"', "&quot;")
}
