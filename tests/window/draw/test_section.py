"""The Section: a cut at the chalk line, looking left; what it shows is measured against hand-worked cuts."""

import pytest
from PySide6.QtCore import QPointF, QRectF
from shapely import Polygon
from tests.build import card, gear, layout, rectangle
from tests.window.draw.scenes import at, count, full, near, painted, scene

from bayboard.window.draw.cut_gear import body_boxes
from bayboard.window.draw.cuts import ring_spans, spans, without
from bayboard.window.draw.profile import cut_leads, metal_line
from bayboard.window.draw.scale import Scale
from bayboard.window.draw.seats import seat_path, seats_at, solid_section
from bayboard.window.draw.section import paint_section
from bayboard.window.draw.section_show import Depth, Eyes, Fan, SectionShow, Sight, Swing, Tube
from bayboard.window.draw.sights import seen_share
from bayboard.window.theme import DARK, LIGHT

VIEW = QRectF(0, 0, 420, 560)
SECTION = Scale(0.6, 360.0, 420.0)  # z = 0 at the pixel column 360
BOTH = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda t: t.name)


def section(show, made=None, theme=LIGHT):
    return painted(lambda p: paint_section(p, SECTION, scene(made), theme, show, VIEW), VIEW)


def zy(z: float, y: float) -> QPointF:
    return SECTION.px(-z, y)


# -- the cut ---------------------------------------------------------------------------------------


def test_a_line_through_a_rectangle_is_one_stretch():
    assert ring_spans(tuple(map(tuple, rectangle(0, 10, 50, 90))), 20) == [(10.0, 90.0)]
    assert ring_spans(tuple(map(tuple, rectangle(0, 10, 50, 90))), 60) == []
    assert ring_spans((), 20) == []


def test_a_cut_out_opens_the_board():
    board = Polygon(rectangle(0, 0, 100, 100), [rectangle(40, 40, 60, 60)])
    assert spans(board, 50) == [(0.0, 40.0), (60.0, 100.0)]
    assert spans(board, 10) == [(0.0, 100.0)]
    assert spans(Polygon(), 10) == []


def test_the_metal_steps_back_by_the_recess_of_its_landing():
    ((*line,),) = metal_line(full().bay, 100.0)
    assert line[0] == (0.0, -100.0)
    assert line[-1] == (0.0, 500.0)
    assert min(z for z, _ in line) == -18.0
    low, high = (y for z, y in line if z == -18.0)
    assert (low, high) == (27.0, 113.0)  # 7 mm of slope inside a landing from 20 to 120


def test_away_from_the_landing_the_metal_is_straight():
    assert metal_line(full().bay, 400.0) == [[(0.0, -100.0), (0.0, 500.0)]]


def test_an_unmeasured_recess_leaves_the_metal_where_it_was_measured_from():
    bay = {"landings": [{"id": "L1", "outline": rectangle(50, 20, 150, 120), "recess": None}]}
    assert metal_line(layout(bay=bay).bay, 100.0) == [[(0.0, -100.0), (0.0, 500.0)]]


def test_no_wall_no_metal():
    assert metal_line(layout(bay={"wall": []}).bay, 100.0) == []


def test_a_lead_is_cut_where_it_crosses_the_line():
    found = list(cut_leads(scene(), 700.0))
    assert found == [("W1", "power", 35.0, 100.0, 10)]  # board front 30, half its diameter over it


def test_a_lead_along_the_line_is_not_cut():
    assert [lead for lead, *_ in cut_leads(scene(), 500.0)] == ["W1"]


def test_a_piece_takes_its_height_over_the_boards_front():
    piece = scene().placed["A1"]
    (box,) = body_boxes(piece, SECTION, 200.0)
    assert (box.right(), box.left()) == pytest.approx((zy(30, 0).x(), zy(75, 0).x()))
    assert (box.bottom(), box.top()) == pytest.approx((zy(0, 190).y(), zy(0, 310).y()))


def test_solids_are_cut_one_by_one():
    solids = [
        {"outline": rectangle(-50, -30, 50, 0), "z": [0, 10]},
        {"outline": rectangle(-50, 0, 0, 30), "z": [10, 50]},
    ]
    made = layout(cards={"box": card(solids=solids)}, gear=[gear("A1", 300, 200)])
    piece = scene(made).placed["A1"]
    assert len(body_boxes(piece, SECTION, 280.0)) == 2
    assert len(body_boxes(piece, SECTION, 320.0)) == 1


