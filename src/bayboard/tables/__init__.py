"""Reference figures with their sources, and the limits of the rules.

Reading order: `where` (finding the shipped files), `reference` (the CSV tables), `limits`.
"""
