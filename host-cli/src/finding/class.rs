//! What several people's pulls of one cloth say of the people: how well each repeats, and how far they lie apart.

use std::collections::BTreeMap;

use tenter_core::persons::{Compared, MAX_PERSONS, PersonReadings};
use tenter_core::{Grain, PullTest, student};

use crate::log::{Fabric, Id, People, StoredTest, Tag};

/// The share of each end that an interval leaves out: 95 % lie within.
const TAIL: f32 = 0.025;

/// One person's pulls of the cloth.
#[derive(Clone, Debug, PartialEq)]
pub struct Hand {
    /// What the person is called; none where the name is gone, or nobody said.
    pub name: Option<String>,
    /// Whether somebody said who pulled.
    pub is_said: bool,
    /// The stretch of each pull that counts, in percent, in the order in which they were made.
    pub pulls: Vec<f32>,
    /// Their mean.
    pub mean: f32,
    /// Half the width of the interval in which the mean lies 95 times of 100, by the repeatability of all.
    pub half: f32,
}

/// A cloth that several people pulled.
#[derive(Clone, Debug, PartialEq)]
pub struct ClassPulls {
    /// The cloth.
    pub fabric: Fabric,
    /// The grain.
    pub grain: Grain,
    /// The people, the least stretch first.
    pub hands: Vec<Hand>,
    /// What they say together.
    pub compared: Compared,
    /// Half the width of the interval in which the mean of all lies 95 times of 100.
    pub half: f32,
}

impl ClassPulls {
    /// Of the tests of a cloth along a grain, or along the one that most people pulled; none where fewer than two people
    /// pulled it, or nobody twice.
    #[must_use]
    pub fn of(fabric: &Fabric, tests: &[StoredTest], people: &People, grain: Option<Grain>) -> Option<Self> {
        let by_grain = |grain: Grain| {
            let mut hands: BTreeMap<Option<Id>, Vec<f32>> = BTreeMap::new();
            for stored in tests.iter().filter(|stored| !stored.dropped && stored.said.test.grain() == grain) {
                hands.entry(stored.said.pulled_by).or_default().extend(stretches(&stored.said.test));
            }
            hands.retain(|_, pulls| !pulls.is_empty());
            (grain, hands)
        };
        let wanted = Grain::ALL.into_iter().filter(|one| grain.is_none_or(|grain| grain == *one)).map(by_grain);
        // Crosswise of two that as many people pulled: the first of the largest.
        let (grain, hands) = wanted.rev().max_by_key(|(_, hands)| hands.len())?;
        let persons: Vec<(Option<Id>, Vec<f32>, PersonReadings)> = hands
            .into_iter()
            .take(MAX_PERSONS)
            .filter_map(|(person, pulls)| PersonReadings::of(&pulls).map(|said| (person, pulls, said)))
            .collect();
        let compared = Compared::of(&persons.iter().map(|(.., said)| *said).collect::<Vec<_>>())?;
        let half = |variance: f32, dof: u32| student::quantile(TAIL, degrees(dof)) * variance.max(0.0).sqrt();
        let hand = |(person, pulls, said): (Option<Id>, Vec<f32>, PersonReadings)| Hand {
            name: people.name(person).map(str::to_owned),
            is_said: person.is_some(),
            pulls,
            mean: said.mean,
            half: half(compared.within / degrees(said.count), compared.within_dof),
        };
        let mut hands: Vec<Hand> = persons.into_iter().map(hand).collect();
        hands.sort_by(|one, other| one.mean.total_cmp(&other.mean));
        let all = half(compared.mean_u * compared.mean_u, compared.persons.saturating_sub(1));
        Some(Self { fabric: fabric.clone(), grain, hands, compared, half: all })
    }

    /// The same with a letter for each person, in place of the name.
    #[must_use]
    pub fn without_names(mut self) -> Self {
        for (place, hand) in self.hands.iter_mut().enumerate() {
            hand.name = Some(Tag::shared(0, place).letter().to_uppercase());
        }
        self
    }

    /// The least and the most of what is drawn, in percent; the ± of the mean of all may run off either end.
    #[must_use]
    pub fn ends(&self) -> (f32, f32) {
        let all = self
            .hands
            .iter()
            .flat_map(|hand| hand.pulls.iter().copied().chain([hand.mean - hand.half, hand.mean + hand.half]));
        let (low, high) = all.fold((f32::INFINITY, f32::NEG_INFINITY), |(low, high), at| (low.min(at), high.max(at)));
        // Of two people the mean of all is worth little; a bar that long would flatten everything else.
        let beyond = (high - low) / 2.0;
        let (from, to) = (self.compared.mean - self.half, self.compared.mean + self.half);
        (low.min(from.max(low - beyond)), high.max(to.min(high + beyond)))
    }
}

#[allow(clippy::cast_precision_loss)] // A count of pulls.
const fn degrees(count: u32) -> f32 {
    count as f32
}

/// The stretch of each pull that counts, in percent of the marks.
fn stretches(test: &PullTest) -> impl Iterator<Item = f32> + '_ {
    let gauge = test.gauge().mm();
    let first = test.settling_pull().map_or(0, |settling| settling + 1);
    test.pulls().iter().skip(first).map(move |pull| 100.0 * (pull.mm() - gauge) / gauge)
}

#[cfg(test)]
#[cfg(feature = "desk")]
mod tests {
    use tenter_core::Length;

    use super::*;
    use crate::log::{Ids, Marks, Tested};

    fn pulled(ids: &mut Ids, by: Option<Id>, beyond: &[i16]) -> StoredTest {
        let mut test = PullTest::new(Length::from_mm(100), Grain::Crosswise).unwrap().with_settling_pull(true);
        for mm in beyond {
            test.add_pull(Length::from_mm(100 + mm)).unwrap();
        }
        let (fabric, tag, device, note, as_read) = (None, None, None, String::new(), Vec::new());
        let pulled = "2026-03-01T12:00:00Z".parse().unwrap();
        let said = Tested {
            fabric,
            tag,
            pulled,
            clock_unset: false,
            device,
            pulled_by: by,
            marks: Marks::default(),
            note,
            as_read,
            test,
        };
        StoredTest { id: ids.next(), said, dropped: false }
    }

    /// By hand: means 10 and 20, variances 1 and 1 over 4 degrees of freedom, s_r = 1; t(0.025, 4) = 2.776 (tables); the
    /// half width of a mean of three is 2.776 / √3 = 1.603.
    #[test]
    fn two_hands_on_one_cloth() {
        let mut ids = Ids::default();
        let (anna, ben) = (ids.next(), ids.next());
        let fabric = Fabric::named(ids.next(), 5, "Practice sateen");
        let mut tests = vec![pulled(&mut ids, Some(anna), &[19, 20, 21]), pulled(&mut ids, Some(ben), &[9, 10, 11])];
        let people = People::default();
        let class = ClassPulls::of(&fabric, &tests, &people, None).unwrap();
        let seen: Vec<(f32, f32)> = class.hands.iter().map(|hand| (hand.mean, (hand.half * 1e3).round())).collect();
        assert_eq!(seen, [(10.0, 1603.0), (20.0, 1603.0)]);
        assert_eq!((class.grain, class.compared.mean), (Grain::Crosswise, 15.0));
        assert_eq!(class.clone().without_names().hands[1].name.as_deref(), Some("B"));
        assert_eq!(ClassPulls::of(&fabric, &tests, &people, Some(Grain::Bias)), None);
        tests[0].dropped = true;
        assert_eq!(ClassPulls::of(&fabric, &tests, &people, None), None, "one person is no class");
    }
}
