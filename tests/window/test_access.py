"""What a screen reader is told, and that everything can be pressed and read."""

import pytest
from PySide6.QtGui import QAccessible
from tests.build import gear, layout

from bayboard.window.access import finding_name, interface_for, piece_name

PIECES = [gear("A", 200, 200), gear("B", 303, 200), gear("C", 700, 100, taped=True)]


@pytest.fixture
def hands(open_window):
    return open_window(layout(gear=PIECES))


def test_a_stand_in_says_where_it_stands_and_what_is_wrong(hands):
    assert piece_name(hands.place, "A") == "A Plain box, 200 mm across, 200 mm up, must 1"
    assert piece_name(hands.place, "C") == "C Plain box, 700 mm across, 100 mm up, taped down"


def test_the_wall_reads_as_a_list_of_its_stand_ins(hands):
    wall = interface_for("", hands.wall)
    assert wall.role() == QAccessible.Role.List
    told = [wall.child(i).text(QAccessible.Text.Name).split(" ")[0] for i in range(wall.childCount())]
    assert told == ["A", "B", "C"]
    hands.click_mm(303, 200)
    assert [bool(wall.child(i).state().selected) for i in range(3)] == [False, True, False]
    box = hands.place.scale.box(hands.place.scene.placed["B"].box).toAlignedRect()
    assert wall.child(1).rect().size() == box.size()
    at = hands.wall.mapToGlobal(box.center())
    assert wall.childAt(at.x(), at.y()).text(QAccessible.Text.Name).startswith("B ")


def test_the_bench_reads_as_a_list_with_the_numbers_that_hang_its_pieces(open_window):
    hands = open_window(layout(gear=[gear("A", 200, 200), gear("B", 0, 0) | {"at": None}]))
    bench = interface_for("", hands.bench)
    told = [bench.child(i).text(QAccessible.Text.Name) for i in range(bench.childCount())]
    assert told == ["B Plain box, waiting, number 1"]
    assert bench.child(0).rect().width() > 10


def test_the_findings_read_as_a_list_of_sentences(hands):
    rows = interface_for("", hands.window.findings.list)
    assert rows.childCount() == len(hands.place.verdict.findings) == 1
    assert rows.child(0).text(QAccessible.Text.Name) == finding_name(
        hands.place, hands.place.verdict.findings[0]
    )
    assert rows.child(0).text(QAccessible.Text.Name).startswith("Must 1: A ")


def test_qt_takes_the_interface_of_the_wall(hands):
    QAccessible.installFactory(interface_for)
    found = QAccessible.queryAccessibleInterface(hands.wall)
    assert found.childCount() == 3
    assert found.child(2).text(QAccessible.Text.Name).startswith("C Plain box")


def test_the_window_tells_when_the_counts_change(hands, monkeypatch):
    said = []
    monkeypatch.setattr("bayboard.window.main_window.announce", lambda widget, words: said.append(words))
    hands.window._say_counts()
    hands.window._say_counts()
    assert said == ["1 must"]


def controls(hands):
    window = hands.window
    return [
        *window.card.fields,
        window.card.tape,
        window.strip.lever,
        window.strip.units,
        window.findings.foot,
    ]


@pytest.mark.parametrize("size", [(1600, 1000), (1280, 800)])
def test_everything_to_press_is_forty_pixels_high_and_has_a_name(open_window, size):
    hands = open_window(layout(gear=PIECES), size)
    hands.click_mm(200, 200)
    for control in controls(hands):
        assert control.isVisible()
        assert control.height() >= 40, control.accessibleName()
        assert control.accessibleName()
    for spot in hands.window.findings.list.spots():
        assert spot.rect.height() >= 40
        assert all(felt.height() >= 40 for _, felt in spot.links)


PARTS = ("strip", "wall", "hanging", "foot", "section", "bench", "findings", "card")


@pytest.mark.parametrize("size", [(1600, 1000), (1280, 800), (1024, 700), (850, 530), (2400, 1300)])
@pytest.mark.parametrize("scaled", [1.0, 1.15, 1.5])
@pytest.mark.parametrize("three", [False, True])
def test_no_part_covers_another_but_those_that_share_a_place(size, scaled, three):
    from itertools import combinations

    from PySide6.QtCore import QRect, QSize

    from bayboard.window.floor_plan import LEAST, floor_plan

    if size[0] < LEAST.width() * scaled or size[1] < LEAST.height() * scaled:
        scaled = 1.0
    plan = floor_plan(QSize(*size), scaled, three)
    parts = {name: getattr(plan, name) for name in PARTS}
    if plan.shared:
        assert not three
        assert parts.pop("card") == plan.findings
    if plan.slides:
        assert parts.pop("section").width() == 0
    window = QRect(0, 0, *size)
    assert all(window.contains(rect) and not rect.isEmpty() for rect in parts.values())
    assert [(a, b) for a, b in combinations(parts, 2) if parts[a].intersects(parts[b])] == []
    assert (plan.wall.top(), plan.section.top()) == (plan.hanging.top(), plan.hanging.top())
    assert plan.wall.height() >= 200 * scaled


def test_card_and_findings_take_turns_from_the_drawn_width_down():
    from PySide6.QtCore import QSize

    from bayboard.window.floor_plan import floor_plan

    found = {
        wide: (plan.shared, plan.slides)
        for wide in (1180, 1179, 900, 899)
        if (plan := floor_plan(QSize(wide, 800)))
    }
    assert found == {1180: (False, False), 1179: (True, False), 900: (True, False), 899: (True, True)}
    assert floor_plan(QSize(1280, 800), 1.5).slides  # as narrow as 853 px at 100 %


def test_the_floor_plan_is_the_drawn_one():
    from PySide6.QtCore import QSize

    from bayboard.window.floor_plan import floor_plan

    large, small = floor_plan(QSize(1600, 1000)), floor_plan(QSize(1280, 800))
    assert (large.strip.height(), small.strip.height()) == (58, 52)
    assert (large.section.width(), small.section.width()) == (372, 300)
    assert (large.hanging.width(), large.foot.height()) == (36, 28)
    assert (1000 - large.foot.bottom() - 1, 800 - small.foot.bottom() - 1) == (
        306,
        256,
    )  # the row and its gap


def test_no_text_is_smaller_than_fourteen_pixels():
    import ast
    from pathlib import Path

    import bayboard.window

    small = []
    for path in Path(bayboard.window.__file__).parent.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "Style":
                sizes = [k.value for k in node.keywords if k.arg == "px"] + node.args[1:2]
                small += [
                    f"{path.name}:{node.lineno}"
                    for s in sizes
                    if isinstance(s, ast.Constant) and s.value < 14
                ]
    assert small == []
