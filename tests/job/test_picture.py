"""The small picture on job cards: true to scale, the same each time, small, and never in the way."""

import io
import struct
import time
import zlib
from pathlib import Path

import pytest
from PIL import Image
from tests.build import document, gear, layout, rectangle

from bayboard.job.job import new_job
from bayboard.job.picture import BOARD, BUFF, WALL, picture
from bayboard.model.read import from_document, read

DEMOS = sorted((Path(__file__).parents[2] / "demo_layouts").glob("*.json"))
PLAIN = layout(gear=[gear("A1", 200, 200, "slab")])
# the plain board is 1000 x 400 in 240 x 96 px with 6 px free: 0.21 px a mm, its middle at (120, 48)
PX_PER_MM = 84 / 400


def opened(data):
    return Image.open(io.BytesIO(data)).convert("RGB")


def near(colour, wanted):
    return all(abs(a - b) <= 4 for a, b in zip(colour, wanted, strict=True))


def spot(x, y):
    """Return the pixel of a place on the plain board, mm."""
    return round(120 + (x - 500) * PX_PER_MM), round(48 - (y - 200) * PX_PER_MM)


def count(image, wanted):
    pixels = image.load()
    wide, high = image.size
    return sum(near(pixels[x, y], wanted) for x in range(wide) for y in range(high))


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.stem)
def test_the_same_layout_gives_the_same_bytes_and_few_of_them(path):
    one, other = picture(read(path.read_bytes())), picture(read(path.read_bytes()))
    assert one == other
    assert len(one) < 12_000


def test_a_picture_is_quickly_made():
    layouts = [read(path.read_bytes()) for path in DEMOS]
    least = []
    for each in layouts:
        took = []
        for _ in range(5):
            start = time.process_time()
            picture(each)
            took.append(time.process_time() - start)
        least.append(min(took))
    assert max(least) < 0.015


def test_board_stand_in_and_wall_lie_where_they_are():
    image = opened(picture(PLAIN))
    assert near(image.getpixel(spot(200, 200)), BUFF)
    assert near(image.getpixel(spot(600, 200)), BOARD)
    assert near(image.getpixel(spot(500, 415)), WALL)


def test_areas_are_true_to_scale():
    image = opened(picture(PLAIN))
    buff, black = count(image, BUFF), count(image, BOARD)
    assert buff + 2 * (42 + 21) == pytest.approx(200 * 100 * PX_PER_MM**2, rel=0.1)  # its edge is darker
    assert black == pytest.approx((1000 * 400 - 200 * 100) * PX_PER_MM**2, rel=0.06)


def test_a_stand_in_is_turned_as_it_hangs():
    turned = opened(picture(layout(gear=[gear("A1", 200, 200, "slab", turn=90)])))
    assert near(turned.getpixel(spot(200, 280)), BUFF)
    assert near(turned.getpixel(spot(280, 200)), BOARD)


def test_a_cut_out_shows_the_wall_behind_it():
    cut = [{"id": "C1", "outline": rectangle(600, 100, 800, 300)}]
    assert near(opened(picture(layout(board={"cutouts": cut}))).getpixel(spot(700, 200)), WALL)


def test_corners_are_round():
    sharp, round_ = (count(opened(picture(layout(board={"corner_radius": r}))), BOARD) for r in (0, 100))
    assert sharp - round_ == pytest.approx((4 - 3.1416) * 100**2 * PX_PER_MM**2, rel=0.15)


def test_what_waits_on_the_bench_is_not_in_it():
    waiting = {"id": "A1", "card": "slab", "at": None}
    assert picture(layout(gear=[waiting])) == picture(layout())


def test_a_vehicle_of_which_nothing_is_known_has_a_bare_picture():
    image = opened(picture(new_job().layout))
    assert image.size == (240, 96)
    assert len(image.getcolors()) == 1


def test_a_bare_wall_fills_the_picture():
    doc = document()
    doc["boards"] = []
    image = opened(picture(from_document(doc)))
    assert near(image.getpixel((120, 48)), WALL)


def test_figures_as_large_as_a_file_may_hold_are_drawn():
    wall = rectangle(-100_000, -100_000, 100_000, 100_000)
    image = opened(picture(layout(bay={"wall": wall}), 120, 48))
    assert image.size == (120, 48)
    assert near(image.getpixel((60, 24)), BOARD)


def test_another_size_shows_the_same_thing():
    small = opened(picture(PLAIN, 120, 48))
    assert near(small.getpixel((60, 24)), BOARD)
    assert near(small.getpixel((60 - 31, 24)), BUFF)


def test_the_png_is_whole_by_its_own_checksums():
    """PNG specification (W3C), section 5.3: each chunk ends in the CRC-32 of its type and data."""
    data = picture(PLAIN)
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    at, kinds = 8, []
    while at < len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        body = data[at + 4 : at + 8 + length]
        assert struct.unpack(">I", data[at + 8 + length : at + 12 + length])[0] == zlib.crc32(body)
        kinds.append(body[:4])
        at += 12 + length
    assert kinds[0] == b"IHDR" and kinds[-1] == b"IEND"
    assert b"tIME" not in kinds and b"tEXt" not in kinds
