package place

import "garner/internal/cal"

// SourceKind is a kind of water source. The list is closed and documented.
type SourceKind string

// The kinds of water source.
const (
	Tap    SourceKind = "tap"
	Butt   SourceKind = "butt"   // that a roof fills
	Well   SourceKind = "well"   // dipping well, pond, stream or pump
	Bowser SourceKind = "bowser" // brought
)

// WaterSource is where a site's water comes from.
type WaterSource struct {
	ID         string
	Site       string
	Name       string
	Kind       SourceKind
	HoldsL     float64 // 0: not limited
	RoofM2     float64 // ground that the roof covers which fills it; 0: no roof
	Covering   string  // of the roof; empty: tiles
	FilterLoss float64 // share of the run-off that a filter sends away, 0-1; 0: as usual
	ShutFrom   cal.MonthDay
	ShutTo     cal.MonthDay
	LPerWeek   float64 // at most; 0: not limited
}

// ShutOn tells whether a source is shut on a date; a time that begins later in the
// year than it ends runs over the turn of the year.
func (w *WaterSource) ShutOn(d cal.Date) bool {
	if w.ShutFrom == (cal.MonthDay{}) || w.ShutTo == (cal.MonthDay{}) {
		return false
	}
	at, from, to := yearless(d), w.ShutFrom.DayOfYear(), w.ShutTo.DayOfYear()
	if from <= to {
		return from <= at && at <= to
	}
	return at >= from || at <= to
}

// yearless is a date's place in a common year.
func yearless(d cal.Date) int {
	_, month, day := d.YMD()
	if month == 2 && day == 29 {
		day = 28
	}
	return cal.MonthDay{Month: month, Day: day}.DayOfYear()
}

// OwnSoil tells whether a bed holds soil of its own, apart from the ground: a
// container or a bench.
func (b *Bed) OwnSoil() bool { return b.Kind == "container" || b.Kind == "bench" }
