"""Writes borders.bin from countries-10m.json of the npm package world-atlas
2.0.2 (Natural Earth, public domain):

    python3 borders.py countries-10m.json borders.bin

A development tool: nothing runs it but the person who adds a country to
holidays.go, who adds it to CODES here as well.
"""
import json
import math
import sys

# ISO 3166 numeric, as in the file, to the codes of holidays.go.
CODES = dict(zip(
    "020 040 056 756 196 203 276 208 233 724 246 250 826 300 191 348 372 352 380 438 440 442 428 492 470 528 578 554 616 620 642 752 705 703 674".split(),
    "AD AT BE CH CY CZ DE DK EE ES FI FR GB GR HR HU IE IS IT LI LT LU LV MC MT NL NO NZ PL PT RO SE SI SK SM".split()))
TOLERANCE = 0.01  # degrees of latitude
STEPS = 200  # per degree


def simplify(p):
    """Douglas and Peucker, in degrees of latitude."""
    if len(p) > 3 and p[0] == p[-1]:  # a ring: cut at the farthest point
        k = max(range(len(p)), key=lambda i: math.dist(p[i], p[0]))
        return simplify(p[:k + 1]) + simplify(p[k:])[1:]
    keep, stack = {0, len(p) - 1}, [(0, len(p) - 1)]
    while stack:
        i, j = stack.pop()
        (ax, ay), (bx, by) = p[i], p[j]
        cos = math.cos(math.radians(ay))
        dx, dy = (bx - ax) * cos, by - ay
        best, at, length = 0, -1, dx * dx + dy * dy
        for m in range(i + 1, j):
            px, py = (p[m][0] - ax) * cos, p[m][1] - ay
            u = max(0, min(1, (px * dx + py * dy) / length)) if length else 0
            d = math.hypot(px - u * dx, py - u * dy)
            if d > best:
                best, at = d, m
        if best > TOLERANCE:
            keep.add(at)
            stack += [(i, at), (at, j)]
    return [q for k, q in enumerate(p) if k in keep]


def varint(n, out):
    n = -2 * n - 1 if n < 0 else 2 * n
    while n >= 128:
        out.append(n & 127 | 128)
        n >>= 7
    out.append(n)


def main(source, target):
    topology = json.load(open(source))
    (sx, sy), (tx, ty) = topology["transform"]["scale"], topology["transform"]["translate"]
    arcs = []
    for arc in topology["arcs"]:
        x = y = 0
        points = []
        for dx, dy in arc:
            x, y = x + dx, y + dy
            points.append((x * sx + tx, y * sy + ty))
        arcs.append(simplify(points))

    countries = {}
    for g in topology["objects"]["countries"]["geometries"]:
        code = CODES.get(g.get("id"))
        if not code:
            continue
        rings = countries.setdefault(code, [])
        for ids in sum([g["arcs"]] if g["type"] == "Polygon" else g["arcs"], []):
            ring = []
            for i in ids:
                arc = arcs[i] if i >= 0 else arcs[~i][::-1]
                ring += arc[1:] if ring else arc
            steps = []
            for x, y in ring:
                q = (round(x * STEPS), round(y * STEPS))
                if not steps or q != steps[-1]:
                    steps.append(q)
            if len(steps) > 1 and steps[0] == steps[-1]:
                steps.pop()
            x, y = steps[0][0] / STEPS, steps[0][1] / STEPS
            # Overseas territories have holidays of their own.
            if x > 160 if code == "NZ" else -32 < x < 45 and 27 < y < 82:
                rings.append(steps)

    out = bytearray()
    for code in sorted(countries):
        out += code.encode()
        varint(len(countries[code]), out)
        x = y = 0
        for ring in countries[code]:
            varint(len(ring), out)
            for a, b in ring:
                varint(a - x, out)
                varint(b - y, out)
                x, y = a, b
    open(target, "wb").write(out)


main(*sys.argv[1:])
