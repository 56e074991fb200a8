// Package holding gathers everything a household has told: ground, plans, wants,
// stores, records and weather, as one value.
package holding

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/observed"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/record"
)

// Holding is a household's ground and table.
type Holding struct {
	ID              string
	Name            string
	Zone            string   // IANA time zone
	Today           cal.Date // its own today; None: the clock decides
	Eaters          float64
	Plan            string  // the plan in force
	KitchenH        float64 // hours a week for preserving; 0: not limited
	CanL            float64 // what a watering can holds [L]; 0: not told
	FeedMLL         float64 // liquid feed to a litre of water [ml], as its label says; 0: none is wanted
	FeedGM2         float64 // dry feed to a square metre [g], as its label says; 0: none is wanted
	Sites           []place.Site
	Beds            []place.Bed
	Sources         []place.WaterSource
	Features        []place.Feature
	Covers          []place.CoverSpell
	Gear            []place.Gear
	Overrides       []crop.Override
	Varieties       []crop.Variety
	OnHand          []plan.Lot
	Plans           []plan.Plan
	Plantings       []plan.Planting
	Changes         []plan.Change
	Wishes          []plan.Wish // of every year that is drafted
	OwnJobs         []plan.OwnJob
	Wants           []larder.Want
	GapsLeft        []larder.GapLeft
	Purchases       []larder.Purchase
	Groups          []larder.Group // without their members
	Members         []larder.Membership
	Visits          []larder.Visit
	Stores          []larder.Store
	Batches         []larder.Batch
	Records         []record.Record
	Readings        []record.Reading
	Answers         []record.Answer // of what became of jobs
	Weather         []WeatherSource
	WeatherReadings []observed.Reading           // of gauges, thermometers and instruments
	Foretold        []observed.Foretold          // days of forecasts that were typed
	Addresses       []observed.Address           // forecasts are fetched from
	Sensors         []observed.Sensor            // that send by themselves
	Fetched         map[string]observed.Forecast // the last one of each address; not among what was told
	Heard           map[string][]climate.Hour    // by site, whole hours that its instruments sent; not among what was told
	Skies           map[string]*Sky              // by site, what Observe made of it all
	Files           []WeatherFile                // taken in, in the order they were
	Maps            []ColumnMap
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

	// Apart is the record, the normals and the hours without what weather files
	// brought; nil where no file brought anything. Record, Normals and Hours hold all
	// that is known.
	Apart *ApartFromFiles
}

// ApartFromFiles is what a weather source knows beside its weather files.
type ApartFromFiles struct {
	Record  *climate.Record
	Normals *climate.Normals
	Hours   []climate.Hour
}

// Own is what a weather source knows beside its weather files.
func (w *WeatherSource) Own() ApartFromFiles {
	if w.Apart != nil {
		return *w.Apart
	}
	return ApartFromFiles{w.Record, w.Normals, w.Hours}
}
