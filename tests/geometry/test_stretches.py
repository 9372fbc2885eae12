"""Paths in rows: where each stretch begins, which is first and last, what is too short to count."""

import numpy as np

from bayboard.geometry.stretches import boxes_meet, stretches

A = np.array([(0.0, 0), (30, 40), (30, 40), (30, 100)])
B = np.array([(5.0, 5), (5, 25)])


def test_stretches_know_their_path_and_how_far_along_they_begin():
    rows = stretches([A, B])
    assert rows.path.tolist() == [0, 0, 1]
    assert rows.begins.tolist() == [0, 50, 0]
    assert rows.length.tolist() == [50, 60, 20]


def test_first_and_last_stretches_are_marked_though_points_repeat():
    rows = stretches([A, B])
    assert rows.opens.tolist() == [True, False, True]
    assert rows.closes.tolist() == [False, True, True]


def test_no_paths_and_paths_without_length_have_no_stretches():
    assert len(stretches([]).path) == 0
    assert len(stretches([np.array([(3.0, 3), (3, 3)])]).path) == 0
    assert stretches([np.array([(3.0, 3), (3, 3)]), B]).path.tolist() == [1]


def test_a_point_is_found_by_its_share():
    assert stretches([A]).at(0, 0.5) == (15, 20)


def test_boxes_meet_within_the_margin():
    a, b = stretches([B]), stretches([B + np.array([10, 0])])
    assert [len(boxes_meet(a, b, margin)[0]) for margin in (9.9, 10.0)] == [0, 1]
