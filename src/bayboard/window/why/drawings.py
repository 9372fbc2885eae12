"""What each rule measures, as a small drawing."""

from collections.abc import Callable

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter

from bayboard.window.draw.strokes import kept
from bayboard.window.theme import Theme
from bayboard.window.why.sketch import Sketch

SEAT_UP = [(22.0, 6.0), (34.0, 4.0), (44.0, 36.0), (46.0, 66.0), (30.0, 68.0), (26.0, 36.0)]
WALL = [(92.0, 2.0), (92.0, 20.0), (96.0, 26.0), (96.0, 46.0), (92.0, 52.0), (92.0, 70.0)]
SIGNAL, POWER = "#7CB5CF", "#A4603A"


def _two(s: Sketch, apart: float) -> None:
    s.board(2, 6, 96, 60)
    s.piece(10, 20, 36 - apart / 2, 32)
    s.piece(46 + apart / 2, 20, 40 - apart / 2, 32)


def gap(s: Sketch) -> None:
    """Draw two pieces in plan and the gap between them."""
    _two(s, 14)
    s.span((39, 36), (53, 36))


def overlap(s: Sketch) -> None:
    """Draw two pieces in plan that share room."""
    s.board(2, 6, 96, 60)
    s.piece(12, 14, 46, 34)
    s.piece(46, 26, 42, 32)
    s.wrong(46, 26, 12, 22)


def off_board(s: Sketch) -> None:
    """Draw a piece that hangs over the board's edge."""
    s.board(2, 6, 66, 60)
    s.piece(36, 18, 46, 34)
    s.wrong(68, 18, 14, 34)
    s.span((68, 60), (82, 60))


def off_wall(s: Sketch) -> None:
    """Draw a board that reaches past the wall."""
    s.metal([(4, 8), (72, 8), (78, 64), (4, 64), (4, 8)])
    s.board(14, 20, 74, 32)
    s.wrong(75, 20, 13, 32)


def air(s: Sketch) -> None:
    """Draw the strip beside a piece that has to stay open, up to what stands in it."""
    s.board(2, 6, 96, 60)
    s.piece(10, 14, 34, 42)
    s.tube((44, 35), (68, 35), 42, s.theme.note)
    s.piece(68, 26, 22, 30)
    s.span((44, 46), (68, 46))
    for y in (22, 32):
        s.arrow((48, y), (60, y), s.theme.note)


def warm_stack(s: Sketch) -> None:
    """Draw a warm piece below another: its heat goes up into it."""
    s.board(2, 2, 96, 68)
    s.piece(26, 8, 48, 20)
    s.piece(22, 44, 56, 20)
    for x in (36, 50, 64):
        s.warm(x, 42, 12)


def heat_rise(s: Sketch) -> None:
    """Draw all the heat of a board against the face that gives it off."""
    s.board(6, 26, 88, 42)
    for x in (14, 43, 70):
        s.piece(x, 36, 20, 24)
        s.warm(x + 10, 34, 26)


def seat_depth(s: Sketch) -> None:
    """Draw in section the room between a piece's front and the seat."""
    s.metal(WALL)
    s.board(82, 12, 5, 48)
    s.piece(60, 22, 22, 30)
    s.seat(SEAT_UP)
    s.span((44, 40), (60, 40))


def seat_swing(s: Sketch) -> None:
    """Draw in section the seat turns about its hinge and meets a piece on its way."""
    s.metal(WALL)
    s.board(82, 8, 5, 56)
    s.piece(52, 24, 30, 26)
    s.seat(SEAT_UP, ghost=True)
    s.seat([(26.0, 66.0), (2.0, 44.0), (8.0, 34.0), (40.0, 56.0)])
    s.arc((30, 66), 50, 84, 140)
    s.wrong(40, 30, 12, 14)
    s.hole(30, 66, 2)


def sight(s: Sketch) -> None:
    """Draw in section from how far off straight a dial is seen."""
    s.metal(WALL)
    s.board(82, 12, 5, 48)
    s.piece(64, 26, 18, 26)
    s.fan((64, 40), 34, 180, 60)
    s.line((64, 40), (28, 40), dash=True)
    s.line((64, 40), (14, 12), 1.8, s.theme.note)
    s.arc((64, 40), 24, 180, 151, head=False)
    s.eye(12, 11)


def reach(s: Sketch) -> None:
    """Draw the widest straight way in to a fuse, as a tube."""
    s.metal(WALL)
    s.board(82, 6, 5, 60)
    s.piece(58, 34, 24, 28)
    s.tube((68, 34), (40, 4), 14, s.theme.blue)
    s.span((46, 22), (60, 14), s.theme.ink)
    s.seat([(6.0, 30.0), (34.0, 34.0), (40.0, 66.0), (4.0, 66.0)])


def plug_room(s: Sketch) -> None:
    """Draw the strip before a plug, and what stands in it."""
    s.board(2, 6, 96, 60)
    s.piece(6, 16, 32, 40)
    s.piece(74, 16, 20, 40)
    s.tube((38, 36), (74, 36), 14, s.theme.note)
    s.tube((38, 36), (54, 36), 10, s.theme.chalk)
    s.span((38, 52), (74, 52))


def on_stay(s: Sketch) -> None:
    """Draw in section the board against something fixed behind it."""
    s.metal([(88.0, 2.0), (88.0, 70.0)])
    s.board(62, 8, 6, 58)
    s.region(66, 26, 22, 20)
    s.wrong(62, 26, 6, 20)


