"""What a screen reader is told, and that everything can be pressed and read."""

import pytest
from PySide6.QtGui import QAccessible
from tests.build import gear, layout
from tests.window.hands import CTRL, SHIFT

from bayboard.window.access import interface_for
from bayboard.window.read_out import finding_name, piece_name

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


@pytest.fixture
def heard(hands, monkeypatch):
    """Return what is said aloud, and a function that waits for it."""
    said = []
    monkeypatch.setattr("bayboard.window.access.announce", lambda widget, words: said.append(words))
    hands.window.saying.speak()
    said.clear()
    return said


def test_a_move_by_keys_is_said_once_with_its_gap_and_what_came_of_it(hands, heard):
    hands.place.select(("A",))
    for _ in range(4):
        hands.key("Left")
    hands.window.saying.speak()
    eased = "Now should: A stands 7 mm off B. 15 mm is better. 1 should."
    assert heard == [f"A 196 mm across, gap to B 7 mm, should 1. {eased}"]
    hands.key("Left", SHIFT)
    hands.window.saying.speak()
    cured = "Cured: A stands 7 mm off B. 15 mm is better. no findings."
    assert heard[1:] == [f"A 186 mm across, gap to B 17 mm. {cured}"]
    hands.window.saying.speak()
    assert len(heard) == 2


def test_an_undo_is_said_with_the_finding_it_brings_back(hands, heard):
    hands.place.select(("A",))
    hands.key("Left", SHIFT)
    hands.window.saying.speak()
    hands.key("Z", CTRL)
    hands.window.saying.speak()
    assert heard[1].startswith(
        "Undone: move A left 10 mm. A 200 mm across, gap to B 3 mm, must 1. Now must: A "
    )


def test_nothing_is_said_while_a_stand_in_is_in_the_hand(hands, heard):
    hands.drag_mm((200, 200), (180, 220), let_go=False)
    hands.window.saying.speak()
    assert heard == []
    hands.release(hands.px(180, 220))
    hands.window.saying.speak()
    assert len(heard) == 1


def test_many_findings_that_come_at_once_are_counted():
    from bayboard.rules.check import check
    from bayboard.window.saying import findings_words

    crowd = layout(gear=[gear(name, 100 + 98 * i, 200) for i, name in enumerate("ABCDE")])
    told = findings_words({}, check(crowd))
    assert told[0].endswith("new findings") and len(told) == 2


def test_leads_and_fixings_are_read_out_after_the_stand_ins(open_window):
    from pathlib import Path

    from bayboard.model.read import read
    from bayboard.window.read_out import wall_names

    pickup = Path(__file__).parents[2] / "demo_layouts" / "crew-pickup-rear-wall.json"
    hands = open_window(read(pickup.read_bytes()))
    wall = interface_for("", hands.wall)
    names = [wall.child(i).text(QAccessible.Text.Name) for i in range(wall.childCount())]
    assert names == wall_names(hands.place)
    kinds = {"A2 ": "across", "C2, 12 V lead from": "in the bay", "H1, ": "bolt"}
    for start, word in kinds.items():
        assert any(name.startswith(start) and word in name for name in names), start
    assert not any(wall.child(i).rect().isEmpty() for i in range(len(names)))
    assert not wall.child(len(names) - 1).state().selectable


def test_walking_the_stand_ins_points_each_out_once(hands, monkeypatch):
    told = []
    monkeypatch.setattr("bayboard.window.access.point_at_part", lambda widget, index: told.append(index))
    hands.wall.setFocus()
    hands.key("Tab")
    hands.key("Tab")
    hands.key("F")
    assert told == [0, 1]


def test_a_switch_reads_as_words_of_which_one_holds(hands):
    units = interface_for("", hands.window.strip.units)
    assert units.role() == QAccessible.Role.Grouping
    states = [
        (units.child(i).text(QAccessible.Text.Name), bool(units.child(i).state().checked)) for i in (0, 1)
    ]
    assert states == [("in", False), ("mm", True)]


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
