"""Computes every statistic of a JSON report again, from the campaign file alone, and compares.

    python3 check_report.py CAMPAIGN PLAN REPORT.json

Numbers must agree to 7 significant figures; frequencies at which an extreme stands to 5, since an extreme is flat there.
Prints how many numbers were compared; exit status 1 names each that differs.
"""
import datetime
import json
import math
import sys

import circuit
import exact
import exploration
import looks
import scale
from campaign_file import Campaign


class Comparer:
    def __init__(self):
        self.compared, self.faults = 0, []

    def number(self, where, ours, theirs, digits=7):
        self.compared += 1
        if ours is None or theirs is None or isinstance(ours, (str, bool)):
            fits = ours == theirs
        else:
            fits = abs(ours - theirs) <= 0.5 * 10 ** (1 - digits) * abs(ours) + 1e-12
        if not fits:
            self.faults.append("%s: computed %r, reported %r" % (where, ours, theirs))

    def numbers(self, where, ours, theirs, digits=7):
        self.number(where + " (count)", len(ours), len(theirs))
        for i, (one, other) in enumerate(zip(ours, theirs)):
            self.number("%s[%d]" % (where, i), one, other, digits)


class Study:
    """A plan with its trials and its circuit."""

    def __init__(self, campaign):
        self.campaign, self.plan = campaign, campaign.plan
        self.trials = [t for t in campaign.trials() if t["played"]]
        self.levels = campaign.levels()
        self.two_sided = self.plan["protocol"] != "abx"
        self.level = float(self.plan["level"])
        self.looks = looks.rule_of(self.plan)
        self.claims = [i for i, c in enumerate(self.plan["comparisons"]) if c["kind"] == "claim"]
        self.step_level = self.level / max(1, len(self.claims))
        self.step = float(self.plan["volume_step_dB"] or 0) if self.plan["levels"] == "trimmed" else 0.0
        self.load, self.source_ohm = circuit.Load(campaign.impedance()), campaign.source_ohm()
        self.lines = {s["cable"]: campaign.line(s["cable"]) for s in self.plan["specimens"]}
        self.band = (max(20.0, self.load.band[0]), min(20000.0, self.load.band[1]))

    def of(self, comparison, spoiled=False, late=True):
        return [t for t in self.trials if t["comparison"] == comparison and (spoiled or not t["spoiled"]) and
                (late or not t["late"])]

    def rule_for(self, trials, listener):
        """How these trials were looked at; nothing for controls and for answers that are not the primary ones."""
        looked_at = trials and trials[0]["comparison"] in self.claims and (
            listener == self.primary_listener() or self.plan["primary_test"] == "pooled" and [listener] == self.plan["listeners"])
        return self.looks if looked_at else None

    def tested(self, trials, which="last", listener=None):
        splits, score, rule = [], 0, self.rule_for(trials, listener)
        for trial in trials:
            answers = [a for who, a in trial[which].items() if listener in (None, who)]
            if answers:
                splits.append((answers.count(0), answers.count(1)))
                score += answers.count(trial["coin"])
        p = looks.p_value(splits, score, rule, self.step_level) if rule else exact.redraw_p(splits, score, self.two_sided)
        return {"score": score, "answers": sum(map(sum, splits)), "trials": len(splits), "sizes": list(map(sum, splits)),
                "p": p, "splits": splits, "rule": rule}

    def primary_listener(self):
        return None if self.plan["primary_test"] == "pooled" else self.plan["primary_test"]

    def curve(self, specimen):
        about = self.plan["specimens"][specimen]
        series = float(about["series_resistance_ohm"] or 0)
        line, _ = self.lines[about["cable"]]
        return lambda f: circuit.level_db(line, self.source_ohm, self.load, f, series)

    def attenuation(self, specimen):
        return self.plan["specimens"][specimen]["trim_steps"] * self.step


def check_tested(compare, where, ours, theirs):
    for key in ("score", "answers", "trials"):
        compare.number(where + "." + key, ours[key], theirs["tally"][key])
    compare.number(where + ".p", ours["p"], theirs["p"])


