package main

import (
	"fmt"
	"os"
	"runtime"

	"garner/internal/crop"
	"garner/internal/leftout"
	"garner/internal/printed"
)

const (
	foldsFile    = "internal/leftout/data/folds.csv"
	defaultsFile = dataFolder + "/defaults.csv"
)

// windows fits the numbers that classes and groups share to the published
// planting dates, with each region left out in turn, and writes the fits and
// the book's defaults. What is fitted is kept at once: a run that was broken off
// goes on where it stopped.
func windows() error {
	book, err := crop.Load()
	if err != nil {
		return err
	}
	free, err := leftout.FreeNumbers()
	if err != nil {
		return err
	}
	dates, err := printed.Published()
	if err != nil {
		return err
	}
	have, err := leftout.Folds(free)
	if err != nil {
		return err
	}
	folds, err := leftout.Run(dates, book, free, have, runtime.GOMAXPROCS(0), func(all []leftout.Fold) error {
		fmt.Fprintf(os.Stderr, "fit %d of %d, left out: %q\n", len(all), len(dates.Regions)+1, all[len(all)-1].LeftOut)
		return os.WriteFile(foldsFile, leftout.WriteFolds(free, all), 0o644)
	})
	if err != nil {
		return err
	}
	file, err := os.ReadFile(defaultsFile)
	if err != nil {
		return err
	}
	if file, err = leftout.Rewrite(file, free, folds); err != nil {
		return err
	}
	return os.WriteFile(defaultsFile, file, 0o644)
}
