"""Plans that look at the answers as they come: bounds, p and limits from the published rule, in exact fractions."""
import math
import re
from fractions import Fraction

import exact

SLACK = 1 + 1e-12


def rule_of(plan):
    """The trials after which is looked, and how the level is spent on them; nothing for a fixed number."""
    found = re.fullmatch(r"looks after ([0-9, ]+) trials, (Pocock|O'Brien-Fleming) spending", plan["stopping_rule"])
    return None if not found else ([int(n) for n in found[1].split(", ")], found[2])


def normal_below(z):
    return math.erfc(-z / math.sqrt(2)) / 2


def spent(rule, level):
    """The level that may be spent up to each look."""
    after, way = rule
    fractions = [n / after[-1] for n in after]
    if way == "Pocock":
        return [level * math.log(1 + (math.e - 1) * t) for t in fractions]
    z = exact.root(lambda x: normal_below(x) - (1 - level / 2), 0.0, 40.0)
    return [2 * (1 - normal_below(z / math.sqrt(t))) for t in fractions]


def add(ways, one, other):
    total = {}
    for t, c in ways.items():
        total[t + one] = total.get(t + one, 0) + c
        total[t + other] = total.get(t + other, 0) + c
    return total


def bounds(splits, rule, level, ended=False):
    """By number of trials: the smallest total that stops there, None where the look cannot stop; and the paths that
    stopped before the end, of 2 ** trials."""
    after, limits = rule[0], spent(rule, level)
    if ended and len(splits) not in after:
        after, limits = [n for n in after if n < len(splits)] + [len(splits)], limits
    allowed = dict(zip(after, limits))
    if ended:
        allowed[len(splits)] = level
    ways, found, stopped = {0: 1}, {}, Fraction(0)
    for n, (one, other) in enumerate(splits, 1):
        ways = add(ways, one, other)
        if n not in allowed:
            continue
        reaching, found[n] = stopped, None
        for t in sorted(ways, reverse=True):
            reaching += Fraction(ways[t], 2**n)
            if reaching > allowed[n] * SLACK:
                break
            found[n] = t
        if found[n] is not None and n < len(splits):
            stopped += Fraction(sum(c for t, c in ways.items() if t >= found[n]), 2**n)
            ways = {t: c for t, c in ways.items() if t < found[n]}
    return found, stopped, ways


def p_value(splits, observed, rule, level):
    if not splits:
        return 1.0
    _, stopped, ways = bounds(splits, rule, level)
    return float(stopped + Fraction(sum(c for t, c in ways.items() if t >= observed), 2**len(splits)))


def end_or_beyond(splits, observed, rule, level, share):
    """P(stopped earlier, or as far with `observed` or more) where every answer is right with probability `share`."""
    found, _, _ = bounds(splits, rule, level)
    probability, stopped = {0: 1.0}, 0.0
    for n, (one, other) in enumerate(splits, 1):
        for _ in range(one + other):
            step = {}
            for t, p in probability.items():
                step[t + 1] = step.get(t + 1, 0) + p * share
                step[t] = step.get(t, 0) + p * (1 - share)
            probability = step
        if n < len(splits) and found.get(n) is not None:
            stopped += sum(p for t, p in probability.items() if t >= found[n])
            probability = {t: p for t, p in probability.items() if t < found[n]}
    return stopped + sum(p for t, p in probability.items() if t >= observed)


def limits(splits, observed, rule, level, each):
    answers = sum(map(sum, splits))
    at = lambda k, p: exact.root(lambda s: end_or_beyond(splits, k, rule, level, s) - p, 0.0, 1.0)
    return 0.0 if observed == 0 else at(observed, each), 1.0 if observed == answers else at(observed + 1, 1 - each)


def power(sizes, rule, level, share):
    """P(supported) where each trial gives all of its answers with probability `share`, else none."""
    found, _, _ = bounds([(size, 0) for size in sizes], rule, level, ended=True)
    probability, supported = {0: 1.0}, 0.0
    for n, size in enumerate(sizes, 1):
        step = {}
        for t, p in probability.items():
            step[t + size] = step.get(t + size, 0) + p * share
            step[t] = step.get(t, 0) + p * (1 - share)
        if found.get(n) is not None:
            supported += sum(p for t, p in step.items() if t >= found[n])
            step = {t: p for t, p in step.items() if t < found[n]}
        probability = step
    return supported, next((b for b in reversed(list(found.values())) if b is not None), sum(sizes) + 1)