def check_limits(compare, where, study, tested, theirs):
    k, n = tested["score"], tested["answers"]
    compare.number(where + ".share", k / n if n else 0.0, theirs["share"])
    each = study.level / 2 if study.two_sided else study.level
    lower, upper = 0.0, 1.0
    if n and tested["rule"]:
        lower, upper = looks.limits(tested["splits"], k, tested["rule"], study.step_level, each)
    elif n:
        lower, upper = exact.lower_limit(k, n, each), exact.upper_limit(k, n, each)
    compare.number(where + ".lower", lower, theirs["lower"])
    compare.number(where + ".upper", upper, theirs["upper"])


def check_caught(compare, where, study, comparison, sizes, theirs):
    if any(t["looked"] == "stop" for t in study.of(comparison)):  # how long it went on is no part of the design
        sizes = sizes + [max(sizes)] * (study.looks[0][-1] - len(sizes))
    claim = study.plan["comparisons"][comparison]["kind"] == "claim"
    level = study.level / (len(study.claims) if claim else 1)
    need, possible = exact.needed(sizes, level, study.two_sided), sum(sizes)
    supported = lambda p: exact.tail_of_trials(need, sizes, p)
    if study.looks and claim:
        need = looks.power(sizes, study.looks, level, 1.0)[1]
        supported = lambda p: looks.power(sizes, study.looks, level, p)[0]
        found, _, _ = looks.bounds([(size, 0) for size in sizes], study.looks, level, ended=True)
        compare.numbers(where + ".at_looks", list(found.values()), [look["needed_answers"] for look in theirs["at_looks"]])
    compare.number(where + ".trials", len(sizes), theirs["trials"])
    compare.number(where + ".answers", possible, theirs["answers"])
    compare.number(where + ".level", level, theirs["level"])
    compare.number(where + ".needed", need, theirs["needed_answers"])
    share = None if need > possible else \
        exact.root(lambda p: supported(p) - theirs["probability"], 0.0, 1.0)
    compare.number(where + ".share", share, theirs["share"])
    hearing = None if share is None or share < 0.5 or study.two_sided else 2 * share - 1  # a preference is not heard or guessed
    compare.number(where + ".hearing_share", hearing, theirs["hearing_share"])
    effect = float(study.plan["effect_share"])
    compare.number(where + ".at_effect", supported(effect) if need <= possible else 0.0, theirs["probability_at_effect"])


def check_agreement(compare, where, study, comparison, theirs):
    trials = [t for t in study.of(comparison) if len(t["last"]) >= 2]
    if not trials:
        compare.number(where, None, theirs)
        return
    names = [n for n in study.plan["listeners"] if any(n in t["last"] for t in trials)]
    marks = [[t["last"][n] == t["coin"] if n in t["last"] else None for t in trials] for n in names]
    counts = [[sum(a == t["coin"] for a in t["last"].values()), sum(a != t["coin"] for a in t["last"].values())]
              for t in trials]
    both = sum(exact.pairs(sum(row)) for row in counts)
    alike = sum(exact.pairs(row[0]) + exact.pairs(row[1]) for row in counts)
    compare.number(where + ".pairs", both, theirs["pairs"])
    compare.number(where + ".agreeing", alike, theirs["agreeing_pairs"])
    compare.number(where + ".raw", alike / both, theirs["raw"])
    compare.number(where + ".p", exact.agreement_p(marks), theirs["p"])
    scored, answers = sum(r[0] for r in counts), sum(map(sum, counts))
    crowded = max(scored, answers - scored) >= 0.9 * answers
    complete = all(len(t["last"]) == len(names) for t in trials)
    compare.number(where + ".kappa", exact.fleiss_kappa(counts) if complete and not crowded else None,
                   theirs["fleiss_kappa"])


def farthest(values):
    return max(values, key=abs) if values else None


