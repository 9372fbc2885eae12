"""Run every long measurement whose figure is missing, older than its room, or named on the command line.

    .venv/bin/python tests/long/all.py [NAME ...]

Each script of this folder with a `main()` and a `FIGURES` tuple of the names it keeps is one run; what is up
to date is not run again, so a stopped run goes on where it was.
"""

import importlib.util
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE), str(HERE.parents[1])]

import figures  # noqa: E402


def stale(names):
    """Return whether any of the figures is missing or older than the code it measured."""
    known = figures.read()
    return any(n not in known or known[n]["code"] != figures.code_hash(known[n]["rooms"]) for n in names)


def main(asked):
    """Run what is asked for, or what is stale."""
    for path in sorted(HERE.glob("*.py")):
        if path.stem in ("all", "figures"):
            continue
        spec = importlib.util.spec_from_file_location(f"long_{path.stem}", path)
        script = importlib.util.module_from_spec(spec)
        spec.loader.exec_module(script)
        if path.stem in asked or (not asked and stale(script.FIGURES)):
            print(f"== {path.stem}", flush=True)
            script.main()


if __name__ == "__main__":
    main(sys.argv[1:])
