"""Scenes for random documents: each sets up what one rule looks at inside one cell, its corner at (x, y)."""

import math

from tests.plain.sketch import along, ell, rectangle


def _box(sketch, deep=None, **members):
    """Return (card, wide, high, deep) of a box or an L."""
    rng = sketch.rng
    wide, high = rng.choice([60, 80, 101.6]), rng.choice([40, 50, 63.5])
    deep = deep or rng.choice([30, 45, 52.5])
    outline = ell(wide, high) if rng.random() < 0.35 else None
    return sketch.card(wide, high, deep, outline, **members), wide, high, deep


def gap(sketch, x, y):
    """Stand two pieces a gap apart, turned alike, sometimes one over the other in z."""
    rng = sketch.rng
    cold = rng.random() < 0.3
    heat = {"heat": rng.choice([4, 4.99, 4.995])} if cold else {}
    one, wide, _, deep = _box(sketch, **heat)
    two, wide2, _, _ = _box(sketch, **heat)
    turn = sketch.turn()
    apart = sketch.near(1, spread=1) if cold else sketch.near(6, 15, 15, 0, spread=8)
    at = (x + 110, y + 110)
    lift = rng.choice([0, 0, 0, 0, round(deep + rng.choice([-0.01, 0.01, 20]), 6)])
    sketch.gear(one, *at, turn)
    sketch.gear(two, *along(*at, turn, wide / 2 + apart + wide2 / 2), turn, lift=lift)


def overlap(sketch, x, y):
    """Let a piece stand into another or into a stay, shallow or deep."""
    rng = sketch.rng
    one, wide, _, deep = _box(sketch)
    turn, deepness = sketch.turn(), rng.choice([0.01, 0.0002, 2, 9, 25])
    at = (x + 120, y + 120)
    sketch.gear(one, *at, turn)
    if rng.random() < 0.5:
        two, wide2, _, _ = _box(sketch)
        aside = rng.choice([0, 12])
        spot = along(*at, turn, wide / 2 + wide2 / 2 - deepness, aside)
        sketch.gear(two, *spot, turn + rng.choice([0, 0, 90, 31]))
    else:
        top = sketch.front() + rng.choice([-0.01, 0.01, 30, deep])
        left, low = at[0] + 20, at[1] - 30
        sketch.bay("stays", name="post", outline=rectangle(left, low, left + 50, low + 70), height=top)


def edge(sketch, x, y):
    """Hang a piece over the board's lower edge or into a cut-out, its screws near the edge."""
    rng = sketch.rng
    wide, high = 90, 60
    screws = [
        {"at": [dx, dy], "thread": rng.choice(["M5", "M4", "#10-24"])}
        for dx, dy in ((-38, -24), (38, rng.choice([24, -20])))
    ]
    outline = ell(wide, high) if rng.random() < 0.3 else None
    card = sketch.card(wide, high, 40, outline, screws=screws)
    over = sketch.near(0, 0.01, 6, spread=10)
    turn = rng.choice([0, 180, 12.5, 90])
    tilt = math.radians(turn)
    half = (abs(wide * math.sin(tilt)) + abs(high * math.cos(tilt))) / 2
    if rng.random() < 0.5:
        bottom = sketch.doc["boards"][0]["outline"]
        sketch.gear(card, x + 130, min(p[1] for p in bottom) + half - over, turn)
    else:
        _cut(sketch, rectangle(x + 60, y + 60, x + rng.choice([120, 230]), y + 110))
        sketch.gear(card, x + 140, y + 110 + half - over, turn)


def _cut(sketch, outline):
    """Saw a cut-out unless it would meet the board's notch or missing quarter."""
    board = sketch.doc["boards"][0]
    clash = any(_inside(p, outline, 30) for p in board["outline"])
    in_quarter = len(board["outline"]) == 6 and outline[2][0] > 990 and outline[2][1] > 280
    if not clash and not in_quarter:
        cutouts = board.setdefault("cutouts", [])
        cutouts.append({"id": sketch.name("K", cutouts), "outline": outline})


def _inside(point, outline, margin):
    (x0, y0), (x1, y1) = outline[0], outline[2]
    return x0 - margin <= point[0] <= x1 + margin and y0 - margin <= point[1] <= y1 + margin


