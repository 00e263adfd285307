"""Invents the readings of the example: eight cables, a loudspeaker, responses at its terminals.

Nothing here was measured. The values follow from textbook formulas and an equivalent circuit, with the scatter
of ordinary instruments, so that they hang together as real readings would. Run it to write readings/ anew.
"""
import cmath
import math
import os
import random

HERE = os.path.dirname(os.path.abspath(__file__))
LENGTH_M, SOURCE_OHM, CONTACTS_OHM = 3.0, 0.1, 0.004

# Loop values a metre: ohm, henry, farad. Copper by cross-section (IEC 60228 class 5 maxima, twice); the bell wire by
# 17.24 ohm mm2/km at 0.18 mm2, twice. No pair is faster than light: L C stays above mu0 eps0 = 1.1127e-17.
CABLES = {
    "pair-4mm2": (0.00990, 0.62e-6, 52e-12),
    "pair-2.5mm2": (0.01596, 0.60e-6, 55e-12),
    "pair-1.5mm2": (0.02660, 0.66e-6, 48e-12),
    "pair-0.75mm2": (0.05200, 0.70e-6, 45e-12),
    "bell-wire-0.18mm2": (0.19200, 0.74e-6, 42e-12),
    "star-quad-4x1.5mm2": (0.01330, 0.38e-6, 98e-12),
    "flat-strip": (0.01650, 0.12e-6, 410e-12),
    "woven-16-strand": (0.01380, 0.19e-6, 240e-12),
}


def load_ohm(f):
    """The loudspeaker: 3.5 ohm + 0.13 mH + [31 || 430 uF || 23 mH] + [9.5 || 10.4 uF || 0.9 mH]."""
    s = 2j * math.pi * f
    return 3.5 + s * 0.13e-3 + 1 / (1 / 31 + s * 430e-6 + 1 / (s * 23e-3)) + 1 / (1 / 9.5 + s * 10.4e-6 + 1 / (s * 0.9e-3))


def level_db(cable, f, series_ohm=0.0):
    """Level at the loudspeaker's terminals over the amplifier's open voltage, exact two-port."""
    r, l, c = CABLES[cable]
    w = 2 * math.pi * f
    z = (r * LENGTH_M + CONTACTS_OHM) + 1j * w * l * LENGTH_M
    y = 1j * w * c * LENGTH_M
    g = cmath.sqrt(z * y)
    a, b, cc = cmath.cosh(g), z * cmath.sinh(g) / g, y * cmath.sinh(g) / g
    zl, rs = load_ohm(f), SOURCE_OHM
    end = zl + series_ohm
    return 20 * math.log10(abs(zl / (a * end + b + rs * (cc * end + a))))


def pink_level_db(cable, series_ohm=0.0, points=400):
    """Power average over the logarithm of frequency, 20 Hz to 20 kHz."""
    total = 0.0
    for i in range(points):
        f = 20 * 1000 ** ((i + 0.5) / points)
        total += 10 ** (level_db(cable, f, series_ohm) / 10)
    return 10 * math.log10(total / points)


def write(name, lines):
    os.makedirs(os.path.join(HERE, "readings"), exist_ok=True)
    with open(os.path.join(HERE, "readings", name), "w", newline="\n") as file:
        file.write("# Invented for the example; nothing here was measured.\n" + "\n".join(lines) + "\n")


def main():
    draw = random.Random(20260502)
    rows = ["cable,length_m,resistance_mohm,inductance_uH,capacitance_pF,frequency_Hz,repeat"]
    for repeat in (1, 2):
        for cable, (r, l, c) in CABLES.items():
            rows.append("%s,3.00,%.1f,%.3f,%.0f,1000,%d" % (
                cable, 1e3 * (r * LENGTH_M + CONTACTS_OHM) + draw.gauss(0, 0.4), 1e6 * l * LENGTH_M * (1 + draw.gauss(0, 0.003)),
                1e12 * c * LENGTH_M * (1 + draw.gauss(0, 0.004)), repeat))
    write("cables.csv", rows)

    rows = ["frequency_Hz;magnitude_ohm;phase_deg"]
    for i in range(121):
        f = 19 * (21000 / 19) ** (i / 120)
        z = load_ohm(f)
        rows.append(("%.2f;%.4f;%.2f" % (f, abs(z), math.degrees(cmath.phase(z)))).replace(".", ","))
    write("loudspeaker-impedance.csv", rows)

    manifest = ["file,cable,rig,piece,condition,repeat"]
    for cable in CABLES:
        for repeat in (1, 2):
            rows = ["frequency_Hz,level_dB"]
            offset = draw.gauss(0, 0.004)
            for i in range(81):
                f = 20 * 1000 ** (i / 80)
                rows.append("%.2f,%.4f" % (f, level_db(cable, f) + offset + draw.gauss(0, 0.003)))
            name = "response-%s-%d.csv" % (cable, repeat)
            write(name, rows)
            manifest.append("%s,%s,hall,left,loudspeaker connected,%d" % (name, cable, repeat))
    write("responses.csv", manifest)


if __name__ == "__main__":
    main()
