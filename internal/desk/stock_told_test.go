package desk_test

import (
	"strings"
	"testing"

	"garner/internal/words"
)

// A planting from the own store says how much is held back for it.
func TestPlantingStockIsTold(t *testing.T) {
	o := sampleOffice(t)
	row, err := o.Row("plantings", "pot-27m")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.Save(by("own"), "plantings", "pot-27m", map[string]string{"stock": "own"}, row.Version); err != nil {
		t.Fatal(err)
	}
	view, err := o.PlantingView("pot-27m", nil)
	if err != nil {
		t.Fatal(err)
	}
	told := ""
	for _, why := range view.Why {
		told += words.English().Text(why) + " "
	}
	if !strings.Contains(told, "held back for it from the own store") {
		t.Errorf("told: %s", told)
	}
}