def _seat(sketch, x, low, z0, slope, give, **members):
    """Add a seat over x..x + 200 from y `low` up 180, its face at z0 there and rising by `slope`."""
    rng = sketch.rng
    high = low + 180
    face = [[z0, low], [z0 + slope * 180, high], [z0 + slope * 180 + 60, high], [z0 + 60, low]]
    if rng.random() < 0.4:
        face.insert(1, [z0 + slope * 60 + rng.choice([-3, 3]), low + 60])
    z = rng.choice([200, 260, 130])
    folded = [[z, low - 30], [z + 300, low - 30], [z + 300, low + 70], [z, low + rng.choice([70, 160])]]
    sketch.bay(
        "seats",
        x=[x, x + 200],
        up=[[round(a, 6), b] for a, b in face],
        folded=folded,
        give=give,
        **members,
    )


def seat(sketch, x, y):
    """Close a seat over a piece with a port, near the margin, sometimes with putty measures."""
    rng = sketch.rng
    port = sketch.port("P", "remote", 20, 10, "out", z=30, plug=rng.choice([12, 25]))
    aside = sketch.port("Q", "remote", -30, 0, 180, z=rng.choice([20, 42]), plug=18)
    card, wide, _, deep = _box(sketch, ports=[port, aside])
    turn = sketch.turn()
    sketch.gear(card, x + 120, y + 100, turn, lift=rng.choice([0, 5]))
    top = sketch.front() + sketch.doc["gear"][-1]["lift"] + deep
    give, slope = rng.choice([0, 4]), rng.choice([0, 0.05, -0.03])
    members = {}
    if rng.random() < 0.45:
        sketch.doc["gear"][-1]["turn"] = rng.choice([0, turn])
        rim = x + 120 + wide / 2 + sketch.near(75, spread=20)
        z = round(top + give + sketch.near(10, 0, 0, spread=10), 6)
        members["probes"] = [[round(rim, 6), y + 100, z], [x + 130, y + 140, z + 12]]
        members["probes"] = members["probes"][: rng.choice([1, 2])]
    low = y + rng.choice([-10, 60])
    z0 = top + give + sketch.near(10, 0, spread=10) - slope * 60
    start = rng.choice([x + 20, x + 120, x - 150])
    _seat(sketch, start, low, z0, slope, give, **members)


def seat_over_lead(sketch, x, y):
    """Close a seat over a lead."""
    rng = sketch.rng
    od = rng.choice([6, 10.5])
    a = sketch.entry(x + 20, y + 40, "power", way=rng.choice(["sill", None]))
    b = sketch.entry(x + 280, y + 90, "power")
    sketch.lead(a, b, od=od, via=[(x + 100, y + 60), (x + 200, y + rng.choice([60, 150]))])
    slope = rng.choice([0, 0.04, -0.02])
    _seat(sketch, x + 60, y + 10, sketch.front() + od + sketch.near(10, 0, spread=5) - slope * 40, slope, 0)


def sight(sketch, x, y):
    """Look at a service point from one spot, about 60 degrees off, past a neighbour."""
    rng = sketch.rng
    facing = rng.choice(["out", "out", 270, 90, 20])
    at = (10, 5, 40) if facing == "out" else {270: (0, -25, 20), 90: (0, 25, 20), 20: (40, 0, 20)}[facing]
    service = sketch.service(*at, facing)
    card = sketch.card(80, 50, 40, service=[service], solids=[])
    turn = sketch.turn()
    sketch.gear(card, x + 120, y + 100, turn)
    spot = along(x + 120, y + 100, turn, at[0], at[1])
    if facing == "out" and rng.random() < 0.7:
        up = rng.uniform(300, 700)
        away = up * math.tan(math.radians(sketch.near(60, spread=4)))
        eye = along(*spot, rng.uniform(0, 360), away)
        z = sketch.front() + 40.5 + up
        sketch.doc["bay"]["eye"] = {axis: [v, v] for axis, v in zip("xyz", (*eye, z), strict=True)}
    if rng.random() < 0.5:
        tall = sketch.card(30, 90, rng.choice([60, 160, 400]))
        sketch.gear(tall, *along(*spot, rng.choice([0, 90, 180]), 80), rng.choice([0, 45]))


