//! What several persons' readings of one thing say of the persons: how much one repeats, and how much they differ.

use heapless::Vec;

use crate::number::num;

/// The most persons that are compared.
pub const MAX_PERSONS: usize = 64;

/// 1.96 √2, as the standard rounds it.
const LIMIT: f32 = 2.8;

/// The readings of one person: how many, their mean, and the variance between them.
///
/// ```
/// use tenter_core::persons::PersonReadings;
///
/// let readings = PersonReadings::of(&[10.0, 12.0]).unwrap();
/// assert_eq!((readings.count, readings.mean), (2, 11.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PersonReadings {
    /// How many readings; at least 1.
    pub count: u32,
    /// Their mean, in points.
    pub mean: f32,
    /// Their variance with n − 1 below the line, in points²; 0 for a single one.
    pub variance: f32,
}

impl PersonReadings {
    /// Of readings in points; `None` of none, or where one is no number.
    ///
    /// ```
    /// use tenter_core::persons::PersonReadings;
    ///
    /// let of = PersonReadings::of(&[9.0, 11.0, 10.0]).unwrap();
    /// assert_eq!((of.count, of.mean, of.variance), (3, 10.0, 1.0));
    /// ```
    #[must_use]
    pub fn of(readings: &[f32]) -> Option<Self> {
        if readings.is_empty() || readings.iter().any(|reading| !reading.is_finite()) {
            return None;
        }
        let count = num::count(readings.len());
        let mean = readings.iter().sum::<f32>() / num::float(count);
        let squares: f32 = readings.iter().map(|reading| (reading - mean) * (reading - mean)).sum();
        let variance = if count > 1 { squares / num::float(count - 1) } else { 0.0 };
        Some(Self { count: u32::try_from(count).ok()?, mean, variance })
    }
}

/// Persons compared: a balanced or unbalanced experiment with one factor.
///
/// The two variances are those of ISO 5725-2:2019 § 7.4.5 with persons in the place of laboratories: the repeatability
/// variance is the mean of the persons' own, weighted with n − 1; the variance between persons is what their means differ
/// by beyond that, 0 where they differ by less.
///
/// ```
/// use tenter_core::persons::{Compared, PersonReadings};
///
/// let of = |readings: &[f32]| PersonReadings::of(readings).unwrap();
/// let two = Compared::of(&[of(&[10.0, 12.0]), of(&[20.0, 22.0])]).unwrap();
/// assert_eq!((two.persons, two.mean), (2, 16.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Compared {
    /// How many persons.
    pub persons: u32,
    /// The mean of the persons' means, in points; each counts once, however often they pulled.
    pub mean: f32,
    /// The variance of one reading of one person, in points²: their repeatability.
    pub within: f32,
    /// Its degrees of freedom.
    pub within_dof: u32,
    /// The variance between persons, in points².
    pub between: f32,
    /// The standard uncertainty of [`Self::mean`], in points.
    pub mean_u: f32,
}

