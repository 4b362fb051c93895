//! The log in memory with the program over it.

use tenter::exchange::jsonl;
use tenter::store::Drafts as _;
use tenter::store::memory::{Memory, Unkept};
use tenter::web::{Method, Request, Response, respond};

use crate::hand_over::{self, HandedOver};
use crate::handheld::{Handheld, Next};
use crate::message::{Answered, Asked, DraftToKeep, EntryToKeep, PhotoToKeep};
use crate::{dress, here, tags};

/// The program and its log.
#[derive(Debug)]
pub struct Machine {
    log: Memory,
    /// The conversation with a handheld. It is not kept: where the program is made anew, it begins again, and loses nothing.
    handheld: Option<Handheld>,
}

impl Default for Machine {
    fn default() -> Self {
        Self { log: Memory::new(here::here()), handheld: None }
    }
}

impl Machine {
    /// Takes in what was kept: entries, photographs and drafts, one a line, entries in the order of their arrival. How
    /// many lines could not be read.
    pub fn take(&mut self, lines: &str) -> u32 {
        let (mut unread, mut pieces) = (0, Vec::new());
        for line in lines.lines() {
            if line.starts_with("{\"draft\":") {
                let draft: Option<DraftToKeep> = serde_json::from_str(line).ok();
                let set = draft.and_then(|draft| self.log.set_draft(&draft.name, draft.text.as_deref()).ok());
                unread += u32::from(set.is_none());
            } else {
                match jsonl::kept_line(line) {
                    Ok(piece) => pieces.push(piece),
                    Err(_) => unread += 1,
                }
            }
        }
        self.log.bring(pieces);
        unread
    }

    /// Answers a request; what is to be kept stands in the answer's head.
    pub fn answer(&mut self, asked: &Asked, body: &[u8]) -> (Answered, Vec<u8>) {
        // What cannot be remembered is drawn again with the next request.
        let _ = tags::draw(&mut self.log);
        if asked.post {
            let _ = tags::renew(&mut self.log);
        }
        let handed = match self.at_handheld(asked, body) {
            Some(response) => HandedOver::nothing(response, asked),
            None => hand_over::answer(asked, body, &mut self.log)
                .unwrap_or_else(|| HandedOver::nothing(self.page(asked, body), asked)),
        };
        let HandedOver { mut response, arrived, waiting, foreign } = handed;
        let unkept = self.log.unkept().unwrap_or_else(|_| {
            response = Response::page(500, "<main>An entry cannot be written.</main>".to_owned());
            Unkept::default()
        });
        dress::dress(&mut response, &asked.base, waiting.tests, waiting.others);
        let wanted = self.log.wanted();
        let Unkept { entries, photos, drafts } = unkept;
        let entries = entries.into_iter().map(|entry| EntryToKeep {
            id: entry.id.to_string(),
            replaces: entry.replaces,
            line: entry.line,
            test: entry.is_test,
        });
        let photos =
            photos.iter().map(|photo| PhotoToKeep { name: photo.name().to_string(), line: jsonl::photo_line(photo) });
        let drafts = drafts.into_iter().map(|draft| DraftToKeep { name: draft.name, text: draft.text });
        let answered = Answered {
            status: response.status,
            headers: response.headers.into_iter().map(|(name, value)| (name.to_owned(), value)).collect(),
            entries: entries.collect(),
            photos: photos.collect(),
            drafts: drafts.collect(),
            foreign,
            handed: arrived,
            wanted: wanted.names.iter().map(ToString::to_string).collect(),
            wanted_all: wanted.all,
        };
        (answered, response.body)
    }

    /// What the script asks that moves the bytes of a handheld. Bytes are to be written; 202 is to listen on, 409 to begin again,
    /// and words are for the person.
    fn at_handheld(&mut self, asked: &Asked, body: &[u8]) -> Option<Response> {
        let next = match (asked.post, asked.target.as_str()) {
            (true, "/handheld/begin") => Handheld::begin(&self.log).map(|(handheld, first)| {
                self.handheld = Some(handheld);
                first
            }),
            (true, "/handheld") => match &mut self.handheld {
                Some(handheld) => handheld.hear(body, &mut self.log),
                None => return Some(Response::plain(409, "Begin again.")),
            },
            _ => return None,
        };
        let (status, words) = match next {
            Ok(Next::Write(bytes)) => return Some(Response::file("application/octet-stream", bytes)),
            Ok(Next::Listen) => return Some(Response::plain(202, "")),
            Ok(Next::Tell(words)) => (200, words),
            Err(trouble) => (422, trouble.words()),
        };
        self.handheld = None;
        Some(Response::plain(status, &words))
    }

