"""The rules agree with a second opinion from the contract's words, on layouts that aim at the limits."""

import pytest
from tests.plain.agree import differences
from tests.plain.random_layouts import random_document


@pytest.mark.parametrize("start", range(0, 200, 25))
def test_the_rules_agree_with_the_plain_recheck(start):
    seeds = range(start, start + 25)
    assert {seed: said for seed in seeds if (said := differences(random_document(seed)))} == {}
