"""Exact re-draws with whole numbers and fractions: every fall of the coins counted."""
import itertools
import math
from fractions import Fraction

import numpy as np
from scipy import stats


def tails(distribution, observed, level):
    """Both tails, both two-sided p, the smallest total that reaches the level, with the allowances of total.h."""
    totals = range(len(distribution))
    whole = sum(distribution)
    mean = sum(total * p for total, p in zip(totals, distribution)) / whole
    at_least = list(itertools.accumulate(reversed(distribution)))[::-1]

    def share(held):
        return float(sum(p for total, p in zip(totals, distribution) if held(total)) / whole)

    distance = abs(observed - mean) - Fraction(len(distribution) - 1, 10**9)  # alike to 1 part in 10^9 of the largest
    allowed = level * whole * (1 + Fraction(1, 10**12))
    reaching = [total for total in totals if distribution[total] > 0 and at_least[total] <= allowed]
    return [
        float(at_least[observed] / whole),
        share(lambda total: total <= observed),
        share(lambda total: abs(total - mean) >= distance),
        share(lambda total: distribution[total] <= distribution[observed] * (1 + Fraction(1, 10**7))),
        min(reaching, default=math.nan),
    ]


def ways(trials):
    """By total, how many combinations of one entry of each trial give it."""
    counts = {0: 1}
    for entries in trials:
        after = {}
        for total, count in counts.items():
            for more in entries:
                after[total + more] = after.get(total + more, 0) + count
        counts = after
    top = sum(max(entries) for entries in trials)
    return [Fraction(counts.get(total, 0)) for total in range(top + 1)]


def whole_rows(values, width):
    return [tuple(int(v) for v in values[i:i + width]) for i in range(0, len(values), width)]


def answers(distribution, observed, level):
    total = sum(distribution)
    return [float(p / total) for p in distribution] + tails(distribution, int(observed[0]), Fraction(level[0]))


def layouts(entries, width, observed, level):
    return answers(ways(whole_rows(entries, int(width[0]))), observed, level)


def fixed(splits, ones, observed, level):
    """Every choice of the trials whose truth is the one."""
    pairs = whole_rows(splits, 2)
    counts = [Fraction(0)] * (sum(map(max, pairs)) + 1)
    for chosen in itertools.combinations(range(len(pairs)), int(ones[0])):
        counts[sum(pair[i not in chosen] for i, pair in enumerate(pairs))] += 1
    return answers(counts, observed, level)


def poisson_binomial(trials, chances, observed, level):
    distribution = [Fraction(1)]
    for count, chance in zip(trials, chances):
        right, wrong = Fraction(chance), 1 - Fraction(chance)
        group = [math.comb(int(count), k) * right**k * wrong**(int(count) - k) for k in range(int(count) + 1)]
        after = [Fraction(0)] * (len(distribution) + len(group) - 1)
        for (i, p), (k, q) in itertools.product(enumerate(distribution), enumerate(group)):
            after[i + k] += p * q
        distribution = after
    return answers(distribution, observed, level)


def many_trials(trials, chances):
    distribution = np.ones(1)
    for count, chance in zip(trials, chances):
        distribution = np.convolve(distribution, stats.binom.pmf(np.arange(count + 1), count, chance))
    return distribution


def power(splits, level, share, probability):
    """Of trials whose answers are all alike: the power at a share, and the share with a power, by halving."""
    alike = [int(count) for count in splits]
    needed = tails(ways([(0, count) for count in alike]), 0, Fraction(level[0]))[4]
    if math.isnan(needed):
        return [0, math.nan]

    def reaching(share):
        distribution = np.ones(1)
        for count in alike:
            one = np.zeros(count + 1)
            one[0], one[-1] = 1 - share, share
            distribution = np.convolve(distribution, one)
        return distribution[int(needed):].sum()

    low, high = 0.0, 1.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (low, middle) if reaching(middle) > probability[0] else (middle, high)
    return [reaching(share[0]), low]
