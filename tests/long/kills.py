"""Kill a child that writes without pause, 500 times, and hold its file to all that it had confirmed.

Its own table goes into the figure: kinds of act, kills, open transactions, journals rolled back, lost.
"""

import tempfile
from pathlib import Path

from tests.long.figures import keep
from tests.store.killing import Victims, as_text, table
from tests.store.rooms import ROOMS

FIGURES = ("kills: lost or wrong", "kills: too few inside")
COUNT, SEED = 500, 20261125
INSIDE = 100  # of the kills, at least, must leave a journal that has to be rolled back


def main() -> None:
    """Kill, print the table, keep what was lost."""
    with tempfile.TemporaryDirectory() as folder:
        victims = Victims(Path(folder), SEED)
        deaths = []
        for number in range(COUNT):
            deaths.append(victims.kill())
            if deaths[-1].wrong:
                print(number, deaths[-1], flush=True)
    rows = table(deaths)
    print(as_text(rows), flush=True)
    lost = sum(bool(death.wrong) for death in deaths)
    inside = sum(death.hot for death in deaths)
    keep(
        FIGURES[0],
        ROOMS,
        baseline="kills after which a confirmed act or a kept revision was not there, or the file not whole",
        goal=0,
        value=lost,
        count=COUNT,
        seed=SEED,
        table=rows,
    )
    keep(
        FIGURES[1],
        ROOMS,
        baseline=f"of {INSIDE} kills that had to leave a journal to roll back, those that are missing",
        goal=0,
        value=max(0, INSIDE - inside),
        inside=inside,
        count=COUNT,
        seed=SEED,
    )


if __name__ == "__main__":
    main()
