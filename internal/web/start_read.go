package web

import (
	"garner/internal/appetite"
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/gazetteer"
	"garner/internal/notebook"
	"garner/internal/place"
)

// offerLine is a vegetable that is asked about.
type offerLine struct {
	Vegetable, Plural string
	Tick              string
	Choices           []option
}

// offers lists the vegetables with what was ticked, else what most people eat.
func (v *visit) offers(f *startForm) ([]offerLine, error) {
	station, _ := gazetteer.Find(f.Place)
	offered, err := desk.Offered(station.Location.LatitudeDeg < 0)
	if err != nil {
		return nil, err
	}
	var choices []option
	for _, t := range appetite.Ticks() {
		choices = append(choices, option{string(t), v.sentence(t.Phrase())})
	}
	out := make([]offerLine, len(offered))
	for i, o := range offered {
		out[i] = offerLine{Vegetable: o.Vegetable, Plural: o.Plural, Tick: string(o.Usual), Choices: choices}
		if tick, ok := f.Ticks[o.Vegetable]; ok {
			out[i].Tick = tick
		}
	}
	return out, nil
}

// startRead is how ground and notebook were understood.
type startRead struct {
	Beds    []place.Bed
	AreaM2  float64
	Lines   []notebook.Line
	Lacking int // lines without a planting
}

// readStart reads ground and notebook.
func (v *visit) readStart(f *startForm) (startRead, error) {
	beds, _, _ := notebook.ReadBeds(f.Beds)
	r := startRead{Beds: beds}
	for _, b := range beds {
		r.AreaM2 += b.AreaM2()
	}
	_, lines, faults := desk.Plan(v.startOf(f))
	if fault.KindOf(faults) == fault.Internal && len(faults) > 0 {
		return r, faults
	}
	r.Lines = lines
	for _, l := range lines {
		if l.Planting == nil {
			r.Lacking++
		}
	}
	return r, nil
}

// startOf is what was told, for the desk.
func (v *visit) startOf(f *startForm) desk.Start {
	s := desk.Start{Zone: f.Zone, Place: f.Place, Beds: f.Beds, Notebook: f.Lines, Ticks: map[string]appetite.Tick{}, Today: cal.None}
	s.Adults, _ = readPeople(f.Adults)
	s.Children, _ = readPeople(f.Children)
	for vegetable, tick := range f.Ticks {
		s.Ticks[vegetable] = appetite.Tick(tick)
	}
	if m, err := f.elevationM(); err == nil && f.Height != "" {
		if station, known := gazetteer.Find(f.Place); known {
			at := station.Location
			at.ElevationM = m
			s.Location = &at
		}
	}
	return s
}

// checkGround tells what cannot be read of the ground.
func (v *visit) checkGround(f *startForm) fault.List {
	beds, _, faults := notebook.ReadBeds(f.Beds)
	if len(beds) == 0 && len(faults) == 0 {
		faults = fault.List{fault.New(fault.Invalid, "desk.start_no_beds", nil)}
	}
	return faults
}

// begin writes the holding.
func (v *visit) begin(f *startForm) error {
	h, _, faults := desk.Plan(v.startOf(f))
	if len(faults) > 0 {
		return faults
	}
	return v.office.Begin(v.author(), h)
}
