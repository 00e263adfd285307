"""A campaign file read with Python's own sqlite3: plan, events, scored trials, readings. Shares nothing with the program.

Commitments, hash chains and canonical texts are verified on the way; anything that does not fit raises ValueError.
"""
import csv
import hashlib
import io
import json
import sqlite3

import circuit
import order


def need(condition, words):
    if not condition:
        raise ValueError(words)


class Campaign:
    def __init__(self, file, plan_name):
        self.db = sqlite3.connect("file:%s?mode=ro" % file, uri=True)
        row = self.db.execute("SELECT number, text, seed, commitment FROM plan WHERE name = ?", (plan_name,)).fetchone()
        self.plan_number, text, self.seed, commitment = row
        self.plan = json.loads(text)
        need(order.canonical(self.plan) == text.encode(), "the plan's text is not canonical")
        need(hashlib.sha256(text.encode() + self.seed).digest() == commitment, "the commitment does not fit")
        self.commitment = commitment.hex()
        self.head_of = {}
        self.events = {n: self.read_chain(n) for n in range(len(self.plan["sittings"]) + 1)}
        unsealed = [e for e in self.events[0] if e["type"] == "unsealed"]
        need(len(unsealed) == 1, "the plan is not unsealed")
        need(unsealed[0]["text"].split() == [self.seed.hex()] + [self.head_of[n] for n in range(1, len(self.events))],
             "what was disclosed does not fit seed and heads")

    def read_chain(self, sitting):
        head = hashlib.sha256(("%s/%d" % (self.commitment, sitting)).encode()).digest()
        events = []
        rows = self.db.execute("SELECT number, text, head FROM event WHERE plan = ? AND sitting = ? ORDER BY number",
                               (self.plan_number, sitting))
        for place, (number, text, kept) in enumerate(rows):
            event = json.loads(text)
            need(number == place + 1 and order.canonical(event) == text.encode(), "event %d is not canonical" % number)
            head = hashlib.sha256(head + text.encode()).digest()
            need(head.hex() == kept, "event %d of sitting %d does not fit the chain" % (number, sitting))
            events.append(event)
        self.head_of[sitting] = head.hex()
        return events

    def trials(self):
        """Every trial of every sitting with its truth: a list of dictionaries."""
        scored = []
        for sitting in range(1, len(self.plan["sittings"]) + 1):
            scored += self.trials_of(sitting)
        return scored

    def trials_of(self, sitting):
        events = self.events[sitting]
        if not any(e["type"] == "began" for e in events):
            return []
        attending = [self.plan["listeners"][i] for i in self.plan["sittings"][sitting - 1]["listeners"]]
        added = {e["who"]: e["text"] for e in events if e["type"] == "contributed"}
        drawn = order.order(self.plan, self.seed, [added.get(name, "") for name in attending], sitting)
        self.tag_to_specimen = getattr(self, "tag_to_specimen", {})
        self.tag_to_specimen[sitting] = {tag: specimen for specimen, tag in drawn["tags"]}
        words = {"abx": ["A", "B"], "preference": ["first", "second"]}[self.plan["protocol"]]
        trials = drawn["trials"]
        for trial in trials:
            trial.update(sitting=sitting, first={}, last={}, missing=[], spoiled=False, late=False, started={}, looked="",
                         sureness={})
        for event in events:
            trial = trials[event["trial"] - 1] if "trial" in event else None
            if event["type"] in ("answered", "corrected"):
                trial["first"].setdefault(event["who"], words.index(event["word"]))
                trial["last"][event["who"]] = words.index(event["word"])
                trial["sureness"][event["who"]] = event.get("sureness", "")
            elif event["type"] == "missing":
                trial["missing"].append(event["who"])
                trial["last"].pop(event["who"], None)  # an answer withdrawn
            elif event["type"] == "spoiled":
                trial["late" if event.get("flag") else "spoiled"] = True
            elif event["type"] == "looked":
                trial["looked"] = event["word"]
            elif event["type"] == "presented":
                need(event["tag"] == trial["tags"][event["presentation"] - 1], "a recorded tag is not that of the order")
                trial["started"][event["presentation"]] = event.get("text", "")
        length = self.plan["sittings"][sitting - 1]["trials_each"] + self.plan["spares_each"]
        for trial in trials:
            block = trials[(trial["number"] - 1) // length * length:trial["number"] - 1]
            spare_place = max(0, (trial["number"] - 1) % length - self.plan["sittings"][sitting - 1]["trials_each"] + 1)
            stopped = any(t["looked"] == "stop" for t in block)
            trial["played"] = not stopped and sum(t["spoiled"] for t in block) >= spare_place
        return trials

    def levels(self):
        """Terminal levels: (sitting, specimen, channel, moment, dB), the last of each moment."""
        last = {}
        for sitting, events in self.events.items():
            for event in events:
                if event["type"] == "terminal level":
                    key = (sitting, self.tag_to_specimen[sitting][event["tag"]], event["who"], event["word"])
                    last[key] = float(event["text"].split()[0])  # with its unit
        return last

    def table(self, sha256):
        (text,) = self.db.execute("SELECT text FROM source WHERE sha256 = ?", (sha256,)).fetchone()
        need(hashlib.sha256(text).hexdigest() == sha256, "an imported file does not fit its checksum")
        lines = [line for line in text.decode("utf-8-sig").splitlines() if line.strip() and not line.startswith("#")]
        separator = next(s for s in "\t;," if s in lines[0])
        rows = list(csv.DictReader(io.StringIO("\n".join(lines)), delimiter=separator))
        if separator == ";":
            rows = [{key: value.replace(",", ".") for key, value in row.items()} for row in rows]
        return rows

    def built(self, cable):
        """Its construction, attribute to value as typed."""
        (text,) = self.db.execute("SELECT construction FROM cable WHERE name = ?", (cable,)).fetchone()
        return dict(json.loads(text))

    def counting(self, kind, rig, cable):
        """Checksum and repeat of a cable's readings that are not superseded, none in a state of a feature."""
        return self.db.execute(
            "SELECT sha256, repeat FROM reading WHERE kind = ? AND coalesce(rig, '') = ? AND cable = ? AND feature = '' "
            "AND number NOT IN (SELECT reading FROM correction) ORDER BY number", (kind, rig, cable)).fetchall()

    def line(self, cable):
        """Loop R, L, C in all and the length if it is a pair of round conductors, else None; the spread of R.

        Means over the repeats of the per-cable tables; one without repeats has a row a cable. A pair's L is
        carried to direct current.
        """
        values = []
        for sha256, repeat in self.counting("cable-lcr", "", cable):
            (row,) = [row for row in self.table(sha256)
                      if row["cable"] == cable and int(row.get("repeat") or repeat) == repeat]
            values.append((float(row["resistance_mohm"]) * 1e-3, float(row["inductance_uH"]) * 1e-6,
                           float(row["capacitance_pF"]) * 1e-12, float(row["length_m"]), float(row["frequency_Hz"])))
        means = [sum(v[i] for v in values) / len(values) for i in range(4)]
        geometry = self.built(cable).get("geometry", "")
        need(geometry not in ("coax", "coaxial"), "the skin effect of coaxial cables is not computed here")
        if geometry in ("pair", "parallel pair", "twisted pair", "solid pair"):
            means[1] = sum(circuit.inductance_of_direct_current(v[1], means[0] / means[3], means[3], v[4])
                           for v in values) / len(values)
        else:
            means[3] = None
        resistances = [v[0] for v in values]
        return means, max(resistances) - min(resistances) if len(values) > 1 else None

    def impedance(self):
        rows = self.db.execute("SELECT sha256 FROM reading WHERE kind = 'impedance' AND rig = ? ORDER BY number",
                               (self.plan["rig"],)).fetchall()
        return [(float(r["frequency_Hz"]), float(r["magnitude_ohm"]), float(r["phase_deg"])) for r in self.table(rows[-1][0])]

    def responses(self, cable):
        return [[(float(r["frequency_Hz"]), float(r["level_dB"])) for r in self.table(sha256)]
                for sha256, _ in self.counting("response", self.plan["rig"], cable)]

    def source_ohm(self):
        return float(self.db.execute("SELECT source_resistance_ohm FROM rig WHERE name = ?", (self.plan["rig"],)).fetchone()[0])
