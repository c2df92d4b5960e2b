"""The commands, a room for each group of them; `assistant.cli` lists them all."""