def check_level(compare, where, study, comparison, theirs):
    first, second = (study.plan["comparisons"][comparison][side] for side in ("first", "second"))
    played = {t["sitting"] for t in study.of(comparison, spoiled=True)}
    kept = {key: value for key, value in study.levels.items() if key[0] in played}
    differences = [value - kept[(s, first, c, m)] for (s, specimen, c, m), value in kept.items()
                   if specimen == second and (s, first, c, m) in kept]
    drifts = [value - kept[(s, specimen, c, "start")] for (s, specimen, c, m), value in kept.items()
              if m == "end" and specimen in (first, second) and (s, specimen, c, "start") in kept]
    compare.number(where + ".measured", math.fsum(differences) / len(differences) if differences else None,
                   theirs["measured_dB"])
    compare.number(where + ".largest", farthest(differences), theirs["largest_measured_dB"])
    compare.number(where + ".drift", farthest(drifts), theirs["drift_dB"])
    predicted = circuit.weighted_level_db(study.curve(second), study.band) - \
        circuit.weighted_level_db(study.curve(first), study.band)
    trim = study.attenuation(second) - study.attenuation(first)
    compare.number(where + ".predicted", predicted, theirs["predicted_dB"])
    compare.number(where + ".trim", trim, theirs["trim_dB"])
    compare.number(where + ".as_set", predicted - trim, theirs["predicted_as_set_dB"])
    return trim


def check_extremes(compare, where, function, band, own, theirs):
    (frequency, largest), least, greatest = circuit.extreme(function, band, own)
    compare.number(where + ".largest", largest, theirs["largest_dB"])
    if abs(largest) > 1e-9 and abs(abs(least) - abs(greatest)) > 1e-9:
        compare.number(where + ".frequency", frequency, theirs["frequency_of_largest_Hz"], digits=5)
    compare.number(where + ".rms", math.sqrt(circuit.log_mean(lambda f: function(f) ** 2, band)), theirs["rms_dB"])
    return least, greatest


def check_residual(compare, where, study, comparison, trim, theirs):
    first, second = (study.curve(study.plan["comparisons"][comparison][side]) for side in ("first", "second"))
    own = [p[0] for p in study.load.points]
    least, greatest = check_extremes(compare, where, lambda f: second(f) - first(f) - trim, study.band, own, theirs)
    compare.number(where + ".minimum", least, theirs["minimum_dB"])
    compare.number(where + ".maximum", greatest, theirs["maximum_dB"])


def mean_curve(responses):
    return lambda f: sum(circuit.interpolated(points, f) for points in responses) / len(responses)


def check_measured(compare, where, study, comparison, theirs):
    specimens = [study.plan["specimens"][study.plan["comparisons"][comparison][side]] for side in ("first", "second")]
    if any(s["series_resistance_ohm"] for s in specimens):
        compare.number(where, None, theirs)
        return
    repeats = [study.campaign.responses(s["cable"]) for s in specimens]
    if not all(repeats):
        compare.number(where, None, theirs)
        return
    first, second = mean_curve(repeats[0]), mean_curve(repeats[1])
    ends = [(points[0][0], points[-1][0]) for r in repeats for points in r]
    band = (max([20.0] + [e[0] for e in ends]), min([20000.0] + [e[1] for e in ends]))
    own = [p[0] for r in repeats for points in r for p in points]
    check_extremes(compare, where, lambda f: second(f) - first(f), band, own, theirs)
    compare.number(where + ".weighted",
                   circuit.weighted_level_db(second, band) - circuit.weighted_level_db(first, band),
                   theirs["weighted_level_dB"])
    apart = [other[1] - one[1] for r in repeats for i, a in enumerate(r) for b in r[i + 1:] for one, other in zip(a, b)]
    compare.number(where + ".repeatability", abs(farthest(apart)) if apart else None,
                   None if theirs["repeatability_dB"] is None else abs(theirs["repeatability_dB"]))


def check_resistance(compare, where, study, comparison, theirs):
    spreads = []
    for side in ("first", "second"):
        about = study.plan["specimens"][study.plan["comparisons"][comparison][side]]
        line, spread = study.lines[about["cable"]]
        spreads.append(spread)
        compare.number(where + "." + side, line[0] + float(about["series_resistance_ohm"] or 0),
                       theirs["loop_resistance_%s_ohm" % side])
    compare.number(where + ".spread", max((s for s in spreads if s is not None), default=None), theirs["loop_resistance_spread_ohm"])


