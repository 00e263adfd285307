"""Distributions of pooled counts: SciPy's betabinom, exact fractions, and every arrangement counted."""
import itertools
import math
from fractions import Fraction

from scipy import stats


def parameters(mean, gamma):
    return mean * (1 - gamma) / gamma, (1 - mean) * (1 - gamma) / gamma


def beta_binomial(trials, mean, gamma):
    (n,), (a, b) = trials, parameters(mean[0], gamma[0])
    return stats.betabinom.pmf(range(int(n) + 1), int(n), a, b)


def in_fractions(n, mean, gamma):
    """Of n trials: products over the answers, one after the other, with exact fractions."""
    def rising(share, count):
        return math.prod(share * (1 - gamma) + j * gamma for j in range(count))

    if gamma == 1:
        return [1 - mean] + [Fraction(0)] * (n - 1) + [mean] if n else [Fraction(1)]
    return [math.comb(n, x) * rising(mean, x) * rising(1 - mean, n - x) / rising(Fraction(1), n) for x in range(n + 1)]


def chance_corrected(trials, chance, mean, gamma):
    """Heard by the beta-binomial, guessed by the binomial, with exact fractions."""
    n, c = int(trials[0]), Fraction(chance[0])
    heard = in_fractions(n, Fraction(mean[0]), Fraction(gamma[0]))
    return [
        sum(heard[h] * math.comb(n - h, x - h) * c**(x - h) * (1 - c)**(n - x) for h in range(x + 1))
        for x in range(n + 1)
    ]


def fisher(p):
    return stats.combine_pvalues(p, "fisher")


def stouffer(p, weights):
    return stats.combine_pvalues(p, "stouffer", weights=weights)


def placed(answers, columns):
    """P(Q >= the Q seen): every placement of each subject's right answers, counted by the squares of column sums."""
    width = int(columns[0])
    subjects = [tuple(answers[i:i + width]) for i in range(0, len(answers), width)]
    squares = [
        sum(sum(column)**2 for column in zip(*rows))
        for rows in itertools.product(*(sorted(set(itertools.permutations(row))) for row in subjects))
    ]
    seen = sum(sum(column)**2 for column in zip(*subjects))
    return [sum(value >= seen for value in squares) / len(squares)]


def tarone(correct, trials):
    """Given the total, every vector of counts with its hypergeometric weight; Z in exact fractions."""
    n = [int(count) for count in trials]
    share = Fraction(int(sum(correct)), sum(n))

    def statistic(counts):
        return sum((x - size * share)**2 for x, size in zip(counts, n))

    weights = {}
    for counts in itertools.product(*(range(size + 1) for size in n)):
        if sum(counts) == sum(correct):
            value = statistic(counts)
            weights[value] = weights.get(value, 0) + math.prod(map(math.comb, n, counts))
    seen = statistic([int(x) for x in correct])
    return [float(Fraction(sum(w for value, w in weights.items() if value >= seen), sum(weights.values())))]
