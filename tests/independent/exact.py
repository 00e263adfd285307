"""Exact statistics in plain Python: whole numbers and fractions wherever they do, else bisection."""
import itertools
import math
from fractions import Fraction


def tail(k, n, p):
    """P(X >= k) of a binomial."""
    if k <= 0:
        return 1.0
    return math.fsum(math.comb(n, i) * p**i * (1 - p)**(n - i) for i in range(k, n + 1))


def root(function, low, high):
    """Where a rising function crosses 0."""
    for _ in range(200):
        middle = (low + high) / 2
        low, high = (low, middle) if function(middle) > 0 else (middle, high)
    return (low + high) / 2


def lower_limit(k, n, level):
    return 0.0 if k == 0 else root(lambda p: tail(k, n, p) - level, 0.0, 1.0)


def upper_limit(k, n, level):
    return 1.0 if k == n else root(lambda p: level - (1 - tail(k + 1, n, p)), 0.0, 1.0)


def redraw(splits):
    """Number of coin patterns by the total that they give: each trial gives one or the other number."""
    ways = {0: 1}
    for one, other in splits:
        after = {}
        for total, count in ways.items():
            for more in (one, other):
                after[total + more] = after.get(total + more, 0) + count
        ways = after
    return ways


def redraw_p(splits, observed, two_sided):
    if not splits:
        return 1.0
    n = sum(one + other for one, other in splits)
    if two_sided:
        reaching = sum(c for t, c in redraw(splits).items() if abs(2 * t - n) >= abs(2 * observed - n))
    else:
        reaching = sum(c for t, c in redraw(splits).items() if t >= observed)
    return float(Fraction(reaching, 2**len(splits)))


def needed(sizes, level, two_sided):
    """Fewest answers that reach the level where each trial gives all of its answers or none; one more than there are when
    none does."""
    ways, reaching, fewest = redraw([(size, 0) for size in sizes]), 0, sum(sizes) + 1
    for total in sorted(ways, reverse=True):
        reaching += ways[total]
        if Fraction(reaching * (2 if two_sided else 1), 2**len(sizes)) > level * (1 + 1e-12):
            break
        fewest = total
    return fewest


def tail_of_trials(need, sizes, share):
    """P(`need` answers or more) where each trial gives all of its answers with probability `share`, else none: by the
    number of trials of each size."""
    if not sizes:
        return float(need <= 0)
    size, rest = sizes[0], [s for s in sizes if s != sizes[0]]
    n = len(sizes) - len(rest)
    return math.fsum(math.comb(n, k) * share**k * (1 - share)**(n - k) * tail_of_trials(need - k * size, rest, share)
                     for k in range(n + 1))


def holm(p):
    adjusted, highest = [0.0] * len(p), 0.0
    for rank, i in enumerate(sorted(range(len(p)), key=lambda i: p[i])):
        highest = max(highest, min(1.0, (len(p) - rank) * p[i]))
        adjusted[i] = highest
    return adjusted


def benjamini_hochberg(p):
    adjusted, lowest, m = [0.0] * len(p), 1.0, len(p)
    for rank, i in sorted(enumerate(sorted(range(m), key=lambda i: p[i])), reverse=True):
        lowest = min(lowest, p[i] * m / (rank + 1))
        adjusted[i] = lowest
    return adjusted


def pairs(n):
    return n * (n - 1) // 2


def agreement_p(marks):
    """P(as many agreeing pairs or more) when each listener's right and wrong are put over their own trials anew."""
    trials = len(marks[0])
    seen = sum(pairs(sum(m[t] == v for m in marks)) for t in range(trials) for v in (True, False))
    ways = {(tuple(0 for _ in marks), 0): 1}
    for t in range(trials):
        after = {}
        answering = [i for i, m in enumerate(marks) if m[t] is not None]
        for (used, agreeing), count in ways.items():
            for bits in itertools.product((0, 1), repeat=len(answering)):
                now = list(used)
                for i, bit in zip(answering, bits):
                    now[i] += bit
                if any(now[i] > sum(m is True for m in marks[i]) for i in answering):
                    continue
                right = sum(bits)
                key = (tuple(now), agreeing + pairs(right) + pairs(len(bits) - right))
                after[key] = after.get(key, 0) + count
        ways = after
    rights = tuple(sum(m is True for m in row) for row in marks)
    final = {agreeing: count for (used, agreeing), count in ways.items() if used == rights}
    return float(Fraction(sum(c for a, c in final.items() if a >= seen), sum(final.values())))


