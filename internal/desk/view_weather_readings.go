package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/holding"
	"garner/internal/observed"
	"garner/internal/place"
	"garner/internal/sun"
)

// mostReadings is how many of the last readings are listed.
const mostReadings = 20

// ReadingLine is a reading as it was told.
type ReadingLine struct {
	ID      string   `json:"id"`
	Date    cal.Date `json:"date"`
	At      string   `json:"at"`
	Bed     string   `json:"bed,omitempty"`
	BedName string   `json:"-"`
	RainMM  *float64 `json:"rain_mm"`
	TMinC   *float64 `json:"tmin_c"`
	TMaxC   *float64 `json:"tmax_c"`
	By      string   `json:"by"`
}

// readingLines are the readings at a site, the newest first.
func readingLines(h *holding.Holding, site string) []ReadingLine {
	out := []ReadingLine{}
	for i := range h.WeatherReadings {
		r := &h.WeatherReadings[i]
		if r.Site == site {
			out = append(out, ReadingLine{ID: r.ID, Date: r.Date, At: r.At, Bed: r.Bed, BedName: bedNameOf(h, r.Bed), By: r.By,
				RainMM: pointer(r.RainMM), TMinC: pointer(r.TMinC), TMaxC: pointer(r.TMaxC)})
		}
	}
	slices.SortStableFunc(out, func(a, b ReadingLine) int { return -cmp.Compare(a.Date, b.Date) })
	return out[:min(len(out), mostReadings)]
}

func bedNameOf(h *holding.Holding, id string) string {
	for i := range h.Beds {
		if h.Beds[i].ID == id {
			return h.Beds[i].Name
		}
	}
	return ""
}

// UnderReading is a day under a bed's cover as a thermometer there told it, and as
// it is reckoned from the weather in the open.
type UnderReading struct {
	Bed       string   `json:"bed"`
	BedName   string   `json:"name"`
	Date      cal.Date `json:"date"`
	Cover     string   `json:"cover"`
	TMinC     *float64 `json:"tmin_c"`
	TMaxC     *float64 `json:"tmax_c"`
	ReckonedC *float64 `json:"reckoned_tmin_c"` // nil: the open is not known
	ReckonedM *float64 `json:"reckoned_tmax_c"`
}

// underReadings set what was read under covers beside what is reckoned there.
// Nothing else is made of them.
func underReadings(h *holding.Holding, site place.Site) []UnderReading {
	out := []UnderReading{}
	byBed := map[string][]observed.Reading{}
	for _, r := range h.WeatherReadings {
		if r.Site == site.ID && r.Bed != "" {
			own := r
			own.Bed = "" // as if it were a site of its own
			byBed[r.Bed] = append(byBed[r.Bed], own)
		}
	}
	source := h.WeatherAt(site)
	var open map[cal.Date]*climate.Observation
	if source != nil {
		open = observationsOf(source.Record)
	}
	for bed, readings := range byBed {
		joined := observed.Join(nil, readings)
		if joined.Record == nil {
			continue
		}
		for i := range joined.Record.Days {
			d := &joined.Record.Days[i]
			out = append(out, underDay(h, site, bed, d, open[d.Date]))
		}
	}
	slices.SortFunc(out, func(a, b UnderReading) int {
		return cmp.Or(-cmp.Compare(a.Date, b.Date), cmp.Compare(a.BedName, b.BedName))
	})
	return out[:min(len(out), mostReadings)]
}

func underDay(h *holding.Holding, site place.Site, bed string, d, open *climate.Observation) UnderReading {
	u := UnderReading{Bed: bed, BedName: bedNameOf(h, bed), Date: d.Date, TMinC: pointer(d.TMinC), TMaxC: pointer(d.TMaxC)}
	lies := place.CoversOf(h.Covers, bed)
	spells := make([]cover.Spell, len(lies))
	for i := range lies {
		spells[i] = lies[i].Spell
	}
	u.Cover = string(cover.At(spells, d.Date))
	if open == nil {
		return u
	}
	out, ok := climate.Estimated(open, site.Location)
	if !ok {
		return u
	}
	for _, s := range spells {
		if s.Kind != cover.At(spells, d.Date) || d.Date < s.On || s.Off.IsSet() && d.Date >= s.Off {
			continue
		}
		c, err := cover.Of(s)
		if err != nil {
			continue
		}
		in := c.Under(out, sun.ExtraterrestrialMJ(site.Location.LatitudeDeg, d.Date.DayOfYear()))
		low, high := tenthOf(in.TMinC), tenthOf(in.TMaxC)
		u.ReckonedC, u.ReckonedM = &low, &high
	}
	return u
}
