"""What meets people: reading, talking, showing, keeping."""
