"""Agreement by every arrangement and every resample."""
import itertools
import math

import numpy as np

METRICS = ("nominal", "ordinal", "interval", "ratio")


def rows(values, width):
    return [values[i:i + int(width)] for i in range(0, len(values), int(width))]


def alpha(subjects, metric):
    """Krippendorff's, from all pairs of answers; nothing where the answers do not vary."""
    paired = [[a for a in subject if not math.isnan(a)] for subject in subjects]
    paired = [answers for answers in paired if len(answers) > 1]
    everything = sorted(itertools.chain.from_iterable(paired))
    if len(set(everything)) < 2:
        return math.nan

    def apart(c, k):
        if c == k:
            return 0
        if metric == "nominal":
            return 1
        if metric == "interval":
            return (c - k)**2
        if metric == "ratio":
            return ((c - k) / (c + k))**2
        low, high = min(c, k), max(c, k)
        between = sum(low <= a <= high for a in everything)
        return (between - (everything.count(c) + everything.count(k)) / 2)**2

    n = len(everything)
    observed = sum(
        sum(apart(a, b) for a, b in itertools.permutations(answers, 2)) / (len(answers) - 1) for answers in paired) / n
    expected = sum(apart(a, b) for a, b in itertools.permutations(everything, 2)) / (n * (n - 1))
    return 1 - observed / expected


def arrangements(column):
    """Every order of a rater's answers over the places that the rater answered."""
    answered = [i for i, a in enumerate(column) if not math.isnan(a)]
    for order in sorted(set(itertools.permutations(column[i] for i in answered))):
        arranged = list(column)
        for i, a in zip(answered, order):
            arranged[i] = a
        yield arranged


def permuted_alpha(ratings, columns, metric):
    """alpha, and the share of arrangements with one as large or larger, those without one among them."""
    raters = list(zip(*rows(ratings, columns[0])))
    name = METRICS[int(metric[0])]
    seen = alpha(list(zip(*raters)), name)
    if math.isnan(seen):
        return [math.nan, math.nan]
    found = [alpha(list(zip(*arranged)), name) for arranged in itertools.product(*map(list, map(arrangements, raters)))]
    return [seen, np.mean([math.isnan(value) or value >= seen - 1e-9 for value in found])]


def shared_marks(marks, trials):
    """Pairs of raters alike, pairs in all, and the share of arrangements with as many alike or more."""
    raters = rows(marks, trials[0])

    def alike(raters):
        return sum(a == b for one, other in itertools.combinations(raters, 2) for a, b in zip(one, other))

    pairs = sum(
        not math.isnan(a) and not math.isnan(b) for one, other in itertools.combinations(raters, 2)
        for a, b in zip(one, other))
    found = [alike(arranged) for arranged in itertools.product(*map(list, map(arrangements, raters)))]
    return [alike(raters), pairs, np.mean([count >= alike(raters) for count in found])]


def fleiss(table):
    raters = table[0].sum()
    shares = table.sum(axis=0) / table.sum()
    expected = (shares**2).sum()
    if expected == 1:
        return math.nan
    observed = ((table**2).sum(axis=1) - raters).mean() / (raters * (raters - 1))
    return (observed - expected) / (1 - expected)


def gwet(table):
    raters = table[0].sum()
    shares = table.sum(axis=0) / table.sum()
    expected = (shares * (1 - shares)).sum() / (len(shares) - 1)
    observed = ((table**2).sum(axis=1) - raters).mean() / (raters * (raters - 1))
    return (observed - expected) / (1 - expected)


def nominal_alpha(table):
    """From Fleiss' kappa: the expected agreement is of pairs drawn without replacement."""
    counts = table.sum(axis=0)
    n = counts.sum()
    expected = (counts * (counts - 1)).sum() / (n * (n - 1))
    if expected == 1:
        return math.nan
    raters = table[0].sum()
    observed = ((table**2).sum(axis=1) - raters).mean() / (raters * (raters - 1))
    return (observed - expected) / (1 - expected)


def resampled(counts, columns):
    """Mean, standard deviation and share undefined over every draw with replacement, of alpha, kappa and AC1."""
    table = np.array(rows(counts, columns[0]))
    every = list(itertools.product(range(len(table)), repeat=len(table)))
    found = []
    for coefficient in (nominal_alpha, fleiss, gwet):
        values = np.array([coefficient(table[list(chosen)]) for chosen in every])
        defined = values[~np.isnan(values)]
        found += [defined.mean(), defined.std(), 1 - len(defined) / len(values)] if len(defined) else [math.nan] * 3
    return found


def concordance(answers, items):
    """The share of orders of each rater's ranks whose rank sums lie as far from their mean, or farther."""
    ranks = [tuple(2 * np.sum(np.less(rater, a)) + np.sum(np.equal(rater, a)) + 1 for a in rater)
             for rater in rows(answers, items[0])]  # doubled mid-ranks

    def squares(orders):
        return sum(sum(column)**2 for column in zip(*orders))

    found = [squares(orders) for orders in itertools.product(*map(lambda r: list(itertools.permutations(r)), ranks[1:]),
                                                             ranks[:1])]
    return [np.mean([value >= squares(ranks) for value in found])]
