"""Photos lie in the job file, each once, under their hash."""

import hashlib

import pytest
from tests.store.bench import JPEG, PLAIN, PNG, flipped, refusal

from bayboard.store import photos
from bayboard.store.job_file import Damaged, make_job_file, open_job_file


@pytest.fixture
def file(tmp_path):
    with make_job_file(tmp_path / "van.bay", PLAIN) as made:
        yield made


def test_a_photo_is_named_by_its_hash_and_kind(file):
    assert file.add_photo(JPEG) == hashlib.sha256(JPEG).hexdigest() + ".jpg"
    assert file.add_photo(PNG) == hashlib.sha256(PNG).hexdigest() + ".png"


def test_a_photo_comes_back_byte_for_byte(file):
    name = file.add_photo(JPEG)
    file.close()
    with open_job_file(file.path) as again:
        assert again.photos() == (name,)
        assert again.photo(name) == JPEG


def test_a_large_photo_is_a_photo_like_any_other(file):
    large = JPEG + bytes(40_000_000)
    name = file.add_photo(large)
    assert file.photos() == (name,)
    assert file.check_whole() == ()
    assert file.photo(name) == large


def test_the_same_photo_is_taken_in_once(file):
    assert file.add_photo(PNG) == file.add_photo(PNG)
    assert len(file.photos()) == 1


def test_photos_may_be_given_when_the_file_is_made(tmp_path):
    with make_job_file(tmp_path / "with.bay", PLAIN, photos=[JPEG, PNG, JPEG]) as file:
        assert [file.photo(name) for name in file.photos()] == [JPEG, PNG]


@pytest.mark.parametrize("data", [b"", b"GIF89a", b"<svg/>", b"\xff\xd8", PNG[1:]])
def test_other_data_is_refused(file, data):
    assert "neither a JPEG nor a PNG" in str(refusal(file.add_photo, data))


def test_a_photo_too_large_is_refused(file, monkeypatch):
    monkeypatch.setattr(photos, "LARGEST_PHOTO", 100)
    assert "larger than" in str(refusal(file.add_photo, JPEG))


@pytest.mark.parametrize("name", ["", "none", "../van.bay", "0" * 64 + ".jpg", "0" * 64])
def test_a_photo_that_is_not_there_is_refused(file, name):
    assert "is not in it" in str(refusal(file.photo, name))


def test_a_photo_is_not_had_under_another_ending(file):
    name = file.add_photo(JPEG)
    refusal(file.photo, name.replace(".jpg", ".png"))


def test_a_damaged_photo_is_not_given(file):
    name = file.add_photo(JPEG)
    file.close()
    flipped(file.path, b"a small photo", nth=3)
    with open_job_file(file.path) as again:
        assert isinstance(refusal(again.photo, name), Damaged)
        assert len(again.check_whole()) == 1
