package desk

import (
	"embed"
	"slices"
	"strings"
	"sync"

	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/table"
	"garner/internal/words"
)

//go:embed data/larder-cautions.csv
var larderData embed.FS

// larderCaution says when a caution of the crop book is told in the larder: of any
// of some methods and any of some crops; an empty list is any at all.
type larderCaution struct {
	key            string
	methods, crops []string
}

var larderCautionRows = sync.OnceValues(func() ([]larderCaution, error) {
	c, err := table.OpenCells(larderData, "data/larder-cautions.csv", "caution", "methods", "crops")
	if err != nil {
		return nil, err
	}
	list := func(text string) []string {
		if text == "" {
			return nil
		}
		return strings.Split(text, ";")
	}
	var out []larderCaution
	for r := range c.Rows {
		out = append(out, larderCaution{c.Text(r, "caution"), list(c.Text(r, "methods")), list(c.Text(r, "crops"))})
	}
	return out, c.Err()
})

// larderCautions says what to mind with what is in store and with what could be
// done with a surplus.
func larderCautions(b *crop.Book, v *LarderView) ([]CautionView, error) {
	rows, err := larderCautionRows()
	if err != nil {
		return nil, err
	}
	methods, crops := v.methods(), v.crops()
	if len(crops) == 0 {
		return nil, nil
	}
	var out []CautionView
	for _, row := range rows {
		if !meets(row.methods, methods) || !meets(row.crops, crops) {
			continue
		}
		c, ok := b.Caution(row.key)
		if !ok {
			return nil, fault.New(fault.Internal, "desk.larder_caution_unknown", words.Args{"key": row.key})
		}
		told := CautionView{Text: words.P("desk.caution_told", words.Args{"text": c.Text})}
		if s, ok := b.Source(c.Source); ok {
			told.Source = s.Citation
		}
		out = append(out, told)
	}
	return out, nil
}

// meets tells whether a list asks for nothing or for one of what there is.
func meets(asked []string, there map[string]bool) bool {
	return len(asked) == 0 || slices.ContainsFunc(asked, func(s string) bool { return there[s] })
}

// methods are those by which something is kept or could be.
func (v *LarderView) methods() map[string]bool {
	out := map[string]bool{}
	for i := range v.Stores {
		if len(v.Stores[i].Holds) > 0 {
			out[v.Stores[i].Method] = true
		}
	}
	for i := range v.Surplus {
		for _, w := range v.Surplus[i].Ways {
			out[w.Method] = true
		}
	}
	return out
}

// crops are those in store or going over.
func (v *LarderView) crops() map[string]bool {
	out := map[string]bool{}
	for i := range v.Stocks {
		for _, b := range v.Stocks[i].Batches {
			out[b.Crop] = true
		}
	}
	for i := range v.Surplus {
		out[v.Surplus[i].Crop] = true
	}
	return out
}
