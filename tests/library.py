"""What the core computed, held against SciPy and statsmodels: tests/tests/outside/library.rs writes it as one JSON object on
standard input. Prints one line a subject; ends with 1 where anything lies farther off than stated beside it."""

import json
import math
import sys
import warnings
from pathlib import Path

import numpy as np
import pandas as pd
import scipy
import statsmodels
import statsmodels.formula.api as smf
from scipy import integrate, optimize, stats
from statsmodels.regression.mixed_linear_model import MixedLM
from statsmodels.stats.anova import anova_lm
from statsmodels.stats.meta_analysis import combine_effects

said = json.load(sys.stdin)
wrong = []


def compare(subject, pairs):
    """(what, the core's, the library's, how far they may lie apart)"""
    pairs = list(pairs)
    assert pairs, subject
    for what, ours, theirs, within in pairs:
        if not abs(ours - theirs) <= within:
            wrong.append(f"{subject}, {what}: {ours}, the library {theirs}, allowed {within:.2g}")
    farthest = max(abs(ours - theirs) / within for _, ours, theirs, within in pairs)
    print(f"{subject}: {len(pairs)} compared, the farthest at {100 * farthest:.0f} % of what is allowed")


print(f"SciPy {scipy.__version__}, statsmodels {statsmodels.__version__}")

compare(
    "Student's t, upper tails",
    (
        (f"t {t}, {dof} dof", tail, stats.t.sf(t, dof), (2e-6 if dof > 4 or dof <= 2 else 1.5e-5) + 2e-5 * stats.t.sf(t, dof))
        for t, dof, tail in said["tails"]
    ),
)
compare(
    "Student's t, quantiles",
    ((f"{tail}, {dof} dof", q, stats.t.isf(tail, dof), 1e-4 * stats.t.isf(tail, dof)) for tail, dof, q in said["quantiles"]),
)


def posterior_sd(sigma, count):
    """Of a length read `count` times as 0 on divisions of 1, each reading scattering by sigma: flat prior."""
    reach = 12 * sigma + 1
    def density(mu):
        return (stats.norm.cdf((0.5 - mu) / sigma) - stats.norm.cdf((-0.5 - mu) / sigma)) ** count
    def moment(power):
        return integrate.quad(lambda mu: mu**power * density(mu), -reach, reach, limit=400, points=[-0.5, 0.5])[0]
    return math.sqrt(moment(2) / moment(0))


# The rule is never wider than the likelihood allows, and narrower by little from half a division of scatter on.
compare(
    "interval-censored rounding",
    (
        (f"scatter {sigma}, {count} equal readings", u, sd := posterior_sd(sigma, count), (0.025 if sigma >= 0.5 else 0.081) * sd)
        for sigma, count, u in said["rounded"]
    ),
)

# A sum of t-distributions as one with the same variance and kurtosis.
def moments(parts):
    variances = [scale * stats.t.stats(dof, moments="v") for scale, dof in parts]
    excess = sum(v * v * stats.t.stats(dof, moments="k") for v, (_, dof) in zip(variances, parts)) / sum(variances) ** 2
    dof = optimize.brentq(lambda dof: stats.t.stats(dof, moments="k") - excess, 4.01, 1e6)
    return dof, sum(variances) / stats.t.stats(dof, moments="v")


compare(
    "sums of errors",
    (
        pair
        for parts, dof, scale in said["sums"]
        for theirs in [moments(parts)]
        for pair in [(f"{parts}, dof", dof, theirs[0], 1e-3 * theirs[0]), (f"{parts}, scale", scale, theirs[1], 1e-3 * theirs[1])]
    ),
)


def anova(groups):
    """Between and within by analysis of variance of groups of one size, as scipy.stats.f_oneway has them."""
    size = len(groups[0])
    within = np.mean([np.var(group, ddof=1) for group in groups])
    between = size * np.var([np.mean(group) for group in groups], ddof=1)
    assert math.isclose(stats.f_oneway(*groups).statistic, between / within, rel_tol=1e-6)
    return (between - within) / size


def reml(groups):
    values = np.concatenate(groups)
    middle, unit = values.mean(), values.std()
    labels = np.repeat(np.arange(len(groups)), [len(group) for group in groups])
    fitted = MixedLM((values - middle) / unit, np.ones_like(values), labels).fit(reml=True)
    assert fitted.converged
    return float(fitted.cov_re[0, 0]) * unit**2


compare(
    "variance between days, analysis of variance",
    ((name, ours, theirs, 1e-3 * abs(theirs) + 1e-6) for name, groups, ours in said["between"] for theirs in [anova(groups)]),
)
# In a balanced set REML says the same, where it is above nothing.
compare(
    "variance between days, REML by statsmodels",
    (
        (name, ours, theirs, 5e-3 * theirs)
        for name, groups, ours in said["between"]
        if anova(groups) > 0
        for theirs in [reml(groups)]
    ),
)

# NIST's own files in SciPy's wheel, so that the groups above are those that are certified.
folder = Path(stats.__file__).parent / "tests/data/nist_anova"
for name, groups, ours in said["between"]:
    if name.startswith("NIST "):
        data = np.loadtxt(folder / f"{name[5:]}.dat", skiprows=60)
        theirs = [data[data[:, 0] == label][:, 1] for label in np.unique(data[:, 0])]
        assert len(theirs) == len(groups) and all(np.allclose(a, b) for a, b in zip(theirs, groups)), name

