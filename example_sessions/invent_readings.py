"""Invents the readings of the example: eight cables, a loudspeaker, responses and noise at its terminals, phases on a
bench. Among them are what real readings have: gaps, a mistake and its correction, a feature that is on and off.

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


def transfer(cable, f, source_ohm, load, series_ohm=0.0):
    """Voltage at the load over the source's open voltage, exact two-port."""
    r, l, c = CABLES[cable]
    w = 2 * math.pi * f
    z = (r * LENGTH_M + CONTACTS_OHM) + 1j * w * l * LENGTH_M
    y = 1j * w * c * LENGTH_M
    g = cmath.sqrt(z * y)
    a, b, cc = cmath.cosh(g), z * cmath.sinh(g) / g, y * cmath.sinh(g) / g
    end = load + series_ohm
    return load / (a * end + b + source_ohm * (cc * end + a))


def level_db(cable, f, series_ohm=0.0):
    return 20 * math.log10(abs(transfer(cable, f, SOURCE_OHM, load_ohm(f), series_ohm)))


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


def write_totals(draw):
    rows = ["cable,length_m,resistance_mohm,inductance_uH,capacitance_pF,frequency_Hz,repeat"]
    for repeat in (1, 2):
        for cable, (r, l, c) in CABLES.items():
            rows.append("%s,3.00,%.1f,%.3f,%.0f,1000,%d" % (
                cable, 1e3 * (r * LENGTH_M + CONTACTS_OHM) + draw.gauss(0, 0.4), 1e6 * l * LENGTH_M * (1 + draw.gauss(0, 0.003)),
                1e12 * c * LENGTH_M * (1 + draw.gauss(0, 0.004)), repeat))
    write("cables.csv", rows)


def write_impedance():
    rows = ["frequency_Hz;magnitude_ohm;phase_deg"]
    for i in range(121):
        f = 19 * (21000 / 19) ** (i / 120)
        z = load_ohm(f)
        rows.append(("%.2f;%.4f;%.2f" % (f, abs(z), math.degrees(cmath.phase(z)))).replace(".", ","))
    write("loudspeaker-impedance.csv", rows)


def write_responses(draw):
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


def write_later_totals(draw):
    """A third repeat, in which one conductor of pair-1.5mm2 was read instead of the loop, and that reading again."""
    header = "cable,length_m,resistance_mohm,inductance_uH,capacitance_pF,frequency_Hz,repeat"

    def row(cable, part=1.0):
        r, l, c = CABLES[cable]
        return "%s,3.00,%.1f,%.3f,%.0f,1000,3" % (
            cable, part * 1e3 * (r * LENGTH_M + CONTACTS_OHM) + draw.gauss(0, 0.4),
            1e6 * l * LENGTH_M * (1 + draw.gauss(0, 0.003)), 1e12 * c * LENGTH_M * (1 + draw.gauss(0, 0.004)))

    write("cables-third-evening.csv", [header, row("pair-2.5mm2"), row("pair-1.5mm2", 0.5), row("flat-strip")])
    write("pair-1.5mm2-again.csv", [header, row("pair-1.5mm2")])
    write("multimeter.csv", ["cable,length_m,resistance_ohm,instrument", "lamp-flex,3.00,0.25,multimeter"])


def write_phases(draw):
    """At 1 MHz from a generator of 50 ohm into an oscilloscope, of five cables; one has the other sign, one a poor joint."""
    f, load = 1e6, 1 / (1 / 1e6 + 2j * math.pi * 1e6 * 15e-12)
    rows = ["cable,frequency_Hz,phase_deg,rig,instrument,repeat"]
    for repeat in (1, 2):
        for cable in ("pair-4mm2", "pair-2.5mm2", "bell-wire-0.18mm2", "flat-strip", "woven-16-strand"):
            phase_deg = math.degrees(cmath.phase(transfer(cable, f, 50, load))) + draw.gauss(0, 0.05)
            if cable == "woven-16-strand":
                phase_deg -= 1.6
            if (cable, repeat) == ("pair-2.5mm2", 2):
                phase_deg = -phase_deg
            rows.append("%s,%.0f,%.2f,bench,oscilloscope,%d" % (cable, f, phase_deg, repeat))
    write("phases.csv", rows)


def noise_dbv(draw, bands, hum_db):
    """A third-octave analysis of 60 nV per root hertz, with hum at 50, 100 and 150 Hz."""
    hum = {50.0: -92, 100.0: -99, 160.0: -96}
    rows = ["frequency_Hz,level_dBV,bandwidth_Hz"]
    for f in bands:
        bandwidth = f * (10 ** 0.05 - 10 ** -0.05)
        volt2 = 60e-9 ** 2 * bandwidth + (10 ** ((hum[f] + hum_db) / 10) if f in hum else 0)
        rows.append("%g,%.2f,%.4g" % (f, 10 * math.log10(volt2) + draw.gauss(0, 0.3), bandwidth))
    return rows


def write_screen(draw):
    """The screen of the star quad connected and not: noise 4 times each, the response 3 times each; noise of two others."""
    nominal = (1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8)
    bands = [round(10 ** decade * step, 3) for decade in (1, 2, 3, 4) for step in nominal]
    bands = [f for f in bands if 20 <= f <= 20000]
    manifest = ["file,cable,rig,condition,feature,state,repeat"]

    def add(name, rows, *told):
        write(name, rows)
        manifest.append(",".join([name, *map(str, told)]))

    cable = "star-quad-4x1.5mm2"
    for state, hum_db in (("on", -2.5), ("off", 0)):
        for repeat in (1, 2, 3, 4):
            add("noise-star-quad-screen-%s-%d.csv" % (state, repeat), noise_dbv(draw, bands, hum_db), cable, "hall",
                "no signal", "screen connected", state, repeat)
        for repeat in (1, 2, 3):
            offset = draw.gauss(0, 0.004)
            add("response-star-quad-screen-%s-%d.csv" % (state, repeat),
                ["frequency_Hz,level_dB"] + ["%g,%.4f" % (f, level_db(cable, f) + offset + draw.gauss(0, 0.003)) for f in bands],
                cable, "hall", "loudspeaker connected", "screen connected", state, repeat)
    for cable in ("pair-4mm2", "flat-strip"):
        for repeat in (1, 2):
            add("noise-%s-%d.csv" % (cable, repeat), noise_dbv(draw, bands, 0), cable, "hall", "no signal", "", "", repeat)
    write("noise-and-screen.csv", manifest)


def main():
    draw = random.Random(20260502)
    write_totals(draw)
    write_impedance()
    write_responses(draw)
    write_later_totals(draw)
    write_phases(draw)
    write_screen(draw)


if __name__ == "__main__":
    main()
