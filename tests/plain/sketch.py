"""A document in the making: cards, gear, leads and fixings added one by one under fresh ids."""

import math


def rectangle(x0, y0, x1, y1):
    """Return the four corners, counter-clockwise."""
    return [[x0, y0], [x1, y0], [x1, y1], [x0, y1]]


def ell(wide, high):
    """Return an L of a card: its upper right quarter missing, its box about the origin."""
    x, y = wide / 2, high / 2
    return [[-x, -y], [x, -y], [x, 0.2 * y], [0.2 * x, 0.2 * y], [0.2 * x, y], [-x, y]]


class Sketch:
    """A document and the random source that fills it."""

    def __init__(self, rng, doc):
        self.rng, self.doc = rng, doc

    def near(self, *limits, spread=1.0):
        """Return a number within 0.01 of one of the limits, half the time; else up to twice `spread` off."""
        about = self.rng.choice(limits)
        if self.rng.random() < 0.5:
            return round(
                about + self.rng.choice([-0.01, -0.005, 0.005, 0.01, self.rng.uniform(-0.01, 0.01)]), 6
            )
        return round(about + self.rng.uniform(-2, 2) * spread, 6)

    def turn(self):
        """Return a quarter turn or any angle."""
        return self.rng.choice([0, 0, 90, 180, 270, round(self.rng.uniform(0, 360), 3)])

    def name(self, letter, things):
        """Return an id that is new among `things`."""
        return f"{letter}{len(things) + 1}"

    def card(self, wide, high, deep, outline=None, **members):
        """Add a card about the origin and return its name; heat, kind and solids vary."""
        rng = self.rng
        card = {
            "name": "Box",
            "kind": rng.choice(["amplifier", "processor", "fuse block", "distribution", "other"]),
            "outline": outline or rectangle(-wide / 2, -high / 2, wide / 2, high / 2),
            "height": deep,
            "mass": 1,
            "foot": 3,
            "current": None,
            "fuse": None,
            "heat": rng.choice([None, 4.99, 5, 20.5, 40]),
        }
        if rng.random() < 0.2:
            ring = card["outline"]
            inner = [[round(x * 0.8, 6), round(y * 0.8, 6)] for x, y in ring]
            middle = deep * rng.choice([0.3, 0.6])
            card["solids"] = [{"outline": ring, "z": [0, middle]}, {"outline": inner, "z": [middle, deep]}]
        name = self.name("c", self.doc["cards"])
        self.doc["cards"][name] = card | members
        return name

    def gear(self, card, x, y, turn=0, **members):
        """Stand a card on the board and return the gear's id."""
        name = self.name("G", self.doc["gear"])
        self.doc["gear"].append(
            {"id": name, "card": card, "at": [round(x, 6), round(y, 6)], "turn": turn} | members
        )
        return name

    def port(self, name, kind, x, y, towards, z=10, plug=20, **members):
        """Return a port."""
        return {"id": name, "kind": kind, "at": [x, y], "z": z, "towards": towards, "plug": plug} | members

    def service(self, x, y, z, facing, **members):
        """Return a service point of any kind and tool."""
        kind = self.rng.choice(["dial", "fuse", "fuse", "cover", "plug", "light"])
        tool = self.rng.choice(["fingers", "fingers", "screwdriver", "none"])
        return {"id": "s", "kind": kind, "at": [x, y], "z": z, "facing": facing, "tool": tool} | members

    def entry(self, x, y, *carries, **members):
        """Add an entry and return its id."""
        entries = self.doc["bay"]["entries"]
        name = self.name("E", entries)
        run = self.rng.choice([800, 1000.5, 2500])
        entry = {
            "id": name,
            "name": "hole",
            "at": [round(x, 6), round(y, 6)],
            "carries": list(carries),
            "run": run,
        }
        entries.append(entry | members)
        return name

    def lead(self, start, end, **members):
        """Add a lead and return its id."""
        name = self.name("W", self.doc["leads"])
        side = "back" if self.rng.random() < 0.1 else "front"
        lead = {"id": name, "from": start, "to": end, "size": "8 AWG", "side": side} | members
        lead["via"] = [[round(x, 6), round(y, 6)] for x, y in lead.get("via", [])]
        self.doc["leads"].append(lead)
        return name

    def fixing(self, x, y, **members):
        """Add a fixing and return its id."""
        name = self.name("H", self.doc["fixings"])
        fixing = {"id": name, "at": [round(x, 6), round(y, 6)], "thread": "M6"}
        self.doc["fixings"].append(fixing | members)
        return name

    def bay(self, what, **members):
        """Add a landing, stay, no-drill region or seat and return its id."""
        things = self.doc["bay"][what]
        name = self.name({"landings": "L", "stays": "S", "no_drill": "N", "seats": "T"}[what], things)
        things.append({"id": name} | members)
        return name

    def front(self):
        """Return z of the first board's front."""
        board = self.doc["boards"][0]
        return board["standoff"] + board["thickness"]


def along(x, y, angle, distance, aside=0.0):
    """Return the point `distance` from (x, y) at an angle, then `aside` to the left."""
    c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    return (x + c * distance - s * aside, y + s * distance + c * aside)
