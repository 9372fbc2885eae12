"""The Print stage: the template's sheets on the Wall, one of them as it leaves the printer, the PDF.

Reading order: `stage` (what it brings into the window), `desk` (what is to be printed and what came of it),
`making` and `beside` (the work, done in a process of its own), `laid` (how sheets lie on the boards), then
the views and their painters.
"""
