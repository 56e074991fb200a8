package web

import (
	"strings"
	"testing"

	"garner/internal/desk"
	"garner/internal/words"
)

// The page of a group has the plantings of its members, and that of what is wanted and
// not grown no empty sections.
func TestPagesOfRowsHaveNoEmptySections(t *testing.T) {
	h, office := garden(t, words.English())
	for i, row := range []struct {
		table string
		cells map[string]string
	}{
		{"groups", map[string]string{"id": "roots", "name": "roots"}},
		{"members", map[string]string{"group": "roots", "vegetable": "carrot", "preference": "1"}},
		{"members", map[string]string{"group": "roots", "vegetable": "beetroot", "preference": "2"}},
		{"wants", map[string]string{"group": "roots", "portions_per_eater": "1"}},
		{"wants", map[string]string{"vegetable": "melon", "kg_per_week": "1"}},
	} {
		if _, err := office.Save(desk.Author{Entry: "row " + string(rune('a'+i))}, row.table, "", row.cells, 0); err != nil {
			t.Fatal(err)
		}
	}
	roots := ask(h, "GET", "/vegetable/roots", "").Body.String()
	for _, want := range []string{`data-part="lane-bee-27a"`, `data-part="lane-car-27`, `id="change-bee-27a"`} {
		if !strings.Contains(roots, want) {
			t.Errorf("the group's page has no %s", want)
		}
	}
	melon := ask(h, "GET", "/vegetable/melon", "").Body.String()
	if strings.Contains(melon, "plantings-band") || !strings.Contains(melon, `data-part="forms" hidden>`) {
		t.Error("what is not grown has empty sections")
	}
}
