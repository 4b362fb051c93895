//! The roles of one garment, judged together: a length of cloth is cut once.

use tenter_core::{Confidence, Length};

use super::cloth::{self, Need};
use super::judging::candidates;
use super::{Candidate, RoleFit, Stock};
use crate::finding::amounts::Amounts;
use crate::finding::kept::free;
use crate::finding::verdict::Verdict;
use crate::log::Role;

/// Judges every cloth for each of the roles, in their order: what a role before it takes of a cloth is not there for the
/// next. A role takes of the cloth that comes first for it.
#[must_use]
pub fn roles<'a>(
    roles: impl IntoIterator<Item = &'a Role>,
    stock: &'a Stock,
    confidence: Confidence,
) -> Vec<RoleFit<'a>> {
    let roles: Vec<&'a Role> = roles.into_iter().collect();
    let all = candidates(&roles, stock, confidence);
    let mut taken = Amounts::default();
    let judged = |(wanted, candidates): (&'a Role, Vec<Candidate<'a>>)| {
        let mut fit = RoleFit { role: wanted, candidates };
        for candidate in &mut fit.candidates {
            if let Some(had) = taken.taken_of(candidate.fabric) {
                let free = free(candidate.fabric, &candidate.kept);
                candidate.cloth = cloth::answer(&free, Need::of(wanted), had.needed, confidence);
            }
        }
        fit.candidates.sort_by_cached_key(Candidate::order);
        if let Some(best) = fit.best() {
            taken.take(wanted, best);
        }
        fit
    };
    let mut fits: Vec<RoleFit<'a>> = roles.iter().copied().zip(all).map(judged).collect();
    // Where there is too little of a cloth, the same is missing wherever that is said.
    for fit in &mut fits {
        let wanted = fit.role;
        if let Some(best) = fit.candidates.first_mut().filter(|best| best.cloth.is_short()) {
            best.cut_with(&taken, wanted, confidence);
        }
    }
    fits
}

/// Judges again how much there is of cloths that were chosen for roles: each is cut for all of them.
pub fn share<'a>(chosen: &mut [(&'a Role, Candidate<'a>)], confidence: Confidence) {
    let amounts = Amounts::of(chosen.iter().map(|(role, candidate)| (*role, candidate)));
    for (role, candidate) in chosen {
        candidate.cut_with(&amounts, role, confidence);
    }
}

impl Candidate<'_> {
    /// Takes into account what else is cut from it.
    fn cut_with(&mut self, amounts: &Amounts, role: &Role, confidence: Confidence) {
        let Some(needed) = self.cloth.needed() else { return };
        let in_all = amounts.length_of(self.fabric);
        let besides = Length::from_steps(in_all.steps().saturating_sub(needed.length.steps()).max(0));
        self.cloth = cloth::answer(&free(self.fabric, &self.kept), Need::of(role), besides, confidence);
    }
}

impl<'a> RoleFit<'a> {
    /// The cloth that comes first for the role, unless it gives too little or too much.
    #[must_use]
    pub fn best(&self) -> Option<&Candidate<'a>> {
        let refused = [Verdict::Short, Verdict::Over, Verdict::OtherKind];
        self.candidates.first().filter(|best| !refused.contains(&best.verdict()))
    }
}

/// What the roles take in all of the cloths that come first for them.
#[must_use]
pub fn amounts(roles: &[RoleFit<'_>]) -> Amounts {
    Amounts::of(roles.iter().filter_map(|fit| Some((fit.role, fit.best()?))))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::log::{ClothNeed, Fabric, Ids};

    fn stock(lengths: &[i16]) -> Stock {
        let mut ids = Ids::default();
        let cloth = |(tag, length): (u16, &i16)| Fabric {
            length: Some(Length::from_mm(*length)),
            width: Some(Length::from_mm(1400)),
            washed: true,
            ..Fabric::named(ids.next(), tag, "drill")
        };
        let mut stock = Stock::default();
        stock.fabrics = (1..).zip(lengths).map(cloth).collect();
        stock
    }

    fn wanted(lengths: &[i16]) -> Vec<Role> {
        let mut ids = Ids::default();
        let pattern = ids.next();
        let role = |length: &i16| Role {
            cloth: Some(ClothNeed { length: Length::from_mm(*length), width: Length::from_mm(1400), one_way: false }),
            ..Role::named(ids.next(), pattern, &format!("{length}"))
        };
        lengths.iter().map(role).collect()
    }

    fn missing(fit: &RoleFit<'_>) -> Option<Length> {
        fit.best().and_then(Candidate::missing)
    }

    /// 1.90 + 0.50 + 0.80 m from a cloth of 2.30 m: 0.90 m are missing, wherever it is said.
    #[test]
    fn three_roles_of_one_cloth_are_added_up() {
        let (stock, wanted) = (stock(&[2300]), wanted(&[1900, 500, 800]));
        let fits = roles(&wanted, &stock, Confidence::default());
        let short = Some(Length::from_mm(900));
        assert_eq!(fits.iter().map(missing).collect::<Vec<_>>(), [None, short, short]);
        let amounts = amounts(&fits);
        assert_eq!(
            amounts.short().map(|cloth| (cloth.needed, cloth.missing())).collect::<Vec<_>>(),
            [(Length::from_mm(3200), Length::from_mm(900))]
        );
        let mut chosen: Vec<_> =
            fits.into_iter().filter_map(|fit| Some((fit.role, fit.candidates.into_iter().next()?))).collect();
        share(&mut chosen, Confidence::default());
        assert!(chosen.iter().all(|(_, candidate)| candidate.missing() == short && !candidate.will_do()));
    }

    /// What the first role leaves is too short for the second, and another cloth is there.
    #[test]
    fn another_cloth_comes_first_where_one_is_used_up() {
        let (stock, wanted) = (stock(&[2300, 700]), wanted(&[1900, 500]));
        let fits = roles(&wanted, &stock, Confidence::default());
        assert_eq!(fits.iter().filter_map(|fit| Some(fit.best()?.fabric.tag)).collect::<Vec<_>>(), [1, 2]);
        assert_eq!(amounts(&fits).short().count(), 0);
    }
}
