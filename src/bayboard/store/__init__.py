"""Files: layouts in .json, and job files that lose nothing.

Reading order: `files` (one layout in a .json file); `schema`, `base` (the job file as SQLite sees it);
`drafts`, `states`, `revisions`, `photos`, `prints`, `metas` (what stands in it); `holder`, `writing`,
`opening`, `making`, `checking`, `rescue`; `job_file` (all of it as one object).
Beside them the shelf of vehicles: `found`, `shelf_reader`, `shelf_index`, `shelf`.
"""
