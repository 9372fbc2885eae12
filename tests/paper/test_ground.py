"""The ground on which words find their place: what is taken is never given, and the nearest free place is
found."""

import random

import numpy as np
import pytest

from bayboard.paper import place_labels
from bayboard.paper.curves import circle, line, polyline, rectangle
from bayboard.paper.ground import CELL, COARSE, FREE, HARD, LINE, SOFT, Ground, sampled
from bayboard.paper.marks import Fill, Letters, Stroke, pt
from bayboard.paper.place_labels import Block, Labelled

PAGE = (10.0, 20.0, 110.0, 80.0)
NAME = Block((("H7", "bold", pt(9.0)), ("clear 6.6 for M6 (17/64)", "text", pt(6.5))))


def test_what_is_taken_is_not_free_and_what_lies_beside_it_is():
    ground = Ground(PAGE)
    ground.take((30.0, 30.0, 40.0, 40.0))
    assert not ground.free((39.0, 39.0, 45.0, 45.0))
    assert not ground.free((20.0, 20.0, 60.0, 60.0))
    assert ground.free((41.0, 30.0, 50.0, 40.0))


@pytest.mark.parametrize("box", [(5, 30, 15, 40), (100, 30, 111, 40), (50, 15, 60, 25), (50, 75, 60, 81)])
def test_nothing_is_free_off_the_page(box):
    assert not Ground(PAGE).free(box)


def test_harder_things_stay_hard_when_something_softer_is_laid_over_them():
    ground = Ground(PAGE)
    for what in (HARD, SOFT, LINE):
        ground.take((30.0, 30.0, 40.0, 40.0), what)
    assert not ground.free((32.0, 32.0, 38.0, 38.0), over=LINE)
    ground.take((50.0, 30.0, 60.0, 40.0), SOFT)
    assert ground.free((52.0, 32.0, 58.0, 38.0), over=SOFT)
    assert not ground.free((52.0, 32.0, 58.0, 38.0), over=FREE)


@pytest.mark.parametrize(
    "trace",
    [
        line((12.0, 25.0), (100.0, 71.3)),
        circle((60.0, 50.0), 21.0),
        polyline([(20, 30), (80, 31), (50, 70)], True),
    ],
    ids=["a slanted line", "a circle", "a triangle"],
)
def test_no_box_that_a_trace_runs_through_is_free(trace):
    ground = Ground(PAGE)
    ground.take_traces([trace])
    points = sampled(trace)
    steps = np.hypot(*np.diff(points, axis=0).T)
    assert steps.max() <= CELL
    for x, y in points[::7]:
        assert not ground.free((x - 0.1, y - 0.1, x + 0.1, y + 0.1))


def test_the_nearest_place_is_the_nearest_of_all():
    rng = random.Random(5)
    for _ in range(12):
        ground = Ground(PAGE)
        for _ in range(14):
            x, y = rng.uniform(10, 100), rng.uniform(20, 70)
            ground.take((x, y, x + rng.uniform(2, 22), y + rng.uniform(2, 14)), rng.choice((SOFT, HARD)))
        size, to = (rng.uniform(4, 30), rng.uniform(3, 16)), (rng.uniform(10, 110), rng.uniform(20, 80))
        for over in (FREE, SOFT):
            found = ground.nearest(size, to, PAGE, over)
            step = CELL * COARSE
            plain = [
                (x, y)
                for x in np.arange(PAGE[0], PAGE[2] - size[0] - 2 * step, step)
                for y in np.arange(PAGE[1], PAGE[3] - size[1] - 2 * step, step)
                if ground.free((x, y, x + size[0] + 2 * step, y + size[1] + 2 * step), over)
            ]
            if found is None:
                assert not plain
                continue
            assert ground.free(found, over)
            off = [np.hypot(x + step + size[0] / 2 - to[0], y + step + size[1] / 2 - to[1]) for x, y in plain]
            middle = np.hypot((found[0] + found[2]) / 2 - to[0], (found[1] + found[3]) / 2 - to[1])
            assert middle <= min(off, default=np.inf) + 1.5 * step


