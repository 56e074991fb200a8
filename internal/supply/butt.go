package supply

// Course is what became of a butt over a run of days [L, d].
type Course struct {
	AskedL, TakenL  float64
	ShedL           float64 // that the roof brought
	OverflowL       float64
	StartL, EndL    float64
	EmptyDays       int // days on which it gave less than was asked
	AskedDays       int // days on which anything was asked
	LongestEmptyRun int // the most of the empty days in a row, days without asking between them left out
}

// Served is the share of what was asked that the butt gave, 0-1; 1 where nothing was.
func (c *Course) Served() float64 {
	if c.AskedL <= 0 {
		return 1
	}
	return c.TakenL / c.AskedL
}

// Run takes a butt of a size [L] with some water in it through days on which a roof sheds
// and beds ask for litres, both by day and of one length.
//
// Kept: what was in it, and came, is taken, ran over or is left. A larger butt never
// gives less. Check: three days by hand, see the tests. Source: yield after spillage,
// see the package.
func Run(holdsL, startL float64, shedL, askedL []float64) Course {
	c := Course{StartL: min(startL, holdsL)}
	level, run := c.StartL, 0
	for i, asked := range askedL {
		taken := min(asked, level)
		level += shedL[i] - taken
		over := max(0, level-(holdsL-taken)) // the room that the taking leaves is filled after it
		level -= over
		c.AskedL += asked
		c.TakenL += taken
		c.ShedL += shedL[i]
		c.OverflowL += over
		if asked <= 0 {
			continue
		}
		c.AskedDays++
		if run++; taken >= asked-1e-9 {
			run = 0
			continue
		}
		c.EmptyDays++
		c.LongestEmptyRun = max(c.LongestEmptyRun, run)
	}
	c.EndL = level
	return c
}

// Sizes are the butts that are compared [L]: what is sold, up to a small cistern.
var Sizes = []float64{50, 100, 200, 300, 500, 750, 1000, 1500, 2000, 3000, 5000, 10000}

// Twentieth is the rule of thumb for a tank that serves all year: a twentieth of what the
// roof brings in a year, or of what is asked where that is less [L].
//
// Source: BS 8515:2009, the intermediate approach, as transcribed in public guides.
func Twentieth(shedL, askedL float64) float64 { return min(shedL, askedL) / 20 }
