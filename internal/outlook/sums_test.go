package outlook_test

import (
	"reflect"
	"sync"
	"testing"

	"garner/internal/outlook"
)

// Weeks and ribbons are kept with a group's years. Tables that share them may be
// read from many places while another table is computed over the same memory
// (go test -race), and each says what it says by itself.
func TestKeptSumsAreThoseOfTheTable(t *testing.T) {
	edited := small()
	edited.Plantings[0].Date += 14
	edited.Wants[2].KgPerWeek = 0.9
	type told struct {
		weeks   *outlook.Summary
		ribbons []outlook.Ribbon
		courses []outlook.Course
	}
	tell := func(table *outlook.Table) (out told) {
		out.weeks = table.Summarise(true)
		for i := range table.Vegetables {
			out.ribbons = append(out.ribbons, table.Ribbon(&table.Vegetables[i]))
		}
		out.courses = table.Courses("b1", 3)
		return out
	}
	want := [2]told{tell(compute(t, setting(t, small(), 2), outlook.NewMemory())), tell(compute(t, setting(t, edited, 2), outlook.NewMemory()))}
	memory := outlook.NewMemory()
	tables := [2]*outlook.Table{compute(t, setting(t, small(), 2), memory), compute(t, setting(t, edited, 2), memory)}
	var got [6]told
	var wait sync.WaitGroup
	for i := range got {
		wait.Add(1)
		go func() {
			defer wait.Done()
			got[i] = tell(tables[i%2])
		}()
	}
	other := small()
	other.Plantings[2].Date += 5
	compute(t, setting(t, other, 2), memory)
	wait.Wait()
	for i := range got {
		if !reflect.DeepEqual(got[i], want[i%2]) {
			t.Errorf("reader %d of table %d is told something else", i, i%2)
		}
	}
}
