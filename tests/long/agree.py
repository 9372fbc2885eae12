"""Count where the rules and the plain recheck differ, on many random layouts aimed at the limits."""

from tests.long.figures import keep
from tests.plain.agree import differences
from tests.plain.random_layouts import random_document

FIGURES = ("rules-agree-with-plain",)
COUNT, SEED = 3000, 1000


def main() -> None:
    """Compare 3 000 layouts and keep how many differ; the goal is none."""
    differing = {}
    for seed in range(SEED, SEED + COUNT):
        said = differences(random_document(seed))
        if said:
            differing[seed] = said
            print(seed, *said, sep="\n  ", flush=True)
    keep(
        FIGURES[0],
        ("rules", "geometry", "routing", "model", "mechanics", "tables"),
        baseline="layouts that a plain recomputation from the contract judges otherwise",
        goal=0,
        value=len(differing),
        count=COUNT,
        seed=SEED,
    )


if __name__ == "__main__":
    main()
