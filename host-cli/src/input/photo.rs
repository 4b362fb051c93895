//! A photograph as a camera gives it, made small enough to keep and to send, without what it tells besides.
//!
//! The picture is read, turned as the camera says, made smaller and written anew: nothing else of the file is left, no
//! place, time or camera. What is read is limited before it is decoded.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::imageops::FilterType;
use image::{DynamicImage, ImageDecoder as _, ImageError, ImageReader, Limits, RgbImage};

use super::PhotoFault;
use crate::log::{Colour, MAX_PHOTO_BYTES, Photo, PhotoSaid};

/// The largest file taken, in bytes.
pub const MAX_FILE_BYTES: u64 = 32 << 20;
/// The most pixels of a picture.
pub const MAX_PIXELS: u64 = 50_000_000;
/// The longest side of a picture that is taken, in pixels.
const MAX_SIDE: u32 = 20_000;
/// The most memory a decoder may take, in bytes: 50 million pixels of four bytes, and as much again to work in.
const MAX_MEMORY: u64 = 400 << 20;
/// The longest side that is kept, in pixels.
pub const KEPT_SIDE: u32 = 1200;
/// The longest side of the small one.
pub const THUMBNAIL_SIDE: u32 = 320;
/// The most bytes of the small one: a book of a hundred cloths is then no larger than 6 MB.
const MAX_THUMBNAIL_BYTES: usize = 40_000;
/// The shortest side of a picture on which a cloth can be seen.
const LEAST_SIDE: u32 = 16;

/// A photograph ready to be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PreparedPhoto {
    /// The photograph.
    pub photo: Photo,
    /// The same, small.
    pub thumbnail: Photo,
    /// Its width and height in pixels.
    pub size: (u16, u16),
    /// The colour of its middle.
    pub colour: Colour,
}

impl PreparedPhoto {
    /// What is said of it, with a note.
    #[must_use]
    pub fn said(&self, note: String) -> PhotoSaid {
        let (width_px, height_px) = self.size;
        let (photo, thumbnail) = (self.photo.name(), self.thumbnail.name());
        PhotoSaid { photo, thumbnail, width_px, height_px, colour: self.colour, note }
    }
}

/// Reads a photograph: JPEG, PNG or WebP.
///
/// # Errors
///
/// A file or picture beyond the limits, of another format, or damaged.
pub fn take(file: &[u8]) -> Result<PreparedPhoto, PhotoFault> {
    let whole = decoded(file)?;
    let kept = shrunk(&whole, KEPT_SIDE);
    let (photo, size) = written(&kept, &[82, 70, 55, 40], MAX_PHOTO_BYTES, 20)?;
    let small = shrunk(&kept, THUMBNAIL_SIDE);
    let (thumbnail, _) = written(&small, &[75, 55, 40], MAX_THUMBNAIL_BYTES, 20)?;
    Ok(PreparedPhoto { photo, thumbnail, size, colour: colour(&small) })
}

fn decoded(file: &[u8]) -> Result<RgbImage, PhotoFault> {
    if u64::try_from(file.len()).is_ok_and(|bytes| bytes > MAX_FILE_BYTES) {
        return Err(PhotoFault::FileTooLarge);
    }
    let mut limits = Limits::default();
    limits.max_image_width = Some(MAX_SIDE);
    limits.max_image_height = Some(MAX_SIDE);
    limits.max_alloc = Some(MAX_MEMORY);
    let mut reader = ImageReader::new(Cursor::new(file)).with_guessed_format().map_err(|_| PhotoFault::Damaged)?;
    reader.limits(limits.clone());
    let mut decoder = reader.into_decoder().map_err(fault)?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MAX_PIXELS {
        return Err(PhotoFault::TooManyPixels);
    }
    if width.min(height) < LEAST_SIDE {
        return Err(PhotoFault::TooFewPixels);
    }
    limits.reserve(decoder.total_bytes()).map_err(fault)?;
    decoder.set_limits(limits).map_err(fault)?;
    let orientation = decoder.orientation().map_err(fault)?;
    let mut whole = DynamicImage::from_decoder(decoder).map_err(fault)?;
    // Made smaller before it is turned: turning takes as much memory again.
    if whole.width().max(whole.height()) > 4 * KEPT_SIDE {
        whole = whole.thumbnail(2 * KEPT_SIDE, 2 * KEPT_SIDE);
    }
    whole.apply_orientation(orientation);
    Ok(on_white(&whole))
}

