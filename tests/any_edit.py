"""Edits of every kind at random, fit for whatever layout is there."""

from collections.abc import Callable
from random import Random

from bayboard.edits.add_gear import AddGear
from bayboard.edits.drill_hole import DrillHole
from bayboard.edits.drill_metal import DrillMetal
from bayboard.edits.edit import Edit
from bayboard.edits.let_finding_be import LetFindingBe, LetFindingSpeak
from bayboard.edits.move_gear import MoveGear
from bayboard.edits.name_vehicle import NameVehicle
from bayboard.edits.new_plastic import NewPlastic
from bayboard.edits.place_gear import PlaceGear
from bayboard.edits.plan_new_hole import PlanNewHole
from bayboard.edits.put_back import PutBack
from bayboard.edits.remove_gear import RemoveGear
from bayboard.edits.set_gear_lift import SetGearLift
from bayboard.edits.set_limit import SetLimit
from bayboard.edits.set_standoff import SetStandoff
from bayboard.edits.set_taped import SetTaped
from bayboard.edits.set_units import SetUnits
from bayboard.edits.several import Several
from bayboard.edits.swap_gear import SwapGear
from bayboard.edits.to_bench import ToBench
from bayboard.edits.turn_gear import TurnGear
from bayboard.edits.undrill_hole import UndrillHole
from bayboard.model.layout import Layout
from bayboard.model.refused import Refused
from bayboard.rules.verdict import Verdict

FAR = 70.0  # mm that a piece moves at most
LIMITS = {"gap_should": 30.0, "sight_angle": 45.0, "beside_d": 60.0, "seat_margin": 25.0, "lead_od": 9.0}
Make = Callable[[Random, Layout, Verdict], Edit]


def _gear(dice: Random, layout: Layout) -> str:
    return dice.choice(layout.gear).id


def _move(dice: Random, layout: Layout, _: Verdict) -> Edit:
    some = tuple({_gear(dice, layout) for _ in range(dice.choice((1, 1, 2)))})
    return MoveGear(some, dice.uniform(-FAR, FAR), dice.uniform(-FAR, FAR))


def _place(dice: Random, layout: Layout, _: Verdict) -> Edit:
    waiting = [gear.id for gear in layout.gear if gear.at is None] or [_gear(dice, layout)]
    x1, y1 = max(layout.boards[0].outline)
    at = (dice.uniform(0, x1), dice.uniform(0, y1))
    return PlaceGear(dice.choice(waiting), at, dice.choice((None, 0.0, 90.0)))


def _swap(dice: Random, layout: Layout, _: Verdict) -> Edit:
    return SwapGear(*dice.sample([gear.id for gear in layout.gear], 2))


def _hole(dice: Random, layout: Layout) -> str:
    fixings = [fixing.id for fixing in layout.fixings]
    return dice.choice([*fixings, f"{_gear(dice, layout)}#1"])


def _drill(dice: Random, layout: Layout, _: Verdict) -> Edit:
    return DrillHole(_hole(dice, layout), dice.choice((None, (200.0, 150.0))))


def _undrill(dice: Random, layout: Layout, _: Verdict) -> Edit:
    return UndrillHole(dice.choice([*layout.drilled_holes, *(f.id for f in layout.fixings if f.drilled)]))


def _let_be(dice: Random, _: Layout, said: Verdict) -> Edit:
    finding = dice.choice(said.findings)
    return LetFindingBe(finding.rule, finding.subjects, finding.measure, "seen")


def _let_speak(dice: Random, layout: Layout, _: Verdict) -> Edit:
    let = dice.choice(layout.let_be)
    return LetFindingSpeak(let.rule, let.subjects)


def _limit(dice: Random, _: Layout, __: Verdict) -> Edit:
    name = dice.choice(list(LIMITS))
    return SetLimit(name, dice.choice((None, LIMITS[name])))


def _several(dice: Random, layout: Layout, said: Verdict) -> Edit:
    return Several((TurnGear((_gear(dice, layout),), 90.0), _move(dice, layout, said)), "Both")


MAKERS: dict[type, Make] = {
    MoveGear: _move,
    PlaceGear: _place,
    TurnGear: lambda d, of, _: TurnGear((_gear(d, of),), d.choice((90.0, -30.0, 180.0))),
    SetTaped: lambda d, of, _: SetTaped((_gear(d, of),), d.random() < 0.5),
    ToBench: lambda d, of, _: ToBench((_gear(d, of),)),
    SetGearLift: lambda d, of, _: SetGearLift(_gear(d, of), d.choice((0.0, 5.9, 8.0, 60.0))),
    SetStandoff: lambda d, of, _: SetStandoff(of.boards[0].id, d.choice((12.0, 20.0, 45.0))),
    SwapGear: _swap,
    AddGear: lambda d, of, _: AddGear(d.choice(list(of.cards)), f"N{d.randrange(10**6)}"),
    RemoveGear: lambda d, of, _: RemoveGear(_gear(d, of)),
    LetFindingBe: _let_be,
    LetFindingSpeak: _let_speak,
    SetUnits: lambda d, _, __: SetUnits(d.choice(("mm", "in"))),
    SetLimit: _limit,
    NameVehicle: lambda d, _, __: NameVehicle(f"Van {d.randrange(9)}"),
    DrillHole: _drill,
    DrillMetal: lambda d, of, _: DrillMetal(d.choice(of.fixings).id),
    UndrillHole: _undrill,
    PutBack: lambda d, of, _: PutBack(d.choice([*of.fixings, *of.gear]).id),
    PlanNewHole: lambda d, of, _: PlanNewHole(d.choice([*of.fixings, *of.gear]).id),
    NewPlastic: lambda _, of, __: NewPlastic(of.boards[0].id),
    Several: _several,
}


def any_edit(dice: Random, layout: Layout, said: Verdict, kind: type) -> Layout:
    """Return the layout after an edit of that kind, itself where none of the kind can be done."""
    try:
        return MAKERS[kind](dice, layout, said).apply(layout)
    except (Refused, KeyError, IndexError, ValueError, StopIteration):
        return layout
