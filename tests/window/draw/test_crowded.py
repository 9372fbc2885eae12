"""Crowded Walls stay readable: no tag hides what must be seen, and nearly all that are wanted find room."""

from dataclasses import replace

import pytest
from tests.window.draw.crowded import SCALES, SIZES, Crowded, faults, place_is_free, wanted

from bayboard.window.draw.docking import docked

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
    bay = BAYS[0]
    scale, theme, show, rect = bay.drawn(SIZES[0], 1.0)
    found = list(bay.docked(SIZES[0], 1.0))
    tagged = [i for i, one in enumerate(found) if one.tag is not None]
    a, b = tagged[:2]
    found[a] = replace(found[a], tag=found[b].tag.translated(4, 4))
    assert any("meet" in fault for fault in faults(found, scale, bay.scene, theme, show, rect))
    found[a] = replace(found[a], tag=scale.box(next(iter(bay.scene.placed.values())).box))
    assert any("hides a number" in fault for fault in faults(found, scale, bay.scene, theme, show, rect))


@pytest.mark.parametrize("by", [(1.0, 0.5), (4.0, 3.0)], ids=str)
def test_no_frame_of_a_drag_hides_what_must_be_seen(by, qapp):
    bay = BAYS[2]
    scale, theme, _, rect = bay.drawn(SIZES[1], 1.0)
    for scene, show in bay.dragged(SIZES[1], 1.0, 5, by=by):
        found = docked(scale, scene, theme, show, rect)
        assert list(faults(found, scale, scene, theme, show, rect)) == []


def test_tags_whose_place_stays_free_do_not_jump_about_under_the_hand(qapp):
    bay = BAYS[0]
    scale, theme, _, rect = bay.drawn(SIZES[0], 1.0)
    before, stayed, could = {}, 0, 0
    for scene, show in bay.dragged(SIZES[0], 1.0, 20, "A17", by=(1.0, 0.5)):
        found = docked(scale, scene, theme, show, rect)
        tags = {one.mark.of: one.tag for one in found if one.tag is not None}
        for of in tags.keys() & before.keys():
            others = [tag for name, tag in tags.items() if name != of]
            if place_is_free(before[of], scale, scene, theme, found, others):
                could += 1
                stayed += (tags[of].topLeft() - before[of].topLeft()).manhattanLength() <= 4.0
        before = tags
    assert could >= 80
    assert stayed == could


def test_a_tag_whose_place_is_taken_moves(qapp):
    bay = BAYS[0]
    scale, theme, show, rect = bay.drawn(SIZES[0], 1.0)
    first = {one.mark.of: one.tag for one in docked(scale, bay.scene, theme, show, rect) if one.tag}
    of, tag = next(iter(first.items()))
    again = docked(scale, bay.scene, theme, replace(show), rect, [tag])
    moved = next(one.tag for one in again if one.mark.of == of)
    assert moved is None or not moved.intersects(tag)


def test_at_rest_no_more_is_folded_than_in_a_window_just_opened(qapp):
    bay, size = BAYS[2], SIZES[1]
    scale, theme, _, rect = bay.drawn(size, 1.0)
    frames = list(bay.dragged(size, 1.0, 5, by=(6.0, 4.0)))
    for scene, show in frames:
        docked(scale, scene, theme, show, rect)
    scene, show = frames[-1]
    let_go = replace(show, in_hand=frozenset())
    after = docked(scale, scene, theme, let_go, rect)
    bay.docked(SIZES[0], 1.0)  # a Wall of another size forgets what was
    opened = docked(scale, scene, theme, let_go, rect)
    assert sum(one.tag is not None for one in after) >= sum(one.tag is not None for one in opened) > 0