fn fault(error: ImageError) -> PhotoFault {
    match error {
        ImageError::Limits(_) => PhotoFault::TooManyPixels,
        ImageError::Unsupported(_) => PhotoFault::UnknownFormat,
        _ => PhotoFault::Damaged,
    }
}

/// A picture that is seen through lies on white.
fn on_white(whole: &DynamicImage) -> RgbImage {
    if !whole.color().has_alpha() {
        return whole.to_rgb8();
    }
    let mut rgb = RgbImage::new(whole.width(), whole.height());
    for (to, from) in rgb.pixels_mut().zip(whole.to_rgba8().pixels()) {
        let [red, green, blue, alpha] = from.0;
        let over = |one: u8| {
            let mixed = (u16::from(one) * u16::from(alpha) + 255 * (255 - u16::from(alpha)) + 127) / 255;
            u8::try_from(mixed).unwrap_or(u8::MAX)
        };
        to.0 = [over(red), over(green), over(blue)];
    }
    rgb
}

/// With its longest side at most so long; never larger than it was.
fn shrunk(whole: &RgbImage, side: u32) -> RgbImage {
    let (width, height) = whole.dimensions();
    let longest = width.max(height);
    if longest <= side {
        return whole.clone();
    }
    let scaled = |one: u32| {
        let rounded = (u64::from(one) * u64::from(side) + u64::from(longest) / 2) / u64::from(longest);
        u32::try_from(rounded).unwrap_or(side).max(1)
    };
    image::imageops::resize(whole, scaled(width), scaled(height), FilterType::CatmullRom)
}

/// As a JPEG that fits, of the first quality that does; else smaller by a quarter, at most so many times.
fn written(image: &RgbImage, qualities: &[u8], most: usize, turns: u8) -> Result<(Photo, (u16, u16)), PhotoFault> {
    let size = |side: u32| u16::try_from(side).map_err(|_| PhotoFault::Damaged);
    for quality in qualities {
        let mut jpeg = Vec::new();
        JpegEncoder::new_with_quality(&mut jpeg, *quality).encode_image(image).map_err(fault)?;
        if jpeg.len() <= most
            && let Some(photo) = Photo::new(jpeg)
        {
            return Ok((photo, (size(image.width())?, size(image.height())?)));
        }
    }
    let turns = turns.checked_sub(1).ok_or(PhotoFault::Damaged)?;
    written(&shrunk(image, image.width().max(image.height()) * 3 / 4), qualities, most, turns)
}

/// The mean colour of the middle half, of light and not of numbers.
fn colour(image: &RgbImage) -> Colour {
    let (width, height) = image.dimensions();
    let mut sum = [0.0_f64; 3];
    let mut count = 0.0;
    for (x, y, pixel) in image.enumerate_pixels() {
        let middle = |at: u32, side: u32| 4 * at >= side && 4 * at < 3 * side;
        if middle(x, width) && middle(y, height) {
            for (sum, value) in sum.iter_mut().zip(pixel.0) {
                *sum += light(value);
            }
            count += 1.0;
        }
    }
    Colour(sum.map(|sum| number(sum / f64::max(count, 1.0))))
}

/// The light of a value, 0 to 1 (IEC 61966-2-1, § 5.2).
fn light(value: u8) -> f64 {
    let value = f64::from(value) / 255.0;
    if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
}

/// The value of a light.
fn number(light: f64) -> u8 {
    let value = if light <= 0.003_130_8 { 12.92 * light } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 };
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Within 0 and 255.
    let whole = (value.clamp(0.0, 1.0) * 255.0).round() as u8;
    whole
}

#[cfg(test)]
mod tests {
    use image::{ExtendedColorType, ImageEncoder as _, ImageFormat, Rgb};
    use proptest::prelude::*;

    use super::*;

