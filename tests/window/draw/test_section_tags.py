"""The Section's tags: inside the view, none over another, whatever is to be told and however narrow it is."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QPointF, QRectF
from tests.window.draw.scenes import count, painted

from bayboard.window.draw.section_tags import Field, Word, paint_tags
from bayboard.window.draw.tags import tag_size
from bayboard.window.theme import LIGHT

TEXTS = ("way in to the fuses: 2 5/8 in wide, 6 in long", "way in: 2 5/8 in", "2 5/8 in")
VIEW = QRectF(0, 0, 300, 420)


def _word(x, y, texts=TEXTS, severity=None, number=None, **more):
    return Word(texts, QPointF(x, y), LIGHT.ok, severity, number, **more)


def _apart(tags):
    rects = [tag.rect for tag in tags if not tag.rect.isEmpty()]
    return not any(a.intersects(b) for i, a in enumerate(rects) for b in rects[:i])


@settings(derandomize=True, max_examples=30, deadline=None)
@given(
    st.sampled_from([300.0, 372.0, 1112.0]),
    st.sampled_from([1.0, 1.5]),
    st.lists(st.tuples(st.integers(-40, 400), st.integers(-40, 460), st.booleans()), max_size=12),
)
def test_tags_never_meet_and_never_leave_the_view(wide, size, spots):
    view, theme = QRectF(0, 0, wide, 420), LIGHT.sized(size)
    field = Field(view, theme)
    field.taken.append(QRectF(120, 200, 30, 20))  # a lettered number
    words = [
        _word(x, y, severity="should" if s else None, number=i if s else None)
        for i, (x, y, s) in enumerate(spots)
    ]
    tags = [field.sign(words[-1]), *(field.put(word) for word in words[:-1])] if words else []
    assert _apart(tags)
    for tag in tags:
        assert tag.rect.isEmpty() or view.contains(tag.rect)
        assert not tag.rect.intersects(QRectF(120, 200, 30, 20))


def test_a_tag_stands_near_what_it_tells_and_off_it():
    (tag,) = [Field(VIEW, LIGHT).put(_word(150, 250))]
    assert not tag.rect.contains(QPointF(150, 250))
    assert tag.rect.adjusted(-40, -40, 40, 40).contains(QPointF(150, 250))


def test_a_text_that_is_too_wide_gives_way_to_a_shorter_one():
    wide = tag_size(TEXTS[0], LIGHT)[0]
    field = Field(QRectF(0, 0, wide, 300), LIGHT)  # its margins leave no room for the longest
    assert field.put(_word(100, 150)).text == TEXTS[1]


def test_a_tag_keeps_off_lines_and_matter_where_it_can():
    field = Field(VIEW, LIGHT)
    field.draw_line(QPointF(0, 200), QPointF(300, 200))
    field.matter.append(QRectF(0, 205, 300, 90))
    rect = field.put(_word(150, 200, ("clear",))).rect
    assert not rect.intersects(QRectF(0, 199, 300, 96))


@pytest.mark.parametrize("marked", [True, False])
def test_without_room_a_finding_keeps_its_sign_and_anything_else_is_left_off(marked):
    field = Field(VIEW, LIGHT)
    texts = ("a sentence much too long for any view of this width that one could think of",)
    word = _word(150, 200, texts, *(("must", 3) if marked else ()))
    tag = field.put(word)
    picture = painted(lambda p: paint_tags(p, [tag], LIGHT), VIEW)
    assert tag.text == ""
    assert (count(picture, QRectF(130, 180, 40, 40), LIGHT.must) > 100) is marked


def test_a_sign_is_left_off_where_a_tag_has_the_place():
    field = Field(VIEW, LIGHT)
    field.taken.append(QRectF(140, 190, 60, 24))
    assert field.sign(_word(150, 200, severity="must", number=1)).rect.isEmpty()
    assert not field.sign(_word(150, 300, severity="must", number=2)).rect.isEmpty()


def test_a_name_that_finds_no_room_near_is_left_off():
    field = Field(VIEW, LIGHT)
    field.taken.append(QRectF(0, 100, 300, 200))
    assert field.put(_word(150, 200, ("hinge",), name=True, reach=40.0)).text == ""
    assert field.put(_word(150, 200, ("hinge",), name=True, reach=200.0)).text == "hinge"
