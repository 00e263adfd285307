"""What else the answers show, from the published formulas: d', differing listeners, drift, bias, sureness, swap times, AC1."""
import math
from fractions import Fraction

import exact


def normal_below(z):
    return math.erfc(-z / math.sqrt(2)) / 2


def share_at(d):
    """Share right in ABX by differencing (Macmillan and Creelman)."""
    a, b = d / math.sqrt(2), d / math.sqrt(6)
    return normal_below(a) * normal_below(b) + normal_below(-a) * normal_below(-b)


def d_prime_at(share):
    if share <= 0.5:
        return 0.0
    return None if share >= 1 else exact.root(lambda d: share_at(d) - share, 0.0, 40.0)


def d_prime(right, answers):
    """Estimate and 95 % likelihood interval; nothing for infinity."""
    def log_likelihood(s):
        return (right * math.log(s) if right else 0.0) + ((answers - right) * math.log(1 - s) if right < answers else 0.0)

    z = exact.root(lambda x: normal_below(x) - 0.975, 0.0, 10.0)
    seen = right / answers
    best = log_likelihood(seen) if 0 < right < answers else 0.0
    far = lambda s: 2 * (best - log_likelihood(s)) - z * z
    lower = 0.0 if right == 0 else exact.root(lambda s: -far(s), 1e-300, seen)
    upper = 1.0 if right == answers else exact.root(far, seen if seen > 0 else 1e-300, 1.0 - 1e-16)
    return d_prime_at(seen), d_prime_at(lower), d_prime_at(upper)


def spread(counts):
    """Tarone's Z of (right, answers) and its exact one-sided p, given the total right; nothing where undefined."""
    trials, total = sum(n for _, n in counts), sum(x for x, _ in counts)
    if len(counts) < 2 or total in (0, trials) or all(n < 2 for _, n in counts):
        return None
    s = total / trials
    deviation = sum((x - n * s) ** 2 / (s * (1 - s)) for x, n in counts)
    z = (deviation - trials) / math.sqrt(2 * sum(n * (n - 1) for _, n in counts))
    ways = {(0, 0): 1}
    for _, n in counts:
        step = {}
        for (right, squares), c in ways.items():
            for x in range(n + 1):
                key = right + x, squares + (trials * x - n * total) ** 2
                step[key] = step.get(key, 0) + c * math.comb(n, x)
        ways = step
    seen = sum((trials * x - n * total) ** 2 for x, n in counts)
    fitting = {squares: c for (right, squares), c in ways.items() if right == total}
    return z, float(Fraction(sum(c for squares, c in fitting.items() if squares >= seen), sum(fitting.values())))


def drift(marks):
    """Sum of the places of right answers, its mean without a drift, exact two-sided p; `marks` in the order of trials, by
    listener."""
    ways, seen, doubled_mean = {0: 1}, 0, 0
    for own in marks:
        right, n = sum(own), len(own)
        table = {(0, 0): 1}
        for place in range(1, n + 1):
            step = dict(table)
            for (chosen, total), c in table.items():
                if chosen < right:
                    step[chosen + 1, total + place] = step.get((chosen + 1, total + place), 0) + c
            table = step
        one = {total: c for (chosen, total), c in table.items() if chosen == right}
        ways = convolved(ways, one)
        seen += sum(place for place, mark in enumerate(own, 1) if mark)
        doubled_mean += right * (n + 1)
    reaching = sum(c for total, c in ways.items() if abs(2 * total - doubled_mean) >= abs(2 * seen - doubled_mean))
    return seen, doubled_mean / 2, float(Fraction(reaching, sum(ways.values())))


def convolved(one, other):
    total = {}
    for a, c in one.items():
        for b, d in other.items():
            total[a + b] = total.get(a + b, 0) + c * d
    return total


def roc(signal, noise):
    """Area and exact two-sided p of ratings, small for surest A; doubled mid-ranks keep ties whole."""
    everything = sorted(signal + noise)
    rank = {r: everything.index(r) + everything.index(r) + everything.count(r) + 1 for r in set(everything)}
    won = sum((s < n) + (s == n) / 2 for s in signal for n in noise)
    return won / (len(signal) * len(noise)), exact.mean_difference_p([rank[s] for s in signal], [rank[n] for n in noise])


def ac1(counts):
    """Gwet's AC1 of rows (scored, not) and its standard error (Gwet 2008, n - 1)."""
    rows = [row for row in counts if sum(row) >= 1]
    paired = [row for row in rows if sum(row) >= 2]
    n, q = len(rows), 2
    share = [sum(row[k] / sum(row) for row in rows) / n for k in range(q)]
    expected = sum(p * (1 - p) for p in share) / (q - 1)
    agreed = [sum(c * (c - 1) for c in row) / (sum(row) * (sum(row) - 1)) if sum(row) >= 2 else 0.0 for row in rows]
    observed = sum(agreed) / len(paired)
    value = (observed - expected) / (1 - expected)
    own = [n / len(paired) * (a - (expected if sum(row) >= 2 else 0.0)) / (1 - expected) for a, row in zip(agreed, rows)]
    guess = [sum(row[k] / sum(row) * (1 - share[k]) for k in range(q)) / (q - 1) for row in rows]
    parts = [o - 2 * (1 - value) * (g - expected) / (1 - expected) for o, g in zip(own, guess)]
    return value, math.sqrt(sum((p - value) ** 2 for p in parts) / (n * (n - 1))) if n > 1 else None
