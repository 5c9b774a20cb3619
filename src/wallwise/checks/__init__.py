"""Rules over a reading, each in a small file of its own, and the search for mends; rules over its song."""

from wallwise.checks.catalogue import EVERY_RULE, RULES, SONG_RULES, check, check_song, rule_named

__all__ = ["EVERY_RULE", "RULES", "SONG_RULES", "check", "check_song", "rule_named"]
