package climate

import "math"

// Whether a day is wet changes what the other elements are likely to be.
const (
	dry = iota
	wet
	states
)

// WetDayMM is the least rain of a wet day [mm], the 0.01 inch of WGEN rounded
// to a tenth (Richardson & Wright 1984).
const WetDayMM = 0.3

// spell is whether a day is wet and whether the day before was: the air is
// slow to change, so that a dry day after rain is unlike one in a dry spell.
type spell int

const (
	dryAfterDry spell = iota
	wetAfterDry
	dryAfterWet
	wetAfterWet
	spells
)

func spellOf(isWet, wasWet bool) (s spell) {
	if isWet {
		s |= wetAfterDry
	}
	if wasWet {
		s |= dryAfterWet
	}
	return s
}

// today is dry or wet.
func (s spell) today() int { return int(s & 1) }

// yesterday is dry or wet.
func (s spell) yesterday() int { return int(s >> 1) }

// element is what is known of one weather element in a month.
type element struct {
	mean     float64         // over all days, in the element's unit
	contrast float64         // a wet day's mean less a dry day's; of ratio elements as a share of the mean
	after    float64         // the same for a wet or dry day before
	sd       [states]float64 // spread of days about the mean of their spell; of ratio elements as a share of the mean
	slow     float64         // share of the variance that lasts for weeks to months, 0-1
	bends    [states]bend    // of mean and range
}

// bent tells whether an element's departures are bent.
func bent(v int) bool { return v == varMean || v == varRange }

// ratio tells whether an element's contrasts and spread go by its mean.
func ratio(v int) bool { return v == varRange || v == varSun || v == varWind }

// leastShareOfMean keeps the mean of a ratio element in a spell positive.
const leastShareOfMean = 0.1

// means returns the mean in each spell such that the mean over all days is kept
// when the share of wet days is wetShare.
func (e element) means(v int, wetShare float64) (m [spells]float64) {
	for s := range spells {
		m[s] = e.contrast*(float64(s.today())-wetShare) + e.after*(float64(s.yesterday())-wetShare)
		if ratio(v) {
			m[s] = e.mean * math.Max(leastShareOfMean, 1+m[s])
		} else {
			m[s] += e.mean
		}
	}
	return m
}

// month is what the generator knows of one month of the year.
type month struct {
	tMinC, tMaxC float64
	rainMM       float64
	radiationMJ  float64
	wetShare     float64 // share of days with WetDayMM or more
	persistence  float64 // chance of rain after a wet day less that after a dry one
	rainShape    float64 // gamma shape of a wet day's rain above WetDayMM
	slowRain     float64 // coefficient of variation of the month's rain that the chain does not give
	elements     [variables]element
	slowRoot     slowMatrix
	same, before matrix // correlations on the same day and with the day before, without the slow part
}

// afterDry and afterWet are the chances of a wet day in the two-state chain
// whose stationary share of wet days is w and whose lag-1 correlation is d.
func afterDry(w, d float64) float64 { return w * (1 - d) }
func afterWet(w, d float64) float64 { return w + d*(1-w) }
