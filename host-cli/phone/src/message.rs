//! What goes to and fro over linear memory: a head in JSON behind its length in four bytes, the lowest first, and
//! then bytes as they are.

use serde::{Deserialize, Serialize};

/// What is asked. The body follows.
#[derive(Debug, Deserialize)]
pub struct Asked {
    /// Whether something is sent.
    pub post: bool,
    /// The address below the folder of the app: `/cloths?words=wool`.
    pub target: String,
    /// The head `Content-Type`; empty where there is none.
    #[serde(default)]
    pub content_type: String,
    /// The path of the app's folder, without the last slash: empty, or `/tenter`.
    #[serde(default)]
    pub base: String,
    /// What was not handed over yet.
    pub waiting: Waiting,
}

/// What was not handed over yet.
#[derive(Clone, Debug, Default, Deserialize)]
pub struct Waiting {
    /// How many tests.
    pub tests: u64,
    /// How many other entries.
    pub others: u64,
    /// The identifiers of the tests, where the address is one of those that hand over.
    #[serde(default)]
    pub test_ids: Vec<String>,
    /// The identifiers of the others, where the address is one of those that hand over.
    #[serde(default)]
    pub other_ids: Vec<String>,
}

impl Waiting {
    /// What waits still after what arrived.
    #[must_use]
    pub fn less(&self, arrived: &[String]) -> Self {
        let less = |ids: &[String]| ids.iter().filter(|id| !arrived.contains(id)).cloned().collect();
        let (test_ids, other_ids): (Vec<String>, Vec<String>) = (less(&self.test_ids), less(&self.other_ids));
        Self { tests: test_ids.len() as u64, others: other_ids.len() as u64, test_ids, other_ids }
    }

    /// All identifiers.
    pub fn ids(&self) -> impl Iterator<Item = &String> {
        self.test_ids.iter().chain(&self.other_ids)
    }
}

/// What is answered. The body follows.
#[derive(Debug, Default, Serialize)]
pub struct Answered {
    /// The status after RFC 9110.
    pub status: u16,
    /// The heads.
    pub headers: Vec<(String, String)>,
    /// Entries to be kept.
    pub entries: Vec<EntryToKeep>,
    /// Photographs to be kept.
    pub photos: Vec<PhotoToKeep>,
    /// Drafts to be kept or forgotten.
    pub drafts: Vec<DraftToKeep>,
    /// Whether the entries came from elsewhere, and so need not be handed over.
    pub foreign: bool,
    /// Identifiers of entries that are known to have arrived elsewhere.
    pub handed: Vec<String>,
    /// Names of photographs to bring before the same is asked again.
    pub wanted: Vec<String>,
    /// Whether all photographs are to be brought.
    pub wanted_all: bool,
}

/// An entry to be kept.
#[derive(Debug, Serialize)]
pub struct EntryToKeep {
    /// Its identifier.
    pub id: String,
    /// Whether it stands for the one of this identifier that is kept already.
    pub replaces: bool,
    /// Its line.
    pub line: String,
    /// Whether it is a pull test.
    pub test: bool,
}

/// A photograph to be kept.
#[derive(Debug, Serialize)]
pub struct PhotoToKeep {
    /// Its name.
    pub name: String,
    /// Its line.
    pub line: String,
}

/// A draft to be kept, or without a text forgotten.
#[derive(Debug, Serialize, Deserialize)]
pub struct DraftToKeep {
    /// Its name.
    #[serde(rename = "draft")]
    pub name: String,
    /// Its text.
    pub text: Option<String>,
}

/// Takes a message apart; none where it is none.
#[must_use]
pub fn opened(message: &[u8]) -> Option<(Asked, &[u8])> {
    let (length, rest) = message.split_first_chunk::<4>()?;
    let length = usize::try_from(u32::from_le_bytes(*length)).ok()?;
    let (head, body) = rest.split_at_checked(length)?;
    Some((serde_json::from_slice(head).ok()?, body))
}

/// Puts a message together.
#[must_use]
pub fn sealed(head: &Answered, body: &[u8]) -> Vec<u8> {
    // Texts, numbers and lists of them are always JSON.
    let head = serde_json::to_vec(head).unwrap_or_default();
    let length = u32::try_from(head.len()).unwrap_or_default();
    [length.to_le_bytes().as_slice(), &head, body].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_message_is_taken_apart_and_a_broken_one_refused() {
        let head = br#"{"post":false,"target":"/","waiting":{"tests":1,"others":0}}"#;
        let message = [&[u8::try_from(head.len()).unwrap(), 0, 0, 0], head.as_slice(), b"body"].concat();
        let (asked, body) = opened(&message).unwrap();
        assert_eq!((asked.target.as_str(), asked.waiting.tests, body), ("/", 1, b"body".as_slice()));
        for cut in 0..4 + head.len() {
            assert!(opened(&message[..cut]).is_none(), "{cut}");
        }
        assert!(opened(&[255, 255, 255, 255, b'{']).is_none());
    }
}
