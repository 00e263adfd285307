"""Stopping rules: every path of answers, one by one; normal boundaries by Simpson's rule over the score."""
import itertools
import math

import numpy as np
from scipy import optimize, stats

ALIKE = 1 + 1e-12  # a tail equal to a level counts


def paths(one, other, chance):
    """Running totals of all falls (a row each) and their probabilities."""
    falls = np.array(list(itertools.product((True, False), repeat=len(one))))
    totals = np.where(falls, one, other).cumsum(axis=1)
    return totals, np.where(falls, chance, 1 - np.array(chance)).prod(axis=1)


def ends(totals, support, give_up):
    """After which trial each path supports, and gives up (0: never)."""
    above = np.nan_to_num(np.array(support), nan=math.inf) <= totals
    below = np.nan_to_num(np.array(give_up), nan=-math.inf) >= totals
    stops = above | below
    first = np.where(stops.any(axis=1), stops.argmax(axis=1), totals.shape[1] - 1)
    rows = np.arange(len(totals))
    return np.where(above[rows, first], first + 1, 0), np.where(below[rows, first], first + 1, 0)


def operate(one, other, chance, support, give_up):
    totals, weights = paths(one, other, chance)
    supported, given_up = ends(totals, support, give_up)
    trials = range(1, len(one) + 1)
    supports = [weights[supported == n].sum() for n in trials]
    gives_up = [weights[given_up == n].sum() for n in trials]
    undecided = weights[(supported == 0) & (given_up == 0)].sum()
    stopped = np.add(supports, gives_up)
    stopped[-1] += undecided
    return [sum(supports), sum(gives_up), undecided, np.dot(trials, stopped), *supports, *gives_up]


def spending(one, other, chance, looks, spent):
    """At each look the smallest total of a path that keeps what is spent so far."""
    totals, weights = paths(one, other, chance)
    going, used, bounds = np.ones(len(totals), dtype=bool), 0.0, []
    for look, allowed in zip(looks, spent):
        reached = totals[:, int(look) - 1]
        bound = math.nan
        for total in sorted(set(reached[going & (weights > 0)]), reverse=True):
            if used + weights[going & (reached >= total)].sum() > allowed * ALIKE:
                break
            bound = total
        if not math.isnan(bound):
            used += weights[going & (reached >= bound)].sum()
            going &= reached < bound
        bounds.append(bound)
    return bounds


def stagewise(one, other, chance, support, observed):
    """Stopped in support before the end, or at the end with so large a total."""
    totals, weights = paths(one, other, chance)
    before = np.array([*support[:-1], math.nan])
    stopped, _ = ends(totals, before, np.full(len(one), math.nan))
    return [weights[(stopped > 0) | (totals[:, -1] >= observed[0])].sum()]


def crossing(rising, low, high):
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if rising(middle) > 0 else (middle, high)
    return (low + high) / 2


def stagewise_limits(support, observed, confidence):
    n = len(support)
    totals = paths([1] * n, [0] * n, [0.5] * n)[0]
    stopped, _ = ends(totals, np.array([*support[:-1], math.nan]), np.full(n, math.nan))

    def limit(least, probability):
        right = totals[(stopped > 0) | (totals[:, -1] >= least), -1]
        return crossing(lambda share: (share**right * (1 - share)**(n - right)).sum() - probability, 0.0, 1.0)

    lower = 0 if observed[0] == 0 else limit(observed[0], 1 - confidence[0])
    return [lower, 1 if observed[0] == n else limit(observed[0] + 1, confidence[0])]


def power(answers, support, share, probability):
    """Trials whose answers are all alike; without give-up, so that support grows with the share."""
    n = len(answers)
    totals = paths(answers, [0] * n, [0.5] * n)[0]
    falls = np.array(list(itertools.product((1, 0), repeat=n))).sum(axis=1)
    supported = falls[ends(totals, support, np.full(n, math.nan))[0] > 0]

    def at(share):
        return (share**supported * (1 - share)**(n - supported)).sum()

    caught = crossing(lambda s: at(s) - probability[0], 0.0, 1.0) if at(1.0) >= probability[0] else math.nan
    return [at(share[0]), caught]


def unadjusted(trials, level, chance):
    bounds = []
    for n in range(1, int(trials[0]) + 1):
        tails = stats.binom.sf(np.arange(n + 1) - 1, n, chance[0])
        reaching = np.flatnonzero(tails <= level[0] * ALIKE)
        bounds.append(reaching[0] if len(reaching) else math.nan)
    return bounds


def level_spent(kind, level, fraction):
    if fraction[0] == 0:
        return [0]
    if kind[0] == 0:
        return [2 * stats.norm.sf(stats.norm.isf(level[0] / 2) / math.sqrt(fraction[0]))]
    return [level[0] * math.log1p((math.e - 1) * fraction[0])]


def sprt(chance, alternative, alpha, beta, trials):
    """Bounds, lines, the bounds in whole numbers after each trial."""
    (p0,), (p1,), (a,), (b,) = chance, alternative, alpha, beta
    upper, lower = math.log((1 - b) / a), math.log(b / (1 - a))
    right, wrong = math.log(p1 / p0), math.log((1 - p1) / (1 - p0))
    lines = [upper, lower, -wrong / (right - wrong), upper / (right - wrong), lower / (right - wrong)]
    whole = []
    for n in range(1, int(trials[0]) + 1):
        ratios = [k * right + (n - k) * wrong for k in range(-1, 2 * n + 60)]
        allowance = 1e-12 * n * (right - wrong)
        give_up = [k - 1 for k, ratio in enumerate(ratios) if ratio <= lower + allowance]
        support = next(k - 1 for k, ratio in enumerate(ratios) if ratio >= upper - allowance)
        whole += [support, give_up[-1] if give_up and give_up[-1] >= 0 else math.nan]
    return lines + whole


