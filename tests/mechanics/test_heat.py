"""How warm faces run, by hand."""

import pytest

from bayboard.mechanics.heat import rise


@pytest.mark.parametrize(
    ("watts", "face", "kelvin"),
    [(40.6, 406_000, 20), (0, 406_000, 0), (100, 1_000_000, 20), (129, 500_000, 51.6)],
)
def test_the_rise_is_heat_over_film_and_face(watts, face, kelvin):
    assert rise(watts, face) == pytest.approx(kelvin)
