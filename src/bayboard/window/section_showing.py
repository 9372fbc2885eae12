"""The workplace as the value that the Section is painted from."""

from bayboard.window.draw.section_show import SectionShow
from bayboard.window.section_points import eyes, fans, points_here, sights, spoken_point, tubes
from bayboard.window.section_words import depths, swings
from bayboard.window.workplace import Workplace


def section_show(place: Workplace) -> SectionShow:
    """Return what the Section shows besides the layout."""
    points = points_here(place)
    spoken = spoken_point(place, points)
    folded = place.lever == "folded" and place.chalk_x is not None
    return SectionShow(
        chalk_x=place.chalk_x,
        lever=place.lever,
        selected=frozenset(place.selected),
        sights=sights(place, points, spoken),
        depths=depths(place),
        fans=fans(points),
        eyes=eyes(place) if folded else None,
        tubes=tubes(place, spoken),
        swings=swings(place),
    )
