"""The workloads in NumPy and SciPy. Prints "time WORKLOAD WAY SECONDS" and "value WORKLOAD WAY NAME NUMBER"."""
import concurrent.futures
import sys
import time

import numpy as np
from scipy import special, stats

folder, wanted = sys.argv[1], sys.argv[2:]


def timed(workload, way, work, values):
    if workload not in wanted:
        return
    work()
    start = time.perf_counter()
    found = work()
    print("time", workload, way, time.perf_counter() - start)
    for name, value in values(found).items():
        print("value", workload, way, name, repr(float(value)))


# W1: operating table of the exact one-sided test at 0.05 against 1/2.
trials = np.arange(1, 501)
shares = np.array([0.5, 0.6, 0.7, 0.8, 0.9])


def operating_table(tail):
    most_wrong_way = stats.binom.isf(0.05, trials, 0.5)
    return most_wrong_way + 1, tail(most_wrong_way[:, None], trials[:, None], shares)


def table_sums(table):
    sums = {"minimum": table[0].sum(), "size": table[1][:, 0].sum()}
    return sums | {f"power{i}": table[1][:, i].sum() for i in range(1, 5)}


timed("W1", "scipy.special", lambda: operating_table(special.bdtrc), table_sums)
timed("W1", "scipy.stats", lambda: operating_table(stats.binom.sf), table_sums)

# W2: 100,000 studies of 8 raters with 16 trials on each of 4 items; a rater's share right is Beta(11.4, 7.6).
studies, raters, each, items = 100_000, 8, 16, 4
random = np.random.Generator(np.random.SFC64(1))


def simulated_studies():
    share = random.beta(11.4, 7.6, (studies, raters))
    right = random.binomial(each, share[:, None, :], (studies, items, raters)).sum(2)
    p_of = stats.binom.sf(np.arange(raters * each + 1) - 1, raters * each, 0.5)
    p = np.sort(p_of[right], axis=1)
    supported = np.logical_and.accumulate(p <= 0.05 / np.arange(items, 0, -1), axis=1)
    return {"any": supported[:, 0].mean(), "all": supported[:, -1].mean(), "share": supported.mean()}


timed("W2", "numpy", simulated_studies, dict)

# W3: Spearman's rho of 32 pairs with ties, two-sided p by 1,000,000 permutations, on two threads.
pairs = np.loadtxt(f"{folder}/pairs.csv", delimiter=",", skiprows=1).T
centred = np.array([stats.rankdata(one) - (len(one) + 1) / 2 for one in pairs])


