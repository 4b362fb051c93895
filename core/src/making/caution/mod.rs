//! Cautions, where they apply. Nothing here gives a pressure: for tight garments as for compression the answer is to ask a
//! doctor or a nurse. Local rules come first.

mod cord;

pub use cord::{Allowed, CORDS, Cord, CordPlace, Region};

use heapless::Vec;

use crate::answer::source::Source;

/// Something to be careful of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Caution {
    /// A hanging mass may fall: stand clear, soft landing, out of a child's reach, not on a held arm, at most
    /// [`MOST_GRAMS`].
    FallingMass,
    /// A strong strip or elastic that slips snaps back: keep the eyes away.
    SnapBack,
    /// A hand or home test meets none of a standard's clauses of load and climate: no conformity follows.
    NotTheStandard,
    /// Cords on a child's garment: see [`CORDS`].
    ChildCords,
    /// A child's sleepwear: flame-resistant, or tight to listed measures. Loose cotton is not fine.
    ChildSleepwear,
    /// A tight garment: it may hurt or mark the skin; no pressure can be told from stretch.
    Tight,
    /// Medical compression: some illnesses forbid it; ask a doctor or a nurse.
    Compression,
    /// Pins, blades and irons: guard shut, cut away from the body, no pins in the path or the mouth; heat harms elastane.
    PinsBladesIrons,
}

impl Caution {
    /// Where it comes from.
    #[must_use]
    pub const fn source(self) -> Source {
        match self {
            Self::FallingMass | Self::SnapBack => Source::CommonPractice,
            Self::NotTheStandard => {
                Source::Published("ASTM D2594 and D3107, scopes: even between laboratories agreement is poor")
            }
            Self::ChildCords => Source::Published("16 CFR 1120 with ASTM F1816; EN 14682"),
            Self::ChildSleepwear => Source::Published("16 CFR 1615 and 1616, US sizes 9 months to 14"),
            Self::Tight => Source::Published(
                "Journal of Home Economics of Japan 67(1), on waistband pressure: the usual formula does not predict it",
            ),
            Self::Compression => Source::Published("Rabe et al., Phlebology 35(7) (2020) 447-460"),
            Self::PinsBladesIrons => Source::CommonPractice,
        }
    }
}

/// The most to hang at home, in grams. From memory: nothing was found in print.
pub const MOST_GRAMS: u32 = 2_000;

/// What is being done, as far as a caution depends on it.
///
/// ```
/// use tenter_core::making::caution::Job;
///
/// assert!(!Job::default().for_child);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
#[allow(clippy::struct_excessive_bools)] // Each is a question of its own.
pub struct Job {
    /// For a child.
    pub for_child: bool,
    /// With a cord, a tie or a drawstring.
    pub has_cord: bool,
    /// To sleep in.
    pub sleepwear: bool,
    /// Meant to sit tight.
    pub tight: bool,
    /// Meant to press on the body for a medical reason.
    pub compression: bool,
    /// A mass is hung on the cloth.
    pub hangs_mass: bool,
}

/// The cautions that apply.
///
/// ```
/// use tenter_core::making::caution::{Caution, Job, cautions};
///
/// let skirt = Job { for_child: true, has_cord: true, ..Job::default() };
/// assert_eq!(cautions(skirt), [Caution::ChildCords]);
/// assert!(cautions(Job::default()).is_empty());
/// ```
#[must_use]
pub fn cautions(job: Job) -> Vec<Caution, 7> {
    let apply = [
        (job.hangs_mass, Caution::FallingMass),
        (job.hangs_mass, Caution::SnapBack),
        (job.hangs_mass, Caution::NotTheStandard),
        (job.for_child && job.has_cord, Caution::ChildCords),
        (job.for_child && job.sleepwear, Caution::ChildSleepwear),
        (job.tight || job.compression, Caution::Tight),
        (job.compression, Caution::Compression),
    ];
    let mut cautions = Vec::new();
    for (_, caution) in apply.into_iter().filter(|(applies, _)| *applies) {
        let _ = cautions.push(caution); // Room for all.
    }
    cautions
}
