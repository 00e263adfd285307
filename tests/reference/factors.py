"""Factors within blocks: every order of the values within each block, counted."""
import itertools

import numpy as np


def orders(values, blocks):
    """Of all values: every product of orders within blocks."""
    places = [[i for i, b in enumerate(blocks) if b == block] for block in sorted(set(blocks))]
    for choice in itertools.product(*(itertools.permutations(of_block) for of_block in places)):
        order = np.empty(len(values), dtype=int)
        for of_block, taken in zip(places, choice):
            order[of_block] = taken
        yield np.array(values)[order]


def contrast(values, levels, blocks, weights):
    """Estimate and three p."""
    levels, blocks = np.array(levels), np.array(blocks)

    def estimate(values):
        total = precision = 0
        for block in set(blocks):
            means, variance = [], 0
            for level, weight in enumerate(weights):
                here = values[(levels == level) & (blocks == block)]
                if weight != 0 and len(here) == 0:
                    break
                if weight != 0:
                    means.append(weight * here.mean())
                    variance += weight**2 / len(here)
            else:
                total += sum(means) / variance
                precision += 1 / variance
        return total / precision

    seen = estimate(np.array(values))
    null = np.array([estimate(one) for one in orders(values, blocks)])
    return [seen, np.mean(null >= seen - 1e-9), np.mean(null <= seen + 1e-9), np.mean(abs(null) >= abs(seen) - 1e-9)]


def factor(values, levels, blocks):
    """Statistic by its definition, with NumPy's pseudo-inverse, and p."""
    levels, blocks = np.array(levels, dtype=int), np.array(blocks)
    kinds = sorted(set(levels))
    is_level = np.array([[level == kind for kind in kinds] for level in levels], dtype=float)
    expected, covariance = np.zeros(len(kinds)), np.zeros((len(kinds), len(kinds)))
    given = np.array(values)
    for block in set(blocks):
        here = blocks == block
        n, counts = here.sum(), is_level[here].sum(axis=0)
        expected += counts * given[here].mean()
        if n > 1:
            covariance += given[here].var() / (n - 1) * (n * np.diag(counts) - np.outer(counts, counts))
    inverse = np.linalg.pinv(covariance, rcond=1e-10, hermitian=True)

    def statistic(values):
        apart = is_level.T @ values - expected
        return apart @ inverse @ apart

    seen = statistic(given)
    null = np.array([statistic(one) for one in orders(values, blocks)])
    return [seen, np.mean(null >= seen - 1e-8)]
