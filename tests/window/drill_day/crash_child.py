"""A window at drill day that presses the space bar for ever; it is killed from outside.

    python crash_child.py FILE.bay

Each press is confirmed on stdout once it is written: "made N".
"""

import os
import sys
from pathlib import Path

os.environ["QT_QPA_PLATFORM"] = "offscreen"
sys.path.insert(0, str(Path(__file__).resolve().parents[3]))

from tests.window.drill_day.days import DayHands, board_day


def main():
    """Drill until the end of the world."""
    hands = DayHands(board_day(), path=Path(sys.argv[1]))
    while True:
        hands.key("Space")
        sys.stdout.write(f"made {hands.book.count()[0]}\n")
        sys.stdout.flush()
        if hands.book.count()[0] == 8:
            hands.key("Backspace")


if __name__ == "__main__":
    main()
