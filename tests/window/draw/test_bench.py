"""The ledge: what waits there, how large, and where it stands."""

from itertools import combinations

import pytest
from PySide6.QtCore import QPointF, QRectF
from tests.build import card, layout
from tests.window.draw.scenes import at, near, painted

from bayboard.window.draw.bench import ledge_places, paint_ledge, size_text, waiting
from bayboard.window.draw.scale import Scale
from bayboard.window.theme import DARK, LIGHT

RECT = QRectF(0, 0, 620, 250)
SCALE = Scale(0.8, 0.0, 0.0)
THREE = layout(
    units="in",
    gear=[{"id": g, "card": c, "at": None} for g, c in (("A1", "box"), ("A2", "slab"), ("A3", "box"))],
)


def test_gear_with_a_place_does_not_wait_unless_there_is_no_board():
    both = [{"id": "A1", "card": "box", "at": [50, 50]}, {"id": "A2", "card": "box", "at": None}]
    assert [g.id for g in waiting(layout(gear=both))] == ["A2"]
    assert [g.id for g in waiting(layout(gear=both, boards=[]))] == ["A1", "A2"]


def test_pieces_stand_on_the_lip_true_to_the_walls_scale():
    places = ledge_places(RECT, SCALE, THREE, LIGHT)
    assert [p.gear for p in places] == ["A1", "A2", "A3"]
    for place, (wide, high) in zip(places, [(100, 60), (200, 100), (100, 60)], strict=True):
        assert (place.rect.width(), place.rect.height()) == pytest.approx((wide * 0.8, high * 0.8))
        assert place.rect.bottom() == pytest.approx(RECT.bottom() - 44)
        assert place.label.top() == pytest.approx(place.rect.bottom())


@pytest.mark.parametrize("k", [0.05, 0.8, 3.0])
@pytest.mark.parametrize("size", [1.0, 1.5])
def test_no_two_pieces_or_sizes_share_their_room(k, size):
    places = ledge_places(RECT, Scale(k, 0, 0), THREE, LIGHT.sized(size))
    for one, other in combinations(places, 2):
        assert not one.rect.intersects(other.rect)
        assert not one.label.intersects(other.label)


def test_scrolling_moves_all_of_them():
    rest, moved = ledge_places(RECT, SCALE, THREE, LIGHT), ledge_places(RECT, SCALE, THREE, LIGHT, 100.0)
    assert [a.rect.left() - b.rect.left() for a, b in zip(rest, moved, strict=True)] == pytest.approx(
        [100.0] * 3
    )


def test_a_size_is_long_by_wide_by_high_in_the_shown_unit():
    box = THREE.cards["box"]
    assert size_text(box, "mm") == "100 × 60 × 50 mm"
    assert size_text(box, "in") == "3 15/16 × 2 23/64 × 1 31/32 in"
    assert size_text(box, "mm", full=False) == "100 mm"


def test_a_height_nobody_measured_is_left_out():
    made = layout(cards={"box": card(100, 60, None)})
    assert size_text(made.cards["box"], "mm") == "100 × 60 mm"


@pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)
def test_buff_cards_stand_before_the_shelf_on_the_lath(theme):
    picture = painted(lambda p: paint_ledge(p, RECT, SCALE, THREE, theme), RECT)
    first = ledge_places(RECT, SCALE, THREE, theme)[0].rect
    assert near(picture, first.center() + QPointF(-first.width() * 0.3, 9), theme.buff, 45)
    assert near(picture, QPointF(600, 20), theme.shelf, 6)
    assert near(picture, QPointF(600, 240), theme.lath, 6)


def test_a_piece_in_hand_leaves_a_dashed_gap():
    picture = painted(lambda p: paint_ledge(p, RECT, SCALE, THREE, LIGHT, in_hand={"A1"}), RECT)
    first = ledge_places(RECT, SCALE, THREE, LIGHT)[0].rect
    assert at(picture, first.center()) == LIGHT.shelf.lower()


def test_the_focus_is_a_dashed_ring_and_the_selection_a_full_one():
    def blues(**how) -> int:
        picture = painted(lambda p: paint_ledge(p, RECT, SCALE, THREE, LIGHT, **how), RECT)
        first = ledge_places(RECT, SCALE, THREE, LIGHT)[0].rect
        y = first.top() - 6
        return sum(
            near(picture, QPointF(x, y), LIGHT.blue, 70)
            for x in range(int(first.left()) + 20, int(first.right()))
        )

    assert blues() == 0
    assert 0 < blues(focused="A1") < 0.9 * blues(selected="A1")


@pytest.mark.parametrize("made", [layout(), layout(boards=[])], ids=["nothing waits", "no boards"])
def test_an_empty_ledge_can_be_painted(made):
    painted(lambda p: paint_ledge(p, RECT, SCALE, made, LIGHT), RECT)
    assert ledge_places(RECT, SCALE, made, LIGHT) == ()
