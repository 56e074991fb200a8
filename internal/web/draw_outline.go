package web

import (
	"strings"

	"garner/internal/place"
)

// fitOutline keeps a bed's corners in step with its shape, length and width: a
// rectangle has none, a new outline begins as the rectangle, and one whose length
// or width changes is stretched with it.
func fitOutline(row, cells map[string]string) {
	t := &drawnTurn{row: row, cells: cells}
	shape, given := t.cells["shape"]
	if !given {
		shape = t.row["shape"]
	}
	if shape != string(place.ByOutline) {
		if t.row["outline"] != "" {
			t.cells["outline"] = ""
		}
		return
	}
	outline, given := t.cells["outline"]
	if !given {
		outline = t.row["outline"]
	}
	length, okL := t.number("length_m")
	width, okW := t.number("width_m")
	wasL, okA := readDrawn(t.row["length_m"])
	wasW, okB := readDrawn(t.row["width_m"])
	if !okL || !okW || !okA || !okB || length <= 0 || width <= 0 || wasL <= 0 || wasW <= 0 {
		return
	}
	if strings.TrimSpace(outline) == "" {
		t.cells["outline"] = place.WriteOutline([]place.Point{{X: 0, Y: 0}, {X: length, Y: 0}, {X: length, Y: width}, {X: 0, Y: width}})
		return
	}
	corners, ok := place.ParseOutline(outline)
	if !ok || outline != t.row["outline"] || length == wasL && width == wasW {
		return
	}
	for i := range corners {
		corners[i].X *= length / wasL
		corners[i].Y *= width / wasW
	}
	t.cells["outline"] = place.WriteOutline(corners)
}