def test_the_seat_of_the_cut_is_shown_else_the_one_beyond_it():
    two = [
        {"id": "LEFT", "x": [0, 500], "up": None, "folded": None},
        {"id": "RIGHT", "x": [500, 1000], "up": None, "folded": None},
    ]
    made = scene(layout(bay={"seats": two}))
    assert [s.id for s in seats_at(made, 300)] == ["LEFT"]
    assert [s.id for s in seats_at(made, 1050)] == ["LEFT", "RIGHT"]
    assert seats_at(made, -50) == []


# -- the picture -----------------------------------------------------------------------------------


@BOTH
def test_metal_board_and_gear_stand_in_their_colours(theme):
    picture = section(SectionShow(200.0), theme=theme)
    assert near(picture, zy(25, 20), theme.board, 20)
    assert count(picture, QRectF(zy(70, 300), zy(35, 270)), theme.buff, 30) > 100
    assert not near(picture, zy(25, -50), theme.board, 10)


def test_the_lever_decides_which_seat_is_solid():
    up, folded = section(SectionShow(200.0, "up")), section(SectionShow(200.0, "folded"))
    in_up, in_folded = zy(250, 300), zy(500, 20)
    assert at(up, in_up) != at(folded, in_up)
    assert at(up, in_folded) != at(folded, in_folded)


def test_what_a_seat_crushes_is_hatched_in_must():
    bay = {
        "seats": [
            {"id": "S", "x": [0, 1000], "up": [[60, 200], [300, 200], [300, 300], [60, 300]], "folded": None}
        ]
    }
    crushed = QRectF(zy(74, 290), zy(62, 210))
    hit = section(SectionShow(200.0, "up"), full(bay=bay, leads=[]))
    spared = section(SectionShow(200.0, "folded"), full(bay=bay, leads=[]))
    assert count(hit, crushed, LIGHT.must, 70) > 40
    assert count(spared, crushed, LIGHT.must, 70) < 6


def test_a_piece_farther_left_is_an_outline_and_one_to_the_right_is_not_seen():
    only = full(gear=[gear("B1", 300, 200, "box")], leads=[])
    edge = QRectF(zy(80, 230) + QPointF(-2, -2), zy(60, 230) + QPointF(2, 2))
    assert count(section(SectionShow(700.0), only), edge, LIGHT.ink2, 80) > 3
    assert count(section(SectionShow(100.0), only), edge, LIGHT.ink2, 80) == 0


def test_a_piece_of_unknown_height_is_drawn_open_and_not_as_a_body():
    made = full(cards={"amp": card(200, 120, None)}, gear=[gear("A1", 200, 250, "amp")], leads=[])
    assert body_boxes(scene(made).placed["A1"], SECTION, 200.0) == []
    picture = section(SectionShow(200.0), made)
    assert count(picture, QRectF(zy(54, 300), zy(34, 200)), LIGHT.pencil, 60) > 10


def test_a_cut_lead_is_a_disc_in_its_jackets_colour():
    assert near(section(SectionShow(700.0)), zy(35, 100), LIGHT.power, 30)


def test_with_no_chalk_line_there_is_only_the_ground():
    picture = section(SectionShow(None))
    assert {at(picture, QPointF(x, y)) for x in (5, 200, 400) for y in (5, 300, 550)} == {
        at(picture, QPointF(9, 9))
    }


def test_putty_lumps_show_near_the_cut_only():
    lump = zy(130, 60)
    assert near(section(SectionShow(320.0)), lump, LIGHT.hold, 40)
    assert not near(section(SectionShow(500.0)), lump, LIGHT.hold, 40)


def test_a_depth_is_told_on_a_tag_with_its_number():
    depth = Depth((75.0, 200.0), (150.0, 200.0), "3 in left under the seat", "should", 2)
    picture = section(SectionShow(200.0, depths=(depth,)))
    assert count(picture, VIEW.adjusted(8, 40, -8, -8), LIGHT.shouldfill, 30) > 80
    assert near(picture, (zy(75, 200) + zy(150, 200)) / 2, LIGHT.should, 60)


