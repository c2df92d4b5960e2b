"""The rule layer: a Recipe and a Day in, a Plan out. Knows no text, no terminal, no file format."""
