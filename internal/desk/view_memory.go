package desk

import (
	"sync"

	"garner/internal/frost"
	"garner/internal/num"
	"garner/internal/outlook"
	"garner/internal/pairing"
	"garner/internal/space"
	"garner/internal/watering"
	"garner/internal/window"
)

// recent keeps what was made of late at hand, by what it was made from, so that it
// need not be read or made again. What is in it is not changed.
type recent[K comparable, V any] struct {
	mu   sync.Mutex
	most int // beyond so many all are forgotten
	made map[K]V
}

func newRecent[K comparable, V any](most int) *recent[K, V] {
	return &recent[K, V]{most: most, made: map[K]V{}}
}

func (r *recent[K, V]) get(key K) (V, bool) {
	r.mu.Lock()
	defer r.mu.Unlock()
	v, known := r.made[key]
	return v, known
}

func (r *recent[K, V]) keep(key K, v V) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if len(r.made) >= r.most {
		clear(r.made)
	}
	r.made[key] = v
}

const (
	mostViews = 40  // views of each kind that are kept at hand
	mostSeen  = 2   // of what stands on the beds: a few megabytes each
	mostBeds  = 400 // beds or vegetables: a garden with what was tried in it lately
)

// viewMemory keeps the views last shown, and what the larger of them are made of.
type viewMemory struct {
	names      *recent[num.Digest, named] // of tables, by what was asked: they are as much work as laying a table out
	tables     *recent[num.Digest, *TableView]
	vegetables *recent[num.Digest, *VegetableView]
	years      *recent[num.Digest, []yearAnswer]
	leaves     *recent[num.Digest, map[string][]float32] // of a bed, by planting
	spaces     *recent[num.Digest, *space.Ground]
	beds       *recent[num.Digest, *BedYear]
	weeks      *recent[num.Digest, *vegetableWeeks]
	lights     *recent[lightKey, *ShadeView]
	pairs      *recent[num.Digest, *pairing.Answer]
	thirst     *recent[num.Digest, []watering.Bed]
	lastDays   *recent[num.Digest, []window.Window]
	advices    *recent[num.Digest, *AdviseView]
	choices    *recent[num.Digest, *KeepOrClearView]
	mends      *recent[num.Digest, *MendView]
	trims      *recent[num.Digest, *TrimView]
	compared   *recent[num.Digest, *CompareView]
	larders    *recent[num.Digest, *LarderView]
	barren     *recent[num.Digest, []Barren]
	risks      *recent[num.Digest, *RiskView]
	riskRules  *recent[num.Digest, *RiskRuleView]
	waters     *recent[waterKey, map[string]*BedWater]
	jobWeeks   *recent[num.Digest, *WeekView]
	sowings    *recent[num.Digest, *SowingsView]
	seen       *recent[num.Digest, *frost.Seen]
	frosts     *recent[num.Digest, *FrostResult]
	nights     *outlook.Memory // of the weather that frosts are worked out from
	demands    *recent[num.Digest, *watering.Demand]
	shorts     *recent[num.Digest, *ShortView]
	feeds      *recent[num.Digest, *FeedView]
	waterings  *recent[num.Digest, *WateringView]
	aways      *recent[num.Digest, *AwayView]
	sky        *outlook.Memory // of the weather that waters are worked out from
}

// lightKey names the light on a site in a month; any entry may change it.
type lightKey struct {
	version int64
	site    string
	month   int
}

// newViewMemory is the memory of an office whose tables have a memory of their own.
func newViewMemory(m *outlook.Memory) *viewMemory {
	return &viewMemory{
		names:      newRecent[num.Digest, named](mostBeds),
		tables:     newRecent[num.Digest, *TableView](mostViews),
		vegetables: newRecent[num.Digest, *VegetableView](mostViews),
		years:      newRecent[num.Digest, []yearAnswer](mostViews),
		leaves:     newRecent[num.Digest, map[string][]float32](mostBeds),
		spaces:     newRecent[num.Digest, *space.Ground](mostViews),
		beds:       newRecent[num.Digest, *BedYear](mostBeds),
		weeks:      newRecent[num.Digest, *vegetableWeeks](mostBeds),
		lights:     newRecent[lightKey, *ShadeView](mostViews),
		pairs:      newRecent[num.Digest, *pairing.Answer](mostViews),
		thirst:     newRecent[num.Digest, []watering.Bed](mostViews),
		lastDays:   newRecent[num.Digest, []window.Window](mostBeds),
		advices:    newRecent[num.Digest, *AdviseView](mostViews),
		choices:    newRecent[num.Digest, *KeepOrClearView](mostViews),
		mends:      newRecent[num.Digest, *MendView](mostViews),
		trims:      newRecent[num.Digest, *TrimView](mostViews),
		compared:   newRecent[num.Digest, *CompareView](mostViews),
		larders:    newRecent[num.Digest, *LarderView](mostViews),
		barren:     newRecent[num.Digest, []Barren](mostViews),
		risks:      newRecent[num.Digest, *RiskView](mostViews),
		riskRules:  newRecent[num.Digest, *RiskRuleView](mostViews),
		waters:     newRecent[waterKey, map[string]*BedWater](mostViews),
		jobWeeks:   newRecent[num.Digest, *WeekView](mostViews),
		sowings:    newRecent[num.Digest, *SowingsView](mostViews),
		seen:       newRecent[num.Digest, *frost.Seen](mostSeen),
		frosts:     newRecent[num.Digest, *FrostResult](mostViews),
		nights:     m.Beside(),
		demands:    newRecent[num.Digest, *watering.Demand](4),
		shorts:     newRecent[num.Digest, *ShortView](mostViews),
		feeds:      newRecent[num.Digest, *FeedView](mostViews),
		waterings:  newRecent[num.Digest, *WateringView](mostViews),
		aways:      newRecent[num.Digest, *AwayView](mostViews),
		sky:        m.Beside(),
	}
}

// answer begins the name of an answer of some form with all that may change it: the
// revision of the holding, the day, and what is tried over it. Any entry may
// change the names, records and relations that the table's own name does not tell.
func (a *asked) answer(form string) *num.Digester {
	d := num.NewDigester(form)
	d.Int(a.version)
	d.Int(a.sky)
	d.Int(int64(a.setting.Today))
	d.Int(int64(len(a.try)))
	for _, c := range a.try {
		for _, text := range []string{c.Action, c.Planting, c.Field, c.Value} {
			d.Text(text)
		}
	}
	return d
}
