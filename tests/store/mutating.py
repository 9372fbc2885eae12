"""Mutants by the thousand, each tried in a process of its own that is watched."""

import json
import shutil
import subprocess
import sys
from pathlib import Path
from random import Random

from tests.store import mutants_outside as outside
from tests.store import mutants_rows as rows
from tests.store.specimen import specimen

PROBER = Path(__file__).with_name("prober.py")
KINDS = {
    rows.rows_gone: 12,
    rows.value_changed: 12,
    rows.value_resealed: 40,
    rows.number_at_the_end: 12,
    rows.no_layout: 30,
    rows.bomb: 2,
    rows.long_value: 6,
    rows.many_rows: 1,
    outside.schema_changed: 10,
    outside.table_replaced: 10,
    outside.schema_lies: 8,
    outside.header_changed: 12,
    outside.bytes_changed: 30,
    outside.pages_changed: 10,
    outside.neighbour: 12,
    outside.no_job_file: 3,
}
LARGE = 5_000_000  # bytes
WHOLE = 4  # different files that are mutated


def mutants(folder, count, seed, kinds=None):
    """Yield (seed, kind, path): a mutant at a time, the same for the same seed."""
    whole = [folder / f"whole-{n}.bay" for n in range(WHOLE)]
    for number, path in enumerate(whole):
        specimen(path, seed=number, rounds=1)
    kinds = kinds or KINDS
    for number in range(seed, seed + count):
        rng = Random(number)
        (kind,) = rng.choices(list(kinds), weights=list(kinds.values()))
        place = folder / "mutant"
        shutil.rmtree(place, ignore_errors=True)
        place.mkdir()
        path = shutil.copyfile(rng.choice(whole), place / "job.bay")
        kind(rng, path)
        yield number, kind.__name__, path


class Prober:
    """The process in which mutants are tried."""

    def __enter__(self):
        words = [sys.executable, str(PROBER)]
        self.process = subprocess.Popen(
            words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        return self

    def __exit__(self, *_):
        self.process.stdin.close()
        self.process.wait(10)
        self.process.stdout.close()
        self.process.stderr.close()

    def ask(self, path):
        """Return what came of a file; a prober that hangs or dies tells where, and another one goes on.

        A large file gets a prober of its own, so that its memory is what that file takes.
        """
        if path.stat().st_size > LARGE:
            self.__exit__()
            self.__enter__()
        self.process.stdin.write(f"{path}\n")
        self.process.stdin.flush()
        answer = self.process.stdout.readline()
        if answer:
            return json.loads(answer)
        said = self.process.stderr.read()
        self.__exit__()
        self.__enter__()
        return {"opened": False, "said": [], "wrong": [f"hung or died: {said}"], "seconds": 60.0, "peak": 0.0}