RATINGS = ["certain", "fairly sure", "guess"]


def check_explored(compare, where, p, theirs):
    if theirs["p_standard_error"] is None:
        compare.number(where + ".p", p, theirs["p"])


def check_answer_share(compare, where, answers, theirs):
    a, n = answers.count(0), len(answers)
    compare.number(where + ".answers", n, theirs["answers"])
    compare.number(where + ".answers_a", a, theirs["answers_a"])
    compare.number(where + ".bias_p", min(1.0, 2 * exact.tail(max(a, n - a), n, 0.5)), theirs["bias_p"])


def check_roc(compare, where, signal, noise, theirs):
    """Ratings, small for the surest."""
    if not signal or not noise:
        compare.number(where, None, theirs)
        return
    area, p = exploration.roc(signal, noise)
    compare.number(where + ".area", area, theirs["area"])
    check_explored(compare, where, p, theirs)


def check_sureness(compare, where, name, own, theirs):
    rated = [(t["coin"], t["last"][name], RATINGS.index(t["sureness"][name])) for t in own if t["sureness"][name] in RATINGS]
    compare.number(where + ".rated", len(rated), theirs["rated"])
    by_truth = [[place if answer == 0 else 5 - place for coin, answer, place in rated if coin == k] for k in (0, 1)]
    check_roc(compare, where + ".roc", *by_truth, theirs["roc"])
    by_right = [[place for coin, answer, place in rated if (coin == answer) == right] for right in (True, False)]
    check_roc(compare, where + ".surer_when_right", *by_right, theirs["surer_when_right"])


def check_swap_time(compare, where, name, own, theirs):
    times = {0: [], 1: []}
    for t in own:
        if t["started"].get(2) and t["started"].get(3):
            times[t["last"][name]].append(seconds(t["started"][3]) - seconds(t["started"][2]))
    compare.number(where + ".timed", len(times[0]) + len(times[1]), theirs["timed"])
    if not times[0] or not times[1]:
        compare.number(where + ".swap", None, theirs["swap_time"])
        return
    mean = [sum(times[k]) / len(times[k]) for k in (0, 1)]
    for key, value in (("mean_a_s", mean[0]), ("mean_b_s", mean[1]), ("difference_s", mean[0] - mean[1])):
        compare.number(where + "." + key, value, theirs["swap_time"][key])
    check_explored(compare, where + ".swap", exact.mean_difference_p(times[0], times[1]), theirs["swap_time"])


def check_listener(compare, where, trials, theirs):
    name = theirs["listener"]
    own = [t for t in trials if name in t["last"]]
    right = sum(t["last"][name] == t["coin"] for t in own)
    compare.numbers(where + ".d_prime", exploration.d_prime(right, len(own)),
                    [theirs["d_prime"], theirs["d_prime_lower"], theirs["d_prime_upper"]], 6)
    check_answer_share(compare, where, [t["last"][name] for t in own], theirs)
    check_sureness(compare, where, name, own, theirs)
    check_swap_time(compare, where, name, own, theirs)


def check_exploration(compare, where, study, comparison, theirs):
    trials = study.of(comparison)
    shared = [t for t in trials if len(t["last"]) >= 2]
    value, error = exploration.ac1([[sum(a == t["coin"] for a in t["last"].values()), sum(a != t["coin"] for a in t["last"].values())]
                                    for t in shared]) if shared else (None, None)
    compare.number(where + ".ac1", value, theirs["ac1"])
    compare.number(where + ".ac1_error", error, theirs["ac1_standard_error"])
    if study.two_sided:
        compare.number(where + ".listeners", 0, len(theirs["listeners"]))
        return
    names = [n for n in study.plan["listeners"] if any(n in t["last"] for t in trials)]
    compare.number(where + ".listeners", len(names), len(theirs["listeners"]))
    for one in theirs["listeners"]:
        check_listener(compare, where + "." + one["listener"], trials, one)
    if len(names) > 1 and study.plan["attendance"] != "one at a time":
        for key in ("spread", "drift"):
            compare.number(where + "." + key, None, theirs[key])
        return
    marks = [[t["last"][n] == t["coin"] for t in trials if n in t["last"]] for n in names]
    z, p = exploration.spread([(sum(own), len(own)) for own in marks]) or (None, None)
    if len(names) > 1:
        compare.number(where + ".tarone_z", z, theirs["spread"]["tarone_z"])
        check_explored(compare, where + ".spread", p, theirs["spread"])
    else:
        compare.number(where + ".spread", None, theirs["spread"])
    total, expected, p = exploration.drift(marks)
    compare.number(where + ".sum", total, theirs["drift"]["sum"])
    compare.number(where + ".expected", expected, theirs["drift"]["expected"])
    check_explored(compare, where + ".drift", p, theirs["drift"])