def wald(chance, alternative, alpha, beta, share):
    """Wald's approximations of the operating characteristic and of the mean number of trials."""
    (p0,), (p1,), (a,), (b,), (p,) = chance, alternative, alpha, beta, share
    upper, lower = math.log((1 - b) / a), math.log(b / (1 - a))
    right, wrong = math.log(p1 / p0), math.log((1 - p1) / (1 - p0))
    drift = p * right + (1 - p) * wrong

    def excess(h):
        return p * math.exp(h * right) + (1 - p) * math.exp(h * wrong) - 1

    if p in (0, 1):
        give_up = 1 - p
    else:
        far = math.copysign(1, -drift)  # the other root lies where the function rises again
        near = far
        while excess(far) < 0:
            far *= 2
        while excess(near) > 0:
            near /= 2
        h = optimize.brentq(excess, near, far, xtol=1e-15, rtol=1e-15)
        # (A^h - 1)/(A^h - B^h), without overflow
        if h > 0:
            give_up = math.expm1(-h * upper) / math.expm1(h * (lower - upper))
        else:
            give_up = math.expm1(h * upper) * math.exp(-h * lower) / math.expm1(h * (upper - lower))
    return [give_up, (give_up * lower + (1 - give_up) * upper) / drift]


STEPS = 3000


def simpson(low, high):
    nodes = np.linspace(low, high, STEPS + 1)
    weights = np.full(STEPS + 1, 2.0)
    weights[1::2] = 4
    weights[[0, -1]] = 1
    return nodes, weights * (high - low) / STEPS / 3


class Score:
    """The score S = Z sqrt(t) of those who went on: nodes with weights, as a density from look to look."""

    def __init__(self, two_sided):
        self.two_sided, self.time = two_sided, 0.0
        self.nodes, self.weights = np.zeros(1), np.ones(1)

    def leaving(self, boundary, time):
        spread, edge = math.sqrt(time - self.time), boundary * math.sqrt(time)
        out = stats.norm.sf((edge - self.nodes) / spread)
        if self.two_sided:
            out = out + stats.norm.cdf((-edge - self.nodes) / spread)
        return (self.weights * out).sum()

    def go_on(self, boundary, time):
        spread, far = math.sqrt(time - self.time), 9 * math.sqrt(time)
        edge = min(boundary * math.sqrt(time), far)
        nodes, weights = simpson(-edge if self.two_sided else -far, edge)
        jumps = (nodes[:, None] - self.nodes) / spread
        density = np.exp(-jumps**2 / 2) @ self.weights / (spread * math.sqrt(2 * math.pi))
        self.nodes, self.weights, self.time = nodes, weights * density, time


def exits(boundary, information, two_sided):
    score, found = Score(two_sided[0]), []
    for edge, time in zip(boundary, np.array(information) / information[-1]):
        found.append(score.leaving(edge, time))
        if time < 1:
            score.go_on(edge, time)
    return found


def constants(looks, level, two_sided):
    """Pocock's and O'Brien and Fleming's."""
    times = np.arange(1, looks[0] + 1) / looks[0]

    def constant(shape):
        return optimize.brentq(lambda c: sum(exits(c * shape, times, two_sided)) - level[0], 0.01, 12, xtol=1e-10)

    return [constant(np.ones(len(times))), constant(1 / np.sqrt(times))]


def spending_boundary(kind, level, fractions, two_sided):
    score, used, found = Score(two_sided[0]), 0.0, []
    least = 0 if two_sided[0] else -8
    for time in fractions:
        spent = level_spent(kind, level, [time])[0]
        edge = optimize.brentq(lambda c: score.leaving(c, time) - (spent - used), least, 30, xtol=1e-13)
        found.append(edge)
        used = spent
        if time < fractions[-1]:
            score.go_on(edge, time)
    return found


def score_rule(looks, boundary, chance):
    """The smallest count whose score is on the boundary or beyond, by trying all."""
    found = []
    for n, edge in zip(looks, boundary):
        spread = math.sqrt(n * chance[0] * (1 - chance[0]))
        reaching = [k for k in range(int(n) + 1) if k >= n * chance[0] + edge * spread - 1e-12 * n]
        found.append(min(reaching, default=math.nan))
    return found


def ratio_rule(trials, level, chance, alternative):
    """After each trial the smallest count whose likelihood ratio is 1/level or more; the ratio rises with the count."""
    bounds = []
    for n in range(1, int(trials[0]) + 1):
        counts = np.arange(n + 1)
        ratios = stats.binom.logpmf(counts, n, alternative[0]) - stats.binom.logpmf(counts, n, chance[0])
        bounds.append(min(counts[ratios >= -math.log(level[0]) * (1 - 1e-11)], default=math.nan))
    return bounds


def shared(one, other, support, looks, spent, level):
    """Fair coins: operation of a rule, the bounds that spend so much, the redraw's own test after every trial."""
    fair = [0.5] * len(one)
    totals, weights = paths(one, other, fair)
    own = []
    for n in range(len(one)):
        reaching = [t for t in set(totals[:, n]) if weights[totals[:, n] >= t].sum() <= level[0] * ALIKE]
        own.append(min(reaching, default=math.nan))
    supported = operate(one, other, fair, support, [math.nan] * len(one))[0]
    return [supported, *spending(one, other, fair, looks, spent), *own]