@pytest.mark.parametrize("verdict", ["clear", "steep", "blocked"])
def test_lines_of_sight_are_told_apart_by_their_line(verdict):
    sight = Sight((75.0, 0.0), (500.0, 0.0), verdict, stopped=(300.0, 0.0) if verdict == "blocked" else None)
    lone = layout(bay={"wall": []}, boards=[])
    picture = section(SectionShow(200.0, sights=(sight,)), lone)
    token = {"clear": LIGHT.ok, "steep": LIGHT.should, "blocked": LIGHT.ink}[verdict]
    y = zy(0, 0).y()
    inked = [near(picture, QPointF(x, y), token, 70) for x in range(80, 150)]
    share = sum(inked) / len(inked)
    assert {"clear": share == 1.0, "steep": 0.45 < share < 0.85, "blocked": 0.15 < share < 0.7}[verdict]


SAYS = SectionShow(
    200.0,
    "folded",
    frozenset(["A1", "W1"]),
    sights=(
        Sight((75.0, 200.0), (500.0, 600.0), "clear", "dials: clear, 14° off square"),
        Sight((75.0, 190.0), (500.0, 600.0), "steep", "fuse looks down: 110° off", "should", 1),
        Sight((75.0, 190.0), (75.0, 190.0), "blocked", "light: blocked", stopped=(80.0, 200.0)),
    ),
    depths=(
        Depth((75.0, 200.0), (75.0, 200.0), "0 in"),
        Depth((75.0, 200.0), (60.0, 200.0), "digs in", "must", 3),
    ),
    eyes=Eyes((500.0, 400.0), (900.0, 1000.0)),
)
ODD = {
    "nothing": layout(bay={"wall": []}, boards=[]),
    "no boards": layout(boards=[]),
    "null heights": full(cards={"amp": card(200, 120, None)}, leads=[]),
    "stay of unknown height": full(
        bay={"stays": [{"id": "S", "name": "s", "outline": rectangle(150, -50, 250, -10), "height": None}]},
        leads=[],
    ),
    "seat unknown": full(bay={"seats": [{"id": "S", "x": [0, 1000], "up": None, "folded": None}]}, leads=[]),
    "a bit of everything": full(),
}


@pytest.mark.parametrize("made", ODD.values(), ids=ODD.keys())
@pytest.mark.parametrize("k", [0.01, 0.6, 30.0])
def test_no_layout_stops_the_section(made, k):
    for show in (SectionShow(200.0), SAYS, SectionShow(None)):
        odd = scene(made)
        odd.routes = {}  # type: ignore[misc]
        painted(
            lambda p, show=show, odd=odd: paint_section(p, Scale(k, 360, 420), odd, DARK, show, VIEW), VIEW
        )


def test_a_seats_section_closes_and_reads_z_to_the_left():
    path = seat_path(((100.0, 0.0), (200.0, 0.0), (200.0, 50.0)), SECTION)
    assert path.boundingRect().right() == pytest.approx(zy(100, 0).x())
    assert path.boundingRect().left() == pytest.approx(zy(200, 0).x())


def test_a_fan_opens_towards_where_its_point_faces():
    lone = layout(bay={"wall": []}, boards=[])

    def tint(*spots) -> list[bool]:
        picture = section(SectionShow(200.0, fans=(Fan((100.0, 100.0), 0.0, 60.0),)), lone)
        ground = at(picture, QPointF(9, 500))
        return [at(picture, spot) != ground for spot in spots]

    here = zy(100, 100)
    assert tint(here + QPointF(-40, 0), here + QPointF(-25, -30), here + QPointF(-25, 30)) == [True] * 3
    assert tint(here + QPointF(40, 0), here + QPointF(-8, -60), here + QPointF(-90, 0)) == [False] * 3


@pytest.mark.parametrize(("end", "share"), [((400, 300), 1.0), ((-200, 300), 0.5), ((200, 820), 0.5)])
def test_a_line_that_leaves_the_view_is_tagged_where_it_is_seen(end, share):
    view = QRectF(0, 0, 420, 560)
    assert seen_share(QPointF(200, 300), QPointF(*end), view) == pytest.approx(share)


# -- what lies on the metal, the way in, the seat on its way ----------------------------------------


