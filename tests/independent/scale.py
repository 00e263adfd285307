"""Worths of cables from preferences with an effect of being played first, by Newton's method in plain Python."""
import math


def solve(matrix, right):
    """Gauss-Jordan with the largest pivot."""
    n = len(right)
    rows = [list(row) + [value] for row, value in zip(matrix, right)]
    for i in range(n):
        pivot = max(range(i, n), key=lambda k: abs(rows[k][i]))
        rows[i], rows[pivot] = rows[pivot], rows[i]
        rows[i] = [value / rows[i][i] for value in rows[i]]
        for k in range(n):
            if k != i:
                rows[k] = [a - rows[k][i] * b for a, b in zip(rows[k], rows[i])]
    return [row[n] for row in rows]


def fit(counts, places):
    """counts: (first played, second, preferred first, preferred second); places: of each cable's worth among the parameters,
    None for 0; the last parameter is the order's. Parameters, information, log likelihood."""
    size = 1 + max([p for p in places if p is not None], default=-1) + 1
    values = [0.0] * size
    for _ in range(100):
        slope, information, total = [0.0] * size, [[0.0] * size for _ in range(size)], 0.0
        for first, second, wins, losses in counts:
            design = [0.0] * size
            for cable, sign in ((first, 1), (second, -1)):
                if places[cable] is not None:
                    design[places[cable]] += sign
            design[-1] = 1.0
            share = 1 / (1 + math.exp(-sum(d * v for d, v in zip(design, values))))
            total += wins * math.log(share) + losses * math.log(1 - share)
            for i in range(size):
                slope[i] += design[i] * (wins - (wins + losses) * share)
                for j in range(size):
                    information[i][j] += design[i] * design[j] * (wins + losses) * share * (1 - share)
        move = solve(information, slope)
        values = [v + m for v, m in zip(values, move)]
        if max(map(abs, move)) < 1e-13:
            break
    return values, information, total


def variances(information):
    size = len(information)
    return [solve(information, [float(i == k) for i in range(size)])[k] for k in range(size)]


def scale(counts, cables):
    """Worths, standard errors, order effect and its error; of each pair the difference and p adjusted by Holm."""
    values, information, total = fit(counts, [None] + list(range(cables - 1)))
    errors = [math.sqrt(v) for v in variances(information)]
    worths = [0.0] + values[:-1]
    pairs = []
    for i in range(cables):
        for j in range(i + 1, cables):
            others = [k for k in range(cables) if k not in (i, j)]
            places = [others.index(k) if k in others else None for k in range(cables)]
            ratio = 2 * (total - fit(counts, places)[2])
            pairs.append((i, j, worths[i] - worths[j], math.erfc(math.sqrt(max(0.0, ratio) / 2))))
    order = sorted(range(len(pairs)), key=lambda k: pairs[k][3])
    adjusted, largest = [0.0] * len(pairs), 0.0
    for step, k in enumerate(order):
        largest = max(largest, min(1.0, (len(pairs) - step) * pairs[k][3]))
        adjusted[k] = largest
    return worths, [0.0] + errors[:-1], values[-1], errors[-1], [(i, j, d, p) for (i, j, d, _), p in zip(pairs, adjusted)]
