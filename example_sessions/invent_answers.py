"""Invents what simulated listeners and a helper wrote on paper in the example's sittings.

    blindswap show PLAN | python3 invent_answers.py PLAN

The listeners are simulated: each hears a comparison with a stated probability in a trial and guesses otherwise. Their
answers must fit the order, so the order is derived here from the supplied seed and the characters, by the
independent program under tests/. Run by hand when a plan of the example changes; the results lie in recorded/.
"""
import json
import os
import random
import sys

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(HERE, "..", "tests", "independent"))
import invent_readings as readings  # noqa: E402
import order  # noqa: E402

SEEDS = {"loop-listening": "5eed" * 16, "which-we-like": "1abe" * 16}
CHARACTERS = {("loop-listening", 1): {"Ada": "tern7", "Bela": "quill", "Cleo": "0xford"},
              ("loop-listening", 2): {"Ada": "plum", "Bela": "42nd", "Cleo": "moss!"},
              ("which-we-like", 1): {"Ada": "wren", "Bela": "rope3", "Cleo": "ivy"}}
# Probability of hearing the difference in a trial, per second specimen; all others are guesses.
HEARS = {"bell-wire-0.18mm2": {"Ada": 0.80, "Bela": 0.72, "Cleo": 0.55}, "pair-0.75mm2": {"Ada": 0.15, "Bela": 0, "Cleo": 0.1},
         "pair-4mm2 + 0.47 ohm": {"Ada": 0.85, "Bela": 0.75, "Cleo": 0.7}}
# Probability of preferring the comparison's first cable.
PREFERS = {"bell-wire-0.18mm2": {"Ada": 0.85, "Bela": 0.75, "Cleo": 0.70}, "flat-strip": {"Ada": 0.5, "Bela": 0.5, "Cleo": 0.5},
           "star-quad-4x1.5mm2": {"Ada": 0.55, "Bela": 0.45, "Cleo": 0.5}}
SPOILED = {("loop-listening", 1): {7: ("helper", "interruption", "a delivery at the door")},
           ("loop-listening", 2): {40: ("Bela", "other", "a chair fell over")}}
MISSING = {("loop-listening", 2): {(12, "Cleo")}}
SAY_HOW_SURE = {("loop-listening", 2): ("Ada", "Bela")}
MISREAD = {("loop-listening", 1): {(20, "Bela")}}  # the first entry read this one wrongly


def title(specimen):
    ohm = specimen["series_resistance_ohm"]
    return specimen["cable"] + (" + %s ohm" % ohm if ohm else "")


def write(plan, sitting, what, lines):
    os.makedirs(os.path.join(HERE, "recorded"), exist_ok=True)
    with open(os.path.join(HERE, "recorded", "%s-%d-%s.csv" % (plan["name"], sitting, what)), "w", newline="\n") as file:
        file.write("# Invented: simulated listeners, nobody listened.\n" + "\n".join(lines) + "\n")


def answer(plan, draw, trial, listener, specimens):
    second = title(specimens[plan["comparisons"][trial["comparison"]]["second"]])
    words = ("A", "B") if plan["protocol"] == "abx" else ("first", "second")
    if plan["protocol"] == "abx":
        hears = draw.random() < HEARS.get(second, {}).get(listener, 0)
        return words[trial["coin"] if hears else draw.randrange(2)]
    return words[trial["coin"] if draw.random() < PREFERS[second][listener] else 1 - trial["coin"]]


def played(plan, trials, spoiled):
    """The trials that are played: planned ones, and a spare for each one spoiled before it in its comparison."""
    numbers = []
    for trial in trials:
        if trial["spare"]:
            block = [t for t in trials if t["comparison"] == trial["comparison"] and t["number"] < trial["number"]]
            place = sum(t["spare"] for t in block) + 1
            if sum(t["number"] in spoiled for t in block) < place:
                continue
        numbers.append(trial)
    return numbers


