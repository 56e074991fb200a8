package cli

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/words"
)

// tableWidth is the widest a line of the table may be; more weeks go on in
// another block below.
const tableWidth = 100

// headRoom is how far the name of the last month or year may stand out.
const headRoom = 3

// The signs of the table, one a week. Solid is from the ground, shaded from
// store; what is missing leaves the line lower.
const (
	signFresh  = '█'
	signStored = '▒'
	signSpare  = '+'
	signHalf   = '▄'
	signLittle = '▁'
	signNone   = '·'
	signBlank  = ' '
)

// weekSign tells one vegetable's week in one sign.
func weekSign(v *desk.VegetableTable, i int) rune {
	want, got := v.WantKg[i], v.FreshKg[i]+v.StoredKg[i]
	switch {
	case want <= 0 && v.OverKg[i] >= 0.1:
		return signSpare
	case want <= 0:
		return signBlank
	case got >= 0.9*want && v.OverKg[i] >= 0.5*want:
		return signSpare
	case got >= 0.9*want && v.FreshKg[i] >= v.StoredKg[i]:
		return signFresh
	case got >= 0.9*want:
		return signStored
	case got >= 0.5*want:
		return signHalf
	case got >= 0.1*want:
		return signLittle
	}
	return signNone
}

// shareSign draws a share (0-1) as a height.
func shareSign(share float64) rune {
	heights := []rune("·▁▂▃▄▅▆▇█")
	return heights[max(0, min(len(heights)-1, int(share*float64(len(heights)-1)+0.5)))]
}

// showOutlook writes the table, its key, the next gaps in words and the share.
func (a *App) showOutlook(r *desk.OutlookResult) {
	if len(r.Weeks) == 0 || len(r.Vegetables) == 0 {
		a.say(words.P("cli.outlook_empty", nil))
		return
	}
	a.say(words.P("cli.outlook_title", words.Args{
		"holding": r.Holding, "first": r.Weeks[0], "weeks": len(r.Weeks),
	}))
	a.say(r.Lead)
	share := a.Words.Text(words.P("cli.outlook_share_row", nil))
	width := utf8.RuneCountInString(share)
	for _, v := range r.Vegetables {
		width = max(width, utf8.RuneCountInString(v.Name))
	}
	width = min(width, 24) + 1
	across := tableWidth - width - headRoom
	for from := 0; from < len(r.Weeks); from += across {
		a.gap()
		a.showWeeks(r, share, width, from, min(len(r.Weeks), from+across))
	}
	a.gap()
	a.say(words.P("cli.outlook_key", words.Args{
		"fresh": string(signFresh), "stored": string(signStored), "spare": string(signSpare),
		"half": string(signHalf), "little": string(signLittle), "none": string(signNone),
	}))
	a.gap()
	for _, b := range r.CannotGrow {
		a.say(b.Phrase())
	}
	for _, w := range r.OddWants {
		a.say(w)
	}
	a.showGaps(r)
	a.gap()
	a.say(words.P("cli.outlook_share", words.Args{"share": r.HomeGrownShare}))
	a.say(words.P("cli.outlook_basis", words.Args{"years": r.Years, "seed": fmt.Sprint(r.Seed)}))
}

// showWeeks writes one block of the table, the weeks from up to to.
func (a *App) showWeeks(r *desk.OutlookResult, share string, width, from, to int) {
	years, months := a.weekHeads(r.Weeks[from:to])
	a.tableLine("", width, years)
	a.tableLine("", width, months)
	for i := range r.Vegetables {
		v := &r.Vegetables[i]
		signs := make([]rune, 0, to-from)
		for week := from; week < to; week++ {
			signs = append(signs, weekSign(v, week))
		}
		a.tableLine(v.Name, width, signs)
	}
	heights := make([]rune, 0, to-from)
	for week := from; week < to; week++ {
		heights = append(heights, shareSign(r.Share[week]))
	}
	a.tableLine(share, width, heights)
}

func (a *App) tableLine(name string, width int, signs []rune) {
	fmt.Fprintln(a.Stdout, strings.TrimRight(padded(name, width)+string(signs), " "))
}

// weekHeads writes the years and months over the weeks they begin in.
func (a *App) weekHeads(weeks []cal.Date) (years, months []rune) {
	years = []rune(strings.Repeat(" ", len(weeks)+headRoom))
	months = []rune(strings.Repeat(" ", len(weeks)+headRoom))
	year, month := 0, 0
	for i, week := range weeks {
		y, m, _ := week.YMD()
		if m != month && !(i == 0 && changesWithin(weeks, 4, cal.Date.Month)) {
			writeOver(months, i, a.Words.Format().ShortMonth(m))
		}
		if y != year && !(i == 0 && changesWithin(weeks, 5, cal.Date.Year)) {
			writeOver(years, i, fmt.Sprint(y))
		}
		year, month = y, m
	}
	return years, months
}

// changesWithin tells whether another month or year begins within n weeks of the
// first, too soon to name both.
func changesWithin(weeks []cal.Date, n int, part func(cal.Date) int) bool {
	for i := 1; i < min(n, len(weeks)); i++ {
		if part(weeks[i]) != part(weeks[0]) {
			return true
		}
	}
	return false
}

// writeOver writes a text over blanks, as far as there is room.
func writeOver(line []rune, at int, text string) {
	copy(line[at:], []rune(text))
}
