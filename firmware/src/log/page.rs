//! What a page says: whole numbers lowest byte first, unused bytes as erased, the CRC-32 of the first 60 bytes last.

use tenter_core::record::checksum;

use super::{PAGE_BYTES, StoragePage};

/// The bytes of a record that one page takes.
pub(super) const PAYLOAD_BYTES: usize = 53;

const CHECKED_BYTES: usize = PAGE_BYTES - 4;

pub(super) fn sealed(fields: &[&[u8]]) -> StoragePage {
    let mut page = [0xFF; PAGE_BYTES];
    for (place, byte) in page.iter_mut().take(CHECKED_BYTES).zip(fields.iter().copied().flatten()) {
        *place = *byte;
    }
    if let Some((body, sum)) = page.split_last_chunk_mut() {
        *sum = checksum(body).to_le_bytes();
    }
    page
}

pub(super) fn is_whole(page: &StoragePage) -> bool {
    page.split_last_chunk().is_some_and(|(body, sum)| u32::from_le_bytes(*sum) == checksum(body))
}

/// Whether nothing was ever written there, or the bus stays high.
pub(super) fn is_erased(page: &StoragePage) -> bool {
    page.iter().all(|byte| *byte == 0xFF)
}

/// A record, or a part of one that needs more than a page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Part<'p> {
    pub seq: u32,
    /// Which part, from 0.
    pub index: u8,
    /// Of how many.
    pub parts: u8,
    /// At most [`PAYLOAD_BYTES`].
    pub payload: &'p [u8],
}

impl<'p> Part<'p> {
    pub fn of(page: &'p StoragePage) -> Option<Self> {
        let [s0, s1, s2, s3, index, parts, len, payload @ .., _, _, _, _] = page;
        let (seq, index, parts) = (u32::from_le_bytes([*s0, *s1, *s2, *s3]), *index, *parts);
        let payload = payload.get(..usize::from(*len))?;
        (is_whole(page) && seq > 0 && index < parts).then_some(Self { seq, index, parts, payload })
    }

    pub fn page(&self) -> StoragePage {
        let len = u8::try_from(self.payload.len()).unwrap_or(u8::MAX);
        sealed(&[&self.seq.to_le_bytes(), &[self.index, self.parts, len], self.payload])
    }
}

/// What a handheld knows of itself and of its host.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct State {
    /// 0 while never named.
    pub device: u32,
    /// The host has every test up to this one.
    pub acknowledged: u32,
    /// How many demand slots are in use.
    pub demands: u8,
    /// The user's repeatability: a ratio in thousandths, and degrees of freedom, 0 while nobody said so. Programs
    /// that did not know of it left the page erased there, which is no possible repeatability; so the layout is still the first.
    pub repeatability: [u32; 2],
    /// How much the user's days differ, in the same way; likewise erased where a program did not know of it.
    pub sessions: [u32; 2],
    /// Whether the last pages are set apart from the ring, for settings, names and the test in hand: the second layout.
    pub apart: bool,
}

/// The first `N` numbers in `bytes`.
fn numbers<const N: usize>(bytes: &[u8]) -> [u32; N] {
    let mut numbers = [0; N];
    for (number, bytes) in numbers.iter_mut().zip(bytes.as_chunks().0) {
        *number = u32::from_le_bytes(*bytes);
    }
    numbers
}

impl State {
    /// The newest layout of the whole chip that this program knows. In the first one the ring goes to the end.
    pub const LAYOUT: u8 = 2;

    /// The layout, the age and the state, where the page is whole.
    pub fn of(page: &StoragePage) -> Option<(u8, u32, Self)> {
        let (layout, rest) = page.split_first()?;
        let [age, device, acknowledged] = numbers(rest);
        let (demands, rest) = rest.get(12..)?.split_first()?;
        let [ratio, dof, session_ratio, session_dof] = numbers(rest);
        let (repeatability, sessions) = ([ratio, dof], [session_ratio, session_dof]);
        is_whole(page).then_some((
            *layout,
            age,
            Self { device, acknowledged, demands: *demands, repeatability, sessions, apart: *layout >= Self::LAYOUT },
        ))
    }