def rated_answers(key, plan, trials, listeners, rows):
    """A row for each answer, with how sure the listener was: surer where there is more to hear, and not always said."""
    draw, lines = random.Random("%s/%d/sureness" % key), ["trial,listener,answer,sureness"]
    for trial, row in zip(trials, rows):
        second = title(plan["specimens"][plan["comparisons"][trial["comparison"]]["second"]])
        for listener, given in zip(listeners, row.split(",")[1:]):
            hears = draw.random() < HEARS.get(second, {}).get(listener, 0)
            level = draw.choices(("certain", "fairly sure", "guess", ""), (5, 3, 1, 1) if hears else (1, 3, 8, 1))[0]
            lines.append("%d,%s,%s,%s" % (trial["number"], listener, given,
                                          level if listener in SAY_HOW_SURE[key] and given != "-" else ""))
    return lines


def levels_of(plan, tags, draw):
    rows = ["tag,channel,when,level_dBV"]
    for specimen, tag in tags:
        about = plan["specimens"][specimen]
        level = 6.02 + readings.pink_level_db(about["cable"], float(about["series_resistance_ohm"] or 0))
        level -= about["trim_steps"] * float(plan["volume_step_dB"])
        for channel in ("left", "right"):
            for when in ("start", "end"):
                rows.append("%d,%s,%s,%.3f" % (tag, channel, when, level + draw.gauss(0, 0.004)))
    return rows


def clock(seconds):
    return "%02d:%02d:%02d" % (seconds // 3600, seconds // 60 % 60, seconds % 60)


def times_of(plan, trials, draw):
    rows, now = ["trial,presentation,started"], 14 * 3600 + 5 * 60
    for count, trial in enumerate(trials):
        if count and count % plan["block_trials"] == 0:
            now += 60 * plan["break_minutes"]
        for presentation in range(len(trial["sides"])):
            rows.append("%d,%d,%s" % (trial["number"], presentation + 1, clock(now)))
            now += plan["swap_seconds"] + plan["presentation_seconds"] + (2 if draw.random() < 0.03 else 0)
    return rows


def invent(plan, sitting):
    key = (plan["name"], sitting)
    draw = random.Random("%s/%d" % key)
    listeners = [plan["listeners"][i] for i in plan["sittings"][sitting - 1]["listeners"]]
    drawn = order.order(plan, bytes.fromhex(SEEDS[plan["name"]]), [CHARACTERS[key][l] for l in listeners], sitting)
    spoiled = SPOILED.get(key, {})
    first, second = (["trial," + ",".join(listeners)] for _ in range(2))
    trials = played(plan, drawn["trials"], spoiled)
    for trial in trials:
        if trial["number"] in spoiled:
            continue
        kept = []
        for listener in listeners:
            given = answer(plan, draw, trial, listener, plan["specimens"])
            kept.append("-" if (trial["number"], listener) in MISSING.get(key, ()) else given)
        second.append("%d,%s" % (trial["number"], ",".join(kept)))
        for i, listener in enumerate(listeners):
            if (trial["number"], listener) in MISREAD.get(key, ()):
                kept[i] = "B" if kept[i] == "A" else "A"
        first.append("%d,%s" % (trial["number"], ",".join(kept)))
    answered = [t for t in trials if t["number"] not in spoiled]
    write(plan, sitting, "answers",
          rated_answers(key, plan, answered, listeners, first[1:]) if key in SAY_HOW_SURE else first)
    write(plan, sitting, "answers-second-entry", second)
    write(plan, sitting, "levels", levels_of(plan, drawn["tags"], draw))
    if sitting == 1:
        write(plan, sitting, "times", times_of(plan, trials, draw))
    if spoiled:
        write(plan, sitting, "spoiled", ["trial,by,reason,words"] + ["%d,%s,%s,%s" % (n, *w) for n, w in spoiled.items()])


def main():
    plan = json.loads(sys.stdin.readline())
    for sitting in range(1, len(plan["sittings"]) + 1):
        invent(plan, sitting)


if __name__ == "__main__":
    main()
