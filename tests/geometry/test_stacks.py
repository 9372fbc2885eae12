"""Boxes over one another, by hand."""

import numpy as np
import pytest

from bayboard.geometry.stacks import room_above

LOW = np.array([[0.0, 0.0, 10.0, 5.0]])


@pytest.mark.parametrize(
    ("upper", "room"),
    [
        ((0, 8, 10, 9), 3),
        ((9.9, 5, 20, 9), 0),
        ((10, 8, 20, 9), np.inf),
        ((-5, 8, 0, 9), np.inf),
        ((0, 4.9, 10, 9), np.inf),
        ((0, -9, 10, -5), np.inf),
        ((2, 5 - 1e-12, 3, 9), 0),
    ],
)
def test_room_is_told_where_the_upper_is_above_and_shares_width(upper, room):
    assert room_above(LOW, np.array([upper], dtype=float)) == pytest.approx(room)


def test_every_lower_meets_every_upper():
    rows = np.array([[0.0, 10.0 * k, 4.0, 10.0 * k + 3] for k in range(3)])
    assert room_above(rows, rows).tolist() == [[np.inf, 7, 17], [np.inf, np.inf, 7], [np.inf] * 3]
