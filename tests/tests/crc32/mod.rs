//! A second way to the checksum of records, for the tests.

/// CRC-32/ISO-HDLC, bit by bit: polynomial 04C11DB7 (EDB88320 reflected), start and final exclusive-or all ones.
/// Source: the catalogue of parametrised CRC algorithms (reveng.sourceforge.io/crc-catalogue).
pub fn crc32(bytes: &[u8]) -> u32 {
    let bit = |crc: u32, _| if crc & 1 == 1 { crc >> 1 ^ 0xEDB8_8320 } else { crc >> 1 };
    !bytes.iter().fold(u32::MAX, |crc, byte| (0..8).fold(crc ^ u32::from(*byte), bit))
}

/// `body` with its checksum, lowest byte first.
pub fn sealed(body: &[u8]) -> Vec<u8> {
    [body, &crc32(body).to_le_bytes()].concat()
}

#[test]
fn the_checksum_has_its_check_value() {
    // The catalogue's check value.
    assert_eq!(crc32(b"123456789"), 0xCBF4_3926);
}
