"""Figures and terms as data, their loader, lexicon, mirroring and audit."""