    fn page(&mut self, asked: &Asked, body: &[u8]) -> Response {
        let method = if asked.post { Method::Post } else { Method::Get };
        let content_type = asked.content_type.clone();
        let request = Request { method, content_type, body: body.to_vec(), ..Request::get(&asked.target) };
        respond(&request, &mut self.log)
    }
}

#[cfg(test)]
mod tests {
    use tenter::log::{FabricChange, Fact};
    use tenter::store::{Change as _, Read as _};

    use super::*;

    fn asked(json: &str) -> Asked {
        serde_json::from_str(json).unwrap()
    }

    fn with_a_cloth() -> (Machine, Vec<EntryToKeep>) {
        let mut machine = Machine::default();
        let change = FabricChange { tag: Some(1), name: Some("twill".into()), ..FabricChange::default() };
        machine.log.add(&[Fact::FabricAdded(change)]).unwrap();
        let get = asked(r#"{"post":false,"target":"/","waiting":{"tests":0,"others":0}}"#);
        let (answered, _) = machine.answer(&get, b"");
        (machine, answered.entries)
    }

    /// What is kept makes the same log again, and is not kept twice.
    #[test]
    fn a_machine_is_made_anew_from_what_was_kept() {
        let (machine, kept) = with_a_cloth();
        let mut again = Machine::default();
        let draft = r#"{"draft":"pull","text":"begun"}"#;
        assert_eq!(again.take(&format!("{}\n{draft}\n", kept[0].line)), 0);
        assert_eq!(again.log.fabrics().unwrap(), machine.log.fabrics().unwrap());
        assert_eq!(again.log.draft("pull").unwrap().as_deref(), Some("begun"));
        let get = asked(r#"{"post":false,"target":"/","waiting":{"tests":0,"others":1}}"#);
        let (answered, page) = again.answer(&get, b"");
        assert!(answered.entries.is_empty());
        assert_eq!(answered.drafts.iter().map(|draft| draft.name.as_str()).collect::<Vec<_>>(), ["desk"]);
        assert!(String::from_utf8(page).unwrap().contains("1 change not handed over yet"));
        assert_eq!(again.take("{\"id\":"), 1, "a line that is cut off is told");
    }

    /// The file goes to a desk; what comes back from there says that it arrived. Twice is once.
    #[test]
    fn what_is_handed_over_and_comes_back_waits_no_more() {
        let (mut machine, kept) = with_a_cloth();
        let waiting = format!(r#""waiting":{{"tests":0,"others":1,"test_ids":[],"other_ids":["{}"]}}"#, kept[0].id);
        let get = asked(&format!(r#"{{"post":false,"target":"/hand-over/tenter-log.txt",{waiting}}}"#));
        let (_, file) = machine.answer(&get, b"");
        assert_eq!(String::from_utf8(file.clone()).unwrap().lines().count(), 4, "the cloth, and whose tags are whose");
        let post = asked(&format!(r#"{{"post":true,"target":"/hand-over",{waiting}}}"#));
        for _ in 0..2 {
            let (answered, page) = machine.answer(&post, &file);
            assert_eq!((answered.status, &answered.handed), (200, &vec![kept[0].id.clone()]));
            assert!(answered.entries.is_empty());
            assert!(!String::from_utf8(page).unwrap().contains("class=\"waiting"));
        }
        let cut = &file[..file.len() - 2];
        let (answered, page) = machine.answer(&post, cut);
        assert_eq!((answered.status, answered.handed.len()), (422, 0));
        assert!(String::from_utf8(page).unwrap().contains("nothing was imported"));
        let mut other = Machine::default();
        let (answered, _) = other.answer(&post, &file);
        assert!(answered.foreign);
        assert_eq!(answered.entries.len(), 2);
    }
}
