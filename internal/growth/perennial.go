package growth

import "garner/internal/crop"

// perennialSeason is a perennial's year, counted in days from midwinter.
type perennialSeason struct {
	midwinter   int // day of the common year of the winter solstice, 1-365
	closeAfter  int // days from midwinter to the close of picking
	dailyKgM2   float64
	thermal     float64
	yieldByYear [6]float64
}

// seasonState is where a perennial is in its year.
type seasonState struct {
	dayOfYear int // of the common year; set by Start
	warm      float64
	picked    float64 // days of picking gone this year
	year      int     // seasons it has already had in this ground
	bare      float64 // share of this year's leaf taken off from below
	done      bool    // picking closed for this year
	counting  bool    // this season counts: it was there when growth began
}

// Solstices as days of the common year.
const (
	december21 = 355
	june21     = 172
	halfYear   = 182
	yearDays   = 365
)

func newPerennialSeason(u *crop.Use, northern bool) perennialSeason {
	s := perennialSeason{midwinter: december21, thermal: u.SeasonThermalCd, yieldByYear: u.AgeYield}
	if !northern {
		s.midwinter = june21
	}
	s.closeAfter = halfYear + int(u.CloseAfterSolsticeDays)
	if u.SeasonDays > 0 {
		s.dailyKgM2 = u.YieldKgM2 / u.SeasonDays
	}
	return s
}

// StartSeason tells a perennial the day of the common year on which it is
// planted (1-365) and its age in whole years.
//
// What goes in before midsummer has its first season that very year, what goes
// in later has it next spring.
func (s *Plants) StartSeason(p *Parameters, dayOfYear, years int) {
	s.season.dayOfYear, s.season.year = dayOfYear, years
	since := (dayOfYear - p.season.midwinter + yearDays) % yearDays
	s.season.counting = years > 0 || since < halfYear
}

// perennialDay lets a perennial wake by thermal time after midwinter, bear for
// its season and close.
//
// Yield comes evenly over the season and is scaled by the light of the day and
// the age of the plants, since a perennial bears largely from what it stored the
// year before.
func (s *Plants) perennialDay(p *Parameters) {
	year, k := &s.season, &p.season
	s.rate.yielded = 0
	if year.dayOfYear == k.midwinter {
		if year.counting {
			year.year++
		}
		year.counting = true
		year.warm, year.picked, year.done, year.bare = 0, 0, false, 0
		s.Stage = Resting
	}
	since := (year.dayOfYear - k.midwinter + yearDays) % yearDays
	if year.dayOfYear++; year.dayOfYear > yearDays {
		year.dayOfYear = 1
	}
	if !year.counting || year.done {
		s.Leaf *= 1 - dieBack*coldShare(s.rate.warmth)
		return
	}
	year.warm += s.rate.warmth
	s.Leaf = perennialLeaf(p, year.warm)
	s.bare = s.Leaf * year.bare
	s.Leaf -= s.bare
	if year.warm < k.thermal || s.justSown(p) {
		return
	}
	share := k.yieldByYear[min(year.year, len(k.yieldByYear)-1)]
	if since > k.closeAfter || year.picked >= p.Use.SeasonDays {
		year.done = true
		s.Stage = Resting
		return
	}
	year.picked++
	if share > 0 {
		s.Stage = Ready
		s.rate.yielded = k.dailyKgM2 * share / p.freshPerG
	}
}

// justSown tells whether a perennial sown in place is in its first season and
// younger than the published days to a first picking.
func (s *Plants) justSown(p *Parameters) bool {
	return p.Start == FromSeed && s.season.year == 0 && float64(s.Days) < p.published
}

// perennialLeaf gives a perennial's leaf area index from the warmth since
// midwinter: full when picking begins.
func perennialLeaf(p *Parameters, warm float64) float64 {
	if p.season.thermal <= 0 {
		return p.Use.LeafMax
	}
	return p.Use.LeafMax * min(1, warm/p.season.thermal)
}

// dieBack is the share of a resting perennial's leaf that a day without warmth
// takes.
const dieBack = 0.05 // judgement: the tops are gone some weeks into winter

func coldShare(warmth float64) float64 {
	if warmth > 0 {
		return 0
	}
	return 1
}
