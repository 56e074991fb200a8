package watering

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/outlook"
	"garner/internal/record"
	"garner/internal/words"
)

//go:embed data/feeds.csv
var feedsCSV string

// feedRule tells from which stage on, where and how often a crop is fed.
type feedRule struct {
	id       string
	crops    []string
	patterns []string
	from     string // stage
	pot      bool
	every    int     // from one liquid feed to the next [d]
	dryEvery int     // from one dry feed to the next [d]
	strength float64 // of what the label says
	why      string
}

// feedPerM2 is the made-up feed for a square metre [L]: a can over two square metres,
// common practice.
const feedPerM2 = 5

// Feeding is a bed's turn to be fed with its watering.
type Feeding struct {
	Bed, Planting string
	Crop, Use     string
	Why           string   // fruit, pods, leaf
	EveryD        int      // days from one liquid feed to the next
	DryEveryD     int      // days from one dry feed to the next
	Strength      float64  // of what the label says, 0-1
	AreaM2        float64  // ground that is fed
	LitresL       float64  // of made-up liquid feed
	Last          cal.Date // last fed; None: not told
	LastDry       bool     // the last feed was dry
	Due           cal.Date // from which day on: today where none is told
	Pot           bool
}

var feedRules = sync.OnceValues(func() ([]feedRule, error) { return readFeeds(feedsCSV) })

// Feeds tells which plantings want feed at the stage that they are at today, with when
// they are next due. One that young plants stand in, or that nobody eats from, gets
// none.
//
// Source: data/feeds.csv, common practice. What is in a feed is its label's.
func Feeds(s outlook.Setting, m *outlook.Memory) ([]Feeding, error) {
	rules, err := feedRules()
	if err != nil {
		return nil, &fault.Error{Kind: fault.Internal, Phrase: words.P("water.data_unreadable", nil), Err: err}
	}
	var out []Feeding
	fed := fedIn(s.Holding.Records)
	err = outlook.Tracts(s, m, 1, s.Today, s.Today+1, func() func(*outlook.Tract) error {
		return func(t *outlook.Tract) error {
			for k := range t.Growing {
				p := &t.Growing[k]
				if len(p.Days) == 0 || !p.Days[0].There {
					continue
				}
				rule := ruleFor(rules, p.Use, stageOf(p.Use, &p.Days[0]), t.Bed.OwnSoil())
				if rule == nil || p.Days[0].AreaM2 <= 0 {
					continue
				}
				f := Feeding{Bed: t.Bed.ID, Planting: p.Planting.ID, Crop: p.Use.Crop, Use: p.Use.Name, Why: rule.why, EveryD: rule.every, DryEveryD: rule.dryEvery,
					Strength: rule.strength, AreaM2: p.Days[0].AreaM2, LitresL: feedPerM2 * p.Days[0].AreaM2, Due: s.Today, Pot: rule.pot}
				f.since(fed.last(t.Bed.ID, p.Planting.ID))
				out = append(out, f)
			}
			return nil
		}
	})
	return out, err
}

// stagesFrom are the stages at which a rule that begins at one holds.
var stagesFrom = map[string][]string{"growing": {"growing", "flowering", "filling"}, "leafy": {"leafy"}, "flowering": {"flowering", "filling"}}

func ruleFor(rules []feedRule, u *crop.Use, stage string, pot bool) *feedRule {
	for i := range rules {
		r := &rules[i]
		named := slices.Contains(r.crops, u.Crop) || len(r.crops) == 0 && slices.Contains(r.patterns, string(u.Pattern))
		if named && r.pot == pot && slices.Contains(stagesFrom[r.from], stage) {
			return r
		}
	}
	return nil
}

// since takes up when the planting was last fed: a dry feed lasts longer.
func (f *Feeding) since(last lastFed) {
	f.Last, f.LastDry = last.on, last.dry
	if !f.Last.IsSet() {
		return
	}
	days := f.EveryD
	if f.LastDry {
		days = f.DryEveryD
	}
	f.Due = max(f.Due, f.Last+cal.Date(days))
}

// lastFed is the day of a last feed; None: not told.
type lastFed struct {
	on  cal.Date
	dry bool
}

// fedOn are the last feeds, by bed and planting.
type fedOn map[string]lastFed

func fedIn(records []record.Record) fedOn {
	out := fedOn{}
	for i := range records {
		r := &records[i]
		if r.What != record.Fed {
			continue
		}
		key := "bed " + r.Bed
		if r.Planting != "" {
			key = "planting " + r.Planting
		}
		if last, known := out[key]; !known || r.Date > last.on {
			out[key] = lastFed{r.Date, r.Unit == record.KgUnit}
		}
	}
	return out
}

func (f fedOn) last(bed, planting string) lastFed {
	last := lastFed{on: cal.None}
	for _, key := range []string{"bed " + bed, "planting " + planting} {
		if own, known := f[key]; known && (!last.on.IsSet() || own.on > last.on) {
			last = own
		}
	}
	return last
}

func readFeeds(text string) ([]feedRule, error) {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		return nil, err
	}
	var out []feedRule
	for i, row := range rows[1:] {
		r := feedRule{id: row[0], crops: listed(row[1]), patterns: listed(row[2]), from: row[3], pot: row[4] == "pot", why: row[8]}
		var wrong [3]error
		r.every, wrong[0] = strconv.Atoi(row[5])
		r.dryEvery, wrong[1] = strconv.Atoi(row[6])
		r.strength, wrong[2] = strconv.ParseFloat(row[7], 64)
		if errors.Join(wrong[:]...) != nil || r.every < 1 || r.dryEvery < r.every || r.strength <= 0 || r.strength > 1 || stagesFrom[r.from] == nil ||
			len(r.crops)+len(r.patterns) == 0 || r.why == "" || row[9] == "" || row[10] == "" {
			return nil, fmt.Errorf("feeds.csv row %d: %s cannot be", i+2, r.id)
		}
		out = append(out, r)
	}
	return out, nil
}

func listed(cell string) []string {
	if cell == "" {
		return nil
	}
	return strings.Split(cell, ";")
}
