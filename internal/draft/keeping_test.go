package draft

import (
	"testing"

	"garner/internal/crop"
	"garner/internal/larder"
)

// What keeps well as it is goes to the shed, however long it would last frozen; what
// does not is preserved.
func TestKeptAsItIsFirst(t *testing.T) {
	shed := func(days float64) crop.Storage { return crop.Storage{Method: "cool shed", LifeDays: days} }
	sand := crop.Storage{Method: "damp sand", LifeDays: 120}
	frozen := crop.Storage{Method: larder.Frozen, LifeDays: 360}
	for _, c := range []struct {
		a, b crop.Storage
		want bool
	}{
		{shed(150), frozen, true}, {frozen, shed(150), false},
		{shed(10), frozen, false}, {frozen, shed(10), true},
		{shed(150), sand, true}, {shed(90), sand, false},
	} {
		if better(c.a, c.b) != c.want {
			t.Errorf("%v before %v: %v", c.a, c.b, !c.want)
		}
	}
}
