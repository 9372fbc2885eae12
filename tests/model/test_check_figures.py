"""Figures that cannot be, each with its place, and what is legal beside them."""

import pytest
from tests.model.changed import changed, refusal

from bayboard.model.read import from_document

FIGURES = {
    "a board of no thickness": (changed("boards", 0, "thickness", to=0), "board B1 › thickness"),
    "stock of no thickness": (changed("boards", 0, "stock", to=[12, 0]), "board B1 › stock"),
    "a radius below 0": (changed("boards", 0, "corner_radius", to=-1), "board B1 › corner_radius"),
    "a card of no height": (changed("cards", "deep", "height", to=0), "card deep › height"),
    "a card lighter than air": (changed("cards", "deep", "mass", to=-1), "card deep › mass"),
    "heat below 0": (changed("cards", "deep", "heat", to=-1), "card deep › heat"),
    "a fuse of 0 A": (changed("cards", "deep", "fuse", to=0), "card deep › fuse"),
    "air below 0": (changed("cards", "deep", "air", "up", to=-5), "card deep › air › up"),
    "no plug": (changed("cards", "deep", "ports", 0, "plug", to=0), "card deep › ports PWR › plug"),
    "a plug of no width": (
        changed("cards", "deep", "ports", 0, "plug_wide", to=0),
        "card deep › ports PWR › plug_wide",
    ),
    "no way": (changed("cards", "deep", "ports", 0, "ways", to=0), "card deep › ports PWR › ways"),
    "sheet of nothing": (changed("bay", "landings", 0, "sheet", to=0), "bay › landings L1 › sheet"),
    "less than nothing behind": (
        changed("bay", "landings", 0, "behind", to=-1),
        "bay › landings L1 › behind",
    ),
    "a landing that faces aside": (
        changed("bay", "landings", 0, "tilt", to=[90, 0]),
        "bay › landings L1 › tilt",
    ),
    "a stay to be kept clear of by -1": (
        changed("bay", "stays", 0, "clear", to=-1),
        "bay › stays ST1 › clear",
    ),
    "a vent of no area": (changed("bay", "vents", 0, "free_area", to=0), "bay › vents V1 › free_area"),
    "a lining below 0": (changed("bay", "linings", 0, "thickness", to=-1), "bay › linings LN1 › thickness"),
    "a seat that gives way backwards": (changed("bay", "seats", 0, "give", to=-1), "bay › seats SE1 › give"),
    "a seat that swings round and round": (
        changed("bay", "seats", 0, "swing", to=400),
        "bay › seats SE1 › swing",
    ),
    "a lean of half a turn and more": (changed("bay", "lean", to=181), "bay › lean"),
    "a tape that is better than true": (changed("bay", "tape", to=-1), "bay › tape"),
    "a way in of no width": (changed("bay", "way_in", to=[900, 0]), "bay › way_in"),
    "a battery of 0 V": (changed("bay", "supply", "volts", to=0), "bay › supply › volts"),
    "a run below 0": (changed("bay", "entries", 0, "run", to=-1), "bay › entries FEED › run"),
    "a cable of no width": (changed("leads", 0, "od", to=0), "lead P1 › od"),
    "a fuse before its lead": (
        changed("leads", 0, "fuse", "from_start", to=-1),
        "lead P1 › fuse › from_start",
    ),
    "a lead's fuse of 0 A": (changed("leads", 0, "fuse", "rating", to=0), "lead P1 › fuse › rating"),
    "a slot of no travel": (changed("fixings", 0, "slot", "travel", to=0), "fixing F1 › slot › travel"),
    "a rating of 0 N": (changed("fixings", 0, "rated", to=0), "fixing F1 › rated"),
    "a picture of no size": (changed("photos", 0, "size", to=[0, 10]), "photo PH1 › size"),
    "a hole of no width": (changed("printed", "holes", 0, "drill", to=0), "printed › holes F1 › drill"),
    "a seat from right to left": (changed("bay", "seats", 0, "x", to=[9, 8]), "bay › seats SE1 › x"),
    "a seat of no width": (changed("bay", "seats", 0, "x", to=[9, 9]), "bay › seats SE1 › x"),
    "a solid upside down": (
        changed("cards", "deep", "solids", 0, "z", to=[9, 0]),
        "card deep › solids #1 › z",
    ),
    "air colder at its hottest": (changed("bay", "supply", "air", to=[70, -20]), "bay › supply › air"),
    "eyes from right to left": (changed("bay", "eye", "x", to=[9, 8]), "bay › eye › x"),
    "eyes along 11 m": (changed("bay", "eye", "y", to=[0, 11_000]), "bay › eye › y"),
    "a limit of no rule": (changed("limits", "fun", to=3), "limits"),
    "a limit below 0": (changed("limits", "gap_must", to=-1), "limits › gap_must"),
    "eye points without end": (changed("limits", "eye_step", to=0.001), "limits › eye_step"),
}


@pytest.mark.parametrize(("doc", "place"), FIGURES.values(), ids=FIGURES)
def test_a_figure_that_cannot_be_is_refused_at_its_place(doc, place):
    refused = refusal(doc)
    assert refused.place == place
    assert refused.do


def test_one_place_to_look_from_is_legal():
    doc = changed("bay", "eye", to={"x": [5, 5], "y": [5, 5], "z": [5, 5]})
    assert from_document(doc).bay.eye.x == (5, 5)


def test_what_may_be_unknown_is_offered_null_and_the_rest_is_not():
    assert "null" in refusal(changed("cards", "deep", "height", to=0)).do
    assert "null" not in refusal(changed("boards", 0, "thickness", to=0)).do
