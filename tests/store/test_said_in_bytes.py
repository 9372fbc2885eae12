"""SQLite repeats a file's own bytes in what it says; they need not be text."""

import pytest
from tests.store.vehicles import vehicle

from bayboard.store.job_file import open_job_file
from bayboard.store.troubles import Damaged


@pytest.mark.parametrize("look", [True, False])
def test_a_schema_whose_words_are_no_text_is_damage(tmp_path, look):
    path = vehicle(tmp_path, "van")
    data = path.read_bytes()
    at = data.index(b"CREATE TABLE holder")
    path.write_bytes(data[:at] + b"CREATE \xfe\xfeBLE h\xfelder" + data[at + 19 :])
    with pytest.raises(Damaged):
        open_job_file(path, look=look)
