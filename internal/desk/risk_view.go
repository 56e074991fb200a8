package desk

import (
	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/risk"
	"garner/internal/words"
)

// RiskView is what the weather puts at risk in a holding, what needs a hand first.
type RiskView struct {
	Today   cal.Date
	Lead    words.Phrase // dates to be sharpened
	Items   []RiskItem
	Weather []RiskWeather // by site
	Sites   int
	Whole   bool // the plantings' ends are forecast, not taken from the book
}

// RiskState is how near a disease or pest is.
type RiskState string

// The states, what needs a hand first.
const (
	AtRiskSeen    RiskState = "seen"    // of late, and its crops stand
	AtRiskFired   RiskState = "fired"   // a rule fired of late over hours
	AtRiskFlying  RiskState = "flying"  // insects fly or soon will, and crops lie open to them
	AtRiskNear    RiskState = "near"    // a sum is most of the way
	AtRiskPerhaps RiskState = "perhaps" // a rule fired of late over hours made from days
	AtRiskLater   RiskState = "later"   // crops and flights to come
	AtRiskQuiet   RiskState = "quiet"   // looked at, and nothing
	AtRiskDark    RiskState = "dark"    // not told: no weather
)

// riskOrder are the states in order.
var riskOrder = []RiskState{AtRiskSeen, AtRiskFired, AtRiskFlying, AtRiskNear, AtRiskPerhaps, AtRiskLater, AtRiskQuiet, AtRiskDark}

// RiskItem is one disease or pest at one site.
type RiskItem struct {
	Problem  string
	Name     words.Phrase
	Pest     bool
	Site     string
	SiteName string // empty where the holding has one site
	South    bool
	State    RiskState
	Says     []words.Phrase // why it stands where it does; dates to be sharpened
	Rules    []RiskRule
	Hosts    []RiskHost // by date
	Seen     []RiskSighting
	Flights  []RiskFlight // of the season and the next, in order
	when     cal.Date     // by which items of a state are ordered
}

// RiskGrade is what a rule's readings are made from.
type RiskGrade string

// The grades, the surest first.
const (
	GradeHours   RiskGrade = "hours"   // hours as recorded
	GradeMixed   RiskGrade = "mixed"   // some of the days made
	GradeDays    RiskGrade = "days"    // hours made from days, or a rule over days
	GradeGuessed RiskGrade = "guessed" // and their humidity guessed
	GradeNone    RiskGrade = "none"    // no weather of the season
)

// RiskRule is one rule over the weather of the season.
type RiskRule struct {
	Rule    *risk.Rule
	Grade   RiskGrade
	Fired   []RiskFired // this season
	Last    cal.Date    // last day that counts; None: none
	At, Of  float64     // how far it is toward firing, in the rule's own unit; Of 0: it is not told so
	Soon    float64     // share of the futures in which it fires in the days to come
	Ahead   []cal.Date  // days of the forecast on which a rule over hours fires, the hours made from days: weaker
	Waiting bool        // it begins with a sighting that was not told
	Since   cal.Date    // its sum began; None: with the year
	Coming  []RiskComing
	Flights []risk.Flight
}

// RiskComing is an event of a pest, over the futures.
type RiskComing struct {
	Event         string
	Flight        int
	Part          risk.FlightPart
	Year          cal.Date
	P10, P50, P90 cal.Date
	Odds          float64    // that it comes in the year at all
	Soon          float64    // in the days to come
	Dates         []cal.Date // by future
	SumCd         float64
}

// Firm tells whether it is past and known to the day.
func (c *RiskComing) Firm(today cal.Date) bool {
	return c.P90.IsSet() && c.P10 == c.P90 && c.P10 < today
}

// RiskThreads is how many futures a flight is told by.
const RiskThreads = 10

// RiskFlight is one flight over the futures: threads in order of their beginning,
// fewer than RiskThreads where it does not always come.
type RiskFlight struct {
	Number      int
	Year        cal.Date // first day of its growing year
	From, Until cal.Date // in the middle future; None: it does not come there
	P10, P90    cal.Date // of its beginning
	Odds        float64
	Threads     []RiskThread
}

// RiskThread is a flight in one future.
type RiskThread struct{ From, Until cal.Date }

// RiskHost is a planting that a disease or pest can strike.
type RiskHost struct {
	Planting, Name string
	Bed, BedName   string
	From, Until    cal.Date
	Stands         bool
	Open           []risk.Stay // when nothing keeps it out
	Shut           []place.CoverSpell
	GapMM          float64 // widest gap that keeps it out [mm]; 0: no cover is known to
	Wintered       bool    // it may have wintered in this ground
	Meets          []RiskMeeting
	Does           []words.Phrase // what moving it or a mesh would do; dates to be sharpened
	Try            cal.Date       // the day that would help; None: none
}

// RiskMeeting is the share of the futures in which a flight meets a planting.
type RiskMeeting struct {
	Flight int
	Year   cal.Date
	Odds   float64
}

// RiskSighting is something that was seen.
type RiskSighting struct {
	ID             string
	Date           cal.Date
	Stage          record.Stage
	Value          float64
	Unit           string // empty: no amount
	Planting, Name string
	Bed, BedName   string
	Note           string
	Foreseen       words.Phrase // whether a rule had told it
}

// RiskWeather is what is on record of a site's season.
type RiskWeather struct {
	Site, SiteName  string
	Source          string   // id of the weather source; empty: none
	From            cal.Date // the season's first day
	Hours, Made     int      // days with hours as recorded, and made from days
	Guessed         int      // of those made, without humidity
	Last            cal.Date // last day on record; None: none this season
	Futures         int
	Origins         []RiskOrigin // of the days with hours
	Missing, Behind int          // days of the season that lack; days since the last
}
