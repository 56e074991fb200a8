package soilcare

import (
	"math"

	"garner/internal/cal"
	"garner/internal/record"
	"garner/internal/words"
)

// Amount is a range of compost or manure.
type Amount struct {
	LowL, HighL             float64
	LowBarrows, HighBarrows int
}

// litresPerCm is what a centimetre over a square metre comes to [L].
const litresPerCm = 10

// compost is a year's dressing of an area [m2].
func (f *facts) compost(areaM2 float64) Amount {
	a := Amount{LowL: areaM2 * f.value("compost_low") * litresPerCm, HighL: areaM2 * f.value("compost_high") * litresPerCm}
	a.LowBarrows, a.HighBarrows = f.barrows(a.LowL), f.barrows(a.HighL)
	return a
}

// barrows is how many barrows a volume [L] comes to, at least one.
func (f *facts) barrows(litres float64) int {
	return max(1, int(math.Round(litres/f.value("barrow"))))
}

// dress tells that compost is due when the bed was not dressed for a year, or
// with less than a year's dressing.
func (c *Care) dress(f *facts, g *Ground, given []Given) {
	if g.soilless() {
		return
	}
	had, told := 0.0, false
	for _, d := range given {
		if (d.What == record.Composted || d.What == record.Manured) && d.Date > g.Today-f.days("dress_after") {
			had += d.Litres
			told = true
			if d.Litres == 0 {
				return // how much is not told: taken for enough
			}
		}
	}
	if had >= c.Compost.LowL {
		return
	}
	low, high := c.Compost.LowL-had, c.Compost.HighL-had
	args := words.Args{"low": f.value("compost_low"), "high": f.value("compost_high"), "low_l": low, "high_l": high,
		"barrows": f.barrowsBetween(low, high), "barrow": f.value("barrow"), "had": had}
	key := "soilcare.compost_due"
	if told {
		key = "soilcare.compost_more"
	}
	c.Due = append(c.Due, Due{What: record.Composted, Until: cal.None, Litres: low, Phrase: words.P(key, args)})
}

// barrowsBetween says a number of barrows.
func (f *facts) barrowsBetween(low, high float64) words.Phrase {
	a, b := f.barrows(low), f.barrows(high)
	if a == b {
		return words.P("soilcare.barrows", words.Args{"n": a})
	}
	return words.P("soilcare.barrows_range", words.Args{"low": a, "high": b})
}
