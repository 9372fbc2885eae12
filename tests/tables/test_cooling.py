"""The figures of cooling.csv against the package `ht` and the worked examples of shared/reference/checks.md.

Air is that of the standard atmosphere (package `fluids`); its specific heat, 1006 J/kgK, is from memory.
"""

import re
from math import sqrt
from typing import NamedTuple

import numpy as np
import pytest
from fluids import ATMOSPHERE_1976 as AIR
from ht import Nu_vertical_plate_Churchill

from bayboard.tables.cooling import still_air
from bayboard.tables.rows import rows

ROWS = {row["key"]: row for row in rows("cooling")}
GRAVITY, ZERO, STEFAN = 9.80665, 273.15, 5.670374e-8


class Film(NamedTuple):
    """Air between a wall and its surroundings: W/mK, m2/s, m2/s, 1/K and K."""

    conductivity: float
    viscosity: float
    diffusivity: float
    beta: float
    warmer: float

    def grashof(self, long):
        """Return the Grashof number over a length in m."""
        return GRAVITY * self.beta * self.warmer * long**3 / self.viscosity**2

    @property
    def prandtl(self):
        return self.viscosity / self.diffusivity


def _film(warmer=30.0, air=25.0):
    t = air + ZERO + warmer / 2
    density, k = AIR.density(t, 101325), AIR.thermal_conductivity(t)
    return Film(k, AIR.viscosity(t) / density, k / (density * 1006), 1 / t, warmer)


def _formula(key, **known):
    """Return what the formula in a row of cooling.csv gives."""
    text = re.split(r" on |;", ROWS[key]["value"])[0].split(" = ")[-1]
    text = re.sub(r"(?<=[\w)]) (?=[A-Za-z])", "*", text).replace("^", "**")
    return eval(text, {"__builtins__": {}, "sqrt": sqrt}, known)


def _channel(film, gap, long):
    """Return the Nusselt number of a channel and that of one wall alone, on the gap, both in m."""
    el = film.grashof(gap) * film.prandtl * gap / long
    return _formula("nu_channel", El=el), (2.873 / sqrt(el)) ** -0.5


@pytest.mark.parametrize(("ra", "pr"), [(1e3, 0.7), (1e6, 0.7), (3e8, 0.71), (1e10, 0.69), (1e5, 6.0)])
def test_the_formula_for_an_upright_plate_is_that_of_the_package(ra, pr):
    assert _formula("nu_plate_vertical", Ra=ra, Pr=pr) == pytest.approx(
        Nu_vertical_plate_Churchill(pr, ra / pr)
    )


def _plate(tall, film):
    """Return W/m2K of an upright plate, `tall` in m."""
    return Nu_vertical_plate_Churchill(film.prandtl, film.grashof(tall)) * film.conductivity / tall


def test_an_upright_plate_200_mm_tall_and_thirty_kelvin_warmer():
    assert _plate(0.2, _film()) == pytest.approx(5.03, abs=0.05)  # checks.md 36


def test_the_best_gap_of_many_plates_200_mm_tall():
    # checks.md 35: the gap at which the most heat leaves a fixed width, a face every s / 2
    film, gaps = _film(), np.arange(5.0, 15.0, 0.01) / 1000
    heat = [_channel(film, gap, 0.2)[0] / gap**2 for gap in gaps]
    best = 1000 * gaps[int(np.argmax(heat))]
    assert best == pytest.approx(8.25, abs=0.05)
    rayleigh = film.grashof(0.2) * film.prandtl
    assert 1000 * _formula("s_opt_channel", L=0.2, Ra_L=rayleigh) == pytest.approx(best, abs=0.05)


@pytest.mark.parametrize(("gap", "share"), [(5, 0.30), (9, 0.88), (12, 0.97), (18, 1.0), (25, 1.0)])
def test_what_a_face_sheds_before_a_parallel_wall(gap, share):
    channel, alone = _channel(_film(), gap / 1000, 0.2)  # checks.md 37
    assert channel / alone == pytest.approx(share, abs=0.005)


@pytest.mark.parametrize(
    ("efficiency", "heat", "range_of"), [(0.25, 225, None), (0.75, 25, "efficiency_classD_eighth")]
)
def test_the_heat_of_a_600_watt_amplifier_on_music(efficiency, heat, range_of):
    sounding = 600 * float(ROWS["duty_music"]["value"])
    assert sounding * (1 / efficiency - 1) == pytest.approx(heat, abs=0.5)  # checks.md 39 and 40
    if range_of:
        low, high = (float(share) for share in ROWS[range_of]["value"].split(" to "))
        assert low <= efficiency <= high


def test_the_film_that_is_used_is_told_to_be_from_memory():
    film = still_air()
    assert (film.low, film.high, film.used, film.status) == (2, 10, 5, "memory")


@pytest.mark.parametrize("tall", [0.05, 0.1, 0.2, 0.4, 0.6])
@pytest.mark.parametrize("warmer", [10, 20, 40])
def test_that_film_errs_on_the_warm_side_of_plates_as_tall_as_gear_and_boards(tall, warmer):
    # radiation of painted faces, emissivity 0.9, as the row h_radiation_black_painted has it
    film = still_air()
    plate = _plate(tall, _film(warmer))
    radiated = 4 * 0.9 * STEFAN * (25 + ZERO + warmer / 2) ** 3
    assert film.low <= plate <= film.high
    assert film.used <= plate + radiated