    pub fn page(&self, age: u32) -> StoragePage {
        let Self { device, acknowledged, demands, repeatability, sessions, apart } = self;
        let words = [age, *device, *acknowledged].map(u32::to_le_bytes);
        let [repeatability, sessions] = [repeatability, sessions].map(|both| both.map(u32::to_le_bytes));
        sealed(&[
            &[if *apart { Self::LAYOUT } else { 1 }],
            words.as_flattened(),
            &[*demands],
            repeatability.as_flattened(),
            sessions.as_flattened(),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand from the layout; the checksum is that of `zlib.crc32` in Python.
    #[test]
    fn the_bytes_of_a_part() {
        let page = Part { seq: 0x0102_0304, index: 1, parts: 2, payload: b"cloth" }.page();
        let mut by_hand = [0xFF; PAGE_BYTES];
        by_hand[..12].copy_from_slice(b"\x04\x03\x02\x01\x01\x02\x05cloth");
        by_hand[60..].copy_from_slice(&0xDBCB_6616u32.to_le_bytes());
        assert_eq!(page, by_hand);
        assert_eq!(Part::of(&page), Some(Part { seq: 0x0102_0304, index: 1, parts: 2, payload: b"cloth" }));
    }

    #[test]
    fn the_bytes_of_the_state() {
        let (repeatability, sessions) = ([500, 22], [1400, 6]);
        let state = State { device: 0xA1B2_C3D4, acknowledged: 300, demands: 8, repeatability, sessions, apart: false };
        let page = state.page(5);
        let mut by_hand = [0xFF; PAGE_BYTES];
        by_hand[..22].copy_from_slice(b"\x01\x05\0\0\0\xD4\xC3\xB2\xA1\x2C\x01\0\0\x08\xF4\x01\0\0\x16\0\0\0");
        by_hand[22..30].copy_from_slice(b"\x78\x05\0\0\x06\0\0\0"); // 1400 = 5·256 + 120
        by_hand[60..].copy_from_slice(&0xC2B8_F1CFu32.to_le_bytes());
        assert_eq!(page, by_hand);
        assert_eq!(State::of(&page), Some((1, 5, state)));
        let apart = State { apart: true, ..state };
        assert_eq!(apart.page(5)[..30], [&[2], &by_hand[1..30]].concat());
        assert_eq!(State::of(&apart.page(5)), Some((2, 5, apart)));
    }

    /// As it was written before it held the days: they are erased.
    #[test]
    fn a_state_without_sessions() {
        let mut page = [0xFF; PAGE_BYTES];
        page[..22].copy_from_slice(b"\x01\x05\0\0\0\xD4\xC3\xB2\xA1\x2C\x01\0\0\x08\xF4\x01\0\0\x16\0\0\0");
        page[60..].copy_from_slice(&0x2701_8F55u32.to_le_bytes());
        let (_, _, state) = State::of(&page).unwrap();
        assert_eq!((state.repeatability, state.sessions), ([500, 22], [u32::MAX; 2]));
    }

    /// As it was written before it held a repeatability: what follows the demands is erased, and there is none.
    #[test]
    fn a_state_without_a_repeatability() {
        let mut page = [0xFF; PAGE_BYTES];
        page[..14].copy_from_slice(b"\x01\x05\0\0\0\xD4\xC3\xB2\xA1\x2C\x01\0\0\x08");
        page[60..].copy_from_slice(&0x3528_E8A4u32.to_le_bytes());
        let (layout, age, state) = State::of(&page).unwrap();
        assert_eq!((layout, age, state.device, state.acknowledged, state.demands), (1, 5, 0xA1B2_C3D4, 300, 8));
        let [ratio, dof] = state.repeatability;
        assert_eq!(tenter_core::Repeatability::from_thousandths(ratio, dof), None);
    }

    #[test]
    fn what_is_no_part() {
        let part = |seq, index, parts| Part::of(&Part { seq, index, parts, payload: &[] }.page()).is_some();
        assert!(part(1, 0, 1));
        assert!(!part(0, 0, 1), "numbers start at 1");
        assert!(!part(1, 1, 1), "the second of one");
        let long = sealed(&[&[1, 0, 0, 0, 0, 1, 54]]);
        assert_eq!(Part::of(&long), None, "longer than the page");
        assert_eq!(Part::of(&[0xFF; PAGE_BYTES]), None, "erased");
        assert_eq!(Part::of(&[0; PAGE_BYTES]), None, "zeros");
        assert_eq!(State::of(&[0xFF; PAGE_BYTES]), None);
        assert_eq!(State::of(&[0; PAGE_BYTES]), None);
    }
}
