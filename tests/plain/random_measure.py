"""What was measured of the bay itself, for random documents: way in, landings, vents, linings, a deep piece.

Aimed, as all of them, at where a verdict turns; each in some of the documents only.
"""

from tests.plain.sketch import rectangle


def measure(sketch):
    """Add what rules about the bay and its boards look at, at random places under the first board."""
    rng = sketch.rng
    for chance, add in ((0.6, _way_in), (0.45, _landing), (0.45, _vent), (0.5, _lining), (0.25, _sunk)):
        if rng.random() < chance:
            add(sketch)


def _board(sketch):
    return sketch.doc["boards"][0]


def _spot(sketch, wide, high):
    """Return a rectangle somewhere under the board, now and then across its lower or left rim."""
    rng = sketch.rng
    x, y = rng.uniform(120, 1200 - wide), rng.uniform(60, 500 - high)
    low = min(p[1] for p in _board(sketch)["outline"])
    side = rng.random()
    if side < 0.25:
        y = low - high + sketch.near(0, high / 2, spread=high / 8)
    elif side < 0.4:
        x, y = 90.0, low - rng.choice([0, 10])  # the corner, round or not
    return rectangle(*(round(v, 6) for v in (x, y, x + wide, y + high)))


def _bay(sketch, what, letter, **members):
    things = sketch.doc["bay"].setdefault(what, [])
    things.append({"id": f"{letter}{len(things) + 1}"} | members)


def _way_in(sketch):
    """Measure the way in about as wide as the board is high."""
    rng = sketch.rng
    ys = [p[1] for p in _board(sketch)["outline"]]
    way = [sketch.near(max(ys) - min(ys), spread=40), rng.choice([90, 200, 420])]
    sketch.doc["bay"]["way_in"] = rng.choice([way, way, way[::-1], way[::-1], None])


def _landing(sketch):
    """Let metal come as near as the board stands off it."""
    board, lined = _board(sketch), sketch.doc["bay"]["lined"]
    recess = round(lined - board["standoff"] + sketch.near(0, 0, -3, spread=2), 6)
    outline = _spot(sketch, sketch.rng.choice([15, 60]), 40)
    _bay(sketch, "landings", "LM", outline=outline, recess=sketch.rng.choice([recess] * 6 + [None]))


def _vent(sketch):
    """Shut a vent whose free area is about what is left of it."""
    rng, behind = sketch.rng, max(_board(sketch)["standoff"] - sketch.doc["bay"]["lined"], 0)
    wide, high = rng.choice([(100, 50), (160, 80), (30, 30)])
    left = 2 * (wide + high) * behind
    free = rng.choice([left + sketch.near(0, spread=200), left * rng.uniform(0.5, 4), wide * high])
    member = {} if rng.random() < 0.2 else {"free_area": rng.choice([round(max(free, 1), 6)] * 7 + [None])}
    _bay(sketch, "vents", "VM", outline=_spot(sketch, wide, high), **member)


def _lining(sketch):
    """Pad the metal about as thick as the board's standoff."""
    rng, standoff = sketch.rng, _board(sketch)["standoff"]
    thick = max(sketch.near(standoff, standoff, standoff + 2, spread=2), 0.1)
    outline = _spot(sketch, rng.choice([90, 400]), rng.choice([60, 200]))
    _bay(sketch, "linings", "MM", name="carpet", outline=outline, thickness=rng.choice([thick] * 7 + [None]))


def _sunk(sketch):
    """Sink a piece below its board's front, about as deep as the lining is thick."""
    rng = sketch.rng
    card = sketch.card(80, 50, 40)
    x, y = _spot(sketch, 80, 50)[0]
    thick = rng.choice([6, 12])
    lift = round(thick - sketch.front() + sketch.near(0, spread=2), 6)
    sketch.gear(card, x + 40, max(y, 60) + 30, sketch.turn(), lift=lift)
    outline = rectangle(*(round(v, 6) for v in (x - 20, y - 20, x + 70, y + 90)))
    _bay(sketch, "linings", "MM", name="trim", outline=outline, thickness=thick)