def test_what_a_board_stands_in_is_cut_out_of_a_lining():
    assert without((0.0, 100.0), [(40.0, 60.0), (90.0, 120.0)]) == [(0.0, 40.0), (60.0, 90.0)]
    assert without((0.0, 100.0), [(-5.0, 10.0), (5.0, 20.0)]) == [(20.0, 100.0)]
    assert without((0.0, 100.0), []) == [(0.0, 100.0)]
    assert without((0.0, 100.0), [(0.0, 100.0)]) == []


def test_a_lining_lies_on_the_metal_up_to_where_the_board_stands_in_it():
    lining = {"id": "N", "name": "felt", "outline": rectangle(-90, -90, 900, 400), "thickness": 22}
    made = full(bay={"linings": [lining]}, leads=[], fixings=[])  # the board stands 20 off, from y 0 up
    bare = section(SectionShow(800.0), full(bay={}, leads=[], fixings=[]))
    lined = section(SectionShow(800.0), made)
    assert at(lined, zy(10, -40)) != at(bare, zy(10, -40))
    assert at(lined, zy(10, 40)) == at(bare, zy(10, 40))


def test_a_vent_opens_the_metal():
    vent = {"id": "V", "outline": rectangle(100, -90, 300, 0)}
    pictures = [section(SectionShow(200.0), layout(bay={"vents": vents})) for vents in ([], [vent])]
    metal = zy(0, 0) + QPointF(2.5, 0)
    column = [QPointF(metal.x(), y) for y in range(round(zy(0, -5).y()), round(zy(0, -85).y()))]
    closed, opened = ({at(picture, spot) for spot in column} for picture in pictures)
    assert len(closed) == 1
    assert len(opened) > 1


def test_a_lead_on_the_back_is_cut_behind_its_board():
    only = scene(full(leads=[{"id": "W1", "from": "battery", "to": "A1.b", "size": "4 AWG", "side": "back"}]))
    assert [z for _, _, z, _, _ in cut_leads(only, 700.0)] == [15.0]  # the board's back at 20, half of 10


@pytest.mark.parametrize(("width", "token"), [(60.0, LIGHT.blue), (10.0, LIGHT.must)])
def test_the_way_in_is_as_wide_as_measured_and_dark_as_wide_as_needed(width, token):
    tube = Tube((80.0, 200.0), (230.0, 200.0), width, 25.0, "way in", None if width > 25 else "must", 1)
    lone = layout(bay={"wall": []}, boards=[])
    picture = section(SectionShow(200.0, tubes=(tube,)), lone)
    ground = at(picture, QPointF(9, 500))
    half = 0.6 * width / 2
    middle = (zy(80, 200) + zy(230, 200)) / 2 - QPointF(20, 0)
    assert at(picture, middle + QPointF(0, half - 3)) != ground
    assert at(picture, middle + QPointF(0, max(half, 7.5) + 4)) == ground
    assert near(picture, middle + QPointF(0, half), token, 90)


def test_on_its_way_the_seat_stands_between():
    up = ((100.0, 0.0), (140.0, 0.0), (140.0, 300.0), (100.0, 300.0))
    folded = ((100.0, 0.0), (100.0, -40.0), (400.0, -40.0), (400.0, 0.0))
    seat = {"id": "S", "x": [0, 1000], "up": up, "folded": folded, "hinge": [100, 0]}
    made = layout(bay={"seats": [seat]})
    swing = Swing((100.0, 0.0), (up,), -90.0, 302.6, 82.4)
    show = SectionShow(200.0, "folded", swings=(swing,), folding=0.5)
    (bench,) = seats_at(scene(made), 200.0)
    # half-way down the corner 300 over the hinge lies 300 / sqrt 2 out and up
    z, y = solid_section(bench, show)[3]
    assert (z, y) == pytest.approx((100.0 + 212.132, 212.132), abs=0.001)
    assert solid_section(bench, SectionShow(200.0, "folded")) == bench.folded


def test_of_two_seats_that_meet_at_the_cut_the_left_one_is_seen():
    two = [
        {"id": "LEFT", "x": [0, 500], "up": None, "folded": None},
        {"id": "RIGHT", "x": [500, 1000], "up": None, "folded": None},
    ]
    made = scene(layout(bay={"seats": two}))
    assert [s.id for s in seats_at(made, 500.0)] == ["LEFT"]
    assert [s.id for s in seats_at(made, 0.0)] == ["LEFT"]
