package desk

import (
	"testing"

	"garner/internal/season"
)

// A perennial that rests is not picked in between; leaf that grows again is.
func TestPickingsWithAPauseAreOneHarvest(t *testing.T) {
	flow := make([]float32, 400)
	for _, day := range []int{0, 12, 24, 380} {
		flow[day] = 1
	}
	spans := flowSpans(&season.Outcome{First: 100, Flow: flow})
	if len(spans) != 2 || spans[0] != (daySpan{100, 125}) || spans[1] != (daySpan{480, 481}) {
		t.Errorf("%v", spans)
	}
}
