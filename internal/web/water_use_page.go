package web

import (
	"time"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// waterUseBody is the page of the water used by month.
type waterUseBody struct {
	Ways   waterWays
	Lead   []string
	Draw   string // drawings
	Phone  string
	Tables []waterTable
	Beds   []desk.UsedWater
	Any    bool   // anything was given or will be asked for
	Coming string // the page's own address while what is to come is being worked out
}

// waterTable is the months of a site, or of all.
type waterTable struct {
	Name  string
	Used  *desk.UsedWater
	Rows  []waterMonthRow
	Given bool
}

type waterMonthRow struct {
	Month            string
	Given            float64
	L, Dry           float64
	HasGiven, Coming bool
}

// Sizes of the drawing of months [px].
const (
	useWidth, useHeight = 860.0, 220.0
	useWidthPhone       = 358.0
	useHeightPhone      = 190.0
)

// usePatience is how long the page waits for what is to come; it shows what was given
// then, and the rest when it is there.
const usePatience = 200 * time.Millisecond

// waterUsePage shows the water of the months behind and ahead.
func waterUsePage(v *visit) error {
	u, coming, err := v.office.WaterUseWithin(usePatience)
	if err != nil {
		return err
	}
	b := waterUseBody{Ways: v.waterWays("use"), Beds: u.Beds, Any: coming || u.All.YearL > 0 || u.All.GivenL > 0}
	if coming {
		b.Coming = v.here()
	} else {
		b.Lead = append(b.Lead, v.say("web.use_lead", words.Args{"l": u.All.YearL, "dry": u.All.YearDryL}))
	}
	key := "web.use_given"
	if u.All.GivenL == 0 {
		key = "web.use_not_given"
	}
	b.Lead = append(b.Lead, v.say(key, words.Args{"l": u.All.GivenL}))
	if !coming {
		b.Draw, b.Phone = v.useDraw(u, useWidth, useHeight), v.useDraw(u, useWidthPhone, useHeightPhone)
	}
	tables := []*desk.UsedWater{&u.All}
	if len(u.Sites) > 1 {
		for i := range u.Sites {
			tables = append(tables, &u.Sites[i])
		}
	}
	for _, used := range tables {
		name := used.Name
		if name == "" {
			name = v.say("web.use_all", nil)
		}
		b.Tables = append(b.Tables, waterTable{Name: name, Used: used, Rows: v.monthRows(used), Given: used.GivenL > 0})
	}
	return v.showPart(page{Name: "water_use", Nav: waterNav, Body: b})
}

// monthRows are the months of a site: those behind that anything was recorded of, and
// those ahead.
func (v *visit) monthRows(u *desk.UsedWater) []waterMonthRow {
	var rows []waterMonthRow
	at := map[cal.Date]int{}
	for _, m := range u.Given {
		if m.L > 0 || m.Month == u.FirstAhead() {
			at[m.Month] = len(rows)
			rows = append(rows, waterMonthRow{Month: v.monthYear(m.Month), Given: m.L, HasGiven: m.L > 0})
		}
	}
	for _, m := range u.ToCome {
		i, known := at[m.Month]
		if !known {
			i = len(rows)
			rows = append(rows, waterMonthRow{Month: v.monthYear(m.Month)})
		}
		rows[i].L, rows[i].Dry, rows[i].Coming = m.L, m.DryL, true
	}
	return rows
}

func (v *visit) useDraw(u *desk.WaterUse, width, height float64) string {
	f := v.words.Format()
	var months []draw.WaterMonth
	at := map[cal.Date]int{}
	put := func(first cal.Date) *draw.WaterMonth {
		i, known := at[first]
		if !known {
			i = len(months)
			at[first] = i
			m := draw.WaterMonth{Name: string([]rune(f.ShortMonth(first.Month()))[:1])}
			if width > useWidthPhone {
				m.Name = f.ShortMonth(first.Month())
			}
			if first.Month() == 1 || len(months) == 0 {
				m.Year = number(int64(first.Year()))
			}
			months = append(months, m)
		}
		return &months[i]
	}
	if u.All.GivenL > 0 {
		for _, m := range u.All.Given {
			put(m.Month).GivenL = m.L
		}
	}
	for _, m := range u.All.ToCome {
		to := put(m.Month)
		to.MeanL, to.DryL, to.HasToCome, to.MeanText = m.L, m.DryL, true, v.say("web.use_bar", words.Args{"l": m.L, "dry": m.DryL})
	}
	return draw.WaterMonths(months, draw.WaterMonthsOptions{WidthPX: width, HeightPX: height, Label: v.say("web.use_draw", words.Args{"l": u.All.YearL, "dry": u.All.YearDryL})})
}
