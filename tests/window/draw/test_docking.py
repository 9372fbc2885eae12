"""Marks and tags: the worst five are worded, no tag covers another, leaders bend once."""

from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.window.draw.scenes import SCALE, VIEW, scene

from bayboard.window.draw.docking import APART, docked, fewer
from bayboard.window.draw.show import Mark, Measure, WallShow
from bayboard.window.draw.uncovered import number_rects, port_rects
from bayboard.window.theme import LIGHT

SCENE = scene()
inside = st.tuples(st.floats(-90, 1090), st.floats(-90, 490))
severities = st.sampled_from(["must", "should", "note"])


def marks_at(points, words="7/8 in to plug"):
    return tuple(Mark(n, "must", at, words) for n, at in enumerate(points, 1))


def on_wall(show, taken=()):
    return docked(SCALE, SCENE, LIGHT, show, VIEW, taken)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(st.lists(st.tuples(inside, severities, st.text("abc 1/8", max_size=24)), max_size=12))
def test_tags_lie_in_view_and_never_on_each_other(found):
    marks = tuple(Mark(n, s, at, text) for n, (at, s, text) in enumerate(found, 1))
    made = on_wall(WallShow(marks=marks))
    tags = [one.tag for one in made if one.tag is not None]
    assert all(VIEW.contains(tag) for tag in tags)
    assert not any(a.intersects(b) for a, b in combinations(tags, 2))
    assert len(made) == len(found)


def test_the_five_worst_wear_tags_and_the_others_their_mark_only():
    points = [(n * 150.0, 100.0 if n % 2 else 350.0) for n in range(8)]
    made = on_wall(WallShow(marks=marks_at(points, "short")))
    assert [one.mark.number for one in made if one.tag is not None] == [1, 2, 3, 4, 5]


def test_a_finding_that_is_pointed_at_opens_its_tag():
    points = [(n * 150.0, 100.0 if n % 2 else 350.0) for n in range(8)]
    made = on_wall(WallShow(marks=marks_at(points, "short"), told=frozenset([7])))
    assert 7 in {one.mark.number for one in made if one.tag is not None}


def test_a_mark_without_words_leaves_the_tags_to_the_others():
    silent = tuple(Mark(n, "must", (n * 100.0, 100.0)) for n in range(1, 6))
    spoken = Mark(6, "note", (700.0, 100.0), "Board carries 9 lb")
    made = on_wall(WallShow(marks=(*silent, spoken)))
    assert [one.mark.number for one in made if one.tag is not None] == [6]


def test_a_tag_docks_in_the_nearer_band():
    made = on_wall(WallShow(marks=(Mark(1, "must", (100, 380), "up"), Mark(2, "must", (100, 20), "down"))))
    board = SCALE.box((0, 0, 1000, 400))
    up, down = (one.tag for one in made)
    assert up.bottom() < board.top()
    assert down.top() > board.bottom()


def test_when_one_band_is_full_the_other_is_used():
    wide = "A2 stands 1/8 in off fuse block B1"
    made = on_wall(WallShow(marks=marks_at([(n * 220.0, 30.0) for n in range(4)], wide)))
    tags = [one.tag for one in made if one.tag is not None]
    assert len(tags) == 4
    assert len({tag.top() for tag in tags}) > 1


def test_tags_stand_in_order_of_their_marks_so_that_leaders_do_not_cross():
    made = on_wall(WallShow(marks=marks_at([(600, 50), (100, 50), (350, 50)], "short words")))
    ordered = sorted(made, key=lambda one: one.at.x())
    lefts = [one.tag.left() for one in ordered]
    assert lefts == sorted(lefts)
    assert all(b.tag.left() - a.tag.right() >= APART - 0.01 for a, b in combinations(ordered, 2))


def test_a_tag_keeps_off_what_is_taken_or_stays_folded():
    mark = marks_at([(500, 20)])
    (free,) = on_wall(WallShow(marks=mark))
    (aside,) = on_wall(WallShow(marks=mark), [free.tag])
    (folded,) = on_wall(WallShow(marks=mark), [VIEW])
    assert not aside.tag.intersects(free.tag)
    assert folded.tag is None
    assert folded.at == free.at


def test_a_tag_without_room_is_told_in_fewer_words_before_it_folds():
    words = "1/8 in to plug, needs a good deal more than that as anybody can see"
    mark = marks_at([(500, 20)], words)
    (free,) = on_wall(WallShow(marks=mark))
    wide = free.tag.width() * 0.6
    columns = [VIEW.adjusted(n * wide, 0, 0, 0) for n in range(int(VIEW.width() / wide) + 1)]
    fence = [column.adjusted(0, 0, 6 - column.width(), 0) for column in columns]
    (short,) = on_wall(WallShow(marks=mark), fence)
    assert (free.words, short.words) == (words, "1/8 in to plug")


def test_only_what_is_needed_is_left_out():
    assert fewer("1/8 in, needs 1/4 in") == "1/8 in"
    assert fewer("hidden") == "hidden"


def test_two_marks_on_one_spot_stand_side_by_side():
    made = on_wall(WallShow(marks=marks_at([(300, 100), (300, 100), (300, 100)], None)))
    assert len({round(one.at.x()) for one in made}) == 3


def test_a_finding_that_a_measure_tells_has_no_second_mark():
    measure = Measure((300, 100), (303, 100), "1/8 in", "must", 1)
    assert on_wall(WallShow(marks=marks_at([(300, 100)]), measures=(measure,))) == ()


def test_a_mark_about_a_piece_sits_in_its_clipped_corner():
    (one,) = on_wall(WallShow(marks=(Mark(1, "must", None, None, "A1"),)))
    box = SCALE.box(SCENE.placed["A1"].box)
    assert box.contains(one.at)
    assert one.at.x() < box.center().x()
    assert one.at.y() < box.center().y()


@pytest.mark.parametrize(
    "mark", [Mark(1, "must", None), Mark(1, "must", None, "x", "GONE"), Mark(1, "note", (9e4, 0))]
)
def test_a_finding_without_a_place_on_this_wall_is_left_to_the_list(mark):
    assert on_wall(WallShow(marks=(mark,))) == ()


def test_every_stand_ins_number_is_known():
    rects = number_rects(SCALE, SCENE, LIGHT)
    for rect, piece in zip(rects, SCENE.placed.values(), strict=True):
        assert SCALE.box(piece.box).contains(rect.center())


def test_a_tag_off_its_mark_has_a_leader_and_a_mark_alone_has_none():
    made = on_wall(WallShow(marks=(Mark(1, "must", (100, 380), "up"), Mark(2, "must", (300, 200)))))
    assert [one.mark.number for one in made if one.leader] == [1]
    (leader,) = [one.leader for one in made if one.leader]
    assert leader[-1] == (made[0].at.x(), made[0].at.y())


def test_every_port_is_known():
    count = sum(len(piece.card.ports) for piece in SCENE.placed.values())
    assert len(port_rects(SCALE, SCENE, LIGHT)) == count > 0
