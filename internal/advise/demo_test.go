package advise_test

import (
	"testing"

	"garner/internal/advise"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/outlook"
)

// demoYears is the number of futures of the tests' tables.
const demoYears = 100

func demo(t testing.TB) *holding.Holding { return demotest.Holding(t, "") }

func adviser(t testing.TB, h *holding.Holding, years int) *advise.Adviser {
	t.Helper()
	a, err := advise.New(demotest.Setting(t, h, years), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	return a
}
