"""A half-measured bay is judged, never refused in the middle: what is missing is told as unchecked."""

from copy import deepcopy

import pytest
from tests.bays import bay

from bayboard.model.read import from_document
from bayboard.model.refused import Refused
from bayboard.rules.check import check

DOC = bay(4, across=2)


def _places(value, path=()):
    if isinstance(value, dict):
        for key, item in value.items():
            yield (*path, key)
            yield from _places(item, (*path, key))
    elif isinstance(value, list) and value and isinstance(value[0], dict):
        yield from _places(value[0], (*path, 0))


def _without(path, gap):
    doc = deepcopy(DOC)
    holder = doc
    for step in path[:-1]:
        holder = holder[step]
    holder[path[-1]] = gap
    return doc


def _layouts():
    for path in _places(DOC):
        for gap in (None, []):
            try:
                yield path, gap, from_document(_without(path, gap))
            except Refused:
                continue


def test_no_rule_stumbles_over_anything_that_may_be_missing():
    seen = {(path, gap is None) for path, gap, layout in _layouts() if check(layout).counts}
    assert len(seen) > 20
    assert (("bay", "seats", 0, "folded"), True) in seen


def test_without_boards_everything_waits_on_the_bench():
    bare = deepcopy(DOC) | {"boards": [], "fixings": []}
    for piece in bare["gear"]:
        piece.pop("board", None)
    assert {f.rule for f in check(from_document(bare)).findings} <= {"beside"}


@pytest.mark.parametrize(
    ("path", "rules"),
    [
        (("bay", "seats", 0, "folded"), {"sight", "reach"}),
        (("bay", "stays", 0, "height"), {"sight", "reach", "on-stay", "overlap"}),
        (("bay", "seats", 0, "up"), {"seat-depth", "plug-room"}),
        (("bay", "landings", 0, "recess"), {"on-landing"}),
    ],
)
def test_a_missing_measure_is_told_by_each_rule_that_needs_it(path, rules):
    id_ = DOC
    for step in path[:-1]:
        id_ = id_[step]
    verdict = check(from_document(_without(path, None)))
    assert rules <= {u.rule for u in verdict.unchecked if u.subjects == (id_["id"],)}


def test_eyes_without_a_wall_are_unchecked_until_their_heights_are_given():
    bare = _without(("bay", "wall"), [])
    dials = [u.subjects for u in check(from_document(bare)).unchecked if u.rule == "sight"]
    assert ("A0.gain",) in dials
    bare["bay"]["eye"] = {"y": [100, 400]}
    assert not [u for u in check(from_document(bare)).unchecked if u.rule == "sight"]


def test_an_endless_eye_box_is_told_not_looked_through():
    huge = _without(("bay", "eye"), {"x": [-4000, 5000], "y": [-4000, 5000], "z": [0, 9000]})
    assert {u.subjects[0] for u in check(from_document(huge)).unchecked if u.rule == "sight"} >= {"A0.gain"}
