"""Why?: one short page for a rule, with a drawing of what it measures and the limits it judges by.

Reading order: `page`, `limit_line`, `drawings`, `sketch`.
"""
