package risk

import (
	"garner/internal/table"
	"garner/internal/words"
)

// Blossom is a stage of the blossom of fruit: half an hour at one temperature kills
// a tenth of it, at another nine tenths.
type Blossom struct {
	Crop, Stage      string
	Kill10C, Kill90C float64
	Source, Mark     string

	// The stage begins at a sum of daily means above a base, from the first day of the
	// year in the north and of July in the south [C d]; 0: no sum was found.
	SumCd, BaseC       float64
	SumSource, SumMark string
}

// Lost is the share of the blossom that a night kills, along a line through both
// figures, 0-1.
func (b *Blossom) Lost(tMinC float64) float64 {
	return min(1, max(0, 0.1+0.8*(b.Kill10C-tMinC)/(b.Kill10C-b.Kill90C)))
}

// Known tells whether a sum of warmth is known at which the stage begins.
func (b *Blossom) Known() bool { return b.SumCd > 0 }

// Name names the stage.
func (b *Blossom) Name() words.Phrase { return words.P("risk.blossom_"+b.Stage, nil) }

// Stages are the stages of a crop's blossom, in order of time.
func (b *Book) Stages(crop string) []*Blossom {
	var out []*Blossom
	for i := range b.Blossoms {
		if b.Blossoms[i].Crop == crop {
			out = append(out, &b.Blossoms[i])
		}
	}
	return out
}

// blossom reads the stages of blossom.
func (l *loader) blossom(c *table.Cells) {
	for i := range c.Rows {
		b := Blossom{Crop: told(c, i, "crop"), Stage: told(c, i, "stage"), Kill10C: c.Within(i, "kill_10_c", -30, 2), Kill90C: c.Within(i, "kill_90_c", -40, 2),
			Source: told(c, i, "source"), Mark: oneOf(c, i, "mark", marks)}
		if c.Text(i, "sum_cd") != "" {
			b.SumCd, b.BaseC = c.Within(i, "sum_cd", 1, 2000), c.Within(i, "base_c", -5, 15)
			b.SumSource, b.SumMark = told(c, i, "sum_source"), oneOf(c, i, "sum_mark", marks)
		}
		if b.Kill90C >= b.Kill10C {
			c.Refuse(i, "kill_90_c", "risk.data_kill_order", words.Args{"low": b.Kill10C, "high": b.Kill90C})
		}
		l.book.Blossoms = append(l.book.Blossoms, b)
	}
}
