"""Where the feet go: a dance to its trace, in metres.  The feet do not know how the sheet was worded."""
