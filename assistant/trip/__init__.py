"""The trip file in, the trip plan out: reading the TOML, and the plan as text, Markdown, booklet, calendar, table, JSON."""
