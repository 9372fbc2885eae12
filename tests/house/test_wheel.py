"""The wheel stands on its own: fonts, demos and tables travel in it."""

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest
from hatchling.builders.wheel import WheelBuilder

ROOT = Path(__file__).resolve().parents[2]
DEMOS = sorted(path.name for path in (ROOT / "demo_layouts").glob("*.json"))


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory):
    """A folder that holds what the wheel holds, far from the checkout."""
    folder = tmp_path_factory.mktemp("wheel")
    (wheel,) = WheelBuilder(str(ROOT)).build(directory=str(folder), versions=["standard"])
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "site")
    return folder / "site"


def _bayboard(site, *words):
    return subprocess.run(
        [sys.executable, "-m", "bayboard", *words],
        cwd=site.parent,
        env=os.environ | {"PYTHONPATH": str(site), "PYTHONDONTWRITEBYTECODE": "1"},
        capture_output=True,
        check=False,
    )


def test_the_wheel_runs_from_its_own_files(unpacked):
    found = subprocess.run(
        [
            sys.executable,
            "-c",
            "from bayboard.tables.where import shipped; print(shipped('shared', 'reference'))",
        ],
        cwd=unpacked.parent,
        env=os.environ | {"PYTHONPATH": str(unpacked)},
        capture_output=True,
        text=True,
        check=True,
    ).stdout.strip()
    assert Path(found).is_relative_to(unpacked)


@pytest.mark.parametrize("demo", DEMOS)
def test_a_demo_in_the_wheel_can_be_checked(unpacked, demo):
    done = _bayboard(unpacked, "check", str(unpacked / "bayboard" / "_data" / "demo_layouts" / demo))
    assert done.returncode in (0, 1), done.stderr.decode()
    assert done.stderr == b""


def test_the_wheel_prints(unpacked, tmp_path):
    demo = unpacked / "bayboard" / "_data" / "demo_layouts" / DEMOS[0]
    out = tmp_path / "sheets.pdf"
    done = _bayboard(unpacked, "print", str(demo), "--paper", "a4", "--out", str(out))
    assert (done.returncode, done.stderr) == (0, b"")
    assert out.read_bytes().startswith(b"%PDF")


def test_every_font_ships_with_its_licence():
    names = {path.name for path in (ROOT / "assets" / "fonts").iterdir()}
    assert {"ATKINSON-LICENSE", "ROUTED-GOTHIC-copyright"} <= names