    fn png(image: &RgbImage) -> Vec<u8> {
        let mut bytes = Cursor::new(Vec::new());
        image.write_to(&mut bytes, ImageFormat::Png).unwrap();
        bytes.into_inner()
    }

    fn jpeg(image: &RgbImage) -> Vec<u8> {
        let mut bytes = Vec::new();
        JpegEncoder::new_with_quality(&mut bytes, 95).encode_image(image).unwrap();
        bytes
    }

    /// Red above, blue below.
    fn flag(width: u32, height: u32) -> RgbImage {
        RgbImage::from_fn(width, height, |_, y| if 2 * y < height { Rgb([220, 20, 30]) } else { Rgb([20, 30, 220]) })
    }

    /// An EXIF segment with an orientation and a place, after the JPEG's first marker (Exif 2.32, § 4.6).
    fn with_exif(jpeg: &[u8], orientation: u16) -> Vec<u8> {
        let mut tiff = b"MM\0\x2a\0\0\0\x08\0\x02".to_vec();
        tiff.extend([0x01, 0x12, 0, 3, 0, 0, 0, 1]);
        tiff.extend(orientation.to_be_bytes());
        tiff.extend([0, 0]);
        // The camera's owner, as text behind the directory.
        tiff.extend([0xa4, 0x30, 0, 2, 0, 0, 0, 12, 0, 0, 0, 38]);
        tiff.extend([0, 0, 0, 0]);
        tiff.extend(b"at Mill Lane");
        let exif = [b"Exif\0\0".as_slice(), &tiff].concat();
        let length = u16::try_from(exif.len() + 2).unwrap().to_be_bytes();
        [&jpeg[..2], &[0xff, 0xe1], &length, &exif, &jpeg[2..]].concat()
    }

    fn seen(photo: &Photo) -> RgbImage {
        image::load_from_memory(photo.jpeg()).unwrap().to_rgb8()
    }

    #[test]
    fn a_photograph_is_turned_made_smaller_and_tells_nothing_else() {
        // 6: the 0th row is the visual right-hand side (Exif 2.32, § 4.6.4): turned by 90° clockwise.
        let camera = with_exif(&jpeg(&flag(2400, 1600)), 6);
        assert!(camera.windows(9).any(|part| part == b"Mill Lane"));
        let taken = take(&camera).unwrap();
        assert_eq!(taken.size, (800, 1200));
        let kept = seen(&taken.photo);
        assert_eq!(kept.dimensions(), (800, 1200));
        let [left, right] = [kept.get_pixel(100, 600).0, kept.get_pixel(700, 600).0];
        assert!(left[2] > 200 && left[0] < 60 && right[0] > 200 && right[2] < 60, "{left:?} {right:?}");
        assert_eq!(seen(&taken.thumbnail).dimensions(), (213, 320));
        assert!(taken.thumbnail.jpeg().len() < 30_000);
        for photo in [&taken.photo, &taken.thumbnail] {
            assert!(!photo.jpeg().windows(9).any(|part| part == b"Mill Lane"));
            assert!(!photo.jpeg().windows(4).any(|part| part == b"Exif"));
        }
        assert_eq!(take(&camera), Ok(taken), "the same file is the same photograph");
    }

    #[test]
    fn every_format_is_taken_and_a_small_one_stays_as_large_as_it_is() {
        let (small, mut webp) = (flag(60, 40), Vec::new());
        image::codecs::webp::WebPEncoder::new_lossless(&mut webp)
            .write_image(&small, 60, 40, ExtendedColorType::Rgb8)
            .unwrap();
        for file in [png(&small), jpeg(&small), webp] {
            assert_eq!(take(&file).unwrap().size, (60, 40));
        }
    }

