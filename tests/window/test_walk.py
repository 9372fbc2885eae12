"""A person who tries everything: random acts, none may raise, and the verdict is always a fresh one's."""

import random

import pytest
from PySide6.QtCore import QPointF
from tests.build import gear, layout
from tests.window.hands import CTRL, MIDDLE, PLAIN, SHIFT

from bayboard.rules.check import check

ACTS = 300
KEYS = (
    "R",
    "T",
    "B",
    "C",
    "F",
    "U",
    "N",
    "Left",
    "Right",
    "Up",
    "Down",
    "Tab",
    "Backtab",
    "Escape",
    "Return",
    "F6",
)
SEAT = {"id": "S", "x": [0, 1000], "up": [[82, 0], [300, 0], [300, 400], [82, 400]], "folded": None}


class Stroll:
    """Random acts of mouse and keys on a window."""

    def __init__(self, hands, seed):
        self.hands = hands
        self.chance = random.Random(seed)

    def spot(self):
        """Return a pixel of the window: half the time on a stand-in."""
        hands, chance = self.hands, self.chance
        placed = list(hands.place.scene.placed.values())
        if placed and chance.random() < 0.5:
            x, y = chance.choice(placed).at
            return hands.px(x + chance.uniform(-60, 60), y + chance.uniform(-40, 40))
        return QPointF(
            chance.uniform(2, hands.window.width() - 3), chance.uniform(60, hands.window.height() - 3)
        )

    def mods(self):
        return self.chance.choice((PLAIN, PLAIN, PLAIN, SHIFT, CTRL))

    def step(self):
        """Do one act and return what it was."""
        hands, chance = self.hands, self.chance
        kind = chance.choice(
            ("click", "drag", "drag", "key", "key", "key", "type", "undo", "wheel", "pan", "escaped")
        )
        if kind == "click":
            hands.click(self.spot(), self.mods())
        elif kind == "drag":
            hands.drag(self.spot(), self.spot(), self.mods())
        elif kind == "key":
            hands.key(chance.choice(KEYS), chance.choice((PLAIN, PLAIN, SHIFT)))
        elif kind == "type":
            hands.type(chance.choice(("1", "12 3/8", "-4", "7/0", "2000", "45")))
            hands.key(chance.choice(("Return", "Escape", "Tab")))
        elif kind == "undo":
            hands.key(chance.choice(("Z", "Y")), CTRL)
        elif kind == "wheel":
            hands.wheel(self.spot(), chance.choice((120, -120, 240)))
        elif kind == "pan":
            hands.drag(self.spot(), self.spot(), button=MIDDLE)
        else:
            hands.drag(self.spot(), self.spot(), let_go=False)
            hands.key("Escape")
            hands.release(self.spot())
        return kind


@pytest.fixture
def bay():
    pieces = [
        gear("A", 200, 200),
        gear("B", 330, 200, card="slab"),
        gear("C", 700, 100, taped=True),
        gear("D", 0, 0) | {"at": None},
        gear("E", 0, 0, card="slab") | {"at": None},
    ]
    return layout(gear=pieces, bay={"seats": [SEAT]})


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_whatever_one_does_the_verdict_is_that_of_a_fresh_check(open_window, bay, seed):
    hands = open_window(bay, (1280, 800))
    stroll = Stroll(hands, seed)
    for count in range(ACTS // 3):
        stroll.step()
        if count % 10 == 9:
            hands.picture()
            assert hands.place.verdict == check(hands.place.shown)
    assert hands.place.hand.pieces == frozenset()
    assert hands.place.job.shown is hands.place.job.layout


def test_undo_leads_all_the_way_back(open_window, bay):
    hands = open_window(bay, (1280, 800))
    stroll = Stroll(hands, 7)
    for _ in range(40):
        stroll.step()
    while hands.place.job.undo_label is not None:
        hands.place.undo()
    assert hands.layout == bay
