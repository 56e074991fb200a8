# garner is built and checked with Go, Node (with npm) and make. Node only bundles
# the script of the pages.

GO      ?= go
NPM     ?= npm
VERSION ?= $(shell git describe --tags --always --dirty 2>/dev/null || echo unreleased)
FUZZ    ?= 5s

# Packages that need no season to be grown: they fail first when they fail.
FAST = ./internal/cal ./internal/num ./internal/fault ./internal/words \
       ./internal/table ./internal/sun ./internal/cover ./internal

export CGO_ENABLED = 0

# What the script of the pages is made of, and what it is bundled into.
SCRIPT  = $(wildcard internal/web/script/*.ts internal/web/script/*/*.ts)
BUNDLE  = internal/web/dist/main.js

.PHONY: mosquitto build run calibrate calibrate-windows test web types browser format vet lint unit bench solvers pictures docs fuzz cover clean

build: web ## the static binary, bin/garner
	$(GO) build -trimpath -ldflags "-s -w -X main.version=$(VERSION)" -o bin/garner ./cmd/garner

run: build ## the demo household in the browser
	bin/garner serve --sample

web: $(BUNDLE) ## the script of the pages, only when it changed

node_modules/.package-lock.json: package.json package-lock.json .npmrc
	@command -v $(NPM) > /dev/null || { echo "the script of the pages is bundled with Node: install node and npm"; exit 1; }
	$(NPM) ci
	@touch $@

$(BUNDLE): $(SCRIPT) tsconfig.json node_modules/.package-lock.json
	node_modules/.bin/esbuild internal/web/script/main.ts --bundle --minify --format=esm --target=es2022 \
	  --legal-comments=none --log-level=warning --outfile=$@

types: node_modules/.package-lock.json
	node_modules/.bin/tsc --project tsconfig.json

browser:
	@tools/browser.sh > /dev/null

mosquitto:
	@tools/mosquitto.sh > /dev/null

test: web browser mosquitto format vet types lint unit

format:
	@unformatted="$$(gofmt -l cmd internal tools)"; \
	if [ -n "$$unformatted" ]; then echo "not formatted with gofmt:"; echo "$$unformatted"; exit 1; fi

vet:
	$(GO) vet ./...
	$(GO) -C tools vet ./...

lint: # staticcheck, pinned in tools/go.mod
	$(GO) tool -modfile=tools/go.mod staticcheck ./...

unit:
	$(GO) test $(FAST)
	$(GO) test -timeout 40m ./...
	@tools/arm64.sh
	GOARCH=arm64 $(GO) test -exec qemu-aarch64 ./internal/outlook -run EveryMachine

bench: web browser ## the speed of the parts, written to docs/performance.md
	@mkdir -p bin
	$(GO) test -run '^$$' -bench . -benchmem ./... > bin/bench.txt || { cat bin/bench.txt; exit 1; }
	$(GO) -C tools run ./benchtable < bin/bench.txt > docs/performance.md
	$(GO) test ./internal/browser -run MeasureSpeed -update

# HiGHS is installed in a folder of the benchmark; nothing else needs it.
HIGHS = cmd/solverbench/highs

$(HIGHS)/node_modules/.package-lock.json: $(HIGHS)/package.json $(HIGHS)/package-lock.json $(HIGHS)/.npmrc
	$(NPM) --prefix $(HIGHS) ci
	@touch $@

solvers: $(HIGHS)/node_modules/.package-lock.json ## the drafts beside exact solvers, docs/solvers.md; takes two hours, goes on where it was broken off; AGAIN=garner runs that one anew
	@tools/solvers.sh
	$(GO) run ./cmd/solverbench -again "$(AGAIN)"

pictures: web browser ## the pictures of the pages in docs/pictures
	$(GO) test ./internal/browser -run Pictures -pictures

calibrate: ## fit the free numbers of the crop book anew, then make docs
	$(GO) run ./cmd/calibrate

calibrate-windows: ## fit what classes and groups share to planting dates, each region left out in turn; goes on where it was broken off
	$(GO) run ./cmd/calibrate windows

docs: ## the parts of the documents that come from data and from the program
	$(GO) test ./internal/exchange -run Document -update
	$(GO) test ./internal/scoreboard -run Document -update
	$(GO) test ./internal -run Document -update

fuzz: ## a short burst for each reader; FUZZ=1m for longer
	@grep -rlE '^func Fuzz' --include='*_test.go' internal | sort | while read -r file; do \
	  grep -oE '^func Fuzz[A-Za-z0-9_]*' "$$file" | cut -c6- | while read -r target; do \
	    echo "$$(dirname "$$file") $$target"; \
	    $(GO) test "./$$(dirname "$$file")" -run '^$$' -fuzz "^$$target\$$" -fuzztime $(FUZZ) </dev/null || exit 1; \
	  done || exit 1; \
	done

cover: ## statements reached by the tests, by package
	@mkdir -p bin
	$(GO) test -coverprofile bin/cover.out -coverpkg ./internal/... ./... > /dev/null
	$(GO) tool cover -func bin/cover.out | tail -1

clean:
	rm -rf bin node_modules $(BUNDLE)
