"""A trip's plan as text, Markdown, a table and a printed booklet."""
