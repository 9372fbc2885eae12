"""Count the convex pairs whose distance or penetration differs from another way of measuring them."""

from tests.geometry.convex_pairs import differing
from tests.long.figures import keep

FIGURES = ("convex pairs that differ",)
COUNT, SEED = 10_000, 2026


def main() -> None:
    """Measure 10 000 pairs, half of them within a hair of touching; the goal is that none differs."""
    found = differing(COUNT, SEED)
    for number, said in found.items():
        print(number, *said, sep="\n  ", flush=True)
    keep(
        FIGURES[0],
        ("geometry",),
        baseline="the Minkowski difference's hull, distances and smallest rectangles of shapely",
        goal=0,
        value=len(found),
        count=COUNT,
        seed=SEED,
    )


if __name__ == "__main__":
    main()
