"""Outlines that cannot be cut from a sheet, or do not fit their thing."""

import pytest
from tests.build import card, document, rectangle
from tests.model.changed import changed, refusal

from bayboard.model.read import from_document

BOW_TIE = [[0, 0], [90, 90], [90, 0], [0, 60]]

SHAPES = {
    "a wall of two points": (changed("bay", "wall", to=[[0, 0], [9, 0]]), "bay › wall", "has 2 points"),
    "a stay of no points": (
        changed("bay", "stays", 0, "outline", to=[]),
        "bay › stays ST1 › outline",
        "no points",
    ),
    "a bow-tie": (
        changed("boards", 1, "outline", to=BOW_TIE),
        "board B2 › outline",
        "crosses or touches itself",
    ),
    "an even bow-tie": (
        changed("boards", 1, "outline", to=[[0, 0], [9, 9], [9, 0], [0, 9]]),
        "board B2 › outline",
        "at (4.5, 4.5)",
    ),
    "a spike": (
        changed("boards", 1, "outline", to=[[0, 0], [90, 0], [90, 150], [90, 100], [0, 100]]),
        "board B2 › outline",
        "runs back along itself at (90, 150)",
    ),
    "a spike inwards": (
        changed("boards", 1, "outline", to=[[0, 0], [90, 0], [50, 0], [90, 0.0], [90, 90]]),
        "board B2 › outline",
        "runs back along itself",
    ),
    "a slanting spike that rounding opens": (
        changed("boards", 1, "outline", to=[[0, 0], [1, 0.1], [0.3, 0.03], [0, 9]]),
        "board B2 › outline",
        "back",
    ),
    "no width": (
        changed("bay", "landings", 0, "outline", to=[[0, 0], [9, 0], [4, 0]]),
        "bay › landings L1 › outline",
        "",
    ),
    "a width of a hair's hair": (
        changed("bay", "landings", 0, "outline", to=[[0, 0], [0.9, 0], [0.4, 1e-7]]),
        "bay › landings L1 › outline",
        "has no width",
    ),
    "a first point repeated at the end": (
        changed("bay", "vents", 0, "outline", to=[[0, 0], [9, 0], [9, 9], [0, 0]]),
        "bay › vents V1 › outline",
        "repeats its first point",
    ),
    "a point twice": (
        changed("bay", "no_drill", 0, "outline", to=[[0, 0], [9, 0], [9, 0], [9, 9]]),
        "bay › no_drill ND1 › outline",
        "same point twice in a row, at (9, 0)",
    ),
    "an outline that touches itself": (
        changed("bay", "linings", 0, "outline", to=[[0, 0], [9, 0], [4, 4], [9, 9], [0, 9], [4, 4]]),
        "bay › linings LN1 › outline",
        "touches itself at (4, 4)",
    ),
    "a seat that crosses itself": (
        changed("bay", "seats", 0, "up", to=BOW_TIE),
        "bay › seats SE1 › up",
        "crosses",
    ),
    "a folded seat of a line": (
        changed("bay", "seats", 0, "folded", to=[[0, 0], [9, 9]]),
        "bay › seats SE1 › folded",
        "2 points",
    ),
    "a solid that crosses itself": (
        changed("cards", "deep", "solids", 0, "outline", to=BOW_TIE),
        "card deep › solids #1 › outline",
        "crosses",
    ),
    "a card off its middle": (
        changed("cards", "block", "outline", to=rectangle(-40, -30, 40.2, 29.8)),
        "card block › outline",
        "by (-0.1, 0.1) mm",
    ),
    "a card from its corner": (
        changed("cards", "block", "outline", to=rectangle(0, 0, 80, 60)),
        "card block › outline",
        "by (-40, -30) mm",
    ),
    "a radius of more than half the shortest edge": (
        changed("boards", 1, "corner_radius", to=175.001),
        "board B2 › corner_radius",
        "(175)",
    ),
    "a radius that a sharp corner cannot hold": (
        document(board={"outline": [[0, 0], [100, 0], [2, 30]], "corner_radius": 14}),
        "board BD › corner_radius",
        "do not fit",
    ),
    "a cut-out over the edge": (
        changed("boards", 0, "cutouts", 0, "outline", to=rectangle(850, 100, 901, 200)),
        "board B1 › cutouts C1",
        "over the edge",
    ),
    "a cut-out over a rounded corner": (
        changed("boards", 0, "cutouts", 0, "outline", to=rectangle(2, 2, 50, 50)),
        "board B1 › cutouts C1",
        "edge",
    ),
    "a cut-out elsewhere": (
        changed("boards", 0, "cutouts", 0, "outline", to=rectangle(5000, 2, 5050, 50)),
        "board B1 › cutouts C1",
        "over the edge",
    ),
    "cut-outs that overlap": (
        changed("boards", 0, "cutouts", 1, "outline", to=rectangle(790, 150, 850, 300)),
        "board B1 › cutouts C2",
        "overlaps C1",
    ),
    "a cut-out within another": (
        changed("boards", 0, "cutouts", 1, "outline", to=rectangle(710, 110, 720, 120)),
        "board B1 › cutouts C2",
        "overlaps C1",
    ),
    "a cut-out that leaves two pieces": (
        changed("boards", 1, "cutouts", to=[{"id": "CX", "outline": rectangle(1200, 0, 1210, 350)}]),
        "board B2 › cutouts",
        "one piece",
    ),
    "a cut-out that leaves nothing": (
        changed("boards", 1, "cutouts", to=[{"id": "CX", "outline": rectangle(1000, 0, 1600, 350)}]),
        "board B2 › cutouts",
        "one piece",
    ),
}


@pytest.mark.parametrize(("doc", "place", "says"), SHAPES.values(), ids=SHAPES)
def test_an_outline_that_cannot_be_cut_is_refused(doc, place, says):
    refused = refusal(doc)
    assert refused.place == place
    assert says in str(refused)


def test_shifting_a_card_as_told_makes_it_legal():
    off = rectangle(3, 7, 83.5, 67.25)
    said = refusal(document(cards={"box": card() | {"outline": off}})).do
    x, y = (float(figure) for figure in said.partition("(")[2].partition(")")[0].split(","))
    shifted = [[px + x, py + y] for px, py in off]
    assert from_document(document(cards={"box": card() | {"outline": shifted}}))
