"""Checks an exported job by the recipe of RECORD.md, with Python's own libraries and nothing of the program.

    python3 check_export.py EXPORT.json [CODE FINGERPRINT]

Prints what was found; exit 1 with the first thing that is wrong. Ed25519 is written out below after RFC 8032, section 5.1,
so that nothing has to be installed; where the library `cryptography` is there, it must say the same.
"""

import hashlib
import json
import sys

P = 2**255 - 19
Q = 2**252 + 27742317777372353535851937790883648493
D = -121665 * pow(121666, P - 2, P) % P
ROOT = pow(2, (P - 1) // 4, P)
SIGNS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"


def wrong(why):
    print("wrong: " + why)
    sys.exit(1)


def point(text):
    """A point from its 32 bytes (RFC 8032, 5.1.3), as extended coordinates; none when there is no such point."""
    y = int.from_bytes(text, "little")
    sign, y = y >> 255, y & ((1 << 255) - 1)
    if y >= P:
        return None
    square = (y * y - 1) * pow(D * y * y + 1, P - 2, P) % P
    if square == 0:
        return None if sign else (0, y, 1, 0)
    x = pow(square, (P + 3) // 8, P)
    if (x * x - square) % P:
        x = x * ROOT % P
    if (x * x - square) % P:
        return None
    if x & 1 != sign:
        x = P - x
    return (x, y, 1, x * y % P)


def add(a, b):
    one = (a[1] - a[0]) * (b[1] - b[0]) % P
    two = (a[1] + a[0]) * (b[1] + b[0]) % P
    three = 2 * a[3] * b[3] * D % P
    four = 2 * a[2] * b[2] % P
    e, f, g, h = two - one, four - three, four + three, two + one
    return (e * f % P, g * h % P, f * g % P, e * h % P)


def times(k, a):
    sum = (0, 1, 1, 0)
    while k:
        if k & 1:
            sum = add(sum, a)
        a = add(a, a)
        k >>= 1
    return sum


def same(a, b):
    return (a[0] * b[2] - b[0] * a[2]) % P == 0 and (a[1] * b[2] - b[1] * a[2]) % P == 0


def fits(key, signature, message):
    """RFC 8032, 5.1.7, without the cofactor; keys and points of small order fit nothing."""
    a, r, s = point(key), point(signature[:32]), int.from_bytes(signature[32:], "little")
    if len(signature) != 64 or a is None or r is None or s >= Q:
        return False
    nothing = (0, 1, 1, 0)
    if same(times(8, a), nothing) or same(times(8, r), nothing):
        return False
    base_y = 4 * pow(5, P - 2, P) % P
    base = point(base_y.to_bytes(32, "little"))
    k = int.from_bytes(hashlib.sha512(signature[:32] + key + message).digest(), "little") % Q
    answer = same(times(s, base), add(r, times(k, a)))
    try:
        from cryptography.exceptions import InvalidSignature
        from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PublicKey

        try:
            Ed25519PublicKey.from_public_bytes(key).verify(signature, message)
            library = True
        except InvalidSignature:
            library = False
        if library != answer:
            wrong("this script and the library cryptography differ about a signature")
    except ImportError:
        pass
    return answer


def number(value):
    return value.to_bytes(8, "big")


def fields(parts):
    return b"".join(number(len(part)) + part for part in parts)


def link(job, entry, before):
    parts = [b"bayhand jobbook entry 1", number(job), number(entry["number"]), number(entry["mono"])]
    parts += [entry["at"].encode(), entry["body"].encode(), before]
    return hashlib.sha256(fields(parts)).hexdigest()


def grouped(data, signs):
    bits = int.from_bytes(hashlib.sha256(data).digest(), "big")
    text = "".join(SIGNS[bits >> (256 - 5 * (i + 1)) & 31] for i in range(signs))
    return "-".join(text[i : i + 4] for i in range(0, signs, 4))


def main():
    with open(sys.argv[1], encoding="utf-8") as file:
        export = json.load(file)
    if export["form"] != "bayhand job export 1":
        wrong("another form")
    job, entries = export["job"], export["entries"]
    before, mono = b"", 0
    for place, entry in enumerate(entries, 1):
        if entry["number"] != place or entry["mono"] <= mono:
            wrong("entry %d is out of order" % place)
        if link(job, entry, before) != entry["hash"]:
            wrong("the hash of entry %d does not follow" % place)
        before, mono = bytes.fromhex(entry["hash"]), entry["mono"]
    keys, opened, seals, end = [], False, [], None
    for line in export["book"]:
        if link(0, line, bytes.fromhex(line["before"])) != line["hash"]:
            wrong("the hash of line %d of the book does not follow" % line["number"])
        body = json.loads(line["body"])
        kind = body["kind"]
        if kind == "job-opened":
            opened = body["job"] == job and body["first_hash"] == entries[0]["hash"]
        elif kind == "key-set":
            keys.append(body["key"])
        elif kind == "job-closed":
            end = (body["entries"], body["head"])
        elif kind == "job-reopened":
            seals, end = [], None
        elif kind == "job-sealed":
            if body["key"] not in keys:
                wrong("the key of a seal was never set")
            if body["job"] != job or entries[body["entries"] - 1]["hash"] != body["head"]:
                wrong("a seal is over another entry")
            parts = [b"bayhand jobbook seal 1", number(body["job"]), number(body["entries"])]
            parts += [bytes.fromhex(body["head"]), body["by"].encode(), line["at"].encode()]
            parts += [number(line["number"]), number(line["mono"]), bytes.fromhex(line["before"])]
            key, signature = bytes.fromhex(body["key"]), bytes.fromhex(body["signature"])
            if not fits(key, signature, fields(parts)):
                wrong("the signature of a seal does not fit")
            seals.append((body["by"], grouped(signature, 12), grouped(key, 16)))
            end = (body["entries"], body["head"])
    if not opened:
        wrong("nothing says how the job was opened")
    if end and end != (len(entries), entries[-1]["hash"]):
        wrong("the job has other entries than when it was ended")
    if len(sys.argv) > 2 and (not seals or list(seals[-1][1:]) != sys.argv[2:4]):
        wrong("code or fingerprint are not those of the sheet")
    print("sound: %d entries" % len(entries))
    for by, code, fingerprint in seals:
        print("sealed by %s, code %s, key %s" % (by, code, fingerprint))


main()
