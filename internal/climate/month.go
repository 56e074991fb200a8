package climate

// Whether a day is wet changes what the other elements are likely to be.
const (
	dry = iota
	wet
	states
)

// WetDayMM is the least rain of a wet day [mm], the 0.01 inch of WGEN rounded
// to a tenth (Richardson & Wright 1984).
const WetDayMM = 0.3

// element is what is known of one weather element in a month.
type element struct {
	mean     float64         // over all days, in the element's unit
	contrast float64         // wet days less dry days; for ratio elements wet over dry less 1
	sd       [states]float64 // spread of days about the mean of their state; of ratio elements as a share of that mean
	slow     float64         // share of the variance that lasts for weeks to months, 0-1
}

// ratio tells whether an element's contrast and spread go by its mean.
func ratio(v int) bool { return v == varRange || v == varSun || v == varWind }

// means returns the mean of dry and of wet days such that the mean over all
// days is kept when the share of wet days is wetShare.
func (e element) means(v int, wetShare float64) (m [states]float64) {
	if ratio(v) {
		m[dry] = e.mean / (1 + wetShare*e.contrast)
		m[wet] = m[dry] * (1 + e.contrast)
		return m
	}
	m[dry] = e.mean - wetShare*e.contrast
	m[wet] = m[dry] + e.contrast
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
	same, before matrix // correlations on the same day and with the day before, without the slow part
}

// afterDry and afterWet are the chances of a wet day in the two-state chain
// whose stationary share of wet days is w and whose lag-1 correlation is d.
func afterDry(w, d float64) float64 { return w * (1 - d) }
func afterWet(w, d float64) float64 { return w + d*(1-w) }
