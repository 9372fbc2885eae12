"""Whether hands get at service points, and eyes see them, with one stand-in at many places."""

from bayboard.geometry.hands_at import comes_near, wide_enough, wide_past
from bayboard.geometry.outline import Points
from bayboard.geometry.prism import Prism
from bayboard.geometry.sight import thing
from bayboard.geometry.sight_at import seen_from, seen_past
from bayboard.geometry.solids import Flags, solids
from bayboard.model.layout import Service
from bayboard.model.placed import Placed
from bayboard.rules.places import Places
from bayboard.rules.reaching import hand_of
from bayboard.rules.scene import Scene
from bayboard.tables.limits import limit


def reached_at(scene: Scene, places: Places, placed: Placed, service: Service) -> Flags:
    """Return at which places of a stand-in the way to a service point, anybody's, is wide enough."""
    length, most = limit(scene.layout, "corridor_length"), limit(scene.layout, "corridor_most")
    rest = _others(scene, (placed.id, places.id))
    if placed.id == places.id:
        return wide_enough(hand_of(scene.layout, places.model, service), places.at, rest, length, most)
    hand = hand_of(scene.layout, placed, service)
    return wide_past(hand, places.at, places.model.prisms, rest, length, most)


def may_bar(scene: Scene, places: Places, placed: Placed, service: Service) -> bool:
    """Return whether a stand-in may bar the way to a service point at any of the places."""
    hand, length = hand_of(scene.layout, placed, service), limit(scene.layout, "corridor_length")
    return placed.id == places.id or comes_near(hand, places.at, places.model.prisms, length)


def seen_at(scene: Scene, places: Places, placed: Placed, service: Service, eyes: Points) -> Flags:
    """Return at which places of a stand-in a service point, anybody's, is seen well."""
    off, most = limit(scene.layout, "sight_start"), limit(scene.layout, "sight_angle")
    if placed.id == places.id:
        placed = places.model
    looked = thing(placed.prisms, [placed.service_at(service)], [placed.way(service.facing)])
    if placed is places.model:
        return seen_from(looked, places.at, solids(_others(scene, (places.id,))), eyes, off, most)
    rest = solids(_others(scene, (places.id,)))
    return seen_past(looked, places.at, solids(places.model.prisms), rest, eyes, off, most)


def _others(scene: Scene, without: tuple[str, ...]) -> list[Prism]:
    """Return the prisms of stays, folded seats and stand-ins but those named."""
    standing = [p for id_, placed in scene.placed.items() if id_ not in without for p in placed.prisms]
    return [*standing, *scene.stay_prisms.values(), *scene.folded_prisms.values()]
