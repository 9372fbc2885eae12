"""The PDF as a file: asked to print unscaled, fonts inside, equal bytes from any process, modest memory."""

import json
import os
import subprocess
import sys
from math import hypot
from pathlib import Path

import numpy as np
import pikepdf
import pytest
from tests.paper import boards, readers

from bayboard.model.write import write
from bayboard.paper.book import Options, book
from bayboard.paper.curves import Carry, arc_steps, circle, ring
from bayboard.paper.marks import Letters, Page, Stroke, pt
from bayboard.paper.press import press

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def pdf():
    return book(boards.odd(), Options(paper="a4")).pdf()


def test_the_file_asks_to_be_printed_unscaled_on_one_side(pdf):
    with pikepdf.open(readers.BytesIO(pdf)) as document:
        asked = document.Root.ViewerPreferences
        assert asked.PrintScaling == "/None" and asked.Duplex == "/Simplex"
        assert "/OpenAction" not in document.Root and "/Names" not in document.Root
        assert document.pdf_version == "1.7"  # Duplex came with 1.7, PrintScaling with 1.6


def test_every_font_is_inside_the_file(pdf):
    with pikepdf.open(readers.BytesIO(pdf)) as document:
        fonts = {name: f for page in document.pages for name, f in page.Resources.Font.items()}
        assert fonts
        for font in fonts.values():
            assert "/FontFile2" in font.FontDescriptor
            assert "Helvetica" not in str(font.BaseFont)


PROGRAM = """
import sys
from bayboard.model.read import read
from bayboard.paper.book import Options, book
layout = read(open(sys.argv[1], encoding="utf-8").read())
made = book(layout, Options(paper="letter"))
open(sys.argv[2], "wb").write(made.pdf())
import json, pathlib, resource
json.dump(made.map(), open(sys.argv[2] + ".json", "w"))
status = pathlib.Path("/proc/self/status")  # ru_maxrss would begin with what the tests' process holds
lines = status.read_text().splitlines() if status.exists() else []
own = [int(line.split()[1]) for line in lines if line.startswith("VmHWM")]
print((own or [resource.getrusage(resource.RUSAGE_SELF).ru_maxrss])[0] // 1024)
"""


@pytest.fixture(scope="module")
def two_processes(tmp_path_factory):
    folder = tmp_path_factory.mktemp("print")
    file = folder / "odd.json"
    file.write_text(write(boards.odd()), encoding="utf-8")
    found = []
    for seed in ("1", "4711"):
        out = folder / f"{seed}.pdf"
        env = {**os.environ, "PYTHONHASHSEED": seed}
        told = subprocess.run(
            [sys.executable, "-c", PROGRAM, str(file), str(out)],
            env=env,
            check=True,
            capture_output=True,
            text=True,
        )
        found.append((out.read_bytes(), Path(f"{out}.json").read_text(encoding="utf-8"), int(told.stdout)))
    return found


def test_two_processes_press_the_same_bytes(two_processes):
    (one, map_one, _), (other, map_other, _) = two_processes
    assert one == other and map_one == map_other
    assert one == book(boards.odd(), Options(paper="letter")).pdf()
    assert json.loads(map_one) == book(boards.odd(), Options(paper="letter")).map()


def test_a_print_takes_at_most_300_mb(two_processes):
    assert all(mb <= 300 for *_, mb in two_processes)


def test_a_moved_hole_changes_the_bytes(pdf):
    import msgspec

    moved = boards.odd()
    gear = msgspec.structs.replace(moved.gear[0], at=(260.14, 180.77))
    changed = msgspec.structs.replace(moved, gear=(gear, *moved.gear[1:]))
    assert book(changed, Options(paper="a4")).pdf() != pdf


def bezier(start, step, t):
    a, b, c, d = (np.array(p) for p in (start, step[:2], step[2:4], step[4:]))
    t = t[:, None]
    return a * (1 - t) ** 3 + 3 * b * (1 - t) ** 2 * t + 3 * c * (1 - t) * t**2 + d * t**3


