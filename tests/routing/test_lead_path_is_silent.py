"""The program never leads a lead where its own rule complains, unless there is no room."""

import pytest
from tests.plain.bays import bay
from tests.plain.router import PlainRouter

from bayboard.model.read import from_document
from bayboard.routing.route import routes
from bayboard.rules.check import check
from bayboard.rules.scene import Scene
from bayboard.rules.wire import lead_path


@pytest.mark.parametrize("seed", range(12))
def test_lead_path_is_silent_about_every_lead_that_had_room(seed):
    layout = from_document(bay(seed, leads=14))
    plain = PlainRouter(layout, 6.0)
    led = routes(layout)
    # an end in a thing or off the board is not the route's fault, nor is a plug that hits one
    fair = [lead for lead in layout.leads if not plain.nowhere(lead) and not plain.hits(lead)]
    roomy = {lead.id for lead in fair if led[lead.id].way == "clear"}
    assert len(roomy) >= 8
    said = {saying.subjects[0] for saying in lead_path.look(Scene(layout))}
    assert roomy.isdisjoint(said)


def test_lead_path_speaks_where_a_lead_had_to_go_straight():
    from tests.build import gear
    from tests.routing.test_by_hand import _lay

    places = [(x, y) for x in (100, 200, 300) for y in (100, 200, 300) if (x, y) != (200, 200)]
    shut_in = _lay(*[gear(f"X{k}", x, y, "wall") for k, (x, y) in enumerate(places)])
    assert ("C", "X6") in [f.subjects for f in check(shut_in).findings if f.rule == "lead-path"]