def canyon(sketch, x, y):
    """Put a service point between two tall neighbours, the way in as wide as fingers or a driver want."""
    rng = sketch.rng
    facing = rng.choice(["out", "out", 90])
    service = sketch.service(0, 0 if facing == "out" else 8, 20, facing)
    low = sketch.card(12, 16, 20, service=[service], solids=[])
    tall = sketch.card(20, rng.choice([200, 200, 60]), rng.choice([200, 200, 70]))
    turn, half = sketch.turn(), sketch.near(12.5, 6, spread=3)
    at = (x + 120, y + 120)
    sketch.gear(low, *at, turn)
    sketch.gear(tall, *along(*at, turn, 10 + half), turn)
    if rng.random() < 0.8:
        sketch.gear(tall, *along(*at, turn, -10 - half - rng.choice([0, 3])), turn)


def pit(sketch, x, y):
    """Sink a service point in a pit of tall neighbours, a lid over it about a hand's length up."""
    service = sketch.service(0, 0, 20, "out")
    low = sketch.card(12, 16, 20, service=[service], solids=[])
    tall, broad = sketch.card(20, 120, 260), sketch.card(120, 20, 260)
    at = (x + 120, y + 120)
    sketch.gear(low, *at)
    for away in (-1, 1):
        sketch.gear(tall, at[0] + away * 24, at[1])
        sketch.gear(broad, at[0], at[1] + away * 24)
    lid = sketch.card(80, 80, 10)
    sketch.gear(lid, *at, sketch.rng.choice([0, 45]), lift=20 + 150 + sketch.near(12.5, 6, spread=2))


def plug(sketch, x, y):
    """Set a solid in the way of a plug with its lead's bend."""
    rng = sketch.rng
    od, long, wide = rng.choice([5, 7.5]), rng.choice([18, 34]), rng.choice([14, 20])
    port = sketch.port("P", rng.choice(["remote", "signal-in"]), 30, 5, 0, z=15, plug=long, plug_wide=wide)
    card = sketch.card(60, 50, 40, ports=[port])
    turn = sketch.turn()
    at = (x + 70, y + 90)
    piece = sketch.gear(card, *at, turn)
    mate = sketch.entry(x + 20, y + 200, "remote", "signal")
    with_lead = rng.random() < 0.7
    if with_lead:
        sketch.lead(f"{piece}.P", mate, od=od, via=[(x + 60, y + 180)])
    free = sketch.near(long + 4 * od if with_lead else long, long, spread=6)
    solid = rng.choice(["gear", "gear", "stay"])
    if solid == "gear":
        other = sketch.card(40, rng.choice([50, 8]), 40)
        lift = rng.choice([0, 0, 15 + wide / 2 + 0.01, 15 + wide / 2 - 0.01])
        aside = rng.choice([5, 5 + wide / 2 + 25.01, 5 + wide / 2 + 24.99])
        sketch.gear(other, *along(*at, turn, 30 + free + 20, aside), turn, lift=lift)
    else:
        ring = [along(*at, turn, 30 + free + dx, dy) for dx, dy in ((0, -20), (30, -20), (30, 30), (0, 30))]
        height = sketch.front() + rng.choice([15 - wide / 2 + 0.01, 15 - wide / 2 - 0.01, 30])
        sketch.bay("stays", name="bracket", outline=[list(p) for p in ring], height=height)


def plug_out(sketch, x, y):
    """Hold a shelf or a seat over a port that faces out."""
    rng = sketch.rng
    long = rng.choice([20, 30])
    port = sketch.port("P", "remote", 10, 0, "out", z=20, plug=long)
    piece = sketch.gear(sketch.card(70, 50, 30, ports=[port]), x + 110, y + 100, sketch.turn())
    if rng.random() < 0.3:
        sketch.lead(f"{piece}.P", sketch.entry(x + 30, y + 20, "remote"), size=None, via=[(x + 40, y + 60)])
    free = sketch.near(long, long + 24, spread=6)
    if rng.random() < 0.5:
        shelf = sketch.card(90, 70, 10)
        sketch.gear(shelf, x + 110 + rng.choice([0, 30]), y + 100, 0, lift=round(20 + free, 6))
    else:
        _seat(sketch, x + 20, y + 10, sketch.front() + 20 + free, rng.choice([0, 0.02]), 2)


