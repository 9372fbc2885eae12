"""The rules agree with a second opinion from the contract's words, on layouts that aim at the limits."""

import pytest
from tests.plain.agree import differences
from tests.plain.random_layouts import random_document


# tests/long/agree.py looks at three thousand
@pytest.mark.parametrize("start", range(0, 100, 20))
def test_the_rules_agree_with_the_plain_recheck(start):
    seeds = range(start, start + 20)
    assert {seed: said for seed in seeds if (said := differences(random_document(seed)))} == {}
