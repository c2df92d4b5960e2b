"""What the talk answers to questions about a plan, a room for each subject; `answers` asks them."""
