package web

import (
	"math"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/place"
	"garner/internal/words"
)

// Steps of the buttons beside a drawing.
const (
	moveStepM = 0.1
	turnStep  = 5.0 // [degrees]
	leastSide = 0.05
)

// drawnTurn is a row of something drawn while it is changed.
type drawnTurn struct {
	row   map[string]string // as it stands
	cells map[string]string // what is to be written
}

// steps are the buttons: what each adds to a column.
var drawSteps = map[string]struct {
	column string
	by     float64
}{
	"left": {"x_m", -moveStepM}, "right": {"x_m", moveStepM}, "down": {"y_m", -moveStepM}, "up": {"y_m", moveStepM},
	"longer": {"length_m", moveStepM}, "shorter": {"length_m", -moveStepM}, "wider": {"width_m", moveStepM}, "narrower": {"width_m", -moveStepM},
	"turn_left": {"turn_deg", turnStep}, "turn_right": {"turn_deg", -turnStep},
}

// take does what a button asks for; an empty name asks for nothing.
func (t *drawnTurn) take(do string, sent map[string]string, h *holding.Holding) error {
	if s, known := drawSteps[do]; known {
		at, ok := t.number(s.column)
		if !ok {
			return nil // what is wrong with it is told when it is saved
		}
		at += s.by
		switch s.column {
		case "turn_deg":
			at = math.Remainder(at, 360)
		case "length_m", "width_m":
			at = math.Max(leastSide, at)
		}
		t.set(s.column, at)
		return nil
	}
	switch do {
	case "off":
		t.cells["x_m"], t.cells["y_m"] = "", ""
	case "place":
		t.place(h)
	case "cut":
		return t.cut(sent)
	}
	return nil
}

// place puts it where there is room for it as it is turned.
func (t *drawnTurn) place(h *holding.Holding) {
	length, okL := t.number("length_m")
	width, okW := t.number("width_m")
	turn, okT := t.number("turn_deg")
	if !okL || !okW || !okT {
		return // what is wrong with it is told when it is saved
	}
	sin, cos := math.Sincos(turn * math.Pi / 180)
	sin, cos = math.Abs(sin), math.Abs(cos)
	at := freeSpot(h, t.row["site"], length*cos+width*sin, length*sin+width*cos)
	t.set("x_m", at.XM)
	t.set("y_m", at.YM)
}

// number reads a column as it is to be written; a blank one is nought.
func (t *drawnTurn) number(column string) (float64, bool) {
	text, given := t.cells[column]
	if !given {
		text = t.row[column]
	}
	return readDrawn(text)
}

// readDrawn reads a number as people type it; a blank is nought.
func readDrawn(text string) (float64, bool) {
	text = strings.ReplaceAll(strings.TrimSpace(text), ",", ".")
	if text == "" {
		return 0, true
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

func (t *drawnTurn) set(column string, v float64) {
	t.cells[column] = strconv.FormatFloat(math.Round(v*1000)/1000+0, 'f', -1, 64)
}

// cut takes a corner out of a bed, which becomes an L.
func (t *drawnTurn) cut(sent map[string]string) error {
	length, okL := t.number("length_m")
	width, okW := t.number("width_m")
	cutL, okA := readDrawn(sent["cut_length"])
	cutW, okB := readDrawn(sent["cut_width"])
	if !okL || !okW {
		return nil
	}
	if !okA || !okB || cutL <= 0 || cutW <= 0 || cutL >= length || cutW >= width {
		return fault.List{fault.New(fault.OutOfRange, "web.draw_cut_size", words.Args{"length": length, "width": width})}
	}
	l, w := length-cutL, width-cutW
	corners := []place.Point{{X: 0, Y: 0}, {X: length, Y: 0}, {X: length, Y: w}, {X: l, Y: w}, {X: l, Y: width}, {X: 0, Y: width}}
	for i := range corners {
		if strings.HasSuffix(sent["cut_corner"], "_left") {
			corners[i].X = length - corners[i].X
		}
		if strings.HasPrefix(sent["cut_corner"], "lower_") {
			corners[i].Y = width - corners[i].Y
		}
	}
	t.cells["shape"], t.cells["outline"] = string(place.ByOutline), place.WriteOutline(corners)
	return nil
}
