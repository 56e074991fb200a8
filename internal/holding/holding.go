// Package holding gathers everything a household has told: ground, plans, wants,
// stores, records and weather, as one value.
package holding

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
)

// Holding is a household's ground and table.
type Holding struct {
	ID        string
	Name      string
	Zone      string   // IANA time zone
	Today     cal.Date // its own today; None: the clock decides
	Eaters    float64
	Plan      string  // the plan in force
	KitchenH  float64 // hours a week for preserving; 0: not limited
	CanL      float64 // what a watering can holds [L]; 0: not told
	Sites     []place.Site
	Beds      []place.Bed
	Features  []place.Feature
	Covers    []place.CoverSpell
	Gear      []place.Gear
	Overrides []crop.Override
	Varieties []crop.Variety
	OnHand    []plan.Lot
	Plans     []plan.Plan
	Plantings []plan.Planting
	Changes   []plan.Change
	Wishes    []plan.Wish // of every year that is drafted
	OwnJobs   []plan.OwnJob
	Wants     []larder.Want
	GapsLeft  []larder.GapLeft
	Purchases []larder.Purchase
	Groups    []larder.Group // without their members
	Members   []larder.Membership
	Visits    []larder.Visit
	Stores    []larder.Store
	Batches   []larder.Batch
	Records   []record.Record
	Answers   []record.Answer // of what became of jobs
	Weather   []WeatherSource
}

// WeatherSource is what is known of the weather at a site.
type WeatherSource struct {
	ID         string
	Name       string
	Source     string // where the figures come from, with their terms
	Normals    *climate.Normals
	Record     *climate.Record // observed days, may be nil
	Forecast   *climate.Record // days to come, may be nil
	Hours      []climate.Hour  // observed hours in order, may be none
	NormalFile string          // file names inside the holding, for export
	RecordFile string
	FcastFile  string
	HourFile   string
}
