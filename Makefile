# Perchlight: `make serve` to use it, `make test` to check it. Both install what is missing.
.PHONY: help serve build test test-browser deny measure sizes prove scorecard lives fuzz mutants texts jobs readme

help:
	@echo "make serve         build the release and serve it on http://127.0.0.1:8080/ (PORT=8090 for another port)"
	@echo "make build         build the release into dist/"
	@echo "make test          every check, native and in a browser"
	@echo "make test-browser  only the browser tests (ONLY=offline for those with that word)"
	@echo "make deny          licences, crates and sources of everything in Cargo.lock, and its known faults"
	@echo "make measure       sizes, times and memory against their budgets (WRITE=1 puts the table into DEVELOPERS.md)"
	@echo "make sizes         which part of the program takes how much of the download"
	@echo "make prove         every fault with its full number of trials and 3,000 lives, and the table of them in DEVELOPERS.md"
	@echo "make fuzz          hostile texts against every reader of foreign text (SECONDS=600 for each of them)"
	@echo "make mutants       which changes of the judging code no test notices (ONLY=src/domain/feeding/schedule.rs for one file)"
	@echo "make lives         lives of made-up chicks against the laws (LIVES=3000 for more than 200, LAWS=1,6 for some laws)"
	@echo "make texts         every text in English and Spanish side by side, as target/texts.html to read and mark"
	@echo "make jobs          how many taps, characters, screens and scrolls an owner's jobs take (WRITE=1 puts the table into DEVELOPERS.md)"
	@echo "make readme        the pictures of the README, anew from the built app"
	@echo "make scorecard     how early the warnings come and how often falsely (WRITE=1 puts the table into DEVELOPERS.md)"

serve:
	@PORT=$(or $(PORT),8080) .build/serve.sh

build:
	@.build/build.sh

test:
	@.build/test.sh

test-browser:
	@.build/test-browser.sh $(ONLY)

deny:
	@.build/deny.sh

measure:
	@$(if $(WRITE),WRITE=1) .build/measure.sh

sizes:
	@.build/sizes.sh

prove:
	@.build/prove.sh

fuzz:
	@SECONDS_EACH=$(or $(SECONDS),60) .build/fuzz.sh $(ONLY)

mutants:
	@.build/mutants.sh $(ONLY)

lives:
	@$(if $(LIVES),LIVES=$(LIVES)) $(if $(LAWS),LAWS=$(LAWS)) .build/lives.sh

scorecard:
	@cargo bench --no-default-features --bench scorecard -- $(if $(WRITE),--write)

texts:
	@.build/texts.sh

jobs:
	@$(if $(WRITE),WRITE=1) .build/jobs.sh

readme:
	@.build/readme.sh
