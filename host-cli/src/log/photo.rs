//! Photographs of cloths: the bytes of each are kept once, under what they hold; what is said about them names them.

use std::fmt;
use std::str::FromStr;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use serde::{Deserialize, Serialize};
use sha2::{Digest as _, Sha256};

use super::id::Id;

/// The most bytes of a photograph that is kept: as text it fits a line of an exported log.
pub const MAX_PHOTO_BYTES: usize = 400_000;

/// Text that names nothing, not as this program writes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
#[error("not as this program writes it")]
pub struct Foreign;

/// The name of a photograph: SHA-256 of its bytes (FIPS 180-4), 64 hexadecimal digits as text.
///
/// ```
/// use tenter::log::PhotoName;
///
/// let name = PhotoName::of(b"abc");
/// assert!(name.to_string().starts_with("ba7816bf8f01cfea"));
/// assert_eq!(name.to_string().parse(), Ok(name));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct PhotoName([u8; 32]);

impl PhotoName {
    /// The name of these bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }
}

impl fmt::Display for PhotoName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

impl FromStr for PhotoName {
    type Err = Foreign;

    fn from_str(text: &str) -> Result<Self, Foreign> {
        hex(text).map(Self).ok_or(Foreign)
    }
}

/// Bytes from pairs of hexadecimal digits, small letters only.
fn hex<const N: usize>(text: &str) -> Option<[u8; N]> {
    let digit = |byte: &u8| match byte {
        b'0'..=b'9' => Some(byte - b'0'),
        b'a'..=b'f' => Some(byte - b'a' + 10),
        _ => None,
    };
    let (pairs, rest) = text.as_bytes().as_chunks::<2>();
    if !rest.is_empty() || pairs.len() != N {
        return None;
    }
    let mut bytes = [0; N];
    for (byte, [high, low]) in bytes.iter_mut().zip(pairs) {
        *byte = digit(high)? << 4 | digit(low)?;
    }
    Some(bytes)
}

impl TryFrom<String> for PhotoName {
    type Error = Foreign;

    fn try_from(text: String) -> Result<Self, Foreign> {
        text.parse()
    }
}

impl From<PhotoName> for String {
    fn from(name: PhotoName) -> Self {
        name.to_string()
    }
}

/// A colour of the sRGB space (IEC 61966-2-1), `#rrggbb` as text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Colour(pub [u8; 3]);

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [red, green, blue] = self.0;
        write!(f, "#{red:02x}{green:02x}{blue:02x}")
    }
}

impl TryFrom<String> for Colour {
    type Error = Foreign;

    fn try_from(text: String) -> Result<Self, Foreign> {
        text.strip_prefix('#').and_then(hex).map(Self).ok_or(Foreign)
    }
}

impl From<Colour> for String {
    fn from(colour: Colour) -> Self {
        colour.to_string()
    }
}

/// A photograph: a JPEG that tells nothing but its picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Photo {
    name: PhotoName,
    jpeg: Vec<u8>,
}

impl Photo {
    /// Takes a whole JPEG of at most [`MAX_PHOTO_BYTES`] without a segment that could tell place, time or camera;
    /// none for anything else.
    #[must_use]
    pub fn new(jpeg: Vec<u8>) -> Option<Self> {
        let plain = jpeg.len() <= MAX_PHOTO_BYTES && jpeg.ends_with(&[0xff, 0xd9]) && tells_nothing_else(&jpeg);
        plain.then(|| Self { name: PhotoName::of(&jpeg), jpeg })
    }

    /// Its name.
    #[must_use]
    pub const fn name(&self) -> PhotoName {
        self.name
    }

    /// Its bytes.
    #[must_use]
    pub fn jpeg(&self) -> &[u8] {
        &self.jpeg
    }

