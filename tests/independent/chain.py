"""The events of a plan and its sittings, checked from an account of them alone.

Plain Python 3, sharing nothing with the program but the rules: SHA-256 (FIPS 180-4), RFC 8785 on the sealed subset, and
order.py beside it. Reads one JSON object a line from standard input, {"plan": canonical text, "seed": hex, "commitment":
hex, "chains": [[[event text, head hex], ...] of the plan itself, then of each sitting]}, and prints for each a line: "ok"
with the number of events and the last head of each chain, or what is wrong first.
"""
import hashlib
import json
import sys

from order import canonical, order


def expect(holds, what):
    if not holds:
        raise ValueError(what)


def follow(chain, commitment, sitting):
    """The events of one chain, each in canonical form and hashed on to the one before."""
    head, events = hashlib.sha256(f"{commitment}/{sitting}".encode()).digest(), []
    for number, (text, head_hex) in enumerate(chain, 1):
        at = f"sitting {sitting}, event {number}: "
        event = json.loads(text)
        expect(canonical(event) == text.encode(), at + "not in canonical form")
        head = hashlib.sha256(head + text.encode()).digest()
        expect(head.hex() == head_hex, at + "does not fit the chain")
        events.append(event)
    return events, head.hex()


def check_presentations(events, plan, seed, sitting):
    """Every tag presented is the one that plan, seed and the listeners' characters give."""
    added = {event["who"]: event["text"] for event in events if event["type"] == "contributed"}
    names = [plan["listeners"][i] for i in plan["sittings"][sitting - 1]["listeners"]]
    drawn = order(plan, seed, [added.get(name, "") for name in names], sitting)
    for event in events:
        if event["type"] == "presented":
            expected = drawn["trials"][event["trial"] - 1]["tags"][event["presentation"] - 1]
            expect(event["tag"] == expected, f"sitting {sitting}, trial {event['trial']}: another tag was presented")


def check(account):
    plan, seed = json.loads(account["plan"]), bytes.fromhex(account["seed"])
    expect(canonical(plan) == account["plan"].encode(), "the plan is not in canonical form")
    expect(hashlib.sha256(account["plan"].encode() + seed).hexdigest() == account["commitment"],
           "plan and seed do not give the commitment")
    story, head = follow(account["chains"][0], account["commitment"], 0)
    expect(story[0]["type"] == "sealed" and story[0]["text"] == account["commitment"], "another plan was sealed")
    heads = [head]
    for sitting, chain in enumerate(account["chains"][1:], 1):
        events, head = follow(chain, account["commitment"], sitting)
        check_presentations(events, plan, seed, sitting)
        heads.append(head)
    disclosed = [event["text"] for event in story if event["type"] == "unsealed"]
    expect(disclosed == [" ".join([account["seed"]] + heads[1:])], "something else was disclosed at unsealing")
    return " ".join(["ok", str(sum(map(len, account["chains"])))] + heads)


if __name__ == "__main__":
    for line in sys.stdin:
        try:
            print(check(json.loads(line)))
        except ValueError as error:
            print(error)
