//! What pulled.

/// What pulled.
///
/// ```
/// assert_eq!(tenter_core::Load::default(), tenter_core::Load::Hand);
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "defmt", derive(defmt::Format))]
pub enum Load {
    /// A hand, to the first firm resistance.
    #[default]
    Hand,
    /// A stated force, in millinewtons: a force gauge, or the weight of a hung mass.
    Force {
        /// Thousandths of a newton.
        millinewtons: u32,
    },
}

impl Load {
    /// Whether the force is known, so that it is the same on another day.
    ///
    /// ```
    /// use tenter_core::Load;
    ///
    /// assert!(Load::Force { millinewtons: 5_000 }.is_known() && !Load::Hand.is_known());
    /// ```
    #[must_use]
    pub const fn is_known(self) -> bool {
        matches!(self, Self::Force { .. })
    }
}