    /// Its width and height in pixels, as its frame header tells them (ISO/IEC 10918-1, B.2.2); none where it has none.
    #[must_use]
    pub fn size(&self) -> Option<(u16, u16)> {
        let mut rest = self.jpeg.strip_prefix(&[0xff, 0xd8])?;
        loop {
            let [0xff, marker, high, low, ..] = *rest else { return None };
            // Not the tables of Huffman codes and of arithmetic conditioning, nor what is reserved.
            if matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc) {
                let [_, _, _, _, _, high, low, across_high, across_low, ..] = *rest else { return None };
                return Some((u16::from_be_bytes([across_high, across_low]), u16::from_be_bytes([high, low])));
            }
            rest = rest.get(2 + usize::from(u16::from_be_bytes([high, low]))..)?;
        }
    }

    /// Its bytes as base64 (RFC 4648, § 4).
    #[must_use]
    pub fn base64(&self) -> String {
        STANDARD.encode(&self.jpeg)
    }

    /// As an address that holds it (RFC 2397), for a page that asks nothing of the network.
    #[must_use]
    pub fn address(&self) -> String {
        format!("data:image/jpeg;base64,{}", self.base64())
    }

    /// From base64, as [`Photo::new`].
    #[must_use]
    pub fn from_base64(text: &str) -> Option<Self> {
        STANDARD.decode(text).ok().and_then(Self::new)
    }
}

/// Whether the segments before the picture are those that a decoder needs, and the one that marks the format (APP0):
/// ISO/IEC 10918-1, table B.1.
fn tells_nothing_else(jpeg: &[u8]) -> bool {
    let Some(mut rest) = jpeg.strip_prefix(&[0xff, 0xd8]) else { return false };
    loop {
        let [0xff, marker, high, low, ..] = *rest else { return false };
        match marker {
            // The picture itself begins.
            0xda => return true,
            // Frames, tables, the restart interval, and the mark of the format.
            0xc0..=0xcf | 0xdb | 0xdd | 0xe0 => {}
            _ => return false,
        }
        let Some(next) = rest.get(2 + usize::from(u16::from_be_bytes([high, low]))..) else { return false };
        rest = next;
    }
}

/// What is said about a photograph that is kept with a cloth.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct PhotoSaid {
    /// The photograph.
    pub photo: PhotoName,
    /// The same, small.
    pub thumbnail: PhotoName,
    /// Its width in pixels.
    pub width_px: u16,
    /// Its height in pixels.
    pub height_px: u16,
    /// The colour of its middle: that of the cloth, for a list.
    pub colour: Colour,
    /// What it shows.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

/// A photograph of a cloth as it stands now.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct ClothPhoto {
    /// Its identifier: that of the entry that added it.
    pub id: Id,
    /// What was said.
    #[serde(flatten)]
    pub said: PhotoSaid,
    /// Whether it was retired.
    #[serde(default)]
    pub dropped: bool,
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A JPEG as far as its segments go.
    fn jpeg(segments: &[(u8, &[u8])]) -> Vec<u8> {
        let mut bytes = vec![0xff, 0xd8];
        for (marker, held) in segments {
            bytes.extend([0xff, *marker]);
            bytes.extend(u16::try_from(held.len() + 2).unwrap().to_be_bytes());
            bytes.extend(*held);
        }
        bytes.extend([0xff, 0xd9]);
        bytes
    }

    #[test]
    fn names_and_colours_are_read_as_they_are_written() {
        // FIPS 180-4 examples, "abc".
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(PhotoName::of(b"abc").to_string(), abc);
        for text in ["", &abc[1..], &abc.to_uppercase(), &format!("{abc}0"), "ü"] {
            assert_eq!(text.parse::<PhotoName>(), Err(Foreign), "{text}");
        }
        assert_eq!(Colour::try_from("#0a1bff".to_owned()), Ok(Colour([0x0a, 0x1b, 0xff])));
        assert_eq!(Colour::try_from("0a1bff".to_owned()), Err(Foreign));
    }

    #[test]
    fn a_photograph_tells_nothing_but_its_picture() {
        let whole: &[(u8, &[u8])] = &[(0xe0, b"JFIF"), (0xdb, b"table"), (0xc0, b"frame"), (0xda, b"scan")];
        assert!(Photo::new(jpeg(whole)).is_some());
        for marker in [0xe1, 0xe2, 0xed, 0xef, 0xfe] {
            assert_eq!(Photo::new(jpeg(&[whole[0], (marker, b"place"), whole[1], whole[2], whole[3]])), None);
        }
        let cut = jpeg(whole);
        for end in 0..cut.len() {
            assert_eq!(Photo::new(cut[..end].to_vec()), None, "cut at {end}");
        }
        let mut long = jpeg(whole);
        long.resize(MAX_PHOTO_BYTES, 0);
        long.extend([0xff, 0xd9]);
        assert_eq!(Photo::new(long), None);
    }
}
