"""The invented hall: its sheets (`sheets/`) and its music, which is played here and not shipped."""
