// Package demotest gives tests the demo holdings, read and checked as a household's
// own files are, and the usual table of a holding.
package demotest

import (
	"sync"
	"testing"

	"garner/internal/crop"
	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/sample"
)

var book = sync.OnceValues(crop.Load)

// Book is the crop book, read once.
func Book(t testing.TB) *crop.Book {
	t.Helper()
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// Holding is a demo holding by its name, none being the first, read anew so that a
// test may change it.
func Holding(t testing.TB, name string) *holding.Holding {
	t.Helper()
	files, err := sample.Files(name)
	if err != nil {
		t.Fatal(err)
	}
	h, report := exchange.CheckFolder(files, Book(t))
	if !report.OK() {
		t.Fatal(report.Faults)
	}
	return h
}

// Setting asks for the table of a holding over 78 weeks from its own today on, under
// so many futures.
func Setting(t testing.TB, h *holding.Holding, years int) outlook.Setting {
	t.Helper()
	return outlook.Setting{Holding: h, Book: Book(t), Today: h.Today, From: h.Today.Monday(), Weeks: 78, Years: years, Seed: 1, Workers: 2}
}
