"""The song: from sound to a grid of beats, and what the dance does on it."""
