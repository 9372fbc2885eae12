"""What the document says, with its defaults, read straight from the JSON: places, bodies, boards, leads.

Nothing here comes from the program: the reference tables are read again.
"""

import csv
import math
from functools import cache
from pathlib import Path

from shapely import LineString, Point, Polygon, box
from shapely.ops import unary_union
from tests.plain.prisms import Prism
from tests.plain.shapes import rounded, turned

REFERENCE = Path(__file__).parents[2] / "shared" / "reference"

LIMITS = {
    "gap_must": 6,
    "gap_should": 15,
    "gap_cold": 1,
    "cold_watts": 5,
    "air_must_share": 0.5,
    "warm_watts": 20,
    "rise_note": 20,
    "swing_off": 15,
    "seat_margin": 10,
    "probe_reach": 75,
    "sight_angle": 60,
    "corridor_length": 150,
    "corridor_fingers": 25,
    "corridor_driver": 12,
    "bend_od": 4,
    "beside_should": 100,
    "beside_must": 600,
    "beside_d": 50,
    "beside_angle": 20,
    "crossing_should": 60,
    "insert_margin": 3,
    "no_drill_margin": 10,
    "edge_d": 1.5,
    "pitch_d": 2,
}


@cache
def table(name):
    """Return the rows of a reference table."""
    with (REFERENCE / f"{name}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def thread(name):
    """Return the row of a thread, None for one not in the table; "M5" means the coarse pitch."""
    for row in table("threads"):
        if row["thread"] == name or row["thread"].split("x")[0] == name:
            return {key: float(row[key]) if row[key] else None for key in row if key.endswith("_mm")}
    return None


def drilled(name, column):
    """Return a drill of a thread, None for an unknown thread."""
    row = thread(name)
    return row and row[column]


def washer(name):
    """Return the outside diameter of the large washer, None for an unknown thread; inch: twice the thread."""
    row = thread(name)
    return row and (row["large_washer_od_mm"] or 2 * row["major_d_mm"])


def flange(name):
    """Return the flange of an insert, None where the table has none."""
    for row in table("inserts"):
        if name in row["thread"].split(" / ") and row["flange_od_typ_mm"]:
            return float(row["flange_od_typ_mm"])
    return None


def usual_od(size):
    """Return the largest usual diameter of a wire size, of the next larger where it has none."""
    number, system = size.split()
    rows = [row for row in table("copper_wire") if row["system"] == system]
    areas = {row["size"]: float(row["area_mm2"]) for row in rows}
    own = areas[number] if number in areas else float(number)
    fit = [row for row in rows if row["od_typical_max_mm"] and float(row["area_mm2"]) >= own]
    return float(min(fit, key=lambda row: float(row["area_mm2"]))["od_typical_max_mm"])


class Piece:
    """A stand-in with a place."""

    def __init__(self, doc, gear, board):
        self.id, self.card, self.board = gear["id"], doc["cards"][gear["card"]], board
        self.at, self.turn = gear["at"], gear.get("turn", 0)
        self.front = front(board)
        self.under = self.front + gear.get("lift", 0)
        self.ring = [turned(p, self.at, self.turn) for p in self.card["outline"]]
        self.shape = Polygon(self.ring)
        self.known = bool(self.card.get("solids")) or self.card["height"] is not None

    def bodies(self):
        """Return its solids, else its outline by its height; none when the height is unknown."""
        if self.card.get("solids"):
            return [
                Prism(
                    Polygon([turned(p, self.at, self.turn) for p in s["outline"]]),
                    self.under + s["z"][0],
                    self.under + s["z"][1],
                )
                for s in self.card["solids"]
            ]
        if self.card["height"] is None:
            return []
        return [Prism(self.shape, self.under, self.under + self.card["height"])]

    def point(self, of):
        """Return where a port or service point is in the bay, with its height over z = 0."""
        return (*turned(of["at"], self.at, self.turn), self.under + of["z"])

    def way(self, towards):
        """Return the direction of a port or service point."""
        if towards == "out":
            return (0.0, 0.0, 1.0)
        angle = math.radians(towards + self.turn)
        return (math.cos(angle), math.sin(angle), 0.0)

    def port(self, name):
        """Return a port of its card."""
        return next(p for p in self.card["ports"] if p["id"] == name)


def front(board):
    """Return z of the face that carries the gear."""
    return board["standoff"] + board["thickness"]


class Bay:
    """The whole document, defaults filled in."""

    def __init__(self, doc, routes):
        self.doc, self.bay, self.routes = doc, doc["bay"], routes
        self.boards = {b["id"]: b for b in doc["boards"]}
        self.wholes = {
            i: Polygon(rounded(b["outline"], b.get("corner_radius", 0))) for i, b in self.boards.items()
        }
        self.shapes = {
            i: self.wholes[i].difference(unary_union([Polygon(c["outline"]) for c in b.get("cutouts", [])]))
            for i, b in self.boards.items()
        }
        self.pieces = {
            g["id"]: Piece(doc, g, self._board(g)) for g in doc.get("gear", []) if g["at"] and self.boards
        }
        self.gear = {g["id"]: g for g in doc.get("gear", [])}
        self.stays = {s["id"]: s for s in self.bay.get("stays", [])}
        self.seats = {s["id"]: s for s in self.bay.get("seats", [])}
        self.entries = {e["id"]: e for e in self.bay.get("entries", [])}
        self.fixings = doc.get("fixings", [])

    def limit(self, name):
        """Return a limit, the document's own where it has one."""
        return self.doc.get("limits", {}).get(name, LIMITS[name])

    def _board(self, thing):
        return self.boards[thing.get("board") or next(iter(self.boards))]

    def fixing_board(self, fixing):
        """Return the id of the board a fixing goes through."""
        return self._board(fixing)["id"]

    def stay_body(self, stay):
        """Return a stay as a prism, None when its height is unknown."""
        if stay["height"] is None:
            return None
        return Prism(Polygon(stay["outline"]), -math.inf, stay["height"])

    def folded(self):
        """Return the folded seats that are known, by id."""
        return {
            i: Prism(Polygon(s["folded"]), *sorted(s["x"]), along="x")
            for i, s in self.seats.items()
            if s["folded"] is not None
        }

    def board_box(self):
        """Return the box of all boards."""
        return unary_union([Polygon(b["outline"]) for b in self.boards.values()]).bounds

    def end(self, text):
        """Return (piece or None, port or None, entry or None, plan point or None) of a lead's end."""
        if text in self.entries:
            return None, None, self.entries[text], tuple(self.entries[text]["at"])
        name, port = text.split(".")
        piece = self.pieces.get(name)
        if piece is None:
            return None, None, None, None
        found = piece.port(port)
        return piece, found, None, piece.point(found)[:2]

    def leads(self):
        """Return the leads both of whose ends have a place."""
        if not self.boards:
            return []
        leads = [Lead(self, lead) for lead in self.doc.get("leads", [])]
        return [lead for lead in leads if lead.path is not None]

    def lead_at(self, text):
        """Return the leads, placed or not, that end at `GEAR.PORT`."""
        return [lead for lead in self.doc.get("leads", []) if text in (lead["from"], lead["to"])]

    def holes(self):
        """Return (name, point, drill or None, board id) of every hole, gear first."""
        out = []
        for piece in self.pieces.values():
            for n, screw in enumerate(piece.card.get("screws", []), 1):
                at = turned(screw["at"], piece.at, piece.turn)
                out.append(
                    (f"{piece.id}#{n}", at, drilled(screw["thread"], "tap_drill_mm"), piece.board["id"])
                )
        for fixing in self.fixings:
            drill = drilled(fixing["thread"], "clear_medium_mm")
            out.append((fixing["id"], tuple(fixing["at"]), drill, self.fixing_board(fixing)))
        return out


def end_kind(doc, entries, text):
    """Return the kinds an end may have: a port's one, an entry's list."""
    if text in entries:
        return list(entries[text]["carries"])
    name, port = text.split(".")
    card = doc["cards"][next(g["card"] for g in doc["gear"] if g["id"] == name)]
    return next(p["kind"] for p in card["ports"] if p["id"] == port)


KINDS = ("power", "ground", "remote", "signal", "speaker", "data")
SIGNAL = ("signal-in", "signal-out", "speaker-in")


def lead_kind(doc, entries, lead):
    """Return a lead's kind, None for ends that may not be joined."""
    a, b = (end_kind(doc, entries, lead[end]) for end in ("from", "to"))
    ports = [kind for kind in (a, b) if isinstance(kind, str)]
    if any(kind in SIGNAL for kind in ports):
        return "signal"
    if len(ports) == 2 and a != b:
        return None
    if ports:
        return "speaker" if ports[0] == "speaker-out" else ports[0]
    return next((kind for kind in KINDS if kind in a and kind in b), None)


def lead_od(doc, entries, lead):
    """Return a lead's diameter, None when it is a power or ground lead of no known size."""
    if lead.get("od") is not None:
        return lead["od"]
    if lead["size"] is not None:
        return usual_od(lead["size"])
    return None if lead_kind(doc, entries, lead) in ("power", "ground") else 6.0


class Lead:
    """A lead with its path: through its vias, else the caller's."""

    def __init__(self, bay, lead):
        self.id, self.lead = lead["id"], lead
        self.ends = [bay.end(lead["from"]), bay.end(lead["to"])]
        self.kind = lead_kind(bay.doc, bay.entries, lead)
        self.od = lead_od(bay.doc, bay.entries, lead)
        self.on_front = lead.get("side", "front") == "front"
        boards = [end[0].board["id"] for end in self.ends if end[0]]
        self.boards = list(dict.fromkeys(boards or list(bay.boards)[:1]))
        self.front = front(bay.boards[self.boards[0]]) if self.boards else None
        self.path = self._path(bay)

    def _path(self, bay):
        points = [end[3] for end in self.ends]
        if None in points:
            return None
        if self.lead.get("via"):
            return [points[0], *(tuple(p) for p in self.lead["via"]), points[1]]
        return [tuple(p) for p in bay.routes[self.id]] if self.id in bay.routes else None

    def stretches(self):
        """Return the straight pieces of the path that have a length."""
        pairs = zip(self.path, self.path[1:], strict=False)
        return [(a, b) for a, b in pairs if math.dist(a, b) > 0]

    def line(self):
        """Return the path as a line."""
        return LineString(self.path)


def seat_up(seat):
    """Return the closed seat's (z, y) section, None when it is unknown."""
    return None if seat["up"] is None else Polygon(seat["up"])


def least_up(section, y0, y1):
    """Return the least z of a seat's section between two heights, None where there is no seat."""
    shared = section.intersection(box(-1e6, y0, 1e6, y1))
    return shared.bounds[0] if shared.area > 1e-9 else None


def disc(at, radius):
    """Return a round shape."""
    return Point(at).buffer(radius, quad_segs=256)
