package plan

import (
	"testing"

	"garner/internal/cal"
)

// By hand: the first letter that no planting and no change of a draft has.
func TestFreeIDs(t *testing.T) {
	taken := Taken([]Planting{{ID: "let-27a"}, {ID: "let-27c"}}, []Change{{Planting: "let-27b"}, {Planting: "let-27d"}})
	for _, c := range []struct {
		crop string
		date cal.Date
		want string
	}{
		{"lettuce", cal.Of(2027, 4, 1), "let-27e"},
		{"lettuce", cal.Of(2104, 4, 1), "let-04a"},
		{"jerusalem-artichoke", cal.Of(2027, 4, 1), "jer-27a"},
		{"a-bc", cal.None, "abca"},
		{"", cal.None, "newa"},
	} {
		if got := taken.Free(c.crop, c.date); got != c.want {
			t.Errorf("%q on %s: %s, want %s", c.crop, c.date, got, c.want)
		}
	}
	for range 22 {
		taken[taken.Free("lettuce", cal.Of(2027, 4, 1))] = true
	}
	if got := taken.Free("lettuce", cal.Of(2027, 4, 1)); got != "let-27aa" {
		t.Errorf("after z comes %s", got)
	}
}