def check_answer_shares(compare, study, theirs):
    own = {name: [t["last"][name] for i in range(len(study.plan["comparisons"])) for t in study.of(i) if name in t["last"]]
           for name in study.plan["listeners"]}
    names = [] if study.two_sided else [name for name in own if own[name]]
    compare.number("answer_shares", len(names), len(theirs))
    for name, one in zip(names, theirs):
        compare.number("answer_shares.listener", name, one["listener"])
        check_answer_share(compare, "answer_shares." + name, own[name], one)


def check_scale(compare, study, theirs):
    """Estimated scales: worths, errors, and the pairs. The error of its own and the simulated p are compared with R elsewhere."""
    titles = [s["cable"] + (" + %s ohm" % s["series_resistance_ohm"] if s["series_resistance_ohm"] else "")
              for s in study.plan["specimens"]]
    counts = {}
    for i in study.claims:
        comparison = study.plan["comparisons"][i]
        pair = [titles[comparison["first"]], titles[comparison["second"]]]
        for trial in study.of(i):
            first, second = pair[trial["sides"][0]], pair[trial["sides"][1]]
            for answer in trial["last"].values():
                for_first = (answer == trial["coin"]) == (trial["sides"][0] == 0)
                counts.setdefault((first, second), [0, 0])[0 if for_first else 1] += 1
    if not study.two_sided or len(study.claims) < 2:
        compare.number("scale", None, theirs)
        return
    names = [cable["title"] for cable in theirs["cables"]]
    compare.number("scale.first", study.plan["baseline"], names[0])
    compare.number("scale.answers", sum(map(sum, counts.values())), theirs["answers"])
    rows = [(names.index(a), names.index(b), *wins) for (a, b), wins in counts.items()]
    worths, errors, order, order_error, pairs = scale.scale(rows, len(names))
    compare.numbers("scale.worth", worths, [cable["worth"] for cable in theirs["cables"]])
    compare.numbers("scale.error", errors, [cable["standard_error"] for cable in theirs["cables"]])
    compare.number("scale.order", order, theirs["order_effect"])
    compare.number("scale.order_error", order_error, theirs["order_effect_standard_error"])
    compare.numbers("scale.differences", [pair[2] for pair in pairs], [pair["difference"] for pair in theirs["pairs"]])
    compare.numbers("scale.p", [pair[3] for pair in pairs], [pair["p_adjusted"] for pair in theirs["pairs"]], 6)


