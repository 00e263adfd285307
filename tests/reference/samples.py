"""Differences of means by SciPy's permutation test over every division; signed ranks and repeated measures by every order."""
import itertools
import math

import numpy as np
from scipy import stats


def difference(x, y, axis):
    return np.mean(x, axis=axis) - np.mean(y, axis=axis)


def permuted(x, y):
    return [stats.permutation_test((x, y), difference, vectorized=True, n_resamples=np.inf, alternative=way).pvalue
            for way in ("greater", "less")] + [two_sided(x, y)]


def two_sided(x, y):
    """SciPy's own two-sided p is twice the smaller tail; ours counts distances."""
    result = stats.permutation_test((x, y), difference, vectorized=True, n_resamples=np.inf)
    distances = abs(result.null_distribution)
    return np.mean(distances >= abs(result.statistic) - 1e-9)


def signed_rank(differences):
    """Zeros, sum of positive ranks, three p: every sign of the ranks of the others by size."""
    others = np.array([d for d in differences if d != 0])
    ranks = stats.rankdata(abs(others))
    signs = np.array(list(itertools.product((0, 1), repeat=len(others)))).reshape(2**len(others), len(others))
    sums, seen = signs @ ranks, ranks[others > 0].sum()
    centre = ranks.sum() / 2
    return [len(differences) - len(others), seen, np.mean(sums >= seen), np.mean(sums <= seen),
            np.mean(abs(sums - centre) >= abs(seen - centre))]


def every_order(rows):
    """All arrangements of ranks within rows: listeners, items, arrangements."""
    ranks = [np.array(list(itertools.permutations(stats.rankdata(row)))) for row in rows]
    for choice in itertools.product(*ranks):
        yield np.array(choice)


def repeated_ranks(values, shape):
    """Friedman's chi-square and p, Page's L and three p, by every order within every row."""
    rows = np.array(values).reshape([int(n) for n in shape])
    if all(len(set(row)) == 1 for row in rows):
        return [math.nan] * 6
    places = np.arange(1, rows.shape[1] + 1)
    of_seen = np.array([stats.rankdata(row) for row in rows])
    squares, trends = [], []
    for arrangement in every_order(rows):
        sums = arrangement.sum(axis=0)
        squares.append((sums**2).sum())
        trends.append(places @ sums)
    squares, trends = np.array(squares), np.array(trends)
    seen = of_seen.sum(axis=0)
    centre = rows.shape[0] * rows.shape[1] * (rows.shape[1] + 1)**2 / 4
    trend = places @ seen
    if rows.shape[1] > 2:
        chi_square = stats.friedmanchisquare(*rows.T).statistic
    else:
        spread = (of_seen**2).sum() - rows.shape[0] * 2 * 1.5**2
        chi_square = ((seen - rows.shape[0] * 1.5)**2).sum() / spread
    return [chi_square, np.mean(squares >= (seen**2).sum() - 1e-9), trend, np.mean(trends >= trend),
            np.mean(trends <= trend), np.mean(abs(trends - centre) >= abs(trend - centre))]


def rank_sum(x, y):
    """Pairs won, and three p: every division of the ranks."""
    ranks = stats.rankdata(list(x) + list(y))
    sums = np.array([sum(choice) for choice in itertools.combinations(ranks, len(x))])
    seen, centre = ranks[:len(x)].sum(), ranks.sum() * len(x) / (len(x) + len(y))
    return [seen - len(x) * (len(x) + 1) / 2, np.mean(sums >= seen), np.mean(sums <= seen),
            np.mean(abs(sums - centre) >= abs(seen - centre) - 1e-9)]
