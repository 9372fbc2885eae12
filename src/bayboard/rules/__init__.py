"""The rules: one file each, named for the fault, judged on one scene.

Reading order: `finding`, `scene`, `rule`, one rule of `arrange`, then `check`, which asks them all.
"""

from bayboard.rules.arrange import reach, sight
from bayboard.rules.rule import Rule

RULES: tuple[Rule, ...] = (sight, reach)
"""Every rule, in the order of the job: measure, arrange, wire, fix."""
