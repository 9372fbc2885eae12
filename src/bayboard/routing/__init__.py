"""Where leads run and what they carry.

Reading order: `ends`, `kind`, `route`.
"""
