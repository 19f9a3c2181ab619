# Everyday work on Headland. `make` alone lists what there is.

program := bin/headland$(shell go env GOEXE 2>/dev/null)

# go build, go list and a test ask git about this checkout, and fail where git
# will not answer because the checkout is another user's, as in a container.
# There, git is told for as long as make runs that this folder may be trusted.
ifneq ($(shell git rev-parse HEAD >/dev/null 2>&1 && echo answers),answers)
export GIT_CONFIG_COUNT := 1
export GIT_CONFIG_KEY_0 := safe.directory
export GIT_CONFIG_VALUE_0 := $(CURDIR)
endif

.DEFAULT_GOAL := help
.NOTPARALLEL:
.PHONY: help run build test format vet static unit race onscreen bench fuzz icon picture setup-run setup-test

help: ## list these targets
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/  make \1|\2/p' Makefile | awk -F'|' '{ printf "%-18s %s\n", $$1, $$2 }'

run: setup-run build ## build the program and open the demo collection
	$(program) --demo

build: ## build the program into bin/
	go build -o $(program) .

test: setup-test format vet static unit race onscreen ## all the checks and tests

format: ## check that the code is formatted as gofmt would
	@echo 'gofmt -l main.go assets pagemodel typeset ui'; badly=$$(gofmt -l main.go assets pagemodel typeset ui) || exit 1; \
	if [ -n "$$badly" ]; then echo "Not formatted as gofmt would:"; echo "$$badly"; exit 1; fi

vet: ## go vet
	go vet ./...

static: ## staticcheck
	go tool staticcheck ./...

unit: ## every test but the one in a real window
	@echo 'go test ./... but for ui/onscreen'; packages=$$(go list ./...) || exit 1; \
	go test $$(echo "$$packages" | grep -v '/ui/onscreen')

race: ## the tests again, with the race detector, where it pays
	go test -race ./pagemodel/... ./typeset ./ui/session

onscreen: ## the test in a real window, on a screen of its own
	.ci/onscreen

bench: setup-test ## measure, saying on what machine (BENCH, BENCHTIME)
	.ci/bench

fuzz: setup-test ## run every fuzz test for FUZZTIME each, 20s by default
	.ci/fuzz

picture: setup-test build ## take the README's picture
	.ci/picture

icon: ## draw the icon's pictures from icon.svg
	.ci/setup icon
	rsvg-convert --width 512 --height 512 --output assets/icon/icon.png assets/icon/icon.svg
	rsvg-convert --width 96 --height 96 --output assets/icon/window.png assets/icon/icon.svg

setup-run:
	@.ci/setup run

setup-test:
	@.ci/setup test
