"""Damage 200 job files where it hurts, and mutate 2 000 in every way we thought of.

Damaged: opened with all of it by hash, or with a sentence; rescue brings back what a plain connection can
still read.  Mutated: opened, or refused in one sentence, in a process whose memory and time are watched.
"""

import faulthandler
import itertools
import tempfile
from collections import Counter
from pathlib import Path

from tests.long.figures import keep
from tests.store.harming import flips, opened, pages_of, rescued, silent_loss, truncations, whole_parts
from tests.store.mutating import KINDS, Prober, mutants
from tests.store.rooms import ROOMS
from tests.store.specimen import specimen

FIGURES = (
    "damaged files: silent or wrong",
    "mutated files: wrong",
    "mutated files: peak MB",
    "mutated files: seconds",
)
EACH = 100
MUTANTS = 2_000
SEED = 20261125
HANGS = 60  # s


def damaged(folder: Path) -> tuple[list[tuple[str, object]], Counter[str]]:
    """Return what was wrong after each damage, and how the files came out."""
    whole, path, out = folder / "whole.bay", folder / "damaged.bay", folder / "rescued.bay"
    specimen(whole)
    parts, pages = whole_parts(whole), pages_of(whole)
    wrong, counted = [], Counter[str]()
    for words, data in itertools.chain(truncations(pages, EACH, SEED), flips(pages, EACH, SEED)):
        faulthandler.dump_traceback_later(HANGS, exit=True)
        path.write_bytes(data)
        told, lost = rescued(path, out, parts)
        out.unlink(missing_ok=True)
        found, said = opened(path)
        lost += silent_loss(found, said, parts)
        counted[
            "opened, whole" if not said else "opened with a sentence" if found else "refused in a sentence"
        ] += 1
        if lost:
            wrong.append((words, lost))
            print(words, lost, said, told, flush=True)
    faulthandler.cancel_dump_traceback_later()
    return wrong, counted


def mutated(folder: Path) -> tuple[list[dict[str, object]], dict[str, Counter[str]]]:
    """Return the answer for each mutant, and how each kind came out."""
    answers, counted = [], {kind.__name__: Counter[str]() for kind in KINDS}
    with Prober() as prober:
        for seed, kind, path in mutants(folder, MUTANTS, SEED):
            answer = prober.ask(path)
            answers.append(answer)
            state = "wrong" if answer["wrong"] else "opened" if answer["opened"] else "refused"
            counted[kind][state] += 1
            if answer["wrong"]:
                print(seed, kind, *answer["wrong"], sep="\n  ", flush=True)
    return answers, counted


def main() -> None:
    """Damage, mutate, keep both figures with how the files came out."""
    with tempfile.TemporaryDirectory() as folder:
        wrong, counted = damaged(Path(folder))
    told = {"count": 2 * EACH, "seed": SEED, "came out": dict(counted)}
    keep(
        FIGURES[0],
        ROOMS,
        baseline="damaged files that lost anything without a word",
        goal=0,
        value=len(wrong),
        **told,
    )
    with tempfile.TemporaryDirectory() as folder:
        answers, kinds = mutated(Path(folder))
    told = {"count": MUTANTS, "seed": SEED}
    bad = sum(bool(answer["wrong"]) for answer in answers)
    baseline = "mutated files that were neither opened nor refused in one sentence"
    table = {kind: dict(counts) for kind, counts in kinds.items()}
    keep(FIGURES[1], ROOMS, baseline=baseline, goal=0, value=bad, **told, table=table)
    peak = max(answer["peak"] for answer in answers)
    keep(FIGURES[2], ROOMS, baseline="MB, most that the process ever had", goal=200.0, value=peak, **told)
    longest = max(answer["seconds"] for answer in answers)
    keep(FIGURES[3], ROOMS, baseline="s for all that is tried on one file", goal=20.0, value=longest, **told)


if __name__ == "__main__":
    main()
