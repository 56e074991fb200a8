package desk

import (
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/demotest"
	"garner/internal/jobs"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/watering"
	"garner/internal/window"
)

// The jobs of a week and of four are the same whether they are told from the first weeks
// of the table or from all of it, all year round.
func TestJobsAreTheSameWithoutTheWholeTable(t *testing.T) {
	for _, name := range []string{"main", "south"} {
		told := 0
		for month := range 12 {
			h := demotest.Holding(t, name)
			h.Today = cal.Of(2027, month+1, 1+2*month)
			s, err := settingOf(h, OutlookOptions{Seed: pageSeed, Years: 20})
			if err != nil {
				t.Fatal(err)
			}
			m := outlook.NewMemory()
			thirst, _, err := watering.Of(s, m, nil)
			if err != nil {
				t.Fatal(err)
			}
			whole, err := outlook.Compute(s, outlook.NewMemory())
			if err != nil {
				t.Fatal(err)
			}
			for _, days := range []int{7, 28} {
				ahead, err := outlook.Ahead(s, m, h.Today+cal.Date(days)+jobs.ForesightD)
				if err != nil {
					t.Fatal(err)
				}
				w := weekWork{asked: &asked{holding: h, setting: s}, ask: JobsOptions{Days: days}, memory: m, thirst: thirst,
					lastDays: newRecent[num.Digest, []window.Window](mostBeds)}
				var views [2]*JobsView
				for i, table := range []*outlook.Table{whole, ahead} {
					w.table = table
					if views[i], err = w.view(); err != nil {
						t.Fatal(err)
					}
				}
				told += views[0].Count
				sameJobs(t, h.Today, views[0], views[1])
			}
		}
		if told < 100 {
			t.Errorf("%s: only %d jobs were told", name, told)
		}
	}
}

func sameJobs(t *testing.T, day cal.Date, want, got *JobsView) {
	t.Helper()
	if reflect.DeepEqual(want, got) {
		return
	}
	a, b := want.Lines(), got.Lines()
	for i := range min(len(a), len(b)) {
		if !reflect.DeepEqual(a[i], b[i]) {
			t.Errorf("on %v: job %d is\n%+v\nand not\n%+v", day, i, b[i], a[i])
			return
		}
	}
	t.Errorf("on %v: %d jobs and not %d", day, len(b), len(a))
}