def stay(sketch, x, y):
    """Lay the board over a stay, or leave a finger's hole over it."""
    rng = sketch.rng
    board, lined = sketch.doc["boards"][0], sketch.doc["bay"]["lined"]
    keep, clear = rng.choice(["solid", "solid", "reach", "reach", "never-cover"]), rng.choice([0, 2])
    outline = rectangle(x + 120, y + 120, x + 160, y + 150)
    if rng.random() < 0.35:
        outline = rectangle(x + 120, 0, x + 160, min(p[1] for p in board["outline"]) - clear + sketch.near(0))
    height = round(board["standoff"] - lined - clear + sketch.near(0, spread=10), 6)
    if keep == "reach" and rng.random() < 0.7:
        height = board["standoff"] - rng.choice([8, 20])
        half, middle = sketch.near(12.5, spread=4), ((outline[0][0] + outline[2][0]) / 2, y + 135)
        _cut(sketch, rectangle(middle[0] - 30, middle[1] - half, middle[0] + 30, middle[1] + half))
    sketch.bay("stays", name="catch", outline=outline, height=height, keep=keep, clear=clear)


def beside(sketch, x, y):
    """Run a signal lead along a power or ground lead, near the length, distance and angle that count."""
    rng = sketch.rng
    kind, way = rng.choice(["power", "ground"]), rng.choice(["left sill", "right sill", None])
    apart = rng.choice([20, 35, sketch.near(50, spread=10)])
    long = sketch.near(100, 600, spread=30)
    angle = rng.choice([0, 0, 0, -8, *(-sketch.near(20, spread=5) for _ in range(4))])
    x0 = min(x, 600)
    power = [sketch.entry(x0, y + 60, kind, way=way), sketch.entry(x0 + 690, y + 60, kind)]
    sketch.lead(*power, via=rng.choice([[], [(x0 + 300, y + 60)], [(x0 + 200, y + 75)]]), od=9)
    start = (x0 + 20, y + 60 + apart)
    bend = along(*start, angle, long)
    signal = [sketch.entry(*start, "signal", way=way), sketch.entry(bend[0], bend[1] + 90, "signal")]
    sketch.lead(*signal, size=None, via=[bend])


def crossing(sketch, x, y):
    """Cross a power lead with a signal lead at an angle, at a bend or only touching."""
    rng = sketch.rng
    power = [sketch.entry(x + 10, y + 100, "power"), sketch.entry(x + 250, y + 100, "power")]
    bend = (x + 130, y + 100)
    sketch.lead(*power, via=rng.choice([[bend], [(x + 60, y + 100)]]), od=8)
    angle = sketch.near(60, spread=15)
    one, two = along(*bend, angle, 80), along(*bend, angle, -80)
    if rng.random() < 0.2:
        two = bend
    turn = rng.choice([[bend], [along(*bend, angle, 40)]])
    sketch.lead(sketch.entry(*one, "signal"), sketch.entry(*two, "signal"), size=None, via=turn)


def through(sketch, x, y):
    """Lead a cable past a fixing, over a cut-out, through gear or off the board."""
    rng = sketch.rng
    own = sketch.port("P", "power", 0, -20, 270, z=12, plug=rng.choice([20, 40]))
    piece = sketch.gear(sketch.card(60, 40, 30, ports=[own]), x + 60, y + 170, rng.choice([0, 180, 90]))
    bends = [(x + 60, y + 100), (x + 240, y + 100)]
    end = sketch.entry(x + 250, rng.choice([y + 30, -20, sketch.near(50, 40)]), "power")
    sketch.lead(f"{piece}.P", end, size=rng.choice(["4 AWG", "16 mm2", "5 AWG"]), via=bends)
    thread, radius = rng.choice([("M6", 9), ("M8", 12), ("1/4-20", 6.35)])
    sketch.fixing(x + 120, y + 100 + sketch.near(radius, spread=4), thread=thread)
    if rng.random() < 0.5:
        _cut(sketch, rectangle(x + 150, y + 100 + sketch.near(0), x + 190, y + 140))
    if rng.random() < 0.6:
        lift = rng.choice([0, 0, 10.49, 10.51, 7.2, 30])
        sketch.gear(sketch.card(30, 30, 30), x + 215, y + 110, sketch.turn(), lift=lift)


