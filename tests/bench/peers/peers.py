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
