package watering

import (
	_ "embed"
	"encoding/csv"
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
	every    int     // [d]
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
	EveryD        int      // days from one feed to the next
	Strength      float64  // of what the label says, 0-1
	LitresL       float64  // of made-up feed
	Last          cal.Date // last fed; None: not told
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
	err = outlook.Tracts(s, m, 1, s.Today, s.Today+1, func(t *outlook.Tract) error {
		for k := range t.Growing {
			p := &t.Growing[k]
			if len(p.Days) == 0 || !p.Days[0].There {
				continue
			}
			rule := ruleFor(rules, p.Use, stageOf(p.Use, &p.Days[0]), t.Bed.OwnSoil())
			if rule == nil || p.Days[0].AreaM2 <= 0 {
				continue
			}
			f := Feeding{Bed: t.Bed.ID, Planting: p.Planting.ID, Crop: p.Use.Crop, Use: p.Use.Name, Why: rule.why, EveryD: rule.every,
				Strength: rule.strength, LitresL: feedPerM2 * p.Days[0].AreaM2, Last: fed.last(t.Bed.ID, p.Planting.ID), Due: s.Today, Pot: rule.pot}
			if f.Last.IsSet() {
				f.Due = max(s.Today, f.Last+cal.Date(rule.every))
			}
			out = append(out, f)
		}
		return nil
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

// fedOn are the days of the last feeds, by bed and planting.
type fedOn map[string]cal.Date

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
		if last, known := out[key]; !known || r.Date > last {
			out[key] = r.Date
		}
	}
	return out
}

func (f fedOn) last(bed, planting string) cal.Date {
	last := cal.None
	for _, key := range []string{"bed " + bed, "planting " + planting} {
		if on, known := f[key]; known && (!last.IsSet() || on > last) {
			last = on
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
		r := feedRule{id: row[0], crops: listed(row[1]), patterns: listed(row[2]), from: row[3], pot: row[4] == "pot", why: row[7]}
		var wrong [2]error
		r.every, wrong[0] = strconv.Atoi(row[5])
		r.strength, wrong[1] = strconv.ParseFloat(row[6], 64)
		if wrong[0] != nil || wrong[1] != nil || r.every < 1 || r.strength <= 0 || r.strength > 1 || stagesFrom[r.from] == nil ||
			len(r.crops)+len(r.patterns) == 0 || r.why == "" || row[8] == "" || row[9] == "" {
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