def test_a_full_page_gives_no_place_but_the_least_bad_one():
    ground = Ground(PAGE)
    ground.take(PAGE)
    assert ground.nearest((5.0, 5.0), (50.0, 50.0), PAGE, LINE) is None
    assert ground.least_taken((5.0, 5.0), PAGE) is not None
    assert ground.least_taken((500.0, 5.0), PAGE) is None


def test_a_label_stands_beside_its_mark_its_name_towards_it():
    for side, flush in (((15.0, 20.0, 110.0, 80.0), "left"), ((10.0, 20.0, 52.0, 80.0), "right")):
        ground = Ground(PAGE)
        at = (16.0, 50.0) if flush == "left" else (51.0, 50.0)
        marks, _ = place_labels.place(Labelled(NAME, at, 5.7, 9.0), ground, side, ())
        assert {m.anchor for m in marks} == {flush}
        assert [m.text for m in marks] == ["H7", "clear 6.6 for M6 (17/64)"]
        assert abs(marks[0].at[0] - at[0]) < 12.0


def test_a_label_shrinks_before_it_wanders():
    large = Block((("H7", "bold", pt(9.0)), ("clear 6.6 for M6 (17/64)", "text", pt(9.0))))
    tight = (40.0, 44.0, 47.0 + 0.85 * large.size[0], 56.0)
    marks, _ = place_labels.place(Labelled(large, (40.0, 50.0), 5.7, 9.0), Ground(PAGE), tight, ())
    assert all(isinstance(m, Letters) for m in marks)
    assert marks[0].size < pt(9.0)
    assert min(m.size for m in marks) >= pt(6.0) - 1e-9


def test_a_label_without_room_stands_off_on_a_leader():
    ground = Ground(PAGE)
    ground.take((25.0, 31.0, 75.0, 69.0))
    marks, _ = place_labels.place(Labelled(NAME, (50.0, 50.0), 5.7, 9.0), ground, PAGE, ())
    (leader,) = [m for m in marks if isinstance(m, Stroke)]
    (trace,) = leader.traces
    assert np.hypot(trace.steps[0][0] - 50.0, trace.steps[0][1] - 50.0) == pytest.approx(5.7)


def test_a_label_never_stands_nearer_to_a_stranger():
    stranger = (62.0, 50.0)
    marks, _ = place_labels.place(Labelled(NAME, (50.0, 50.0), 5.7, 9.0), Ground(PAGE), PAGE, [stranger])
    name = next(m for m in marks if m.text == "H7")
    assert abs(name.at[0] - 50.0) < abs(name.at[0] - stranger[0])


def test_words_over_something_soft_clear_it_first():
    ground = Ground(PAGE)
    ground.take(PAGE, SOFT)
    first, *rest = place_labels.words(NAME, ground, PAGE, (60.0, 50.0))
    assert isinstance(first, Fill) and first.white and len(rest) == 2
    assert place_labels.words(NAME, Ground(PAGE), PAGE, (60.0, 50.0))[0] == rest[0]
    assert place_labels.words(NAME, ground, PAGE, (60.0, 50.0), over=FREE) == ()


def test_words_never_take_a_place_twice():
    ground, boxes = Ground(PAGE), []
    while marks := place_labels.words(NAME, ground, PAGE, (60.0, 50.0)):
        boxes.append(marks[0].at)
    assert len(boxes) == len(set(boxes)) > 10


def test_a_small_sign_is_taken_as_its_box():
    ground = Ground(PAGE)
    ground.take_traces([circle((50.0, 50.0), 3.0)])
    assert not ground.free((49.8, 49.8, 50.2, 50.2))
    ground.take_traces([rectangle((60.0, 30.0, 90.0, 60.0))])
    assert ground.free((70.0, 40.0, 80.0, 50.0))