def check_comparison(compare, study, theirs):
    i = theirs["comparison"]
    where, listener = "comparison %d" % i, study.primary_listener()
    primary = study.tested(study.of(i), listener=listener)
    check_tested(compare, where + ".primary", primary, theirs["primary"])
    check_limits(compare, where + ".limits", study, primary, theirs["limits"])
    check_caught(compare, where + ".caught", study, i, primary["sizes"], theirs["would_have_been_caught"])
    check_tested(compare, where + ".with_spoiled", study.tested(study.of(i, spoiled=True), listener=listener),
                 theirs["with_spoiled"])
    check_tested(compare, where + ".without_spoiled", study.tested(study.of(i, late=False), listener=listener),
                 theirs["without_spoiled"])
    if any(t["first"].get(n) != t["last"].get(n) for t in study.of(i) for n in t["first"] if listener in (None, n)):
        check_tested(compare, where + ".first_answers", study.tested(study.of(i), "first", listener), theirs["first_answers"])
    else:
        compare.number(where + ".first_answers", None, theirs["first_answers"])
    for one in theirs["listeners"]:
        tested = study.tested(study.of(i), listener=one["listener"])
        check_tested(compare, where + "." + one["listener"], tested, one["tested"])
        check_limits(compare, where + "." + one["listener"], study, tested, one["limits"])
        k, n = tested["score"], tested["answers"]
        sign = min(1.0, 2 * exact.tail(max(k, n - k), n, 0.5)) if study.two_sided else None
        compare.number(where + "." + one["listener"] + ".sign_test", sign, one["sign_test_p"])
    check_agreement(compare, where + ".agreement", study, i, theirs["agreement"])
    trim = check_level(compare, where + ".level", study, i, theirs["level"])
    check_residual(compare, where + ".residual", study, i, trim, theirs["predicted_residual"])
    check_measured(compare, where + ".measured", study, i, theirs["measured"])
    check_resistance(compare, where + ".resistance", study, i, theirs)
    check_exploration(compare, where + ".exploration", study, i, theirs["exploration"])


def check_families(compare, study, report):
    found = {c["comparison"]: c for c in report["comparisons"]}
    p = [found[i]["primary"]["p"] for i in study.claims]
    for i, adjusted in zip(study.claims, exact.holm(p)):
        compare.number("comparison %d.p_adjusted" % i, adjusted, found[i]["p_adjusted"])
    tests = [(i, n) for i in study.claims for n in range(len(found[i]["listeners"]))]
    for (i, n), adjusted in zip(tests, exact.holm([found[i]["listeners"][n]["tested"]["p"] for i, n in tests])):
        compare.number("comparison %d.listener %d.p_adjusted" % (i, n), adjusted, found[i]["listeners"][n]["p_adjusted"])


def values_of(study, found, measure, sign):
    """x of one correlation: the difference of each comparison's cables, second less first or its size."""
    first, second = (study.plan["comparisons"][found["comparison"]][side] for side in ("first", "second"))

    def total(specimen, index):
        about = study.plan["specimens"][specimen]
        return study.lines[about["cable"]][0][index] + (float(about["series_resistance_ohm"] or 0) if index == 0 else 0)

    measured, residual = found["measured"] or {}, found["predicted_residual"] or {}
    value = {"loop resistance, ohm": lambda: total(second, 0) - total(first, 0),
             "inductance, uH": lambda: 1e6 * (total(second, 1) - total(first, 1)),
             "capacitance, pF": lambda: 1e12 * (total(second, 2) - total(first, 2)),
             "predicted level with the trims as set, dB": lambda: found["level"]["predicted_as_set_dB"],
             "largest predicted residual, dB": lambda: residual["largest_dB"],
             "r.m.s. predicted residual, dB": lambda: residual["rms_dB"],
             "level at the load's terminals, dB": lambda: found["level"]["measured_dB"],
             "largest measured deviation, dB": lambda: measured["largest_dB"],
             "r.m.s. measured deviation, dB": lambda: measured["rms_dB"],
             "weighted measured deviation, dB": lambda: measured["weighted_level_dB"]}[measure]()
    return sign(value)


def check_correlations(compare, study, report):
    found = {c["comparison"]: c for c in report["comparisons"]}
    all_p = []
    for one in report["correlations"]:
        where = "correlation with " + one["measure"]
        # Where all comparisons share a benchmark, a preference is counted for the other cable, less the benchmark.
        other = one["outcome"].startswith("share for the cable set against")
        sign = abs if one["against"] == "absolute difference" else (lambda v: v) if other else (lambda v: -v)
        x = [values_of(study, found[i], one["measure"], sign) for i in one["comparisons"]]
        y = [1 - found[i]["limits"]["share"] if other else found[i]["limits"]["share"] for i in one["comparisons"]]
        compare.numbers(where + ".x", x, one["x"])
        compare.numbers(where + ".y", y, one["y"])
        rho, p, attainable = exact.spearman([round(v, 9) for v in one["x"]], y)
        compare.number(where + ".rho", rho, one["rho"])
        compare.number(where + ".p", p, one["p"])
        compare.number(where + ".smallest_attainable_p", attainable, one["smallest_attainable_p"])
        first_step = study.level / len(report["correlations"])
        reachable = attainable is not None and attainable <= first_step * (1 + 1e-12)
        ties = [round(v, 9) for v in one["x"]]
        compare.number(where + ".rho_needed", exact.smallest_significant_rho(ties, y, first_step) if reachable else None,
                       one["rho_needed"])
        compare.number(where + ".rho_needed_is_exact", True, one["rho_needed_is_exact"])
        all_p.append(p)
    for one, adjusted in zip(report["correlations"], exact.benjamini_hochberg(all_p)):
        compare.number("correlation with " + one["measure"] + ".p_adjusted", adjusted, one["p_adjusted"])


