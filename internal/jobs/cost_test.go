package jobs_test

import (
	"math"
	"testing"

	"garner/internal/demotest"
	"garner/internal/jobs"
	"garner/internal/outlook"
	"garner/internal/plan"
)

// shortKg is all that is expected to lack at a table [kg].
func shortKg(t *outlook.Table) float64 {
	sum := 0.0
	for i := range t.Vegetables {
		for f := range t.Vegetables[i].Years {
			for _, kg := range t.Vegetables[i].Years[f].Short {
				sum += float64(kg) / float64(t.Years)
			}
		}
	}
	return sum
}

// What putting a job off costs is the difference of two full tables, within 1 %.
func TestPuttingOffCostsTheDifferenceOfTwoTables(t *testing.T) {
	h := demotest.Holding(t, "")
	q := question(t, h, 200)
	all := derived(t, q)
	scales, err := outlook.NewScales(demotest.Setting(t, h, years), memory())
	if err != nil {
		t.Fatal(err)
	}
	before := shortKg(q.Table)
	for _, id := range []string{"sow:car-27t", "set:pot-27t", "plant-out:cab-27t", "sow-indoors:one-27", "plant-out:tom-27a", "clear:sav-26", "lift:ono-26"} {
		t.Run(id, func(t *testing.T) {
			one := []jobs.Job{must(t, all, id)}
			if err := jobs.WeighBy(scales, one, 14); err != nil {
				t.Fatal(err)
			}
			edit, ok := jobs.Later(q.Plantings, &one[0], 14)
			if !ok || !one[0].Weighed {
				t.Fatal("it cannot be weighed")
			}
			later := *h
			later.Plantings = append([]plan.Planting(nil), h.Plantings...)
			for _, p := range edit.Set {
				for i := range later.Plantings {
					if later.Plantings[i].ID == p.ID {
						later.Plantings[i] = p
					}
				}
			}
			table, err := outlook.Compute(demotest.Setting(t, &later, years), outlook.NewMemory())
			if err != nil {
				t.Fatal(err)
			}
			want := shortKg(table) - before
			if math.Abs(one[0].CostKg-want) > 0.01*math.Abs(want)+1e-3 {
				t.Errorf("put off by two weeks it costs %g kg, by two tables %g", one[0].CostKg, want)
			}
			t.Logf("%s: %.3f kg, by two tables %.3f", id, one[0].CostKg, want)
		})
	}
}
