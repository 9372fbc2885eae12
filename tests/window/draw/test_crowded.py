"""Crowded Walls stay readable: no tag hides what must be seen, and nearly all that are wanted find room."""

import pytest
from tests.window.draw.crowded import SCALES, SIZES, Crowded, faults, wanted

BAYS = [Crowded(pieces, seed) for pieces, seed in ((20, 1), (30, 2), (40, 3))]


@pytest.mark.parametrize("scaled", SCALES)
@pytest.mark.parametrize("size", SIZES, ids=str)
@pytest.mark.parametrize("bay", BAYS, ids=lambda bay: f"{len(bay.layout.gear)} stand-ins")
def test_no_tag_hides_what_must_be_seen(bay, size, scaled, qapp):
    found = bay.docked(size, scaled)
    scale, theme, show, rect = bay.drawn(size, scaled)
    assert wanted(found) == 5
    assert list(faults(found, scale, bay.scene, theme, show, rect)) == []


def test_nearly_all_tags_that_are_wanted_find_room(qapp):
    made = [bay.docked(size, scaled) for bay in BAYS for size in SIZES for scaled in SCALES]
    folded = sum(wanted(found) - sum(one.tag is not None for one in found) for found in made)
    assert folded <= 0.1 * sum(map(wanted, made))


def test_marks_do_not_lie_on_each_other(qapp):
    found = BAYS[2].docked(SIZES[0], 1.0)
    at = [(one.at.x(), one.at.y()) for one in found]
    near = [
        (a, b) for i, a in enumerate(at) for b in at[:i] if max(abs(a[0] - b[0]), abs(a[1] - b[1])) < 20.0
    ]
    assert near == []


def test_the_fault_finder_finds_faults(qapp):
    from dataclasses import replace

    bay = BAYS[0]
    scale, theme, show, rect = bay.drawn(SIZES[0], 1.0)
    found = list(bay.docked(SIZES[0], 1.0))
    tagged = [i for i, one in enumerate(found) if one.tag is not None]
    a, b = tagged[:2]
    found[a] = replace(found[a], tag=found[b].tag.translated(4, 4))
    assert any("meet" in fault for fault in faults(found, scale, bay.scene, theme, show, rect))
    found[a] = replace(found[a], tag=scale.box(next(iter(bay.scene.placed.values())).box))
    assert any("hides a number" in fault for fault in faults(found, scale, bay.scene, theme, show, rect))