def reaching(seed, draws):
    generator, block, found = np.random.Generator(np.random.SFC64(seed)), 10_000, 0
    seen = abs(centred[0] @ centred[1])
    tiled = np.tile(centred[1].astype(np.float32), (block, 1))
    x = centred[0].astype(np.float32)
    for _ in range(draws // block):
        generator.permuted(tiled, axis=1, out=tiled)
        found += int((abs(tiled @ x) >= seen - 1e-3).sum())
    return found


def permuted_ranks():
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        found = sum(pool.map(reaching, (1, 2), (500_000, 500_000)))
    rho = centred[0] @ centred[1] / np.sqrt((centred[0] ** 2).sum() * (centred[1] ** 2).sum())
    return {"rho": rho, "p": (found + 1) / 1_000_001}


timed("W3", "numpy", permuted_ranks, dict)

# W4: Davidson's model of 32 items, 2,000 resamples within pairs refitted together by Newton's method.
preferences = np.loadtxt(f"{folder}/preferences.csv", delimiter=",", dtype=int, skiprows=1)
one, other, given = preferences[:, 0], preferences[:, 1], preferences[:, 2:]
answers = given.sum(1)
design = np.zeros((len(one), 32))
design[np.arange(len(one)), one] = 1
design[np.arange(len(one)), other] = -1
design = design[:, 1:]


def davidson(counts, start, steps):
    """Worths against item 0 and log nu, a row each, from counts of shape (resamples, pairs, 3)."""
    found = np.tile(start, (len(counts), 1))
    lead = (counts[:, :, 0] - counts[:, :, 2]) / 2 @ design
    ties = counts[:, :, 1].sum(1)
    items, places = np.arange(32), abs(np.column_stack([1.0 * (one == 0) - (other == 0), design]))
    for _ in range(steps):
        half = np.exp(found[:, :31] @ design.T / 2)
        nu = np.exp(found[:, 31:])
        total = half + 1 / half + nu
        mean, tie = (half - 1 / half) / (2 * total), nu / total
        spread = answers * ((half + 1 / half) / (4 * total) - mean**2)
        information = np.zeros((len(counts), 33, 33))
        information[:, one, other] = information[:, other, one] = -spread
        information[:, items, items] = spread @ places
        information = information[:, 1:, 1:]
        information[:, 31, :31] = information[:, :31, 31] = -(answers * mean * tie) @ design
        information[:, 31, 31] = (answers * tie * (1 - tie)).sum(1)
        slope = np.column_stack([lead - (answers * mean) @ design, ties - (answers * tie).sum(1)])
        found += np.linalg.solve(information, slope[:, :, None])[:, :, 0]
    return found


def refitted_worths():
    generator = np.random.Generator(np.random.SFC64(1))
    fit = davidson(given[None, :, :], np.zeros(32), 12)[0]
    resampled = generator.multinomial(answers, given / answers[:, None], (2_000, len(answers)))
    refits = np.concatenate([davidson(resampled[k:k + 250], fit, 4) for k in range(0, 2_000, 250)])
    lower, upper = np.sort(refits[:, 30])[[49, 1949]]
    return {"worth": fit[:31].sum(), "tie_weight": np.exp(fit[31]), "error": refits[:, :31].std(axis=0, ddof=1).mean(),
            "lower": lower, "upper": upper}


timed("W4", "numpy", refitted_worths, dict)

# W5: alpha and Fleiss' kappa of 10,000 resamples of the units, complete nominal ratings.
ratings = np.loadtxt(f"{folder}/ratings.csv", delimiter=",", dtype=int, skiprows=1)
units, answers = ratings.shape
categories = int(ratings.max()) + 1
counts = (ratings[:, :, None] == np.arange(categories)).sum(1)
records = np.c_[counts, (counts * (answers - counts)).sum(1)].astype(float)
draws = 10_000


def alpha_and_kappa(sums):
    n = units * answers
    squares = (sums[:, :categories] ** 2).sum(1)
    alpha = 1 - (sums[:, categories] / (answers - 1)) / ((n * n - squares) / (n - 1))
    chance = squares / n**2
    kappa = (1 - sums[:, categories] / (n * (answers - 1)) - chance) / (1 - chance)
    return alpha, kappa


def by_gather():
    return alpha_and_kappa(records[random.integers(0, units, (draws, units))].sum(1))


def by_weights():
    picks = random.integers(0, units, (draws, units)) + np.arange(draws)[:, None] * units
    weights = np.bincount(picks.ravel(), minlength=draws * units).reshape(draws, units).astype(float)
    return alpha_and_kappa(weights @ records)


def bootstrap_values(found):
    values = {}
    for name, whole, drawn in zip(("alpha", "kappa"), alpha_and_kappa(records.sum(0)[None]), found):
        values[name] = whole[0]
        values[name + "_lower"], values[name + "_upper"] = np.sort(drawn)[[249, 9749]]
    return values


timed("W5", "numpy gather", by_gather, bootstrap_values)
timed("W5", "numpy weights", by_weights, bootstrap_values)

# W6: levels in dB of 32 uniform lines on 10 rigs at 2,000 frequencies, [rig][cable][frequency].
if "W6" in wanted:
    cables = np.loadtxt(f"{folder}/cables.csv", delimiter=",", skiprows=1).T[:, :, None]
    rigs = np.loadtxt(f"{folder}/rigs.csv", delimiter=",", skiprows=1).T[:, :, None]
s = 2j * np.pi * np.geomspace(10, 100_000, 2_000)


def ends():
    source_ohm, source_henry, coil_ohm, coil_henry, *resonances = rigs
    load = coil_ohm + s * coil_henry
    for ohm, farad, henry in (resonances[:3], resonances[3:]):
        load = load + 1 / (1 / ohm + s * farad + 1 / (s * henry))
    return source_ohm + s * source_henry, 1 / load


def lines(cosh_and_sinh):
    ohm, henry, farad, siemens, length = cables
    z, y = (ohm + s * henry) * length, (siemens + s * farad) * length
    g = np.sqrt(z * y)
    cosh, sinh = cosh_and_sinh(g)
    return cosh, z * (sinh / g), y * (sinh / g)


def by_library(g):
    return np.cosh(g), np.sinh(g)


def by_one_exp(g):
    grown = np.exp(g)
    return (grown + 1 / grown) / 2, (grown - 1 / grown) / 2


def levels_at_once():
    source, load = (of_rig[:, None] for of_rig in ends())
    a, b, c = lines(by_library)
    loss = a + source * c + (b + source * a) * load
    return -10 * np.log10(loss.real**2 + loss.imag**2)


def levels_by_rig():
    """One rig at a time, in place: what is worked on stays in the cache. np.log is faster than np.log10."""
    found = np.empty((10, 32, 2_000))
    a, b, c = lines(by_one_exp)
    for rig, (source, load) in enumerate(zip(*ends())):
        loss = a * (1 + source * load)
        loss += b * load
        loss += c * source
        squared = loss.real**2
        squared += loss.imag**2
        np.multiply(np.log(squared, out=squared), -10 / np.log(10), out=found[rig])
    return found


def level_values(found):
    theirs = np.fromfile(f"{folder}/levels_db.bin").reshape(found.shape)
    return {"sum": found.sum(), "apart_by_more_than_1e-9_dB": (~(abs(found - theirs) <= 1e-9)).sum()}


timed("W6", "numpy at once", levels_at_once, level_values)
timed("W6", "numpy by rig", levels_by_rig, level_values)

# W8: hedged-capital confidence sequence of 10,000 observations, 1,000 candidates, running intersection.
seen = np.loadtxt(f"{folder}/observations.csv", skiprows=1)
candidates = (np.arange(1000) + 0.5) / 1000


def betting_sequence(block=250):
    t = np.arange(1, len(seen) + 1)
    mean = (0.5 + np.cumsum(seen)) / (t + 1)
    variance = (0.25 + np.cumsum((seen - mean) ** 2)) / (t + 1)
    bets = np.sqrt(2 * np.log(2 / 0.05) / (np.r_[0.25, variance[:-1]] * t * np.log1p(t)))
    above, below, alive = np.ones(1000), np.ones(1000), np.ones(1000, bool)
    lower, upper = np.empty(len(seen), int), np.empty(len(seen), int)
    for start in range(0, len(seen), block):
        stretch = slice(start, start + block)
        surplus, bet = seen[stretch, None] - candidates, bets[stretch, None]
        gain = np.cumprod(np.vstack([above, 1 + np.minimum(bet, 0.5 / candidates) * surplus]), 0)[1:]
        loss = np.cumprod(np.vstack([below, 1 - np.minimum(bet, 0.5 / (1 - candidates)) * surplus]), 0)[1:]
        inside = np.maximum(gain, loss) < 2 / 0.05
        inside[0] &= alive
        np.logical_and.accumulate(inside, 0, out=inside)
        alive, above, below = inside[-1], np.minimum(gain[-1], 1e100), np.minimum(loss[-1], 1e100)
        lower[stretch], upper[stretch] = inside.argmax(1), 999 - inside[:, ::-1].argmax(1)
    return lower, upper


def sequence_values(found):
    lower, upper = found
    values = {"width": (upper - lower).sum()}
    for t in (100, 1000, 10000):
        values[f"lower{t}"], values[f"upper{t}"] = lower[t - 1], upper[t - 1]
    return values


with np.errstate(over="ignore"):
    timed("W8", "numpy", betting_sequence, sequence_values)
