"""Every check of the project in one go: style, types, the house, the tests.

    python3 tests/all.py

Makes .venv with what the tests need the first time.  The long counts are apart: `tests/long/all.py`.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "src"))

from start import prepare  # noqa: E402  (it stands outside the package)


def steps(python: Path) -> list[tuple[str, list[str]]]:
    """Return the name and the words of each step, quickest first."""
    scripts = python.parent
    run = [str(python), "-m"]
    listed = [
        ("style", [*run, "ruff", "check", "."]),
        ("form", [*run, "ruff", "format", "--check", "."]),
        ("house", [str(scripts / "lint-imports")]),
        ("types", [*run, "mypy"]),
        ("tests", [*run, "pytest", "-n", "2", "-m", "not xcb"]),
    ]
    if shutil.which("xvfb-run"):
        server = ["xvfb-run", "-a", "-s", "-screen 0 1600x1000x24"]
        listed.insert(4, ("tests in a real window", [*server, *run, "pytest", "-m", "xcb", "tests/window"]))
    return listed


def main() -> int:
    """Run the steps; return 0, or the exit code of the first that fails."""
    for name, words in steps(prepare("test")):
        print(f"== {name}", flush=True)
        platform = "xcb" if words[0] == "xvfb-run" else "offscreen"
        environment = os.environ | {"QT_QPA_PLATFORM": platform, "PYTHONHASHSEED": "random"}
        code = subprocess.run(words, cwd=ROOT, env=environment, check=False).returncode
        if code:
            print(f"== {name} failed", flush=True)
            return code
    return 0


if __name__ == "__main__":
    sys.exit(main())
