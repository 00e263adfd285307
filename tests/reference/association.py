"""Rank correlations with ties by looking at every order, ranks and correlation by SciPy and NumPy."""
import itertools
import math

import numpy as np
from scipy import stats

ALIKE = 1e-9  # equal correlations differ by rounding only


def correlations(x, arrangements):
    """Of the ranks of x with those of each arrangement; 0 where one of them does not vary."""
    centred = stats.rankdata(x) - (len(x) + 1) / 2
    ranks = stats.rankdata(arrangements, axis=1) - (len(x) + 1) / 2
    size = np.sqrt((centred**2).sum() * (ranks**2).sum(axis=1))
    return np.divide(ranks @ centred, size, out=np.zeros(len(ranks)), where=size > 1e-9)


def shares(rho, seen):
    return (np.mean(rho >= seen - ALIKE), np.mean(rho <= seen + ALIKE), np.mean(abs(rho) >= abs(seen) - ALIKE))


def varies(*lists):
    return all(len(set(values)) > 1 for values in lists)


def smallest_reaching(rho, level):
    sizes = np.sort(abs(rho))
    for size in sizes[np.append(True, np.diff(sizes) > ALIKE)]:
        if np.mean(sizes >= size - ALIKE) <= level[0] * (1 + 1e-12):
            return size
    return math.nan


def spearman(x, y, level):
    """rho, its three p, the three smallest p that any order could give, the smallest |rho| that reaches the level."""
    if not varies(x, y):
        return [math.nan] * 8
    rho = correlations(x, np.array(list(itertools.permutations(y))))
    seen = stats.spearmanr(x, y).statistic
    least = (shares(rho, rho.max())[0], shares(rho, rho.min())[1], shares(rho, abs(rho).max())[2])
    return [seen, *shares(rho, seen), *least, smallest_reaching(rho, level)]


def kendall(x, y):
    """tau-b by SciPy, and its three p from every order."""
    if not varies(x, y):
        return [math.nan] * 4
    orders = np.array(list(itertools.permutations(y)))
    first, second = np.triu_indices(len(x), 1)
    signs = np.sign(np.array(x)[first] - np.array(x)[second])
    scores = np.sign(orders[:, first] - orders[:, second]) @ signs
    return [stats.kendalltau(x, y).statistic, *shares(scores, scores[0])]


def theil_sen(x, y):
    found = stats.theilslopes(y, x)
    return [found.slope, found.intercept]


def by_item(values, first, second, outcomes, signed, level):
    """The same where the values are given to the items in every order."""
    first, second = np.array(first, dtype=int), np.array(second, dtype=int)

    def differences(values):
        difference = values[..., first] - values[..., second]
        return np.round(difference if signed[0] else abs(difference), 9)

    seen_differences = differences(np.array(values))
    if not varies(outcomes, seen_differences):
        return [math.nan] * 8
    rho = correlations(outcomes, differences(np.array(list(itertools.permutations(values)))))
    seen = correlations(outcomes, seen_differences[None, :])[0]
    least = (shares(rho, rho.max())[0], shares(rho, rho.min())[1], shares(rho, abs(rho).max())[2])
    return [seen, *shares(rho, seen), *least, smallest_reaching(rho, level)]


def pairing_counts(x, y):
    """How many pairings give which sum of products of doubled ranks, by adding the pairs of x to sets of used y."""
    ranks = (2 * stats.rankdata(x)).astype(int), (2 * stats.rankdata(y)).astype(int)
    top = int((np.sort(ranks[0]) * np.sort(ranks[1])).sum())
    counts = {0: np.eye(1, top + 1)[0]}
    for rank in ranks[0]:
        after = {}
        for used, ways in counts.items():
            for i, other in enumerate(ranks[1]):
                if not used >> i & 1:
                    moved = after.setdefault(used | 1 << i, np.zeros(top + 1))
                    moved[rank * other:] += ways[:top + 1 - rank * other]
        counts = after
    return int((ranks[0] * ranks[1]).sum()), counts[(1 << len(x)) - 1]


def spearman_counted(x, y):
    """rho and its three p for ten to twelve pairs, from whole numbers of pairings."""
    seen, counts = pairing_counts(x, y)
    ways = counts.sum()
    # the mean of the sum over all pairings, times n, is the product of the sums of ranks
    far = abs(len(x) * np.arange(len(counts)) - int(len(x) * (len(x) + 1))**2)
    return [stats.spearmanr(x, y).statistic, counts[seen:].sum() / ways, counts[:seen + 1].sum() / ways,
            counts[far >= far[seen]].sum() / ways]
