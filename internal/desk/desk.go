package desk

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/sun"
	"garner/internal/words"
)

// Site is the place a question is asked for.
type Site = sun.Location

// OutlookOptions say which table is wanted.
type OutlookOptions struct {
	From     cal.Date              // first day; its week's Monday begins the table; None: the holding's today
	Weeks    int                   // number of weeks, 0: 78
	Years    int                   // futures, 0: 200
	Seed     uint64                // of the random streams
	Members  bool                  // keep every future
	Workers  int                   // 0: as many as there are processors
	Progress func(done, total int) // may be nil
}

// OutlookResult is the table a year ahead.
type OutlookResult struct {
	Holding        string           `json:"holding"`
	From           cal.Date         `json:"from"`
	Years          int              `json:"years"`
	Seed           uint64           `json:"seed"`
	Weeks          []cal.Date       `json:"weeks"`
	Vegetables     []VegetableTable `json:"vegetables"`
	Share          []float64        `json:"share"`
	HomeGrownShare float64          `json:"home_grown_share"`
}

// VegetableTable is one vegetable by week [kg], means over the futures unless
// named otherwise.
type VegetableTable struct {
	Name       string            `json:"name"`
	WantKg     []float64         `json:"want_kg"`
	FreshKg    []float64         `json:"fresh_kg"`
	StoredKg   []float64         `json:"stored_kg"`
	ShortKg    []float64         `json:"short_kg"`
	OverKg     []float64         `json:"over_kg"`
	ShortKgP10 []float64         `json:"short_kg_p10"`
	ShortKgP50 []float64         `json:"short_kg_p50"`
	ShortKgP90 []float64         `json:"short_kg_p90"`
	GapChance  []float64         `json:"gap_chance"`
	Members    []VegetableMember `json:"members,omitempty"`
}

// VegetableMember is one vegetable by week under one future [kg].
type VegetableMember struct {
	FreshKg  []float64 `json:"fresh_kg"`
	StoredKg []float64 `json:"stored_kg"`
	ShortKg  []float64 `json:"short_kg"`
	OverKg   []float64 `json:"over_kg"`
}

// Outlook computes a holding's table a year ahead.
func Outlook(h *holding.Holding, o OutlookOptions) (*OutlookResult, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// GrowOptions describe one planting under known weather.
type GrowOptions struct {
	Crop, Use, Method string
	Sown              cal.Date
	Site              Site
	Weather           *climate.Record
	Cover             string  // a cover kind, empty: open
	Shade             float64 // share of the light lost, 0-1
}

// GrowResult is one planting, day by day.
type GrowResult struct {
	Crop    string       `json:"crop"`
	Use     string       `json:"use"`
	Method  string       `json:"method"`
	Days    []GrowDay    `json:"days"`
	Emerged *cal.Date    `json:"emerged"`
	Ready   *cal.Date    `json:"ready"`
	Over    *cal.Date    `json:"over"`
	End     string       `json:"end"`
	Why     words.Phrase `json:"-"`
}

// GrowDay is the state of a planting at the end of a day.
type GrowDay struct {
	Date        cal.Date `json:"date"`
	Stage       string   `json:"stage"`
	LAI         float64  `json:"lai"`
	FreshKgM2   float64  `json:"fresh_kg_m2"`
	FreshGPlant float64  `json:"fresh_g_plant"`
}

// Grow follows one planting day by day.
func Grow(o GrowOptions) (*GrowResult, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// WindowOptions ask from when until when something may be sown or planted.
type WindowOptions struct {
	Crop, Use, Method, Cover string
	Site                     Site
	Normals                  *climate.Normals
	Shade                    float64 // share of the light lost, 0-1
	Chance                   float64 // of a usable crop, 0: 0.8
	Seed                     uint64
}

// WindowResult is the answer: at most three windows of the year.
type WindowResult struct {
	Crop       string           `json:"crop"`
	Use        string           `json:"use"`
	Method     string           `json:"method"`
	Windows    []PlantingWindow `json:"windows"`
	BestChance float64          `json:"best_chance"`
	Note       *words.Phrase    `json:"-"`
}

// PlantingWindow is a stretch of the year, which may cross the new year.
type PlantingWindow struct {
	First     cal.MonthDay `json:"first"`
	Last      cal.MonthDay `json:"last"`
	ReadyFrom cal.MonthDay `json:"ready_from"`
	ReadyTo   cal.MonthDay `json:"ready_to"`
	Chance    float64      `json:"chance"`
}

// Window finds the first and last dates for a crop at a site.
func Window(o WindowOptions) (*WindowResult, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// DescribeResult is what a daily record tells of a place.
type DescribeResult struct {
	First            cal.Date      `json:"first"`
	Last             cal.Date      `json:"last"`
	Days             int           `json:"days"`
	Normals          []MonthTable  `json:"normals"`
	LastSpringFrost  FrostDates    `json:"last_spring_frost"`
	FirstAutumnFrost FrostDates    `json:"first_autumn_frost"`
	DegreeDays       []DegreeDays  `json:"degree_days"`
	Missing          []MissingDays `json:"missing"`
	Refused          fault.List    `json:"-"`
}

// MonthTable is the mean of one month; what was never recorded is absent.
type MonthTable struct {
	Month       int      `json:"month"`
	TMinC       *float64 `json:"tmin_c"`
	TMaxC       *float64 `json:"tmax_c"`
	RainMM      *float64 `json:"rain_mm"`
	SunH        *float64 `json:"sun_h,omitempty"`
	RadiationMJ *float64 `json:"rad_mj_m2,omitempty"`
	HumidityPct *float64 `json:"rh_pct,omitempty"`
	WindMS      *float64 `json:"wind_ms,omitempty"`
}

// FrostDates are the days of the year by which a frost comes in one year, five
// years and nine years in ten; absent where there are none.
type FrostDates struct {
	P10 *cal.MonthDay `json:"p10"`
	P50 *cal.MonthDay `json:"p50"`
	P90 *cal.MonthDay `json:"p90"`
}

// DegreeDays is the mean yearly thermal time above a base [C d].
type DegreeDays struct {
	BaseC    float64 `json:"base_c"`
	YearlyCd float64 `json:"yearly_cd"`
}

// MissingDays counts the days without a value in one column.
type MissingDays struct {
	Column string `json:"column"`
	Days   int    `json:"days"`
}

// Describe tells what a daily record says of a place.
func Describe(r *climate.Record, refused fault.List, site Site) (*DescribeResult, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// Generate makes daily weather from monthly normals, from 2001-01-01.
func Generate(n *climate.Normals, site Site, years int, seed uint64) (*climate.Series, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// OpenHolding reads a holding from a folder or zip. With faults there is no
// holding.
func OpenHolding(path string) (h *holding.Holding, faults, warnings fault.List, err error) {
	return nil, nil, nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// Sample returns a demo holding: "" the main one, "south" the small one in the
// southern hemisphere.
func Sample(name string) (*holding.Holding, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}

// CheckResult is what a check of a holding's files found.
type CheckResult struct {
	OK       bool
	Rows     map[string]int // rows read, by table
	Faults   fault.List
	Warnings fault.List
}

// CheckFiles checks a holding's files and reports every fault at once.
func CheckFiles(path string) (*CheckResult, error) {
	return nil, fault.New(fault.Internal, "desk.unfinished", nil)
}
