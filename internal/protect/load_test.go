package protect

import (
	"testing"

	"garner/internal/crop/croptest"
)

func TestDataHaveSources(t *testing.T) {
	croptest.Sourced(t, data, 3)
	if f, err := known(); err != nil || len(f.pests) == 0 || len(f.laid) == 0 {
		t.Errorf("%v", err)
	}
}