def on_landing(s: Sketch) -> None:
    """Draw in section the board's back against a landing that stands proud of the wall."""
    s.metal([(88.0, 2.0), (88.0, 20.0), (64.0, 24.0), (64.0, 48.0), (88.0, 52.0), (88.0, 70.0)])
    s.board(58, 8, 9, 58)
    s.wrong(63, 25, 4, 22)
    s.span((67, 14), (88, 14), s.theme.ink)


def on_vent(s: Sketch) -> None:
    """Draw a vent, half under the board: air gets out beside it and behind it."""
    s.region(8, 20, 60, 32)
    s.board(40, 6, 58, 60)
    for y in (26, 36, 46):
        s.arrow((34, y), (12, y), s.theme.note)
    s.line((40, 20), (68, 20), 1.4, s.theme.boardhi, dash=True)
    s.line((40, 52), (68, 52), 1.4, s.theme.boardhi, dash=True)


def way_in(s: Sketch) -> None:
    """Draw the slimmest way of a board against the opening it goes in by."""
    s.metal([(8, 4), (8, 22), (30, 22)])
    s.metal([(8, 68), (8, 52), (30, 52)])
    s.span((18, 24), (18, 50), s.theme.ink)
    s.board(40, 14, 52, 46)
    s.span((66, 14), (66, 60))
    s.arrow((38, 37), (24, 37))


def lining_cut(s: Sketch) -> None:
    """Draw the part of a lining that lies under the board."""
    s.region(6, 6, 88, 60)
    s.board(28, 18, 50, 36)
    s.line((28, 18), (78, 54), 1.2, s.theme.chalk, dash=True)
    s.line((78, 18), (28, 54), 1.2, s.theme.chalk, dash=True)


def beside(s: Sketch) -> None:
    """Draw a signal lead beside a power lead, and for how long."""
    s.board(2, 6, 96, 60)
    s.lead([(10, 14), (10, 34), (90, 34), (90, 14)], POWER)
    s.lead([(22, 60), (22, 44), (78, 44), (78, 60)], SIGNAL)
    s.span((22, 54), (78, 54))


def crossing(s: Sketch) -> None:
    """Draw two leads that cross, and the angle between them."""
    s.board(2, 6, 96, 60)
    s.lead([(8, 36), (92, 36)], POWER)
    s.lead([(20, 60), (80, 12)], SIGNAL)
    s.arc((50, 36), 22, 0, 39, s.theme.chalk)


def lead_path(s: Sketch) -> None:
    """Draw a lead that runs where something else is."""
    s.board(2, 6, 96, 60)
    s.piece(36, 16, 28, 40)
    s.lead([(8, 40), (92, 32)], SIGNAL)
    s.wrong(36, 32, 28, 8)


def insert_landing(s: Sketch) -> None:
    """Draw an insert's flange against its landing's edge."""
    s.region(12, 10, 44, 52)
    s.ring(50, 36, 14)
    s.hole(50, 36, 5)
    s.span((50, 56), (56, 56))


def no_drill(s: Sketch) -> None:
    """Draw a hole too near to where nothing may be drilled."""
    s.region(50, 6, 44, 60)
    s.hole(38, 36, 5)
    s.span((38, 50), (50, 50))


def hole_edge(s: Sketch) -> None:
    """Draw a hole's middle and the board's edge."""
    s.board(2, 6, 70, 60)
    s.hole(58, 34, 6)
    s.span((58, 50), (72, 50))


def hole_hole(s: Sketch) -> None:
    """Draw two holes, middle to middle."""
    s.board(2, 6, 96, 60)
    s.hole(40, 32, 6)
    s.hole(62, 32, 6)
    s.span((40, 50), (62, 50))


def drilled(s: Sketch) -> None:
    """Draw where a hole was drilled, and where the plan has it now."""
    s.board(2, 6, 96, 60)
    s.hole(36, 40, 6, old=True)
    s.hole(64, 28, 6)
    s.arrow((43, 37), (56, 31), s.theme.must)


def reprint(s: Sketch) -> None:
    """Draw a printed sheet with a hole that has moved since."""
    s.sheet(18, 4, 64, 64)
    s.hole(34, 20, 4)
    s.hole(44, 48, 4, old=True)
    s.hole(62, 42, 4)
    s.arrow((50, 46), (57, 44), s.theme.must)


DRAWINGS: dict[str, Callable[[Sketch], None]] = {
    "off-wall": off_wall,
    "on-stay": on_stay,
    "on-landing": on_landing,
    "on-vent": on_vent,
    "way-in": way_in,
    "lining-cut": lining_cut,
    "overlap": overlap,
    "gap": gap,
    "off-board": off_board,
    "air": air,
    "warm-stack": warm_stack,
    "heat-rise": heat_rise,
    "seat-depth": seat_depth,
    "seat-swing": seat_swing,
    "sight": sight,
    "reach": reach,
    "plug-room": plug_room,
    "beside": beside,
    "crossing": crossing,
    "lead-path": lead_path,
    "insert-landing": insert_landing,
    "no-drill": no_drill,
    "hole-edge": hole_edge,
    "hole-hole": hole_hole,
    "drilled": drilled,
    "reprint": reprint,
}


def paint_drawing(p: QPainter, rect: QRectF, rule: str, theme: Theme) -> bool:
    """Paint what a rule measures into a rectangle; return False where there is no drawing of it."""
    draw = DRAWINGS.get(rule)
    if draw is None:
        return False
    with kept(p):
        p.setClipRect(rect)
        draw(Sketch(p, rect, theme))
    return True