    /// Half the light of white is 188 of 255: IEC 61966-2-1 gives 1.055 · 0.5^(1/2.4) − 0.055 = 0.7354.
    #[test]
    fn a_check_of_black_and_white_is_the_grey_of_half_the_light() {
        let check = RgbImage::from_fn(64, 64, |x, y| if (x + y) % 2 == 0 { Rgb([255; 3]) } else { Rgb([0; 3]) });
        assert_eq!(colour(&check), Colour([188; 3]));
        assert_eq!(colour(&RgbImage::from_pixel(20, 20, Rgb([17, 99, 201]))), Colour([17, 99, 201]));
        // What lies round the cloth does not count.
        let framed = RgbImage::from_fn(80, 80, |x, y| {
            let inside = (20..60).contains(&x) && (20..60).contains(&y);
            if inside { Rgb([17, 99, 201]) } else { Rgb([255; 3]) }
        });
        assert_eq!(colour(&framed), Colour([17, 99, 201]));
    }

    /// Noise is the hardest to keep small.
    #[test]
    fn what_is_kept_is_never_larger_than_it_may_be() {
        let mut state = 7_u32;
        let noise = RgbImage::from_fn(900, 900, |_, _| {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            let [a, b, c, _] = state.to_be_bytes();
            Rgb([a, b, c])
        });
        let taken = take(&png(&noise)).unwrap();
        assert!(taken.photo.jpeg().len() <= MAX_PHOTO_BYTES, "{}", taken.photo.jpeg().len());
        assert!(taken.thumbnail.jpeg().len() <= MAX_THUMBNAIL_BYTES, "{}", taken.thumbnail.jpeg().len());
    }

    /// The head of a PNG that claims 60 000 pixels by 60 000, and of one that claims no more than a side may have.
    #[test]
    fn a_picture_beyond_the_limits_is_refused_before_it_is_decoded() {
        let mut head = png(&flag(16, 16));
        for side in [60_000_u32, 19_999] {
            head[16..20].copy_from_slice(&side.to_be_bytes());
            head[20..24].copy_from_slice(&side.to_be_bytes());
            let crc = crc::Crc::<u32>::new(&crc::CRC_32_ISO_HDLC).checksum(&head[12..29]);
            head[29..33].copy_from_slice(&crc.to_be_bytes());
            assert_eq!(take(&head), Err(PhotoFault::TooManyPixels));
        }
        let large = vec![0; usize::try_from(MAX_FILE_BYTES).unwrap() + 1];
        assert_eq!(take(&large), Err(PhotoFault::FileTooLarge));
        assert_eq!(take(&png(&flag(15, 200))), Err(PhotoFault::TooFewPixels));
        for text in [&b""[..], b"GIF89a", b"<svg/>", b"%PDF-1.7"] {
            assert_eq!(take(text), Err(PhotoFault::UnknownFormat), "{text:?}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 400, failure_persistence: None, ..ProptestConfig::default() })]

        /// A file that was cut, changed in places or lengthened is taken or refused, and what is taken is sound.
        #[test]
        fn a_hostile_file_never_harms(
            format in 0..3_usize,
            orientation in any::<u16>(),
            changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 0..12),
            end in any::<prop::sample::Index>(),
            cut in any::<bool>(),
            tail in prop::collection::vec(any::<u8>(), 0..8),
        ) {
            let image = flag(40, 24);
            let mut file = match format {
                0 => png(&image),
                1 => with_exif(&jpeg(&image), orientation),
                _ => {
                    let mut webp = Vec::new();
                    let encoder = image::codecs::webp::WebPEncoder::new_lossless(&mut webp);
                    encoder.write_image(&image, 40, 24, ExtendedColorType::Rgb8).unwrap();
                    webp
                }
            };
            for (at, byte) in changes {
                let at = at.index(file.len());
                file[at] = byte;
            }
            if cut {
                file.truncate(end.index(file.len()));
            }
            file.extend(tail);
            if let Ok(taken) = take(&file) {
                prop_assert!(Photo::new(taken.photo.jpeg().to_vec()).is_some());
                prop_assert!(u32::from(taken.size.0.max(taken.size.1)) <= KEPT_SIDE);
            }
        }

        #[test]
        fn any_bytes_are_taken_or_refused(head in 0..4_usize, bytes in prop::collection::vec(any::<u8>(), 0..400)) {
            let heads: [&[u8]; 4] = [b"", b"\xff\xd8\xff\xe0", b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR", b"RIFF\0\x01\0\0WEBPVP8L"];
            let _ = take(&[heads[head], &bytes].concat());
        }
    }
}
