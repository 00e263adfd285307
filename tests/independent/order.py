"""The order of a sitting, derived again from plan, seed and the listeners' characters alone.

Plain Python 3, written from the published rules and the C++ standard ([rand.util.seedseq], [rand.eng.mers]); it shares
nothing with the program. Run as a program it reads one JSON object a line from standard input, {"plan": ..., "seed":
hex, "characters": [...], "sitting": n}, and prints each order as one line of JSON.
"""
import hashlib
import json
import sys

MASK32, MASK64 = 0xFFFFFFFF, 0xFFFFFFFFFFFFFFFF


def seed_seq(words, count):
    """std::seed_seq::generate."""
    b, s = [0x8B8B8B8B] * count, len(words)
    t = 11 if count >= 623 else 7 if count >= 68 else 5 if count >= 39 else 3 if count >= 7 else (count - 1) // 2
    p = (count - t) // 2
    q = p + t
    m = max(s + 1, count)

    def mix(x):
        return x ^ (x >> 27)

    for k in range(m):
        r1 = 1664525 * mix(b[k % count] ^ b[(k + p) % count] ^ b[(k - 1) % count]) & MASK32
        r2 = (r1 + (s if k == 0 else k % count + words[k - 1] if k <= s else k % count)) & MASK32
        b[(k + p) % count] = (b[(k + p) % count] + r1) & MASK32
        b[(k + q) % count] = (b[(k + q) % count] + r2) & MASK32
        b[k % count] = r2
    for k in range(m, m + count):
        r3 = 1566083941 * mix((b[k % count] + b[(k + p) % count] + b[(k - 1) % count]) & MASK32) & MASK32
        r4 = (r3 - k % count) & MASK32
        b[(k + p) % count] ^= r3
        b[(k + q) % count] ^= r4
        b[k % count] = r4
    return b


class Draw:
    """mt19937_64 seeded by 32 bytes read as eight little-endian words."""

    def __init__(self, seed):
        words = [int.from_bytes(seed[i:i + 4], "little") for i in range(0, 32, 4)]
        low_high = seed_seq(words, 624)
        self.x = [low_high[2 * i] | low_high[2 * i + 1] << 32 for i in range(312)]
        if self.x[0] >> 31 == 0 and not any(self.x[1:]):
            self.x[0] = 1 << 63
        self.at = 312

    def word(self):
        x = self.x
        if self.at == 312:
            for i in range(312):
                y = (x[i] & ~0x7FFFFFFF) | (x[(i + 1) % 312] & 0x7FFFFFFF)
                x[i] = x[(i + 156) % 312] ^ (y >> 1) ^ (0xB5026F5AA96619E9 if y & 1 else 0)
            self.at = 0
        z = x[self.at]
        self.at += 1
        z ^= (z >> 29) & 0x5555555555555555
        z ^= (z << 17) & 0x71D67FFFEDA60000
        z ^= (z << 37) & 0xFFF7EEE000000000 & MASK64
        return z ^ (z >> 43)

    def coin(self):
        return self.word() >> 63

    def below(self, bound):
        limit = (1 << 64) // bound * bound
        while True:
            word = self.word()
            if word < limit:
                return word % bound

    def shuffle(self, values):
        for i in range(len(values) - 1, 0, -1):
            j = self.below(i + 1)
            values[i], values[j] = values[j], values[i]


def canonical(value):
    """RFC 8785 on objects with ASCII keys, arrays, booleans, strings and integers."""
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def order_seed(seed, characters, sitting):
    return hashlib.sha256(seed + canonical(characters) + str(sitting).encode()).digest()


def order(plan, seed, characters, sitting):
    """Tags by the plan's specimen, and the trials with what each presentation connects."""
    part = plan["sittings"][sitting - 1]
    pairs, specimens = [], []
    for index in part["comparisons"]:
        comparison = plan["comparisons"][index]
        for specimen in (comparison["first"], comparison["second"]):
            if specimen not in specimens:
                specimens.append(specimen)
        pairs.append((comparison["first"], comparison["second"]))
    draw = Draw(order_seed(seed, characters, sitting))
    tags = []
    for _ in specimens:
        tag = 100 + draw.below(900)
        while tag in tags:
            tag = 100 + draw.below(900)
        tags.append(tag)
    tag_of = dict(zip(specimens, tags))
    blocks = list(range(len(pairs)))
    draw.shuffle(blocks)
    trials = []
    for block in blocks:
        a_is_second = draw.coin() if plan["order_rule"] == "abx-1" else None
        for i in range(part["trials_each"] + plan["spares_each"]):
            number, coin = len(trials) + 1, draw.coin()
            if plan["order_rule"] == "abx-1":
                a, b = a_is_second, 1 - a_is_second
                x = b if coin else a
                sides = [a, b, x] if number % 2 else [b, a, x]
            else:
                sides = [coin, 1 - coin]
            trials.append({"number": number, "comparison": part["comparisons"][block], "coin": coin,
                           "spare": i >= part["trials_each"], "sides": sides,
                           "tags": [tag_of[pairs[block][side]] for side in sides]})
    return {"tags": [[specimen, tag_of[specimen]] for specimen in specimens], "trials": trials}


if __name__ == "__main__":
    for line in sys.stdin:
        task = json.loads(line)
        print(json.dumps(order(task["plan"], bytes.fromhex(task["seed"]), task["characters"], task["sitting"])))
