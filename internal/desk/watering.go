package desk

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/watering"
	"garner/internal/words"
)

// usualCanL is the watering can of a household that has not told its own [L].
const usualCanL = 10

// WateringOptions ask what the beds want.
type WateringOptions struct {
	Leave, Back cal.Date // away: watered last on the one, again on the other; None: at home
	Seed        uint64
}

// WateringResult is what the planted beds want, along the walking route.
type WateringResult struct {
	Today cal.Date     `json:"today"`
	CanL  float64      `json:"can_l"`
	Beds  []BedThirst  `json:"beds"`
	All   Litres       `json:"all"`
	Away  *AwayThirst  `json:"away"`
	First *FirstToWant `json:"first"` // the first bed that suffers if nobody comes

	CanTold bool `json:"-"` // the size of the can is the household's own
}

// Litres are what is to be given: in litres, and in cans to the half.
type Litres struct {
	NowL     float64 `json:"now_l"`
	NowCans  float64 `json:"now_cans"`
	WeekL    float64 `json:"week_l"`     // in the middle of the futures
	WeekCans float64 `json:"week_cans"`  // of them
	DryL     float64 `json:"week_dry_l"` // in the driest week of ten
	UsesL    float64 `json:"uses_l"`     // that soil and leaves lose in the week
}

// BedThirst is what one bed wants.
type BedThirst struct {
	Bed      string    `json:"bed"`
	Name     string    `json:"name"`
	AreaM2   float64   `json:"area_m2"` // planted
	Recorded bool      `json:"recorded"`
	MissingL float64   `json:"missing_l"`
	Litres             // now and in the week
	Wants    *cal.Date `json:"wants"`     // the day it suffers if nobody comes
	WantsDry *cal.Date `json:"wants_dry"` // in the driest time of ten

	ReadOn    *cal.Date `json:"read_on"`      // the last reading of its moisture that the balance heeds
	ReadMoved float64   `json:"read_moved_l"` // by how much less it left missing

	BeforeL    float64   `json:"before_l"`     // to be given on the day of leaving
	BeforeCans float64   `json:"before_cans"`  // of it
	HelperL    float64   `json:"helper_l"`     // while away
	HelperDryL float64   `json:"helper_dry_l"` // in the driest time of ten
	Fails      *cal.Date `json:"fails"`        // while away, watered on the day of leaving
	FailsDry   *cal.Date `json:"fails_dry"`
}

// AwayThirst is a time in which nobody comes.
type AwayThirst struct {
	Leave   cal.Date `json:"leave"`
	Back    cal.Date `json:"back"`
	BeforeL float64  `json:"before_l"`
	HelperL float64  `json:"helper_l"`

	HelperDryL float64 `json:"helper_dry_l"`
}

// FirstToWant is a bed and a day.
type FirstToWant struct {
	Bed  string   `json:"bed"`
	Name string   `json:"name"`
	On   cal.Date `json:"on"`
}

// Watering works out what the planted beds of a holding want: today, in the week, and
// over a time away.
func Watering(h *holding.Holding, o WateringOptions) (*WateringResult, error) {
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed})
	if err != nil {
		return nil, err
	}
	away, err := awayOf(o, s.Today)
	if err != nil {
		return nil, err
	}
	beds, all, err := watering.Of(s, outlook.NewMemory(), away)
	if err != nil {
		return nil, err
	}
	return wateringResult(h, s.Today, beds, &all, away), nil
}

// longestAway is the longest time away that is reckoned with [d].
const longestAway = 60

func awayOf(o WateringOptions, now cal.Date) (*watering.Away, error) {
	switch {
	case !o.Leave.IsSet():
		return nil, nil
	case o.Back <= o.Leave:
		return nil, fault.New(fault.Invalid, "desk.away_order", words.Args{"leave": o.Leave, "back": o.Back})
	case o.Leave < now:
		return nil, fault.New(fault.OutOfRange, "desk.away_past", words.Args{"leave": o.Leave, "today": now})
	case o.Back-now > 300 || o.Back-o.Leave > longestAway:
		return nil, fault.New(fault.OutOfRange, "desk.away_long", words.Args{"n": longestAway})
	}
	return &watering.Away{Leave: o.Leave, Back: o.Back}, nil
}

func wateringResult(h *holding.Holding, now cal.Date, beds []watering.Bed, all *watering.Bed, away *watering.Away) *WateringResult {
	r := &WateringResult{Today: now, CanL: usualCanL, Beds: []BedThirst{}}
	if h.CanL > 0 {
		r.CanL, r.CanTold = h.CanL, true
	}
	r.All = litresOf(all, r.CanL)
	order, name := map[string]int{}, map[string]string{}
	for i := range h.Beds {
		order[h.Beds[i].ID], name[h.Beds[i].ID] = h.Beds[i].Order, h.Beds[i].Name
	}
	slices.SortStableFunc(beds, func(a, b watering.Bed) int { return cmp.Compare(order[a.Bed], order[b.Bed]) })
	if away != nil {
		r.Away = &AwayThirst{Leave: away.Leave, Back: away.Back, BeforeL: wholeL(all.BeforeL), HelperL: wholeL(all.HelperL), HelperDryL: wholeL(all.HelperDryL)}
	}
	for i := range beds {
		b := thirstOf(&beds[i], name[beds[i].Bed], r.CanL)
		r.Beds = append(r.Beds, b)
		if b.Wants != nil && (r.First == nil || *b.Wants < r.First.On) {
			r.First = &FirstToWant{b.Bed, b.Name, *b.Wants}
		}
	}
	return r
}

func thirstOf(b *watering.Bed, name string, canL float64) BedThirst {
	return BedThirst{Bed: b.Bed, Name: name, AreaM2: tenthOf(b.AreaM2), Recorded: b.Told, MissingL: wholeL(b.MissingL),
		Litres: litresOf(b, canL), Wants: dateOrNone(b.Wants), WantsDry: dateOrNone(b.WantsDry),
		ReadOn: dateOrNone(b.Read), ReadMoved: tenthOf(b.ReadL),
		BeforeL: wholeL(b.BeforeL), BeforeCans: cansOf(b.BeforeL, canL), HelperL: wholeL(b.HelperL), HelperDryL: wholeL(b.HelperDryL),
		Fails: dateOrNone(b.Fails), FailsDry: dateOrNone(b.FailsDry)}
}

func litresOf(b *watering.Bed, canL float64) Litres {
	return Litres{NowL: wholeL(b.NowL), NowCans: cansOf(b.NowL, canL), WeekL: wholeL(b.WeekL), WeekCans: cansOf(b.WeekL, canL),
		DryL: wholeL(b.WeekDryL), UsesL: wholeL(b.UsesL)}
}

// wholeL rounds litres to whole ones, those of small pots to tenths.
func wholeL(litres float64) float64 {
	if litres < 5 {
		return tenthOf(litres)
	}
	return math.Round(litres)
}

// cansOf are cans to the half, no less than the litres.
func cansOf(litres, canL float64) float64 { return math.Ceil(2*litres/canL-1e-9) / 2 }

func dateOrNone(d cal.Date) *cal.Date {
	if !d.IsSet() {
		return nil
	}
	return &d
}
