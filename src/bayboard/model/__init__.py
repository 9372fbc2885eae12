"""The layout document: its form, how it is read, checked and written, and what stands where.

Reading order: `layout` (the form), `read` (the door in), `raw`, `explain` and `check` (its three sieves),
`write` (the normal form), `codes`, `placed` (a stand-in in bay axes), `refused` (the one error).
"""
