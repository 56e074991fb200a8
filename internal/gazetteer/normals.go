package gazetteer

import (
	"bytes"
	"math"
	"strconv"
	"sync"

	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/words"
)

const (
	// lapseCPerM is how much colder it is by the metre of height [C/m]: 0.6 C a
	// hundred metres, the middle of the 0.55 to 0.65 of the free air in a year's
	// mean (ICAO Standard Atmosphere: 0.65).
	lapseCPerM = 0.006
	// farthestM is how far above or below a station its normals still serve [m].
	// // judgement
	farthestM = 400.0
	// farthestRainKm is how far rain may be borrowed where a station has none [km].
	// // judgement
	farthestRainKm = 300.0
)

// Adjustment tells what was done to a station's normals.
type Adjustment struct {
	Station  Place
	HigherM  float64 // height of the garden less the station's [m]
	ShiftC   float64 // added to every temperature [C]
	RainFrom *Place  // the station whose rain it is; nil: its own
	NoRain   bool    // neither it nor any station near sends rain: none is counted
}

// Normals returns the monthly normals of a station for a garden at a height [m
// above the sea]; a height that is no number takes the station's own. A garden
// over 400 m higher or lower is refused. Rain that the station never sent is
// borrowed from the nearest one that did.
//
// Temperatures move by 0.6 C for each 100 m (see lapseCPerM); rain, sunshine and
// radiation stay as they are.
func Normals(id string, elevationM float64) (climate.Normals, Adjustment, error) {
	a := read()
	i, known := a.at[id]
	if !known {
		return climate.Normals{}, Adjustment{}, fault.New(fault.NotFound, "gazetteer.unknown", words.Args{"given": id})
	}
	station := a.places[i]
	adjusted := Adjustment{Station: station}
	if !math.IsNaN(elevationM) {
		adjusted.HigherM = elevationM - station.Location.ElevationM
	}
	if math.Abs(adjusted.HigherM) > farthestM {
		return climate.Normals{}, Adjustment{}, fault.New(fault.OutOfRange, "gazetteer.too_far_apart", words.Args{
			"place": station.Name, "station_m": station.Location.ElevationM, "given_m": elevationM,
			"apart_m": math.Round(math.Abs(adjusted.HigherM)), "limit_m": farthestM})
	}
	table := readTable()
	n, rained := table[i].normals()
	if !rained {
		adjusted.RainFrom = a.borrowRain(&n, station, table)
		adjusted.NoRain = adjusted.RainFrom == nil
	}
	adjusted.ShiftC = math.Round(-lapseCPerM*adjusted.HigherM*10) / 10
	for m := range n {
		n[m].TMinC = tenth(n[m].TMinC + adjusted.ShiftC)
		n[m].TMaxC = tenth(n[m].TMaxC + adjusted.ShiftC)
	}
	return n, adjusted, nil
}

// borrowRain fills in the rain of the nearest station that has it; nil when none
// is near enough, and no rain is known.
func (a *atlas) borrowRain(n *climate.Normals, station Place, table []monthRow) *Place {
	for _, m := range Near(station.Location, len(a.places)) {
		if m.DistanceKm > farthestRainKm {
			return nil
		}
		other, rained := table[a.at[m.ID]].normals()
		if !rained {
			continue
		}
		for i := range n {
			n[i].RainMM = other[i].RainMM
		}
		return &m.Place
	}
	return nil
}

func tenth(v float64) float64 { return math.Round(v*10) / 10 }

// monthRow is one station's row of the normals, not yet read: five elements of
// twelve months each.
type monthRow []byte

// readTable unpacks the normals when they are first asked for, in the order of
// the places.
var readTable = sync.OnceValue(func() []monthRow {
	text, err := unpacked(normalsFile)
	if err != nil {
		// The file is part of the program and every test reads it.
		panic("gazetteer: " + err.Error())
	}
	var rows []monthRow
	for _, line := range bytes.Split(bytes.TrimSpace(text), []byte("\n"))[1:] {
		rows = append(rows, line)
	}
	return rows
})

// normals reads the row; rained tells whether rain is known.
func (r monthRow) normals() (n climate.Normals, rained bool) {
	cells := bytes.Split(r, []byte(","))[1:]
	at := func(element, month int) climate.Maybe {
		v, err := strconv.ParseFloat(string(cells[12*element+month]), 64)
		if err != nil {
			return climate.Maybe{}
		}
		return climate.Is(v)
	}
	rained = true
	for m := range n {
		rain := at(2, m)
		rained = rained && rain.Known
		n[m] = climate.MonthNormal{TMinC: at(0, m).Value, TMaxC: at(1, m).Value, RainMM: rain.Value,
			SunH: at(3, m), RadiationMJ: at(4, m)}
	}
	return n, rained
}
