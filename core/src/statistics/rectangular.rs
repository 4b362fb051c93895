//! Sums of rectangular errors: exact chances without a root or an error function.

use heapless::Vec;

/// The most errors that [`chance_not_negative`] adds exactly.
pub const MOST: usize = 3;

/// The chance that `c` + Σ eᵢ ≥ 0, where each error eᵢ lies evenly within ± its half-width.
///
/// The volume of a box cut by a plane, by inclusion and exclusion over its corners. Half-widths under a
/// thousandth of the largest are left out. None for more than [`MOST`] errors, where the sum of powers would lose
/// its digits in `f32`, and for arguments that are no numbers.
///
/// ```
/// use tenter_core::rectangular::chance_not_negative;
///
/// // 105.5 mm on 100 mm, 1 mm scale, "at least 5 %": c = 0.5, half-widths 0.5 and 0.525.
/// assert!((chance_not_negative(0.5, &[0.5, 0.525]).unwrap() - 0.8687).abs() < 1e-4);
/// ```
#[must_use]
pub fn chance_not_negative(c: f32, half_widths: &[f32]) -> Option<f32> {
    let largest = half_widths.iter().fold(0f32, |most, h| most.max(h.abs()));
    if !c.is_finite() || !largest.is_finite() || half_widths.iter().any(|h| h.is_nan()) {
        return None;
    }
    if largest == 0.0 {
        return Some(match c {
            0.0 => 0.5,
            more if more > 0.0 => 1.0,
            _ => 0.0,
        });
    }
    let mut widths: Vec<f32, MOST> = Vec::new();
    for h in half_widths.iter().map(|h| h.abs() / largest).filter(|h| *h > 1e-3) {
        widths.push(h).ok()?;
    }
    let c = c / largest;
    if c == 0.0 {
        return Some(0.5);
    }
    let reach: f32 = widths.iter().sum();
    if c >= reach {
        return Some(1.0);
    }
    if c <= -reach {
        return Some(0.0);
    }
    if c > 0.0 {
        return Some(1.0 - corner_sum(-c, &widths));
    }
    Some(corner_sum(c, &widths))
}

/// Σ over the signs s of (Π sᵢ) (c + Σ sᵢ hᵢ)₊ᵏ / (k! Π 2hᵢ).
fn corner_sum(c: f32, widths: &[f32]) -> f32 {
    let mut total = 0.0;
    for corner in 0..1u32 << widths.len() {
        let (mut sign, mut reach) = (1.0, c);
        for (bit, h) in widths.iter().enumerate() {
            if corner >> bit & 1 == 0 {
                reach += h;
            } else {
                reach -= h;
                sign = -sign;
            }
        }
        if reach > 0.0 {
            total += sign * widths.iter().fold(1.0, |power, _| power * reach);
        }
    }
    let mut factorial = 1.0;
    let mut scale = 1.0;
    for (h, k) in widths.iter().zip([1.0f32, 2.0, 3.0]) {
        factorial *= k;
        scale *= 2.0 * h;
    }
    (total / (factorial * scale)).clamp(0.0, 1.0)
}
