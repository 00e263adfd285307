"""Paired preferences by counting: every tournament by its scores, every table of agreements by fractions; and whether
worths have finite estimates, by linear programmes."""
import itertools
import math
from collections import Counter
from fractions import Fraction

import numpy as np
from scipy import optimize


def tournaments(items):
    """Whole numbers of tournaments by circular triads: items are added one by one to sorted scores."""
    states = Counter({(0,): 1})
    for held in range(1, items):
        after = Counter()
        for scores, ways in states.items():
            for winners in range(1 << held):
                own = held - bin(winners).count("1")
                after[tuple(sorted([s + (winners >> i & 1) for i, s in enumerate(scores)] + [own]))] += ways
        states = after
    counts = Counter()
    for scores, ways in states.items():
        counts[math.comb(items, 3) - sum(math.comb(s, 2) for s in scores)] += ways
    return counts


def triads(outcomes, items):
    """Circular triads of the preferences for the first of each pair, most, zeta, p."""
    n = int(items[0])
    won = dict(zip(itertools.combinations(range(n), 2), outcomes))
    beats = lambda i, j: won[i, j] == 1 if i < j else won[j, i] == 0
    seen = sum(beats(i, j) == beats(j, k) == beats(k, i) for i, j, k in itertools.combinations(range(n), 3))
    counts = tournaments(n)
    most = max(counts)
    p = Fraction(sum(ways for d, ways in counts.items() if d <= seen), sum(counts.values()))
    return [seen, most, float(1 - Fraction(seen, most)), float(p)]


def agreement(wins, shape):
    """Agreements of pairs of listeners, u, p: a polynomial over the pairs of items in whole numbers."""
    items, listeners = map(int, shape)
    agreements = lambda w: math.comb(int(w), 2) + math.comb(listeners - int(w), 2)
    seen = sum(map(agreements, wins))
    sums = {0: 1}
    for _ in wins:
        after = Counter()
        for total, ways in sums.items():
            for w in range(listeners + 1):
                after[total + agreements(w)] += ways * math.comb(listeners, w)
        sums = after
    all_pairs = math.comb(listeners, 2) * math.comb(items, 2)
    p = Fraction(sum(ways for total, ways in sums.items() if total >= seen), sum(sums.values()))
    return [seen, float(Fraction(2 * seen, all_pairs) - 1), float(p)]


def estimable(first, second, wins, ties, losses, shape):
    """0 where worths are finite, 1 where items were not compared with each other, 2 where something is infinite."""
    items, order = map(int, shape)
    compared = np.eye(items, dtype=int)
    rows, equal = [], []
    any_tie = any(ties)
    for i, j, w, t, l in zip(map(int, first), map(int, second), wins, ties, losses):
        if w + t + l:
            compared[i, j] = compared[j, i] = 1
        x = np.zeros(items + 2)
        x[i], x[j], x[items], two_ties = 1, -1, order, 2 * np.eye(items + 2)[items + 1]
        rows += [x - two_ties, x + two_ties] * bool(w) + [-x - two_ties, two_ties - x] * bool(l) + [two_ties - x, two_ties + x] * bool(t)
    if (np.linalg.matrix_power(compared, items) == 0).any():
        return [1]
    rows = np.array(rows)
    fixed = np.zeros((3, items + 2))
    fixed[0, 0] = 1                        # the reference
    fixed[1, items] = 1 - order            # no order effect
    fixed[2, items + 1] = 1 - any_tie      # no ties
    free = [k for k in range(items + 2) if not fixed[:, k].any()]
    rows = rows[:, free]
    if np.linalg.matrix_rank(rows) < len(free):
        return [2]
    found = optimize.linprog(-rows.sum(axis=0), A_ub=-rows, b_ub=np.zeros(len(rows)), bounds=[(-1, 1)] * len(free))
    return [2 if -found.fun > 1e-7 else 0]