pairs = []
for name, figures, dof, value, squared_scale in said["combined"]:
    values, variances, slopes, curves = np.array(figures).T
    at = lambda value: variances + (value - values) * (slopes + (value - values) * curves)
    middle = at(values.mean())
    result = combine_effects(values, middle)
    pairs.append((f"{name}, mean", value, result.mean_effect_fe, 2e-5 * abs(result.mean_effect_fe)))
    scale = (dof + result.q) / (dof + len(values) - 1)
    weights = 1 / middle / (1 / middle).sum()
    theirs = scale * (weights**2 * at(result.mean_effect_fe)).sum()
    assert math.isclose(1 / (1 / middle).sum(), result.sd_eff_w_fe**2, rel_tol=1e-9)
    pairs.append((f"{name}, squared scale", squared_scale, theirs, 1e-3 * theirs))
compare("several days together, Q and fixed effect by statsmodels", pairs)


def farthest(readings, variance, dof):
    """The chance of a reading so far from the mean of the others, and of the others' place among all."""
    readings = np.array(readings)
    best = None
    for index, reading in enumerate(readings):
        others = np.delete(readings, index)
        squares = ((others - others.mean()) ** 2).sum()
        own = len(others) - 1
        scale = math.sqrt((dof * variance + squares) / (dof + own) * (1 + 1 / len(others)))
        t = abs(reading - others.mean()) / scale
        if best is None or t > best[1]:
            # Of two either may be the one.
            places = len(readings) if own > 0 else 1
            best = (index, t, 2 * places * stats.t.sf(t, dof + own))
    return best


compare(
    "one reading far off",
    (
        pair
        for readings, variance, dof, index, tail in said["odd"]
        for theirs in [farthest(readings, variance, dof)]
        for pair in [("which", index, theirs[0], 0.5), (f"{readings}", tail, theirs[2], 1e-6 + 1e-3 * theirs[2])]
    ),
)


def robust(readings, scale, dof=4):
    """The middle 95 % of where the mean lies, by the likelihood of Student's t with a known scale."""
    readings = np.array(readings)
    grid = np.linspace(readings.min() - scale, readings.max() + scale, 200_001)
    density = np.exp(stats.t.logpdf((readings[:, None] - grid) / scale, dof).sum(axis=0))
    share = np.cumsum(density) / density.sum()
    return grid[np.searchsorted(share, [0.025, 0.975])]


def huber(readings, scale):
    readings = np.array(readings)
    return optimize.brentq(lambda m: np.clip((readings - m) / scale, -1.5, 1.5).sum(), readings.min(), readings.max())


# The core leaves a pull out that lies far off: what is left lies where two robust means have it.
pairs = []
for readings, scale, mean in said["robust"]:
    low, high = robust(readings, scale)
    pairs.append((f"{readings}, likelihood of t", mean, (low + high) / 2, (high - low) / 2))
    middle = huber(readings, scale)
    pairs.append((f"{readings}, Huber's M", mean, middle, 1.96 * scale / math.sqrt(len(readings))))
compare("means of pulls with one far off", pairs)

# Glucose of CLSI EP05-A3, runs within days: nested analysis of variance, and REML with both components.
readings, between, total, dof = said["glucose"]
table = pd.DataFrame(
    [(d, r, value) for d, day in enumerate(readings) for r, run in enumerate(day) for value in run], columns=["day", "run", "value"]
)
squares = anova_lm(smf.ols("value ~ C(day) + C(day):C(run)", table).fit())
mean_squares, dofs = squares["mean_sq"].to_numpy(), squares["df"].to_numpy()
parts = mean_squares * [1 / 4, 1 / 4, 1 / 2]
fitted = MixedLM.from_formula("value ~ 1", table, groups="day", re_formula="1", vc_formula={"run": "0 + C(run)"}).fit(reml=True)
assert fitted.converged
compare(
    "glucose, EP05",
    [
        ("between days, analysis of variance", between, (mean_squares[0] - mean_squares[1]) / 4, 0.01),
        ("between days, REML", between, float(fitted.cov_re.iloc[0, 0]), 0.02),
        ("total", total, parts.sum(), 1e-5 * total),
        ("its degrees of freedom", dof, parts.sum() ** 2 / (parts**2 / dofs).sum(), 1e-4 * dof),
    ],
)


def answered(looks):
    """The chance of some answer by each look at a sum of standard normal readings, at 95 %: by recursion over its density."""
    nodes, weights = np.polynomial.legendre.leggauss(120)
    bound = stats.norm.isf(0.05)
    density, at, share = None, None, []
    for look in range(1, looks + 1):
        reach = bound * math.sqrt(look)
        here = reach * nodes
        density = stats.norm.pdf(here) if at is None else stats.norm.pdf(here[:, None] - at) @ density
        at, density = here, density * weights * reach
        share.append(1 - density.sum())
    return share


theirs = answered(len(said["looks"]))
compare(
    "looking after every pull",
    ((f"{looks} looks", share, theirs[looks - 1], within) for looks, share, within in said["looks"]),
)

print("\n".join(wrong), file=sys.stderr, end="\n" if wrong else "")
sys.exit(bool(wrong))