def seconds(written):
    """Of a time of day on paper, or of the time that a live sitting kept."""
    if "T" in written:
        return datetime.datetime.fromisoformat(written.replace("Z", "+00:00")).timestamp()
    hours, minutes, rest = written.split(":")
    return 3600 * int(hours) + 60 * int(minutes) + int(rest)


def pace_samples(study):
    places, longest = {}, study.plan["swap_seconds"] + study.plan["presentation_seconds"] + 3  # handwriting
    overruns = 0
    for i in range(len(study.plan["comparisons"])):
        for trial in study.of(i, spoiled=True):
            for at in range(1, len(trial["sides"])):
                if trial["started"].get(at) and trial["started"].get(at + 1):
                    between = seconds(trial["started"][at + 1]) - seconds(trial["started"][at])
                    same = trial["sides"][at] == trial["sides"][at - 1]
                    places.setdefault(at, ([], []))[0 if same else 1].append(float(between))
                    overruns += between > longest
    compared = [places[at] for at in sorted(places) if all(places[at])]
    return [v for p in compared for v in p[0]], [v for p in compared for v in p[1]], overruns


def check_pace(compare, study, theirs):
    same, changed, overruns = pace_samples(study)
    compare.number("pace.same", len(same), theirs["same"])
    compare.number("pace.changed", len(changed), theirs["changed"])
    compare.number("pace.overruns", overruns, theirs["overruns"])
    if not same or not changed:
        return
    mean = [sum(v) / len(v) for v in (same, changed)]
    var = [sum((x - m) ** 2 for x in v) / max(1, len(v) - 1) / len(v) for v, m in zip((same, changed), mean)]
    compare.number("pace.mean_same", mean[0], theirs["mean_same_s"])
    compare.number("pace.mean_changed", mean[1], theirs["mean_changed_s"])
    compare.number("pace.difference", mean[1] - mean[0], theirs["difference_s"])
    compare.number("pace.p", exact.mean_difference_p(changed, same), theirs["p"])
    if min(len(same), len(changed)) < 2:
        compare.number("pace.lower", None, theirs["lower_s"])
        return
    df = sum(var) ** 2 / sum(v * v / (len(s) - 1) for v, s in zip(var, (same, changed)))
    half = exact.t_quantile(0.975, df) * math.sqrt(sum(var))
    compare.number("pace.lower", mean[1] - mean[0] - half, theirs["lower_s"])
    compare.number("pace.upper", mean[1] - mean[0] + half, theirs["upper_s"])


def main():
    file, plan, report_file = sys.argv[1:4]
    with open(report_file, encoding="utf-8") as stream:
        report = json.load(stream)
    study, compare = Study(Campaign(file, plan)), Comparer()
    for found in report["comparisons"]:
        check_comparison(compare, study, found)
    check_families(compare, study, report)
    check_correlations(compare, study, report)
    check_answer_shares(compare, study, report["answer_shares"])
    check_scale(compare, study, report["preference_scale"])
    check_pace(compare, study, report["pace"])
    for fault in compare.faults:
        print(fault)
    print("%s: %d numbers compared, %d differ" % (plan, compare.compared, len(compare.faults)))
    return 1 if compare.faults or compare.compared < 60 else 0


if __name__ == "__main__":
    sys.exit(main())
