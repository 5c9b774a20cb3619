# Two commands that need nothing done before them: `make demo` and `make test`.

PYTHON ?= $(firstword $(foreach name,python3.11 python3.12 python3.13 python3,$(shell command -v $(name))))
BIN := .venv/bin
PIP := $(BIN)/python -m pip install --quiet --disable-pip-version-check

.PHONY: demo test lint types contract docs-check unit coverage regen browser clean

demo: .venv/.installed
	@$(BIN)/wallwise demo

test: lint types contract docs-check unit

lint: .venv/.installed-dev
	$(BIN)/ruff check
	$(BIN)/ruff format --check

types: .venv/.installed-dev
	$(BIN)/mypy src tests docs

contract: .venv/.installed-dev
	$(BIN)/lint-imports --no-cache

docs-check: .venv/.installed-dev
	$(BIN)/python docs/generate.py --check

unit: .venv/.installed-dev browser
	$(BIN)/pytest -q -n 2

# Tracing takes longer than what it traces: not part of every run.
coverage: .venv/.installed-dev browser
	$(BIN)/pytest -q -n 2 --cov --cov-report=term:skip-covered

# Rewrites what is generated: rule pages, figure list, command reference, README output, goldens.
regen: .venv/.installed-dev
	$(BIN)/python docs/generate.py
	WALLWISE_REGEN=1 $(BIN)/pytest -q tests/give

# The page is looked at in a real browser.  Debian's is taken where none is found.
browser:
	@command -v chromium chromium-browser google-chrome >/dev/null || \
	  { command -v apt-get >/dev/null && [ "$$(id -u)" = 0 ] && \
	    apt-get update -qq && DEBIAN_FRONTEND=noninteractive \
	    apt-get install -y -qq --no-install-recommends chromium >/dev/null; } || \
	  echo "No Chromium here and none could be installed: the page test will say so."

.venv/bin/python:
	$(PYTHON) -m venv .venv

.venv/.installed: pyproject.toml | .venv/bin/python
	$(PIP) --editable '.[voice]'
	@touch $@

.venv/.installed-dev: pyproject.toml | .venv/bin/python
	$(PIP) --editable '.[dev]'
	@touch $@ .venv/.installed

clean:
	rm -rf .venv build dist .pytest_cache .mypy_cache .ruff_cache .hypothesis .coverage .coverage.* wallwise-demo
