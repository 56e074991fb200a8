package jobs_test

import (
	"sync"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/holding"
	"garner/internal/jobs"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// years are enough futures for the jobs of a test.
const years = 20

var memory = sync.OnceValue(outlook.NewMemory)

// question asks for the jobs of a holding over some days from its own today.
func question(t testing.TB, h *holding.Holding, days int) jobs.Question {
	t.Helper()
	s := demotest.Setting(t, h, years)
	table, err := outlook.Compute(s, memory())
	if err != nil {
		t.Fatal(err)
	}
	plantings, faults := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return jobs.Question{Holding: h, Book: s.Book, Table: table, Plantings: plantings, Today: h.Today, Until: h.Today + cal.Date(days)}
}

func derived(t testing.TB, q jobs.Question) []jobs.Job {
	t.Helper()
	out, err := jobs.Derive(q)
	if err != nil {
		t.Fatal(err)
	}
	return out
}
