"""The use cases: the only door for the command line."""
