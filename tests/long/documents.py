"""Damaged documents by the hundred thousand: each is opened, or refused with one sentence."""

from random import Random

import figures
from tests.model.test_mutations import text_mutant, tree_mutant, wrong

FIGURES = ("damaged documents: wrong",)
ROOMS = (
    "geometry/outline.py",
    *(
        f"model/{name}.py"
        for name in ("explain", "layout", "places", "raw", "read", "refused", "things", "write")
    ),
    *(f"model/check{part}.py" for part in ("", "_figures", "_links", "_names", "_shapes")),
)
COUNT, SEED = 100_000, 1_000_000


def main() -> None:
    """Try them all; a fault is printed with its seed."""
    faults = opened = 0
    for n in range(COUNT):
        mutant = text_mutant if n % 4 == 0 else tree_mutant
        fault, open_ = _met(mutant(Random(SEED + n)))
        opened += open_
        if fault:
            faults += 1
            print(f"seed {SEED + n}: {fault}", flush=True)
    figures.keep(
        FIGURES[0],
        ROOMS,
        baseline="damaged documents neither opened nor refused in one sentence",
        goal=0,
        value=faults,
        count=COUNT,
        seed=SEED,
        opened=opened,
    )


def _met(text: bytes) -> tuple[str, bool]:
    """Return the fault of one, any exception among them, and whether it opened."""
    try:
        return wrong(text)
    except Exception as error:
        return repr(error), False


if __name__ == "__main__":
    main()
