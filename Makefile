# `make help` says what each target does. Every step is skipped when nothing that it reads has changed.
MAKEFLAGS += --no-builtin-rules
.DELETE_ON_ERROR:
.DEFAULT_GOAL := help
.PHONY: help demo test lint format wheel desk bench fuzz lock third-party clean setup test-setup

PYTHON_IN := .venv/bin/python
# The stamps lie in the folder that they speak of, so that deleting the folder deletes them.
BUILD_TOOLS := .venv/build.stamp
TEST_TOOLS := .venv/test.stamp
WHEEL := dist/wheel.stamp
INSTALLED := .venv/lineproof.stamp
NPM := web/node_modules/npm.stamp

# Folders count as sources too: a deleted file changes only its folder.
SOURCES := $(shell find crates python -not -name '*.so' -not -name '*.pyd' -not -name '*.pyc' -not -name __pycache__) \
	Cargo.toml Cargo.lock rust-toolchain.toml pyproject.toml LICENSE THIRD_PARTY.md README.md
OWN_PYTHON := python tests tools training $(wildcard benchmarks)

help: ## say what each target does
	@awk -F ':.*## ' '/^[a-z-]+:.*## / { printf "make %-12s %s\n", $$1, $$2 }' Makefile

demo: $(INSTALLED) ## set everything up and prove the two demo lessons
	.venv/bin/lineproof prove examples/vienna
	.venv/bin/lineproof prove examples/budapest --effort sketch

test: test-setup ## set everything up and run every check and test
	@$(MAKE) --no-print-directory lint
	cargo test --workspace --locked
	$(PYTHON_IN) -m pytest

lint: test-setup ## formats, lints, types, import direction, licences, docs/claims.md, the desk's page
	cargo fmt --all --check
	cargo clippy --workspace --all-targets --locked -- -D warnings
	$(PYTHON_IN) -m ruff check $(OWN_PYTHON)
	$(PYTHON_IN) -m ruff format --check $(OWN_PYTHON)
	$(PYTHON_IN) -m mypy --strict
	$(PYTHON_IN) -m mypy --strict tools
	.venv/bin/lint-imports
	$(PYTHON_IN) tools/third_party.py --check
	$(PYTHON_IN) tools/claims.py --check
	$(PYTHON_IN) tools/board_drawings.py --check
	$(PYTHON_IN) tools/figurines.py --check
	cd web && npm run --silent check
	cd web && npm run --silent build -- --logLevel warn --outDir ../build/page
	@diff -r build/page python/lineproof/desk/page || { echo "python/lineproof/desk/page is not what web/ gives; run: make desk"; exit 1; }
	cd web && npm run --silent build:page -- --logLevel warn --outDir ../build/published
	@diff build/published/lesson-page.js python/lineproof/publish/page/lesson-page.js || { echo "python/lineproof/publish/page/lesson-page.js is not what web/ gives; run: make desk"; exit 1; }

format: $(TEST_TOOLS) ## write all code in the one format
	cargo fmt --all
	$(PYTHON_IN) -m ruff check --fix-only $(OWN_PYTHON)
	$(PYTHON_IN) -m ruff format $(OWN_PYTHON)

wheel: $(WHEEL) ## build the wheel into dist/
	@ls dist/*.whl

desk: $(NPM) ## build the desk's page, and the script of published pages, from web/
	cd web && npm run --silent check
	cd web && npm run --silent build -- --logLevel warn
	cd web && npm run --silent build:page -- --logLevel warn

bench: test-setup ## run the benchmarks, one after the other (EPD=FILE for the one that solves a set)
	@set -e; for file in benchmarks/*.py; do \
		case "$$file" in \
		'benchmarks/*.py') echo "there is no benchmark in benchmarks/"; exit 1 ;; \
		*) echo "== $$file"; $(PYTHON_IN) "$$file" ;; \
		esac; \
	done; \
	case "$(EPD)" in \
	'') echo "== solving needs a set of positions: make bench EPD=FILE.epd" ;; \
	*) echo "== lineproof engine solve, a second a position"; .venv/bin/lineproof engine solve "$(EPD)" ;; \
	esac

fuzz: ## look for inputs that break the readers (SECONDS=60 for each of them)
	@sh fuzz/run.sh $(or $(SECONDS),60)

setup: $(INSTALLED) ## only the set-up: .venv with Lineproof in it

test-setup: $(INSTALLED) $(TEST_TOOLS) $(NPM)
	@sh tools/need.sh test

lock: $(TEST_TOOLS) ## choose the Python packages' versions anew (tools/requirements-*.txt)
	$(PYTHON_IN) tools/lock.py

third-party: test-setup ## write THIRD_PARTY.md anew
	$(PYTHON_IN) tools/third_party.py

clean: ## remove all that was built here
	rm -rf .venv target dist build web/node_modules .mypy_cache .ruff_cache .pytest_cache .hypothesis .import_linter_cache
	find python tests tools -name __pycache__ -prune -exec rm -rf {} +
	rm -f python/lineproof/_engine*.so python/lineproof/_engine*.pyd

$(BUILD_TOOLS): tools/requirements-build.txt
	@sh tools/need.sh build
	@$(PYTHON_IN) -c '' 2>/dev/null || "$$(sh tools/need.sh python)" -m venv --clear .venv
	$(PYTHON_IN) -m pip install --quiet --disable-pip-version-check -r tools/requirements-build.txt
	@touch $@

$(TEST_TOOLS): tools/requirements-test.txt $(BUILD_TOOLS)
	$(PYTHON_IN) -m pip install --quiet --disable-pip-version-check -r tools/requirements-test.txt
	@touch $@

# As root on Debian, need.sh installs Node.js with the other tools of the tests.
$(NPM): web/package.json web/package-lock.json
	@sh tools/need.sh page 2>/dev/null || sh tools/need.sh test
	cd web && npm ci --no-audit --no-fund --silent
	@touch $@

$(WHEEL): $(SOURCES) $(BUILD_TOOLS)
	@echo "building the engine (about a minute the first time)"
	@mkdir -p dist && rm -f dist/lineproof-*.whl
	.venv/bin/maturin build --quiet --release --locked --interpreter $(PYTHON_IN) --out dist
	@touch $@

$(INSTALLED): $(WHEEL)
	$(PYTHON_IN) -m pip install --quiet --disable-pip-version-check --force-reinstall --no-deps dist/lineproof-*.whl
	@touch $@
