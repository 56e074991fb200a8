package climate

import (
	"bytes"
	_ "embed"
	"math"
	"strings"
	"sync"

	"garner/internal/num"
	"garner/internal/sun"
	"garner/internal/table"
)

// The figures by which spread is estimated where only normals are known, with
// the stations they were fitted on.
var (
	//go:embed data/spread.csv
	spreadCSV []byte
	//go:embed data/regime.csv
	regimeCSV []byte
	//go:embed data/correlation.csv
	correlationCSV []byte
)

// figures are named numbers.
type figures map[string]float64

// get returns a figure. One that the data file lacks is our own mistake.
func (f figures) get(name string) float64 {
	v, ok := f[name]
	if !ok {
		panic("climate: no figure " + name)
	}
	return v
}

// bounds is where the figures of a region hold, fading out over the edge.
type bounds struct {
	name                                      string
	latLow, latHigh, lonLow, lonHigh, edgeDeg float64
}

// usualRegime holds where no other does.
const usualRegime = "west"

// embedded reads one of our own data files; they are checked by a test.
func embedded(raw []byte, name string) *table.Table {
	t, err := table.Read(bytes.NewReader(raw), name, int64(len(raw)))
	if err != nil {
		panic("climate: " + err.Error())
	}
	return t
}

// cells reads rows by column name.
type cells struct {
	*table.Table
	row int
}

func (c cells) text(column string) string { return c.Rows[c.row][c.Column(column)] }

func (c cells) number(column string) float64 {
	v, ok := c.Number(c.text(column))
	if !ok {
		panic("climate: " + c.Name + ": no number in column " + column)
	}
	return v
}

var spreadFigures = sync.OnceValue(func() map[string]figures {
	out := map[string]figures{}
	t := embedded(spreadCSV, "spread.csv")
	for row := range t.Rows {
		c := cells{t, row}
		name := c.text("regime")
		if out[name] == nil {
			out[name] = figures{}
		}
		out[name][c.text("parameter")] = c.number("value")
	}
	return out
})

// everywhere are the figures that hold in every region.
func everywhere() figures { return spreadFigures()["all"] }

var regions = sync.OnceValue(func() (out []bounds) {
	t := embedded(regimeCSV, "regime.csv")
	for row := range t.Rows {
		c := cells{t, row}
		out = append(out, bounds{c.text("regime"), c.number("lat_low"), c.number("lat_high"),
			c.number("lon_low"), c.number("lon_high"), c.number("edge_deg")})
	}
	return out
})

// weight is 1 inside the bounds and fades to 0 over the edge outside them.
func (b *bounds) weight(loc sun.Location) float64 {
	outside := math.Max(
		math.Max(b.latLow-loc.LatitudeDeg, loc.LatitudeDeg-b.latHigh),
		math.Max(b.lonLow-loc.LongitudeDeg, loc.LongitudeDeg-b.lonHigh))
	return num.Clamp(1-outside/b.edgeDeg, 0, 1)
}

// regimesAt returns the regional figures that count at a place.
func regimesAt(loc sun.Location) (out []weightedRegime) {
	left := 1.0
	for _, b := range regions() {
		if w := left * b.weight(loc); w > 0 {
			out = append(out, weightedRegime{w, spreadFigures()[b.name]})
			left -= w
		}
	}
	if left > 0 {
		out = append(out, weightedRegime{left, spreadFigures()[usualRegime]})
	}
	return out
}

// seasonMatrices are the correlations of summer and winter.
type seasonMatrices struct{ same, before [2]matrix }

var usualCorrelations = sync.OnceValue(func() (out seasonMatrices) {
	names := []string{varMean: "mean", varRange: "range", varSun: "sun", varHumidity: "humidity", varWind: "wind"}
	at := func(name string) int {
		for i, n := range names {
			if n == name {
				return i
			}
		}
		panic("climate: correlation.csv: no element " + name)
	}
	t := embedded(correlationCSV, "correlation.csv")
	for row := range t.Rows {
		c := cells{t, row}
		season := strings.Index("summerwinter", c.text("season")) / len("summer")
		m := &out.same[season]
		if c.text("matrix") == "before" {
			m = &out.before[season]
		}
		m[at(c.text("row"))][at(c.text("column"))] = c.number("value")
	}
	return out
})
