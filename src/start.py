"""Open Bayboard from a checkout: makes .venv with what it needs the first time, then starts it.

    python3 src/start.py [FILE | COMMAND ...]

Needs nothing but Python 3.11 or newer and the network once.
"""

import hashlib
import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")


def prepare(extra: str = "") -> Path:
    """Return the Python of .venv with Bayboard in it, made or brought up to date when it is not.

    `extra` is an extra of pyproject.toml such as `test`.  Ends the program when pip cannot install.
    """
    wants = hashlib.sha256(
        f"{extra}\n{sys.version}".encode() + (ROOT / "pyproject.toml").read_bytes()
    ).hexdigest()
    stamp = VENV / f"made-for-{extra or 'use'}"
    if stamp.exists() and stamp.read_text(encoding="utf-8") == wants:
        return PYTHON
    if not PYTHON.exists():
        _run(sys.executable, "-m", "venv", str(VENV))
    what = f"{ROOT}[{extra}]" if extra else str(ROOT)
    print("Fetching what Bayboard needs (the first time takes a minute or two)", flush=True)
    _run(str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--editable", what)
    stamp.write_text(wants, encoding="utf-8")
    return PYTHON


def _run(*words: str) -> None:
    code = subprocess.run(words, check=False).returncode
    if code:
        sys.exit(code)


if __name__ == "__main__":
    if sys.version_info < (3, 11):
        sys.exit("Bayboard needs Python 3.11 or newer.")
    sys.exit(subprocess.run([str(prepare()), "-m", "bayboard", *sys.argv[1:]], check=False).returncode)
