"""What the circuit gives, in plain Python: two-port, impedance table, weightings, Simpson's rule."""
import bisect
import cmath
import math

POINTS = 2001


def interpolated(points, f):
    """Linear in ln f between (f, value) points."""
    i = min(max(bisect.bisect_right([p[0] for p in points], f), 1), len(points) - 1)
    (f0, v0), (f1, v1) = points[i - 1], points[i]
    t = math.log(f / f0) / math.log(f1 / f0)
    return v0 + t * (v1 - v0)


class Load:
    """A measured impedance: ln of the magnitude and the phase linear in ln f; the phase followed without jumps."""

    def __init__(self, table):
        unwrapped, last = [], None
        for f, magnitude, phase in table:
            if last is not None:
                phase += 360 * round((last - phase) / 360)
            last = phase
            unwrapped.append((f, complex(math.log(magnitude), math.radians(phase))))
        self.points = unwrapped
        self.band = (table[0][0], table[-1][0])

    def ohm(self, f):
        return cmath.exp(interpolated(self.points, f))


MU0 = 1.25663706212e-6


def internal_ratio(x):
    """Internal impedance of a round wire over its direct-current resistance: z I0(z)/(2 I1(z)), by the power series."""
    z = x * cmath.exp(0.25j * math.pi)
    term, i0, i1 = 1, 0, 0
    for k in range(80):
        i0, i1 = i0 + term, i1 + term / (k + 1)
        term *= (z / 2) ** 2 / (k + 1) ** 2
    return i0 / i1


def skin_excess_ohm(pair_ohm_per_m, length_m, f):
    """What the skin effect of a pair of round conductors adds to R + jwL of direct current; 50 nH/m in each conductor."""
    x = math.sqrt(2 * f * MU0 / (pair_ohm_per_m / 2))
    return pair_ohm_per_m * length_m * (internal_ratio(x) - 1 - 1j * x * x / 8)


def inductance_of_direct_current(read_henry, pair_ohm_per_m, length_m, f):
    return read_henry - skin_excess_ohm(pair_ohm_per_m, length_m, f).imag / (2 * math.pi * f)


def level_db(line, source_ohm, load, f, series_ohm=0.0):
    """20 log10 |V(load) / V(source)| behind a uniform line with the totals R, L, C; with a length where it is a round pair."""
    r, l, c, pair_length_m = line
    w = 2j * math.pi * f
    z, y = r + w * l, w * c
    if pair_length_m:
        z += skin_excess_ohm(r / pair_length_m, pair_length_m, f)
    g = cmath.sqrt(z * y)
    if abs(g) > 0.1:
        a, shc = cmath.cosh(g), cmath.sinh(g) / g
    else:
        q = z * y
        a = 1 + q / 2 * (1 + q / 12 * (1 + q / 30 * (1 + q / 56)))
        shc = 1 + q / 6 * (1 + q / 20 * (1 + q / 42 * (1 + q / 72)))
    end = load.ohm(f) + series_ohm
    return 20 * math.log10(abs(load.ohm(f) / (a * end + z * shc + source_ohm * (y * shc * end + a))))


def k_weighting_db(f):
    """ITU-R BS.1770-4, Annex 1, Tables 1 and 2, at 48 kHz."""
    u = cmath.exp(-2j * math.pi * f / 48000)
    high = (1.53512485958697 - 2.69169618940638 * u + 1.19839281085285 * u * u) / \
           (1 - 1.69065929318241 * u + 0.73248077421585 * u * u)
    low = (1 - 2 * u + u * u) / (1 - 1.99004745483398 * u + 0.99007225036621 * u * u)
    return 20 * math.log10(abs(high * low))


def grid(band, points):
    low, high = math.log(band[0]), math.log(band[1])
    return [math.exp(low + (high - low) * i / (points - 1)) for i in range(points)]


def log_mean(function, band):
    """Mean over ln f by Simpson's rule on 2001 points."""
    values = [function(min(max(f, band[0]), band[1])) for f in grid(band, POINTS)]
    total = values[0] + values[-1] + 4 * math.fsum(values[1:-1:2]) + 2 * math.fsum(values[2:-1:2])
    return total / (3 * (POINTS - 1))


def weighted_level_db(curve, band, weighting_db=k_weighting_db):
    top = log_mean(lambda f: 10 ** ((weighting_db(f) + curve(f)) / 10), band)
    return 10 * math.log10(top / log_mean(lambda f: 10 ** (weighting_db(f) / 10), band))


def extreme(function, band, own=()):
    """(frequency, value) farthest from 0; the least and the greatest value."""
    points = sorted(set(grid(band, POINTS)[1:-1]) | {band[0], band[1]} | {f for f in own if band[0] <= f <= band[1]})
    found = []
    for sign in (1, -1):
        values = [sign * function(f) for f in points]
        i = max(range(len(points)), key=values.__getitem__)
        low, high = math.log(points[max(i - 1, 0)]), math.log(points[min(i + 1, len(points) - 1)])
        best = (values[i], points[i])
        golden = (math.sqrt(5) - 1) / 2
        for _ in range(80):
            one, other = high - golden * (high - low), low + golden * (high - low)
            at_one, at_other = sign * function(math.exp(one)), sign * function(math.exp(other))
            best = max(best, (at_one, math.exp(one)), (at_other, math.exp(other)))
            low, high = (low, other) if at_one >= at_other else (one, high)
        found.append((best[1], sign * best[0]))
    greatest, least = found
    return max((greatest, least), key=lambda e: abs(e[1])), least[1], greatest[1]
