package web

import (
	"net/http"
	"strings"

	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/words"
)

// waterBody is the page of what the beds want to drink.
type waterBody struct {
	Ways         waterWays
	Lead, Doubts []string
	Can          *smallForm
	CanSays      string
	All          string // what the button that records all of it says; empty: nothing is due
	AllHidden    []hiddenField
	AllFaults    []words.Phrase
	Sites        []waterSite
	Today        string
	From, To     string // days away that are offered, or were typed
	AwayFaults   []words.Phrase
}

// waterSite is a stretch of the route.
type waterSite struct {
	Name string // empty where there is one site
	Beds []waterLine
}

// waterLine is one bed with the form in which its watering is told.
type waterLine struct {
	ID, Name, Path string
	Sort           string // pot or trough, 0.7 m2
	Level, Bar     string // drawings
	Now, Week      string
	Says           []string
	Guessed        string // what a container is taken to hold; empty: it is told
	Form           *smallForm
}

// Sizes of the drawings [px].
const (
	waterBarWidth, waterBarHeight     = 300.0, 22.0
	waterLevelWidth, waterLevelHeight = 30.0, 44.0
)

func waterPage(v *visit) error { return v.showWater(waterTyped{}) }

func (v *visit) showWater(typed waterTyped) error {
	view, err := v.office.WateringView(desk.WateringOptions{})
	if err != nil {
		return err
	}
	b, err := v.waterBody(view, typed)
	if err != nil {
		return err
	}
	p := page{Name: "water", Nav: waterNav, Body: b}
	if len(typed.faults) > 0 {
		p.Status = http.StatusUnprocessableEntity
	}
	return v.show(p)
}

func (v *visit) waterBody(view *desk.WateringView, typed waterTyped) (*waterBody, error) {
	b := &waterBody{Ways: v.waterWays("beds"), Today: view.Today.String(), From: (view.Today + usualLeave).String(), To: (view.Today + usualLeave + usualAway).String()}
	if typed.form == "away" {
		b.From, b.To = typed.from, typed.to
		for _, e := range typed.faults {
			b.AwayFaults = append(b.AwayFaults, e.Phrase)
		}
	}
	for _, p := range view.Lead {
		b.Lead = append(b.Lead, v.sentence(sharpened(p, view.Today)))
	}
	for _, p := range view.Doubts {
		b.Doubts = append(b.Doubts, v.sentence(sharpened(p, view.Today)))
	}
	var err error
	if b.Can, err = v.canForm(view, typed); err != nil {
		return nil, err
	}
	b.CanSays = v.say("web.water_can", words.Args{"l": view.CanL})
	if !view.CanTold {
		b.CanSays = v.say("web.water_can_usual", words.Args{"l": view.CanL})
	}
	if err := v.waterAll(b, view, typed); err != nil {
		return nil, err
	}
	most := 0.0
	for _, bed := range view.Beds {
		most = max(most, bed.DryL, bed.WeekL)
	}
	for _, s := range view.Sites {
		site := waterSite{Name: s.Name}
		if len(view.Sites) == 1 {
			site.Name = ""
		}
		for i := range s.Beds {
			line, err := v.waterLine(view, &s.Beds[i], most, typed)
			if err != nil {
				return nil, err
			}
			site.Beds = append(site.Beds, line)
		}
		b.Sites = append(b.Sites, site)
	}
	return b, nil
}

// Days away that are offered before any were asked for [d].
const (
	usualLeave = 3
	usualAway  = 14
)

// waterAll offers to record all that is due at once.
func (v *visit) waterAll(b *waterBody, view *desk.WateringView, typed waterTyped) error {
	litres, n := 0.0, 0
	for _, bed := range view.Beds {
		if bed.NowL > 0 {
			litres, n = litres+bed.NowL, n+1
		}
	}
	if n == 0 {
		return nil
	}
	entry, err := v.entry()
	b.All = v.say("web.water_all_given", words.Args{"n": n, "l": litres})
	b.AllHidden = []hiddenField{{"entry", entry}, {"bed", allBeds}}
	if typed.form == allBeds {
		for _, e := range typed.faults {
			b.AllFaults = append(b.AllFaults, e.Phrase)
		}
	}
	return err
}