@pytest.mark.parametrize("radius", [0.5, 2.1, 12.0, 80.0, 160.0, 400.0])
def test_circles_are_round_to_a_micrometre(radius):
    trace = circle((3.0, -2.0), radius)
    here = trace.start
    for step in trace.steps:
        points = bezier(here, step, np.linspace(0, 1, 50))
        assert abs(np.hypot(points[:, 0] - 3.0, points[:, 1] + 2.0) - radius).max() < 0.001
        here = step[4:]
    assert hypot(here[0] - trace.start[0], here[1] - trace.start[1]) < 1e-9


@pytest.mark.parametrize("sweep", [-90.0, -33.0, 12.0, 90.0, 151.0])
def test_arcs_follow_the_true_circle_either_way_round(sweep):
    here = (160.0 * np.cos(0.3), 160.0 * np.sin(0.3))
    steps = arc_steps((0.0, 0.0), 160.0, np.degrees(0.3), sweep)
    for step in steps:
        points = bezier(here, step, np.linspace(0, 1, 50))
        assert abs(np.hypot(*points.T) - 160.0).max() < 0.001
        here = step[4:]
    end = 0.3 + np.radians(sweep)
    assert here == pytest.approx((160.0 * np.cos(end), 160.0 * np.sin(end)))


def test_only_outer_corners_are_rounded_and_arcs_touch_their_edges():
    ell = ((0.0, 0.0), (100.0, 0.0), (100.0, 40.0), (50.0, 40.0), (50.0, 90.0), (0.0, 90.0))
    trace = ring(ell, 10.0)
    assert sum(len(s) == 6 for s in trace.steps) == 5 * 2  # five outer corners of two pieces each
    assert (50.0, 40.0) in [s for s in trace.steps if len(s) == 2]


def test_a_carry_and_its_mirror_keep_distances():
    carry = Carry.to((5.0, 7.0), 90.0).then(Carry.mirror(100.0))
    a, b = carry.point((1.0, 2.0)), carry.point((4.0, 6.0))
    assert hypot(a[0] - b[0], a[1] - b[1]) == pytest.approx(5.0)
    assert a == (97.0, 8.0) and carry.turn == 90.0


def test_letters_are_never_mirrored_in_the_file():
    with pikepdf.open(
        readers.BytesIO(book(boards.odd(), Options(paper="a4", face="back")).pdf())
    ) as document:
        for page in document.pages:
            for operands, operator in pikepdf.parse_content_stream(page):
                if str(operator) in ("Tm", "cm"):
                    a, b, c, d = (float(v) for v in operands[:4])
                    assert a * d - b * c > 0


def test_pages_of_different_sizes_keep_their_own():
    pages = [
        Page("drill", size, (Letters("x", (20.0, 20.0), pt(9.0)),), ())
        for size in ((210.0, 297.0), (297.0, 210.0))
    ]
    with pikepdf.open(readers.BytesIO(press(pages))) as document:
        wide = [float(p.MediaBox[2]) * readers.MM for p in document.pages]
    assert wide == pytest.approx([210.0, 297.0], abs=0.001)


def test_a_dash_set_inside_a_clip_does_not_leak_out():
    from bayboard.paper.curves import line, rectangle
    from bayboard.paper.marks import Clipped

    dashed = Clipped(rectangle((0, 0, 50, 50)), (Stroke((line((0, 0), (9, 9)),), 0.2, (2.0, 1.0)),))
    plain = Stroke((line((0, 20), (9, 29)),), 0.2)
    (subpaths,) = readers.by_stream(press([Page("drill", (100.0, 100.0), (plain, dashed, plain), ())]))
    strokes = [s for s in subpaths if s.stroked]
    assert [s.dashed for s in strokes] == [False, True, False]
    assert all(s.width == pytest.approx(0.2, abs=0.001) for s in strokes)
