package desk

import (
	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/plan"
	"garner/internal/words"
)

// TableView is the first page: every wanted vegetable by week.
type TableView struct {
	Household  string
	Eaters     float64
	Today      cal.Date
	From       cal.Date // Monday
	Weeks      int
	Years      int
	Lead       words.Phrase // about the plate: when it is thinnest and of what
	Vegetables []RibbonView
	Share      RibbonView // all rows added up: height is the whole want
	ShareNow   float64    // home-grown share of this week
	Thinnest   cal.Date   // week with the least share
	ThinShare  float64
	ThinPoor   float64 // the same in the poor year of ten and in the good one
	ThinGood   float64
	Daylight   []float64 // hours, one for each week
	Bare       bool      // nothing grows, is meant to or lies in store
	Stale      bool      // the figures are of before the last change; new ones are being computed
}

// Step is the length of a ribbon's step [days]; a table's days are 7 x weeks.
const Step = 1.75

// Threads is the number of threads of a ribbon.
const Threads = 10

// RibbonView is one vegetable's ribbon. Steps run from From, Step days each.
//
// Ground[j][s] is the share of futures in which food out of the ground alone
// reaches the height of thread j (counted from the bottom, its middle at
// (j+0.5)/10 of the want), Food the same for ground and store together, and Bought for
// these and what is bought (nil where nothing may be). Over[s] is the weight to spare
// in the step in the poor, middle and good year, as a share of the want [10, 50, 90 %].
type RibbonView struct {
	Name     string
	Plural   string
	Held     larder.Importance
	WantKg   []float64 // a week, one for each week
	FreshKg  []float64 // eaten out of the ground, mean, by week
	StoredKg []float64 // eaten out of store, mean, by week
	BoughtKg float64   // of what lacks, over the table, mean
	Ground   [Threads][]float32
	Food     [Threads][]float32
	Bought   [Threads][]float32
	Over     [3][]float32
	Chance   []float64 // of the week being short, one for each week
	Gap      *GapView  // the next gap; nil when none is likely
	GapKg    float64   // all that lacks over the table, for the order of rows
	Sentence words.Phrase
}

// GapView is a run of weeks short more often than not.
type GapView struct {
	First, Last cal.Date // first and last day
	Weeks       int
	Good, Poor  int     // weeks short in the good and the poor year of ten
	Chance      float64 // mean chance of a week being short
	Lacks       float64 // share of the want that lacks
	Now         bool
}

// VegetableView is one vegetable: the want, what fills it, and its plantings.
type VegetableView struct {
	Name, Plural string
	Today, From  cal.Date
	Weeks        int
	WantKg       []float64
	Ribbon       RibbonView
	Sources      []SourceView // in order of time
	Gaps         []GapView
	Sentences    []words.Phrase
	Plantings    []PlantingLine
	Crops        []CropName     // of the book that are counted as it
	Tried        []plan.Change  // empty: as it stands
	Before       *VegetableView // with a change tried: how it stood
}

// CropName is a crop of the book by its id.
type CropName struct{ ID, Name string }

// SourceView is what one planting or batch gives to the table.
type SourceView struct {
	Letter   string    // A, B, ... in order of time
	Planting string    // id; empty for a batch
	Batch    string    // id; empty for a planting
	Store    string    // id of the store it is eaten from, if any
	Name     string    // "sets, 'Amber Holm', bed 4"
	FreshKg  []float64 // eaten from the ground, mean, by week
	StoredKg []float64 // eaten from store, mean, by week
}

// PlantingLine is a planting on the vegetable's time axis.
type PlantingLine struct {
	ID      string
	Letter  string
	Name    string
	Bed     string
	BedName string
	Method  string
	Date    cal.Date
	AreaM2  float64
	Leaf    []float32 // mean leaf cover 0-1, one for each step
	Picked  []float32 // share of futures in which it is being picked or stands ready, by step
	Ready   Odds
	Over    Odds
	Fails   float64    // share of futures without a usable crop
	YieldKg [3]float64 // poor, middle, good
	Movable bool       // its date lies ahead
}

// Odds are dates in the early, middle and late year of ten; None where it never comes.
type Odds struct{ P10, P50, P90 cal.Date }

// PlantingView is one planting: its expected course and why.
type PlantingView struct {
	PlantingLine
	Vegetable          string
	Crop, Use, Variety string
	Feeds              bool              // false of a green manure
	Cells              map[string]string // its row as in the files, for the form
	Version            int64
	Course             []CourseDay // the middle future's days, every third
	Why                []words.Phrase
	Ends               map[string]float64 // share of futures by end
	Cautions           []string
	Facts              []CropFact
	SeedG              float64   // seed for it [g]; 0: not sown, or not told
	AgeYield           []float64 // of a perennial: share of a full yield by season in the ground
	Heir               *HeirView // of a perennial that is renewed by its age
}

// CourseDay is a day of a planting's expected course.
type CourseDay struct {
	Date    cal.Date
	Stage   string
	LAI     float64
	KgM2    float64
	LightMJ float64 // at the top of the canopy
	MeanC   float64
}
