"""Rules over a reading, each in a small file of its own, and the search for mends."""

from wallwise.checks.catalogue import RULES, check, rule_named

__all__ = ["RULES", "check", "rule_named"]
