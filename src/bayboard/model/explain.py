"""Say in one sentence why a JSON value is not of the form that `model.layout` asks for.

msgspec decides whether it is; this walk runs only after a no, to name the thing and the way out.
"""

from difflib import get_close_matches
from functools import cache
from typing import Any

import msgspec
from msgspec import inspect

from bayboard.model.layout import Layout
from bayboard.model.places import LONGEST, quoted, spoken
from bayboard.model.raw import Wrong
from bayboard.model.refused import Refused

_NUMBERS = {1: "one number", 2: "two numbers", 3: "three numbers"}


@cache
def _form() -> inspect.Type:
    return inspect.type_info(Layout)


def explain(document: object, otherwise: str) -> Refused:
    """Return the refusal of a document that is not of the form; `otherwise` if the walk finds nothing."""
    try:
        _look(_form(), document)
    except Wrong as wrong:
        return wrong.refused(document)
    return Refused("", otherwise[:1].lower() + otherwise[1:], "Correct the document")


def _look(form: inspect.Type, value: object) -> None:
    """Raise `Wrong` when `value` is not of `form`."""
    if isinstance(form, inspect.StructType):
        _object(form, value)
    elif isinstance(form, inspect.UnionType):
        _either(form, value)
    elif isinstance(form, inspect.VarTupleType):
        _list(form, value)
    elif isinstance(form, inspect.TupleType):
        _figures(form, value)
    elif isinstance(form, inspect.DictType):
        _table(form, value)
    elif isinstance(form, inspect.LiteralType):
        _choice(form, value)
    else:
        _plain(form, value)


def _inside(form: inspect.Type, value: object, step: str | int) -> None:
    try:
        _look(form, value)
    except Wrong as wrong:
        wrong.path.append(step)
        raise


def _object(form: inspect.StructType, value: object) -> None:
    if not isinstance(value, dict):
        raise Wrong(f"{spoken(value)} is not an object", "Write its members between { and }")
    fields = {field.encode_name: field for field in form.fields}
    for name in value:
        if name not in fields:
            raise _unknown(name, list(fields), at_root=form.cls is Layout)
    for name, field in fields.items():
        if field.required and name not in value:
            raise Wrong(f"the member {quoted(name)} is missing", _give(field.type))
    for name, item in value.items():
        _inside(fields[name].type, item, name)


def _unknown(name: str, known: list[str], at_root: bool) -> Wrong:
    near = get_close_matches(name, known, n=1) if len(name) <= LONGEST else []
    if near:
        do = f"Write {quoted(near[0])} if you mean that"
    elif at_root:
        do = 'Leave it out, or put it in "x"'
    else:
        do = 'Leave it out, or put it in the layout\'s "x"'
    return Wrong(f"there is no member {quoted(name)} here", do)


def _give(form: inspect.Type) -> str:
    options = form.types if isinstance(form, inspect.UnionType) else (form,)
    if any(isinstance(option, inspect.NoneType) for option in options):
        return "Add it; null means not known"
    return "Add it"


def _either(form: inspect.UnionType, value: object) -> None:
    options = [option for option in form.types if not isinstance(option, inspect.NoneType)]
    if value is None and len(options) < len(form.types):
        return
    if len(options) == 1:
        _look(options[0], value)
        return
    if isinstance(value, str):
        options = [option for option in options if isinstance(option, inspect.LiteralType)]
        _look(options[0], value)
    elif not _is_number(value):
        raise Wrong(f'{spoken(value)} is neither degrees nor "out"', "Write one of them")


def _list(form: inspect.VarTupleType, value: object) -> None:
    if not isinstance(value, list):
        raise Wrong(f"{spoken(value)} is not a list", "Write it between [ and ]")
    for index, item in enumerate(value):
        _inside(form.item_type, item, index)


def _figures(form: inspect.TupleType, value: object) -> None:
    count = len(form.item_types)
    if not isinstance(value, list) or len(value) != count:
        example = ", ".join("xyz"[:count])
        raise Wrong(f"{spoken(value)} is not {_NUMBERS[count]}", f"Write [{example}]")
    for index, (part, item) in enumerate(zip(form.item_types, value, strict=True)):
        _inside(part, item, index)


def _table(form: inspect.DictType, value: object) -> None:
    if not isinstance(value, dict):
        raise Wrong(f"{spoken(value)} is not an object", "Write its members between { and }")
    for name, item in value.items():
        _inside(form.value_type, item, name)


def _choice(form: inspect.LiteralType, value: object) -> None:
    if isinstance(value, bool) or value not in form.values:
        known = ", ".join(str(choice) for choice in form.values)
        raise Wrong(f"{spoken(value)} is not one of the choices", f"Choose of {known}")


def _plain(form: inspect.Type, value: object) -> None:
    if isinstance(form, inspect.FloatType) and not _is_number(value):
        raise Wrong(f"{spoken(value)} is not a number", "Write a plain number")
    if isinstance(form, inspect.IntType) and (isinstance(value, bool) or not isinstance(value, int)):
        raise Wrong(f"{spoken(value)} is not a whole number", "Write a whole number")
    if isinstance(form, inspect.StrType) and not isinstance(value, str):
        raise Wrong(f"{spoken(value)} is not text", "Write it between double quotes")
    if isinstance(form, inspect.BoolType) and not isinstance(value, bool):
        raise Wrong(f"{spoken(value)} is neither true nor false", "Write true or false")


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def convert(document: object) -> Layout:
    """Return the document in form; raise `Refused` with the place when it is not."""
    try:
        return msgspec.convert(document, Layout)
    except msgspec.ValidationError as error:
        raise explain(document, str(error)) from None
