package desk

import (
	"errors"
	"math"
	"strings"
	"time"

	"garner/internal/appetite"
	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/gazetteer"
	"garner/internal/holding"
	"garner/internal/notebook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/sun"
	"garner/internal/words"
)

// Start is what a newcomer tells of household, place and ground.
type Start struct {
	HouseholdName    string // may be blank
	Zone             string // IANA time zone
	Adults, Children int
	Place            string                   // id of a place of the gazetteer; empty: the one that suits Location
	Location         *sun.Location            // of the garden; nil: that of the place
	Beds             string                   // as in "11 beds 6 x 1.2, tunnel 6 x 4"
	Ticks            map[string]appetite.Tick // by vegetable; empty: the usual ones
	Notebook         string                   // a line for each planting; may be blank
	Today            cal.Date                 // None: the clock decides
}

// mainPlan and homeSite are the ids of a newcomer's one plan and one site.
const (
	mainPlan = "main"
	homeSite = "home"
)

// Plan makes a whole holding of what a newcomer told, and says how each line of
// the notebook was read: lines that were not understood are left out of it. With
// faults there is no holding, and every fault is told at once.
func Plan(s Start) (*holding.Holding, []notebook.Line, fault.List) {
	b, err := book()
	if err != nil {
		return nil, nil, listOf(err)
	}
	var faults fault.List
	h := &holding.Holding{Name: strings.TrimSpace(s.HouseholdName), Zone: s.Zone, Today: cal.None, Plan: mainPlan}
	if h.Name == "" {
		h.Name = inWords("desk.start_household")
	}
	if h.ID = slug(h.Name); h.ID == "" {
		h.ID = homeSite
	}
	h.Plans = []plan.Plan{{ID: mainPlan, Name: inWords("desk.start_plan")}}
	today, wrong := s.day()
	if wrong != nil {
		faults = append(faults, wrong)
	}
	faults = append(faults, s.placeOn(h)...)
	faults = append(faults, s.bedsOn(h)...)
	south := len(h.Sites) > 0 && h.Sites[0].Location.LatitudeDeg < 0
	faults = append(faults, s.tableOf(h, south)...)
	lines := notebook.Read(s.Notebook, notebook.Context{Book: b, Beds: h.Beds, Today: today, South: south, Plan: mainPlan})
	if len(faults) > 0 {
		return nil, lines, faults
	}
	for i := range lines {
		if lines[i].Planting != nil {
			h.Plantings = append(h.Plantings, *lines[i].Planting)
		}
	}
	storeWhatKeeps(h, b)
	if _, err := exchange.Write(h); err != nil {
		return nil, lines, listOf(err)
	}
	return h, lines, nil
}

// day is the day the notebook is read on. With a zone that is none it is that of
// Greenwich, so that the lines are read all the same.
func (s *Start) day() (day cal.Date, wrong *fault.Error) {
	zone, err := time.LoadLocation(s.Zone)
	if err != nil || s.Zone == "" || s.Zone == "Local" {
		zone, wrong = time.UTC, fault.New(fault.Invalid, "desk.zone", words.Args{"zone": s.Zone})
	}
	if s.Today.IsSet() && s.Today != 0 {
		return s.Today, wrong
	}
	y, m, d := time.Now().In(zone).Date()
	return cal.Of(y, int(m), d), wrong
}

// placeOn gives the holding its site and its weather.
func (s *Start) placeOn(h *holding.Holding) fault.List {
	station, at, err := s.station()
	if err != nil {
		return listOf(err)
	}
	if faults := at.Check(); len(faults) > 0 {
		return faults
	}
	normals, adjusted, err := gazetteer.Normals(station.ID, at.ElevationM)
	if err != nil {
		return listOf(err)
	}
	h.Sites = []place.Site{{ID: homeSite, Name: inWords("desk.start_site"), Location: at, Weather: station.ID}}
	h.Weather = []holding.WeatherSource{{ID: station.ID, Name: station.Name + ", " + station.Country,
		Source: sourceOf(station, adjusted), Normals: &normals, NormalFile: "weather/normals.csv"}}
	return nil
}

// station finds the place whose normals are taken, and where the garden is.
func (s *Start) station() (gazetteer.Place, sun.Location, error) {
	if s.Place == "" && s.Location == nil {
		return gazetteer.Place{}, sun.Location{}, fault.New(fault.Invalid, "desk.start_no_place", nil)
	}
	if s.Place == "" {
		m, err := gazetteer.Choose(*s.Location)
		return m.Place, *s.Location, err
	}
	p, ok := gazetteer.Find(s.Place)
	if !ok {
		return p, sun.Location{}, fault.New(fault.NotFound, "gazetteer.unknown", words.Args{"given": s.Place})
	}
	if s.Location != nil {
		return p, *s.Location, nil
	}
	return p, p.Location, nil
}

// sourceOf says where the normals come from, with their terms and what was done
// to them.
func sourceOf(p gazetteer.Place, a gazetteer.Adjustment) string {
	text := words.English().Text(gazetteer.CreditOf(p))
	if notes := a.Notes(); len(notes) > 0 {
		text += " " + words.English().Text(words.P("desk.start_adjusted", words.Args{"notes": notes}))
	}
	return text
}

// bedsOn gives the holding its ground.
func (s *Start) bedsOn(h *holding.Holding) fault.List {
	beds, covers, faults := notebook.ReadBeds(s.Beds)
	if len(beds) == 0 && len(faults) == 0 {
		return fault.List{fault.New(fault.Invalid, "desk.start_no_beds", nil)}
	}
	for i := range beds {
		beds[i].Site = homeSite
	}
	h.Beds, h.Covers = beds, covers
	return faults
}

// mostAtTable is the most people that a household may tell.
const mostAtTable = 500

// tableOf gives the holding its eaters and their wants.
func (s *Start) tableOf(h *holding.Holding, south bool) fault.List {
	who := appetite.Household{Adults: s.Adults, Children: s.Children, South: south}
	h.Eaters = who.Eaters()
	if s.Adults < 0 || s.Children < 0 || h.Eaters <= 0 || h.Eaters > mostAtTable {
		return fault.List{fault.New(fault.Invalid, "desk.start_nobody", words.Args{"adults": s.Adults, "children": s.Children, "most": mostAtTable})}
	}
	b, err := book()
	if err != nil {
		return listOf(err)
	}
	h.Wants = appetite.Wants(b, who, s.Ticks)
	return nil
}

// inWords gives a name that the holding starts with; it is the household's own
// from then on.
func inWords(key string) string { return words.English().Text(words.P(key, nil)) }

// listOf makes a list of faults of an error, none of nil.
func listOf(err error) fault.List {
	if err == nil {
		return nil
	}
	var list fault.List
	if errors.As(err, &list) {
		return list
	}
	var one *fault.Error
	if errors.As(err, &one) {
		return fault.List{one}
	}
	return fault.List{{Kind: fault.Internal, Phrase: words.P("desk.start_mistake", nil), Err: err}}
}

// tenthOf keeps a number to a tenth.
func tenthOf(v float64) float64 { return math.Round(v*10) / 10 }
