//! Standard uncertainties and how they combine: JCGM 100:2008 (the GUM), JCGM 101:2008 (Monte Carlo), NIST technical
//! notes. Tables marked "worked out" were computed for this project but apart from `tenter-core`, from the formulas
//! beside them; those with four digits agree with the Python libraries `uncertainties`, `GTC` and `metrolopy`.

mod combination;
mod monte_carlo;
mod tables;
