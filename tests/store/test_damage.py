"""A damaged job file gives back what has its hash and says the rest.

The 200 files of `tests/long/damage.py` in small.
"""

from itertools import chain

import pytest
from tests.store.harming import (
    flips,
    opened,
    pages_of,
    readable,
    rescued,
    silent_loss,
    truncations,
    whole_parts,
)
from tests.store.plain_file import digest
from tests.store.specimen import specimen

from bayboard.store.job_file import open_job_file

COUNT = 15  # of each


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """A whole file with something in every table, its parts and its pages."""
    path = tmp_path_factory.mktemp("damage") / "whole.bay"
    specimen(path)
    return path, whole_parts(path), pages_of(path)


def test_every_page_of_the_whole_file_is_known(whole):
    _, _, pages = whole
    assert set(pages.owner) == set(range(1, len(pages.data) // pages.size + 1))
    assert {"schema", "revision", "draft", "state", "photo", "print", "meta", "freelist"} <= set(
        pages.owner.values()
    )


def test_the_plain_reader_finds_all_there_is_in_a_whole_file(whole):
    path, parts, _ = whole
    there = readable(path)
    assert there.revisions == {value for name, value in parts.items() if name[0] == "revision"}
    assert there.photos == {value for name, value in parts.items() if name[0] == "photo"}
    assert there.draft == parts["draft"]


def test_no_cut_or_flipped_bit_loses_anything_without_a_sentence(whole, tmp_path):
    _, parts, pages = whole
    path = tmp_path / "damaged.bay"
    for words, data in chain(truncations(pages, COUNT, seed=3), flips(pages, COUNT, seed=4)):
        path.write_bytes(data)
        found, said = opened(path)
        assert silent_loss(found, said, parts) == [], (words, said)


def test_rescue_brings_back_all_that_can_be_read_and_has_its_hash(whole, tmp_path):
    _, parts, pages = whole
    path, out = tmp_path / "damaged.bay", tmp_path / "rescued.bay"
    for words, data in chain(truncations(pages, COUNT, seed=5), flips(pages, COUNT, seed=6)):
        path.write_bytes(data)
        said, wrong = rescued(path, out, parts)
        assert wrong == [], (words, said)
        out.unlink(missing_ok=True)


def harmed(whole, owner, offset=0):
    """Return the bytes with the first bytes of an owner's first page flipped."""
    _, _, pages = whole
    data = bytearray(pages.data)
    at = pages.page(min(page for page, name in pages.owner.items() if name == owner)) + offset
    data[at] ^= 0xFF
    return bytes(data)


def test_a_damaged_table_of_undo_steps_does_not_cost_the_draft(whole, tmp_path):
    path = tmp_path / "damaged.bay"
    path.write_bytes(harmed(whole, "state"))
    with open_job_file(path) as file:
        assert file.said != ()
    found, _ = opened(path)
    assert found["draft"] == whole[1]["draft"]


def test_a_broken_index_costs_no_photo(whole, tmp_path):
    path, out = tmp_path / "damaged.bay", tmp_path / "rescued.bay"
    path.write_bytes(harmed(whole, "sqlite_autoindex_photo_1"))
    assert rescued(path, out, whole[1])[1] == []


def test_a_damaged_draft_gives_way_to_the_nearest_step_and_says_so(whole, tmp_path):
    path = tmp_path / "damaged.bay"
    path.write_bytes(harmed(whole, "draft", offset=4_096 - 20))
    with open_job_file(path) as file:
        assert "the draft is damaged" in " ".join(file.said).lower()
        file.keep("after the damage")
        assert file.revisions()[-1].note == "after the damage"
    with open_job_file(path) as again:
        assert again.said == ()
        assert again.check_whole() == ()


def flipped_word(word, owner, pages):
    """Return the bytes with one bit of a word other, where it stands on an owner's page."""
    data, at = bytearray(pages.data), -1
    while True:
        at = bytes(data).index(word, at + 1)
        if pages.owner[at // pages.size + 1] == owner:
            data[at] ^= 1
            return bytes(data)


@pytest.mark.parametrize(("word", "owner"), [(b"as agreed", "revision"), (None, "revision"), (None, "draft")])
def test_a_damaged_note_or_time_costs_no_layout(word, owner, whole, tmp_path):
    path, out = tmp_path / "damaged.bay", tmp_path / "rescued.bay"
    path.write_bytes(flipped_word(word or changed_of(whole[0])[:10], owner, whole[2]))
    said, wrong = rescued(path, out, whole[1])
    assert wrong == [], said
    with open_job_file(out) as file:
        assert file.draft().sha256 == digest(whole[1]["draft"])
        assert len(file.revisions()) == len(whole[1]["revisions"])
        damaged = [revision for revision in file.revisions() if revision.note.startswith("(damaged)")]
        assert len(damaged) == (owner == "revision")


def changed_of(path):
    """Return when the draft of a file changed, as it stands in it."""
    with open_job_file(path, look=True) as file:
        return file.draft().changed.encode()
