package larder

import (
	"testing"

	"garner/internal/cal"
)

func TestWeekly(t *testing.T) {
	course := make([]float32, 17)
	for i := range course {
		course[i] = 1
	}
	for _, c := range []struct {
		first cal.Date
		want  []float64
	}{
		{monday, []float64{7, 7, 3}},
		{monday + 5, []float64{2, 7, 7, 1}},
		{monday + 6, []float64{1, 7, 7, 2}},
	} {
		got := Weekly(nil, course, c.first)
		if len(got) != len(c.want) || Weeks(c.first, 17) != len(c.want) {
			t.Fatalf("from %v: %v, want %v", c.first, got, c.want)
		}
		for i := range got {
			near(t, "week", got[i], c.want[i])
		}
	}
	if got := Weekly(nil, nil, monday); len(got) != 0 {
		t.Errorf("no days give %v", got)
	}
}