func (v *visit) canForm(view *desk.WateringView, typed waterTyped) (*smallForm, error) {
	value := ""
	if view.CanTold {
		value = v.words.Format().Plain(view.CanL)
	}
	return v.small("can", "/water/can", typedForm{typed.form, map[string]string{"can_l": typed.can}, typed.faults}, []fieldBody{
		{Name: "can_l", Label: v.say("web.water_can_label", nil), Kind: kindNumber, Value: value, Unit: "L"}})
}

func (v *visit) waterLine(view *desk.WateringView, b *desk.BedThirst, most float64, typed waterTyped) (waterLine, error) {
	l := waterLine{ID: b.Bed, Name: b.Name, Path: bedPath(b.Bed), Sort: v.waterSort(b),
		Now: v.waterNow(b, view.CanL), Week: v.waterWeek(b, view.CanL), Says: v.waterWhy(view, b)}
	if b.Why.HeldMM > 0 {
		l.Level = draw.WaterLevel(b.Why.HeldMM, b.Why.EasyMM, b.Why.MissingMM, draw.WaterLevelOptions{WidthPX: waterLevelWidth, HeightPX: waterLevelHeight,
			Label: v.say("web.water_level_label", words.Args{"bed": b.Name, "gone": v.goneTold(b)})})
	}
	l.Bar = draw.WaterBar(b.NowL, b.WeekL, b.DryL, draw.WaterBarOptions{WidthPX: waterBarWidth, HeightPX: waterBarHeight, MostL: most,
		Label: b.Name + ": " + plainText(l.Now+" "+l.Week)})
	if b.Guessed > 0 {
		l.Guessed = v.say("web.water_guessed", words.Args{"l": b.Guessed})
	}
	var err error
	l.Form, err = v.givenForm(view, b, typed)
	return l, err
}

// givenForm is the form in which a bed's watering is told; blank is as much as it took.
func (v *visit) givenForm(view *desk.WateringView, b *desk.BedThirst, typed waterTyped) (*smallForm, error) {
	entry, err := v.entry()
	f := &smallForm{ID: b.Bed, Path: "/water/given", Hidden: []hiddenField{{"entry", entry}, {"bed", b.Bed}}}
	amount := fieldBody{Name: "amount", Label: v.say("web.water_amount", nil), Kind: kindNumber}
	unit := fieldBody{Name: "unit", Label: v.say("web.tend_unit", nil), Kind: kindChoice, Must: true, Value: "cans",
		Options: []option{{"cans", v.say("web.water_unit_cans", nil)}, {"L", v.say("web.tend_unit_L", nil)}}}
	day := fieldBody{Name: "date", Label: v.say("web.tend_date", nil), Kind: kindDate, Value: view.Today.String(), Must: true}
	if b.NowL > 0 {
		amount.Value = v.words.Format().Plain(b.NowCans)
		if smallGift(b.NowL, view.CanL) {
			amount.Value, unit.Value = v.words.Format().Plain(b.NowL), "L"
		}
	}
	if typed.form == b.Bed {
		amount.Value, unit.Value, day.Value, f.Wrong = typed.amount, typed.unit, typed.on, len(typed.faults)
		for _, e := range typed.faults {
			switch e.At.Column {
			case "date":
				day.Faults = append(day.Faults, e.Phrase)
			default:
				amount.Faults = append(amount.Faults, e.Phrase)
			}
		}
	}
	f.Fields = []fieldBody{amount, unit, day}
	return f, err
}

// waterSort tells what sort of place a bed is, and how much of it is planted.
func (v *visit) waterSort(b *desk.BedThirst) string {
	return capital(v.say("web.water_sort", words.Args{"kind": words.P("web.water_kind_"+b.Kind, nil), "area": b.AreaM2}))
}

