"""The Print stage in a window of its own."""

import pytest


@pytest.fixture
def printing(qapp, qtbot):
    """Return a function that opens a window at the Print stage."""
    from tests.window.print.bench import Printing

    made = []

    def opened(layout=None, runner=None, size=(1600, 1000)):
        hands = Printing(layout, runner, size)
        made.append(hands)
        qtbot.addWidget(hands.frame)
        return hands

    yield opened
    for hands in made:
        hands.frame.settled = True
