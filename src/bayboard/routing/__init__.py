"""Where leads run and what they carry.

Reading order: `ends`, `kind`, `path` (what comes out), `route` (how), then what it stands on: `bed` and
`surface` (what is in the way), `grown`, `walls`, `floor` (who sees whom), `tip`, `fan`, `search`; `reroute`
when gear moved.
"""
