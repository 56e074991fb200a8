package draw

import (
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/desk"
)

// A store of 40 kg from which one year in ten more is left than in the year before
// it: the lines fall from 20 kg, by a tenth of a pixel at least from point to point, and never
// cross.
func exampleStore() *desk.StoreView {
	v := &desk.StoreView{ID: "sand", Name: "Sand box", CapacityKg: 40, MostKg: 20}
	for d := range v.Kg {
		v.Kg[d] = make([]float64, 7*exampleWeeks)
		for day := range v.Kg[d] {
			v.Kg[d][day] = 20 - float64(day)/float64(28+d)
		}
	}
	return v
}

func levelPaths(t *testing.T, drawn, class string) []shape {
	t.Helper()
	var out []shape
	decoder := xml.NewDecoder(strings.NewReader(drawn))
	for {
		token, err := decoder.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("the drawing is no markup: %v", err)
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local != "path" {
			continue
		}
		at := map[string]string{}
		for _, a := range start.Attr {
			at[a.Name.Local] = a.Value
		}
		if at["class"] == class {
			out = append(out, readPath(t, at["d"]))
		}
	}
}

func TestALevelIsDrawnAgainstItsRoom(t *testing.T) {
	o := LevelOptions{HeightPX: 98, Label: "Sand box", Today: exampleToday, Full: "room for 40 kg"}
	drawn := Level(exampleStore(), exampleScale(), o)
	if !strings.Contains(drawn, "room for 40 kg") || !strings.Contains(drawn, `class="pen today"`) {
		t.Error("the room or today is not told")
	}
	thin, firm, poor := levelPaths(t, drawn, "thin"), levelPaths(t, drawn, "line"), levelPaths(t, drawn, "store")
	if len(thin) != 8 || len(firm) != 1 || len(poor) != 1 {
		t.Fatalf("%d fine lines, %d firm, %d hatched, want 8, 1 and 1", len(thin), len(firm), len(poor))
	}
	// 20 kg of 40 stand half way up the 80 px between the base at 98 and the room at 18.
	if start := firm[0].figures[0][0]; start != [2]float64{0, 58} {
		t.Errorf("the middle year begins at %v, want 0, 58", start)
	}
	for i, at := range thin[0].figures[0] {
		if better := thin[7].figures[0][i]; better[0] != at[0] || better[1] > at[1]+0.05 { // drawn to tenths
			t.Fatalf("the good year lies under the poor one at %v", at)
		}
	}
	for _, at := range poor[0].figures[0] {
		if at[1] > 98.05 || at[1] < 57.95 {
			t.Errorf("hatched at %v, outside what is there", at)
		}
	}
	unused := Level(&desk.StoreView{CapacityKg: 40}, exampleScale(), LevelOptions{HeightPX: 98, Today: cal.None})
	if len(levelPaths(t, unused, "store"))+len(levelPaths(t, unused, "line")) > 0 {
		t.Error("an unused store holds something")
	}
}
