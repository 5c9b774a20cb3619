"""One small file a rule."""