def fleiss_kappa(counts):
    raters, subjects = sum(counts[0]), len(counts)
    observed = sum(Fraction(sum(c * (c - 1) for c in row), raters * (raters - 1)) for row in counts) / subjects
    shares = [Fraction(sum(row[j] for row in counts), subjects * raters) for j in range(len(counts[0]))]
    expected = sum(s * s for s in shares)
    return float((observed - expected) / (1 - expected))


def ranks(values):
    """Twice the mid-ranks."""
    return [2 * sum(v < x for v in values) + sum(v == x for v in values) + 1 for x in values]


def spearman(x, y):
    """rho and its exact two-sided permutation p, by all orders."""
    rx, ry, n = ranks(x), ranks(y), len(x)
    mean = n + 1
    dx, dy = [r - mean for r in rx], [r - mean for r in ry]
    sxx, syy = sum(d * d for d in dx), sum(d * d for d in dy)
    if sxx == 0 or syy == 0:
        return None, 1.0, None
    seen = sum(a * b for a, b in zip(dx, dy))
    sums = [abs(sum(a * b for a, b in zip(dx, p))) for p in itertools.permutations(dy)]
    most = max(sums)
    return (seen / math.sqrt(sxx * syy), sum(s >= abs(seen) for s in sums) / len(sums),
            sum(s >= most for s in sums) / len(sums))


def smallest_significant_rho(x, y, level):
    """The smallest |rho| of any pairing of these x and y whose two-sided p is at the level or below."""
    dx, dy = ([r - (len(x) + 1) for r in ranks(values)] for values in (x, y))
    counts = {}
    for p in itertools.permutations(dy):
        size = abs(sum(a * b for a, b in zip(dx, p)))
        counts[size] = counts.get(size, 0) + 1
    reaching, best = 0, None
    for size in sorted(counts, reverse=True):
        reaching += counts[size]
        if Fraction(reaching, math.factorial(len(x))) <= level * (1 + 1e-12):
            best = size / math.sqrt(sum(d * d for d in dx) * sum(d * d for d in dy))
    return best


def incomplete_beta(a, b, x):
    """Regularised, by its continued fraction (Abramowitz and Stegun 26.5.8)."""
    if x <= 0 or x >= 1:
        return float(x >= 1)
    if x > (a + 1) / (a + b + 2):
        return 1 - incomplete_beta(b, a, 1 - x)
    front = math.exp(math.lgamma(a + b) - math.lgamma(a) - math.lgamma(b) + a * math.log(x) + b * math.log1p(-x)) / a
    c, d = 1.0, 1 / (1 - (a + b) * x / (a + 1))
    result = d
    for m in range(1, 2000):
        for term in (m * (b - m) * x / ((a + 2 * m - 1) * (a + 2 * m)),
                     -(a + m) * (a + b + m) * x / ((a + 2 * m) * (a + 2 * m + 1))):
            d, c = 1 / (1 + term * d), 1 + term / c
            result *= c * d
    return front * result


def t_quantile(p, df):
    """Upper half only."""
    return root(lambda t: 1 - incomplete_beta(df / 2, 0.5, df / (df + t * t)) / 2 - p, 0.0, 1000.0)


def mean_difference_p(x, y):
    """Exact two-sided permutation p of a difference of means of whole numbers: every division of all values into two
    groups of these sizes, counted by the sum of the first group."""
    values = [int(v) for v in x + y]
    low = min(values)
    ways = [{} for _ in range(len(x) + 1)]
    ways[0][0] = 1
    for value in values:
        for size in range(len(x) - 1, -1, -1):
            for total, count in ways[size].items():
                key = total + value - low
                ways[size + 1][key] = ways[size + 1].get(key, 0) + count
    n, m, everything = len(x), len(y), sum(values)

    def gap(total):  # n m (mean of the first group less mean of the second), a whole number
        return total * (n + m) - n * everything

    seen = abs(gap(sum(int(v) for v in x)))
    reaching = sum(c for t, c in ways[n].items() if abs(gap(t + n * low)) >= seen)
    return float(Fraction(reaching, math.comb(n + m, n)))
