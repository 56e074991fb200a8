package outlook

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/sun"
)

// Setting is what a table is asked for.
type Setting struct {
	Holding  *holding.Holding
	Book     *crop.Book // with the holding's own numbers
	Today    cal.Date   // observed weather ends here
	From     cal.Date   // first Monday of the table
	Weeks    int        // > 0
	Years    int        // futures, > 0
	Seed     uint64
	Workers  int                   // > 0
	Progress func(done, total int) // may be nil; called from one place at a time
}

// Days is the length of the table.
func (s *Setting) Days() int { return 7 * s.Weeks }

// end is the day after the table.
func (s *Setting) end() cal.Date { return s.From + cal.Date(s.Days()) }

// lookBack is how long before the table a planting may have gone in for its
// course to be followed from the start [d]; what is older than that is over, or
// is a perennial and picked up at its last midwinter.
const lookBack = 500

// first is the first day of weather.
func (s *Setting) first() cal.Date { return s.From - lookBack }

// span is the number of days of weather.
func (s *Setting) span() int { return lookBack + s.Days() }

// perennialLookBack reaches the midwinter before the table.
const perennialLookBack = 370

// job is a setting with its plan resolved.
type job struct {
	Setting
	plantings []plan.Planting
	wants     []larder.Want  // of the household, by weight
	likes     []larder.Group // of vegetables that stand in for each other, and that are wanted
	sites     map[string]*siteWork
	weathers  []*weatherYears // those of the sites, each once
	beds      []*bedWork
	groups    []*groupWork
	uses      *uses
	lost      losses
	done      history
	moves     *moves
	enough    int // day index from which a run may stop; 0: it is run to its end
}

// siteWork is one site's weather under all futures.
type siteWork struct {
	key      uint64
	location sun.Location
	source   *holding.WeatherSource
	digest   num.Digest // of the weather under all futures
	sky      *season.Sky
	years    *weatherYears
	shades   *siteShade
}
