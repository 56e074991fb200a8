package desk

import (
	"maps"
	"slices"
	"strings"

	"garner/internal/cal"
	"garner/internal/frost"
	"garner/internal/holding"
	"garner/internal/journal"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/words"
)

// stageOfRecord and stageOfRisk turn the name of a stage of blossom in the records
// into that of the temperatures, and back.
func stageOfRecord(stage string) record.Stage {
	return record.Stage(strings.ReplaceAll(stage, "_", " "))
}

func stageOfRisk(s record.Stage) string { return strings.ReplaceAll(string(s), " ", "_") }

// blossomSeen are the stages of blossom last recorded this season, by planting or tree.
func blossomSeen(h *holding.Holding, today cal.Date) map[string]frost.SeenStage {
	out := map[string]frost.SeenStage{}
	for i := range h.Records {
		r := &h.Records[i]
		id := r.Planting
		if id == "" {
			id = r.Feature
		}
		if r.What != record.Blossomed || r.Date > today || r.Date < frost.BlossomYear(today, southOf(h, r)) {
			continue
		}
		if before, known := out[id]; !known || r.Date >= before.On {
			out[id] = frost.SeenStage{Stage: stageOfRisk(r.Stage), On: r.Date}
		}
	}
	return out
}

// southOf tells whether what a record is about lies south of the equator.
func southOf(h *holding.Holding, r *record.Record) bool {
	site := ""
	for i := range h.Features {
		if h.Features[i].ID == r.Feature && r.Feature != "" {
			site = h.Features[i].Site
		}
	}
	for i := range h.Plantings {
		if p := &h.Plantings[i]; p.ID == r.Planting && r.Planting != "" {
			at := slices.IndexFunc(h.Beds, func(b place.Bed) bool { return b.ID == p.Bed })
			if at >= 0 {
				site = h.Beds[at].Site
			}
		}
	}
	at := slices.IndexFunc(h.Sites, func(s place.Site) bool { return s.ID == site || site == "" })
	return at >= 0 && h.Sites[at].Location.LatitudeDeg < 0
}

// TellBlossom keeps the stages of blossom that somebody saw today, by planting or tree
// on the plan. It is one entry. A stage that is told as it stands is not told again; one of
// another crop is refused.
func (o *Office) TellBlossom(by Author, stages map[string]string) (*KeptEntry, error) {
	return o.write(by, func() (journal.Entry, error) {
		w, now, err := o.telling()
		if err != nil {
			return journal.Entry{}, err
		}
		seen := blossomSeen(w.holding, now)
		n := 0
		for _, id := range slices.Sorted(maps.Keys(stages)) {
			if stages[id] == "" || seen[id].Stage == stages[id] {
				continue
			}
			if err := w.itsBlossom(id, stages[id]); err != nil {
				return journal.Entry{}, err
			}
			cells := map[string]string{"date": now.String(), "what": string(record.Blossomed), "stage": string(stageOfRecord(stages[id]))}
			column := "planting"
			if slices.ContainsFunc(w.holding.Features, func(f place.Feature) bool { return f.ID == id }) {
				column = "feature"
			}
			cells[column] = id
			if err := w.add("records", cells); err != nil {
				return journal.Entry{}, err
			}
			n++
		}
		return w.entry(words.P("desk.said_blossom", words.Args{"n": n, "date": now}))
	})
}