// smallGift tells whether litres are so few that cans say too much.
func smallGift(litres, canL float64) bool { return litres < 0.4*canL }

// cansTold tells litres in cans, few of them in litres.
func (v *visit) cansTold(litres, cans, canL float64) string {
	if smallGift(litres, canL) {
		return v.say("web.water_litres", words.Args{"l": litres})
	}
	return v.say("web.water_cans", words.Args{"n": cans, "l": litres})
}

func (v *visit) waterNow(b *desk.BedThirst, canL float64) string {
	if b.NowL <= 0 {
		return v.say("web.water_not_now", nil)
	}
	return v.say("web.water_now", words.Args{"much": v.cansTold(b.NowL, b.NowCans, canL)})
}

func (v *visit) waterWeek(b *desk.BedThirst, canL float64) string {
	dryCans := desk.CansOf(b.DryL, canL)
	switch {
	case b.WeekL <= 0 && b.DryL <= 0:
		return v.say("web.water_week_none", nil)
	case b.WeekL <= 0:
		return v.say("web.water_week_dry", words.Args{"dry": v.cansTold(b.DryL, dryCans, canL)})
	case b.DryL > b.WeekL:
		return v.say("web.water_week_both", words.Args{"much": v.cansTold(b.WeekL, b.WeekCans, canL), "dry": v.cansTold(b.DryL, dryCans, canL)})
	}
	return v.say("web.water_week", words.Args{"much": v.cansTold(b.WeekL, b.WeekCans, canL)})
}

// goneTold tells how dry the driest ground of a bed is.
func (v *visit) goneTold(b *desk.BedThirst) string {
	gone := b.Why.Gone()
	key := "web.water_gone"
	switch {
	case b.Why.Seeds && gone >= 1:
		key = "web.water_seed_dry"
	case gone >= 1:
		key = "web.water_gone_all"
	case gone < 0.05:
		key = "web.water_gone_none"
	}
	return v.say(key, words.Args{"share": gone})
}

// waterWhy tells when a bed wants water and why.
func (v *visit) waterWhy(view *desk.WateringView, b *desk.BedThirst) []string {
	var out []string
	today := view.Today
	say := func(key string, args words.Args) {
		out = append(out, v.sentence(sharpened(words.P(key, args), today)))
	}
	switch {
	case b.AreaM2 <= 0 && b.Wants == nil:
		say("web.water_not_planted", nil)
	case b.Wants != nil && *b.Wants <= today:
		say("web.water_wants_today", nil)
	case b.Wants != nil && b.WantsDry != nil && *b.WantsDry < *b.Wants:
		say("web.water_wants_both", words.Args{"on": *b.Wants, "dry": *b.WantsDry})
	case b.Wants != nil:
		say("web.water_wants", words.Args{"on": *b.Wants})
	case b.WantsDry != nil:
		say("web.water_wants_dry", words.Args{"dry": *b.WantsDry})
	default:
		say("web.water_lasts", nil)
	}
	if b.Why.HeldMM > 0 {
		out = append(out, v.goneTold(b))
	}
	switch {
	case b.Why.RainOn != nil:
		say("web.water_rain", words.Args{"on": *b.Why.RainOn, "mm": b.Why.RainMM})
	case !view.Stale(b.Why.KnownTo):
		say("web.water_no_rain", nil)
	}
	switch {
	case b.Why.WateredOn != nil && b.Why.WateredL > 0:
		say("web.water_given", words.Args{"on": *b.Why.WateredOn, "l": b.Why.WateredL})
	case b.Why.WateredOn != nil:
		say("web.water_given_full", words.Args{"on": *b.Why.WateredOn})
	}
	if b.ReadOn != nil {
		say("web.water_read", words.Args{"on": *b.ReadOn})
	}
	if b.Why.LostL >= 1 {
		say("web.water_lost", words.Args{"l": b.Why.LostL, "uses": b.UsesL})
	}
	return []string{strings.Join(out, " ")}
}
