"""Ids, names and texts: what cannot stand, with its place."""

import pytest
from tests.build import card
from tests.model.changed import changed, refusal

from bayboard.model.check_names import LONGEST_NAME
from bayboard.model.read import from_document

NAMES = {
    "an id with a space": (changed("gear", 1, "id", to="A 2"), "gear A 2 › id", "is not an id"),
    "an empty id": (changed("gear", 1, "id", to=""), "gear #2 › id", "is not an id"),
    "an id of 25 letters": (
        changed("fixings", 1, "id", to="F" * 25),
        f"fixing {'F' * 25} › id",
        "is not an id",
    ),
    "an id with an accent": (changed("fixings", 1, "id", to="É1"), "fixing É1 › id", "is not an id"),
    "an id with a line end": (changed("fixings", 1, "id", to="F2\n"), 'fixing "F2\\n" › id', "is not an id"),
    "two pieces of one id": (changed("gear", 1, "id", to="A1"), "gear A1", "taken by gear A1"),
    "a lead named like an entry": (
        changed("leads", 2, "id", to="RCA"),
        "lead RCA",
        "taken by bay › entries RCA",
    ),
    "a fixing like a landing": (
        changed("fixings", 1, "id", to="L1"),
        "fixing L1",
        "taken by bay › landings L1",
    ),
    "a cut-out like a board": (
        changed("boards", 0, "cutouts", 0, "id", to="B1"),
        "board B1 › cutouts B1",
        "taken by board B1",
    ),
    "a photo like a seat": (changed("photos", 0, "id", to="SE1"), "photo SE1", "taken by bay › seats SE1"),
    "two ports of one id": (
        changed("cards", "deep", "ports", 1, "id", to="PWR"),
        "card deep › ports PWR",
        "taken by card deep",
    ),
    "a service point like a port": (
        changed("cards", "deep", "service", 0, "id", to="PWR"),
        "card deep › service PWR",
        "taken by card deep",
    ),
    "a port with a dot": (
        changed("cards", "deep", "ports", 1, "id", to="P.1"),
        "card deep › ports P.1 › id",
        "is not an id",
    ),
    "a card without a name to call it": (changed("cards", "", to=card()), "cards", "cannot name a card"),
    "a picture without its hash": (changed("photos", 0, "file", to="me.jpg"), "photo PH1 › file", "SHA-256"),
    "a picture's hash in capitals": (
        changed("photos", 0, "file", to=f"{'AB' * 32}.jpg"),
        "photo PH1 › file",
        "SHA",
    ),
    "a cable size nobody knows": (changed("leads", 0, "size", to="thick"), "lead P1 › size", "4 AWG"),
    "a cable size of nothing": (changed("leads", 0, "size", to="0 mm2"), "lead P1 › size", "16 mm2"),
    "a guess at no member": (
        changed("cards", "deep", "guessed", to=["colour"]),
        "card deep › guessed",
        '"colour"',
    ),
    "a hole of no name": (changed("printed", "holes", 0, "id", to="A1#0"), "printed › holes A1#0", "no hole"),
    "a name with a bell": (changed("vehicle", "name", to="a\a"), "vehicle › name", "control character"),
    "a name of two lines": (
        changed("bay", "stays", 0, "name", to="a\nb"),
        "bay › stays ST1 › name",
        "control",
    ),
    "a name without end": (
        changed("vehicle", "name", to="a" * (LONGEST_NAME + 1)),
        "vehicle › name",
        "201 letters",
    ),
}


@pytest.mark.parametrize(("doc", "place", "says"), NAMES.values(), ids=NAMES)
def test_a_name_that_cannot_stand_is_refused(doc, place, says):
    refused = refusal(doc)
    assert refused.place == place
    assert says in str(refused)


@pytest.mark.parametrize(
    "size", ["4/0 AWG", "1/0 AWG", "0 AWG", "1 AWG", "22 AWG", "0.75 mm2", "2.5 mm2", "120 mm2"]
)
def test_cable_sizes_of_the_trade_are_read(size):
    # sizes of shared/reference/copper_wire.csv
    assert from_document(changed("leads", 0, "size", to=size)).leads[0].size == size
