"""What points at something that is not there."""

import pytest
from tests.build import document
from tests.model.changed import changed, refusal

LINKS = {
    "gear of no card": (changed("gear", 1, "card", to="flat"), "gear A2 › card", '"flat"'),
    "gear on no board": (changed("gear", 1, "board", to="B9"), "gear A2 › board", '"B9"'),
    "gear on a board where there is none": (
        document(boards=[], gear=[{"id": "A1", "card": "box", "board": "BD", "at": None}]),
        "gear A1 › board",
        '"BD"',
    ),
    "a fixing on no board": (changed("fixings", 1, "board", to="B9"), "fixing F2 › board", '"B9"'),
    "a fixing where there is no board": (
        document(boards=[], fixings=[{"id": "F1", "at": [0, 0], "thread": "M6"}]),
        "fixing F1",
        "no board",
    ),
    "a lead to no gear": (changed("leads", 1, "to", to="A9.PWR"), "lead P2 › to", '"A9"'),
    "a lead to no port": (changed("leads", 1, "to", to="A1.XX"), "lead P2 › to", 'no port "XX"'),
    "a lead to a service point": (changed("leads", 1, "to", to="A1.GAIN"), "lead P2 › to", 'no port "GAIN"'),
    "a lead from no entry": (changed("leads", 2, "from", to="NOWHERE"), "lead S1 › from", '"NOWHERE"'),
    "a lead from a whole piece": (changed("leads", 2, "from", to="A1"), "lead S1 › from", "GEAR.PORT"),
    "a lead from nothing": (changed("leads", 2, "from", to=""), "lead S1 › from", "GEAR.PORT"),
    "a lead to where it starts": (changed("leads", 1, "to", to="D1.OUT"), "lead P2", "both ends"),
    "a screw of no gear": (changed("drilled_holes", "A9#1", to=[0, 0]), "drilled_holes › A9#1", '"A9"'),
    "a screw that the card lacks": (
        changed("drilled_holes", "A1#3", to=[0, 0]),
        "drilled_holes › A1#3",
        "has 2",
    ),
    "screw number 0": (changed("drilled_holes", "A1#0", to=[0, 0]), "drilled_holes › A1#0", "from 1"),
    "screw number 01": (changed("drilled_holes", "A1#01", to=[0, 0]), "drilled_holes › A1#01", "no screw 01"),
    "a screw without a number": (changed("drilled_holes", "A1", to=[0, 0]), "drilled_holes › A1", "GEAR#n"),
    "a photo of no card": (changed("photos", 0, "shows", to="card:flat"), "photo PH1 › shows", '"flat"'),
    "a photo of the moon": (changed("photos", 0, "shows", to="moon"), "photo PH1 › shows", '"moon"'),
    "a photo of some gear": (changed("photos", 0, "shows", to="gear:A1"), "photo PH1 › shows", "card:CARD"),
}


@pytest.mark.parametrize(("doc", "place", "says"), LINKS.values(), ids=LINKS)
def test_what_points_at_nothing_is_refused(doc, place, says):
    refused = refusal(doc)
    assert refused.place == place
    assert says in str(refused)
