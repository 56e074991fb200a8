package desk

import (
	"embed"
	"slices"
	"strings"
	"sync"

	"garner/internal/crop"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/loss-cautions.csv
var lossData embed.FS

// CautionView is what to mind, with where it was read.
type CautionView struct {
	Text   words.Phrase
	Source string
}

// lossCaution is a caution for a problem; with crops, only for those.
type lossCaution struct {
	key, problem string
	crops        []string
	source       string
}

var lossCautions = sync.OnceValues(func() ([]lossCaution, error) {
	c, err := table.OpenCells(lossData, "data/loss-cautions.csv", "key", "problem", "crops", "source", "mark")
	if err != nil {
		return nil, err
	}
	var out []lossCaution
	for r := range c.Rows {
		l := lossCaution{key: c.Text(r, "key"), problem: c.Text(r, "problem"), source: c.Text(r, "source")}
		if crops := c.Text(r, "crops"); crops != "" {
			l.crops = strings.Split(crops, ";")
		}
		out = append(out, l)
	}
	return out, c.Err()
})

// cautionsOf says what to mind when a crop is lost to a problem; with no problem,
// what to mind in any that may have it.
func cautionsOf(b *crop.Book, c *crop.Crop, problem string) ([]CautionView, error) {
	all, err := lossCautions()
	if err != nil {
		return nil, err
	}
	var out []CautionView
	for _, l := range all {
		if l.problem != problem || len(l.crops) > 0 && !slices.Contains(l.crops, c.ID) {
			continue
		}
		v := CautionView{Text: words.P("desk.caution_"+l.key, nil)}
		if s, ok := b.Source(l.source); ok {
			v.Source = s.Citation
		}
		out = append(out, v)
	}
	return out, nil
}