impl Compared {
    /// Of two persons or more, one of them at least with two readings; `None` of fewer, or of more than [`MAX_PERSONS`].
    ///
    /// ```
    /// use tenter_core::persons::{Compared, PersonReadings};
    ///
    /// let of = |readings: &[f32]| PersonReadings::of(readings).unwrap();
    /// let two = Compared::of(&[of(&[10.0, 12.0]), of(&[20.0, 22.0])]).unwrap();
    /// assert_eq!((two.within, two.between), (2.0, 49.0)); // The means are 10 apart: 50, less 2 / 2.
    /// ```
    #[must_use]
    pub fn of(persons: &[PersonReadings]) -> Option<Self> {
        let number = num::count(persons.len());
        if persons.len() < 2 || persons.len() > MAX_PERSONS || persons.iter().any(|person| person.count == 0) {
            return None;
        }
        let counts: Vec<f32, MAX_PERSONS> = persons.iter().map(|person| num::float(i64::from(person.count))).collect();
        let all: f32 = counts.iter().sum();
        let groups = num::float(number);
        let within_dof: u32 = persons.iter().map(|person| person.count - 1).sum();
        if within_dof == 0 {
            return None;
        }
        let own = |person: &PersonReadings| num::float(i64::from(person.count) - 1) * person.variance;
        let within = persons.iter().map(own).sum::<f32>() / num::float(i64::from(within_dof));
        let grand = persons.iter().zip(&counts).map(|(person, count)| count * person.mean).sum::<f32>() / all;
        let apart = |(person, count): (&PersonReadings, &f32)| count * (person.mean - grand) * (person.mean - grand);
        let means = persons.iter().zip(&counts).map(apart).sum::<f32>() / (groups - 1.0);
        let usual = (all - counts.iter().map(|count| count * count).sum::<f32>() / all) / (groups - 1.0);
        let between = ((means - within) / usual).max(0.0);
        let mean = persons.iter().map(|person| person.mean).sum::<f32>() / groups;
        let of_mean: f32 = counts.iter().map(|count| between + within / count).sum::<f32>() / (groups * groups);
        Some(Self {
            persons: u32::try_from(number).ok()?,
            mean,
            within,
            within_dof,
            between,
            mean_u: num::sqrt(of_mean),
        })
    }

    /// Two readings of one person differ by less 95 times of 100, in points: the repeatability limit, 2.8 standard
    /// deviations (ISO 5725-6:1994 § 4.1).
    #[must_use]
    pub fn repeatability_limit(&self) -> f32 {
        LIMIT * num::sqrt(self.within)
    }

    /// Readings of two persons, one each, differ by less 95 times of 100, in points: the reproducibility limit (ISO
    /// 5725-6:1994 § 4.1).
    ///
    /// ```
    /// use tenter_core::persons::{Compared, PersonReadings};
    ///
    /// let of = |readings: &[f32]| PersonReadings::of(readings).unwrap();
    /// let two = Compared::of(&[of(&[10.0, 12.0]), of(&[20.0, 22.0])]).unwrap();
    /// assert!((two.reproducibility_limit() - 2.8 * 51.0_f32.sqrt()).abs() < 1e-4);
    /// ```
    #[must_use]
    pub fn reproducibility_limit(&self) -> f32 {
        LIMIT * num::sqrt(self.within + self.between)
    }

    /// How much of a person's difference from the mean is their own and not chance, 0 to 1: what is believed of a person of
    /// few readings leans on all (the shrinkage of Henderson's best linear unbiased prediction).
    ///
    /// ```
    /// use tenter_core::persons::{Compared, PersonReadings};
    ///
    /// let of = |readings: &[f32]| PersonReadings::of(readings).unwrap();
    /// let two = Compared::of(&[of(&[10.0, 12.0]), of(&[20.0, 22.0])]).unwrap();
    /// assert_eq!(two.own_share(2), 0.98);
    /// ```
    #[must_use]
    pub fn own_share(&self, readings: u32) -> f32 {
        let of_mean = self.within / num::float(i64::from(readings.max(1)));
        if self.between + of_mean > 0.0 { self.between / (self.between + of_mean) } else { 0.0 }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_compared() {
        let one = PersonReadings::of(&[10.0, 11.0]).unwrap();
        let single = PersonReadings::of(&[10.0]).unwrap();
        assert_eq!(Compared::of(&[one]), None);
        assert_eq!(Compared::of(&[single, single]), None, "nobody repeated");
        assert_eq!(Compared::of(&[PersonReadings { count: 0, ..one }, one]), None);
        assert_eq!(Compared::of(&[one; MAX_PERSONS + 1]), None);
        assert_eq!((PersonReadings::of(&[]), PersonReadings::of(&[1.0, f32::NAN])), (None, None));
        let alike = Compared::of(&[one, one, single]).unwrap();
        assert_eq!((alike.between, alike.own_share(3)), (0.0, 0.0), "they agree better than their pulls let expect");
    }
}
