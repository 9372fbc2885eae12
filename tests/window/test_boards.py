"""Several boards on one wall: a stand-in belongs to the board its middle comes over."""

import pytest
from tests.build import gear, layout, rectangle
from tests.window.hands import CTRL, SHIFT


@pytest.fixture
def hands(open_window):
    boards = [
        {"id": "BD", "outline": rectangle(0, 0, 450, 400), "thickness": 10, "standoff": 20},
        {"id": "B2", "outline": rectangle(550, 0, 1000, 400), "thickness": 10, "standoff": 60},
    ]
    pieces = [gear("A", 200, 300), gear("B", 390, 100), gear("C", 0, 0) | {"at": None}]
    return open_window(layout(boards=boards, gear=pieces))


def board(hands, name):
    return hands.place.scene.placed[name].board.id


def test_a_drag_onto_another_board_is_one_step(hands):
    before = hands.layout
    hands.drag_mm((200, 300), (700, 250), CTRL)
    assert (board(hands, "A"), hands.gear("A").at) == ("B2", pytest.approx((700, 250), abs=1e-6))
    assert hands.place.job.undo_label.endswith("onto board B2")
    hands.key("Z", CTRL)
    assert hands.layout == before


def test_it_stands_on_that_board_while_it_is_still_in_the_hand(hands):
    hands.drag_mm((200, 300), (700, 250), CTRL, let_go=False)
    assert board(hands, "A") == "B2"
    hands.key("Escape")
    assert board(hands, "A") == "BD"


def test_between_two_boards_it_stays_on_its_own(hands):
    hands.drag_mm((200, 300), (500, 300), CTRL)
    assert board(hands, "A") == "BD"
    assert hands.gear("A").at[0] == pytest.approx(500, abs=1e-6)


def test_of_several_each_goes_to_the_board_below_it(hands):
    hands.click_mm(200, 300)
    hands.click_mm(390, 100, SHIFT)
    hands.drag_mm((390, 100), (590, 100), CTRL)
    assert (board(hands, "A"), board(hands, "B")) == ("BD", "B2")
    hands.key("Z", CTRL)
    assert (board(hands, "A"), board(hands, "B")) == ("BD", "BD")


def test_arrows_carry_it_over_as_well(hands):
    hands.drag_mm((390, 100), (547, 100), CTRL)
    assert board(hands, "B") == "BD"
    hands.key("Right", SHIFT)
    assert board(hands, "B") == "B2"


def test_from_the_ledge_it_goes_to_the_board_it_is_let_go_over(hands):
    spot = next(spot for spot in hands.bench.places() if spot.gear == "C")
    hands.drag(hands.bench.mapTo(hands.window, spot.rect.center()), hands.px(800, 200))
    assert board(hands, "C") == "B2"