def fixing(sketch, x, y):
    """Set a fixing near the rim of one or two landings and of a no-drill region."""
    rng = sketch.rng
    washers = {"M6": (13, 18), "M8": (16, 24), "1/4-20": (12.7, 12.7), "#10-24": (9.652, 9.652)}
    thread = rng.choice(["M6", *washers])
    into = rng.choice(["insert", "insert", "insert", "factory", "stud", "through"])
    flange, washer = washers[thread]
    need = (flange if into == "insert" else washer) / 2 + 3
    inside = sketch.near(need, need, need, -2, spread=6)
    at = (x + 120, y + 120)
    sketch.fixing(*at, thread=thread, into=into)
    tip = rng.choice([0, 7])
    rim = at[0] - inside
    ring = [[rim, y + 60], [rim + 90, y + 60 + tip], [rim + 90, y + 180], [rim, y + 180]]
    sketch.bay("landings", outline=ring, recess=rng.choice([5, None]))
    if rng.random() < 0.3:
        sketch.bay(
            "landings", outline=rectangle(x + 30, y + 60, at[0] + sketch.near(need), y + 200), recess=5
        )
    _loom(sketch, *at)


def _loom(sketch, x, y):
    """Mark a region not to be drilled, its rim near (x, y)."""
    edge = y + sketch.near(10, 0, -3, spread=4)
    sketch.bay("no_drill", name="loom", outline=rectangle(x - 60, edge, x + 80, edge + 40))


def holes(sketch, x, y):
    """Bring holes near the board's edge, a cut-out and one another."""
    rng = sketch.rng
    bottom = min(p[1] for p in sketch.doc["boards"][0]["outline"])
    at = (x + 100, bottom + sketch.near(9.9, 0, spread=4)) if rng.random() < 0.5 else (x + 100, y + 90)
    slot = {"travel": 4, "angle": 30} if rng.random() < 0.3 else None
    sketch.fixing(*at, slot=slot, into=rng.choice(["insert", "stud"]))
    if rng.random() < 0.7:
        _loom(sketch, *at)
    mate = along(*at, rng.uniform(0, 180), sketch.near(13.2, spread=3))
    sketch.fixing(*mate, thread=rng.choice(["M6", "M4"]))
    if rng.random() < 0.5:
        away = sketch.near(9.9, spread=3)
        _cut(sketch, rectangle(x + 100 + away, y + 60, x + 180, y + 120))
    if rng.random() < 0.5:
        screws = [
            {"at": [-20, -20], "thread": "M4"},
            {"at": [-20 + sketch.near(6.6, spread=2), -20], "thread": "M4"},
        ]
        sketch.gear(sketch.card(60, 60, 25, screws=screws), x + 220, y + 120, sketch.turn())


def routed(sketch, x, y):
    """Join two pieces by leads that find their own way."""
    rng = sketch.rng
    ports = [
        sketch.port("V", "power", -25, -25, 270, plug=20),
        sketch.port("S", "signal-in", 10, -25, 270, plug=30),
        sketch.port("O", "signal-out", 25, -25, 270, plug=30, ways=4),
    ]
    card = sketch.card(70, 50, 40, ports=ports)
    one = sketch.gear(card, x + 60, y + 150, rng.choice([0, 0, 90]))
    two = sketch.gear(card, x + 210, y + rng.choice([150, 170]), rng.choice([0, 0, 25]))
    sketch.lead(f"{one}.V", f"{two}.V", size="8 AWG")
    sketch.lead(f"{one}.O", f"{two}.S", size=None)
    if rng.random() < 0.4:
        sketch.lead(sketch.entry(x + 150, -10, "signal"), f"{one}.S", size=None)
