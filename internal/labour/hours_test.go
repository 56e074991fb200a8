package labour

import "testing"

// Every number that is asked for is in the file; tending is less than all the work of
// a garden, and preserving more than laying away.
func TestEveryNumberIsThere(t *testing.T) {
	for _, name := range append([]string{"garden", "tend", "cover", "row", "pick", "lay"}, preserving...) {
		if hours[name] <= 0 {
			t.Errorf("no %s", name)
		}
	}
	if len(hours) != 6+len(preserving) {
		t.Errorf("%d numbers, of which some are not asked for", len(hours))
	}
	if Tend() >= Garden() {
		t.Errorf("tending takes %g of %g h", Tend(), Garden())
	}
	for _, m := range preserving {
		if Preserve(m) <= PutAway("hung") {
			t.Errorf("%s takes no more than laying away", m)
		}
	}
	if Preserve("hung") != 0 || Preserve("garden") != 0 || PutAway("garden") != PutAway("hung") {
		t.Error("what is no method of preserving takes work of its own")
	}
}
