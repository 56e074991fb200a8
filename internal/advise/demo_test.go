package advise_test

import (
	"sync"
	"testing"

	"garner/internal/advise"
	"garner/internal/crop"
	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/sample"
)

// demoYears is the number of futures of the tests' tables.
const demoYears = 100

var book = sync.OnceValues(crop.Load)

func demo(t testing.TB) *holding.Holding { return demoOf(t, "") }

func demoOf(t testing.TB, name string) *holding.Holding {
	t.Helper()
	files, err := sample.Files(name)
	if err != nil {
		t.Fatal(err)
	}
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	h, report := exchange.CheckFolder(files, b)
	if !report.OK() {
		t.Fatal(report.Faults)
	}
	return h
}

func setting(t testing.TB, h *holding.Holding, years int) outlook.Setting {
	t.Helper()
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	return outlook.Setting{Holding: h, Book: b, Today: h.Today, From: h.Today.Monday(), Weeks: 78, Years: years, Seed: 1, Workers: 2}
}

func adviser(t testing.TB, h *holding.Holding, years int) *advise.Adviser {
	t.Helper()
	a, err := advise.New(setting(t, h, years), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	return a
}
