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
	Enough      int      // in so many of ten such times what is given before is enough: one of AwayEnough; 0: nine
	Seed        uint64
}

// usualEnough is in how many of ten times what is given before leaving is enough, unless
// told otherwise.
const usualEnough = 9

// AwayEnough are the odds, in ten, for which water before leaving may be asked: an ordinary
// time, a dry one, the driest of ten.
func AwayEnough() []int { return []int{5, 8, usualEnough} }

func (o *WateringOptions) enough() int {
	if o.Enough == 0 {
		return usualEnough
	}
	return o.Enough
}

// WateringResult is what the planted beds want, along the walking route.
type WateringResult struct {
	Today  cal.Date     `json:"today"`
	CanL   float64      `json:"can_l"`
	Beds   []BedThirst  `json:"beds"`
	All    Litres       `json:"all"`
	Away   *AwayThirst  `json:"away"`
	First  *FirstToWant `json:"first"`                 // the first bed that suffers if nobody comes
	Untold []string     `json:"sites_without_weather"` // names: of their beds nothing can be told

	CanTold bool `json:"-"` // the size of the can is the household's own
}

// Litres are what is to be given: in litres, and in cans to the half.
type Litres struct {
	NowL     float64 `json:"now_l"`
	NowCans  float64 `json:"now_cans"`
	WeekL    float64 `json:"week_l"`     // in a middle week, the same one for all beds
	WeekCans float64 `json:"week_cans"`  // of them, on each day to the half
	DryL     float64 `json:"week_dry_l"` // in the driest week of ten
	UsesL    float64 `json:"uses_l"`     // that soil and leaves lose in the week
}

// BedThirst is what one bed wants.
type BedThirst struct {
	Bed      string    `json:"bed"`
	Name     string    `json:"name"`
	Kind     string    `json:"kind"`    // bed, border, tunnel, frame, container, bench
	AreaM2   float64   `json:"area_m2"` // planted
	Recorded bool      `json:"recorded"`
	MissingL float64   `json:"missing_l"`
	Litres             // now and in the week
	Gifts    []Gift    `json:"days"`      // of that week on which it is given any
	Wants    *cal.Date `json:"wants"`     // the day it suffers if nobody comes
	WantsDry *cal.Date `json:"wants_dry"` // in the driest time of ten

	ReadOn    *cal.Date `json:"read_on"`      // the last reading of its moisture that the balance heeds
	ReadMoved float64   `json:"read_moved_l"` // by how much less it left missing

	BeforeL    float64   `json:"before_l"`     // to be given on the day of leaving
	BeforeCans float64   `json:"before_cans"`  // of it
	HelperL    float64   `json:"helper_l"`     // while away
	HelperDryL float64   `json:"helper_dry_l"` // on the round that is told, if no rain falls
	Fails      *cal.Date `json:"fails"`        // while away, watered on the day of leaving
	FailsDry   *cal.Date `json:"fails_dry"`

	Why WaterWhy `json:"why"`

	Site    string           `json:"-"`
	Guessed float64          `json:"-"` // litres that a container is guessed to hold; 0: it is told, or no container
	Rounds  []watering.Round `json:"-"` // while away
}

// WaterWhy is what the litres come from.
type WaterWhy struct {
	HeldMM    float64   `json:"held_mm"`    // that the driest ground of the bed holds within reach of the roots
	EasyMM    float64   `json:"easy_mm"`    // may be gone of it before the crop is in want
	MissingMM float64   `json:"missing_mm"` // is gone
	Seeds     bool      `json:"seeds"`      // seed lies there that is not through
	LostL     float64   `json:"lost_l"`     // soil and leaves lost in the seven days before today
	RainOn    *cal.Date `json:"rain_on"`    // last rain of 1 mm and more that reached it
	RainMM    float64   `json:"rain_mm"`    // of that day
	WateredOn *cal.Date `json:"watered_on"` // last watering of the records
	WateredL  float64   `json:"watered_l"`  // of that day; 0: not told
	KnownTo   *cal.Date `json:"known_to"`   // last day of weather on file before today; null: none
}

// Gone is the share of what may be gone that is: 1 and more is want.
func (w *WaterWhy) Gone() float64 {
	return watering.Level{HeldMM: w.HeldMM, EasyMM: w.EasyMM, MissingMM: w.MissingMM}.Gone()
}

// AwayThirst is a time in which nobody comes.
type AwayThirst struct {
	Leave   cal.Date `json:"leave"`
	Back    cal.Date `json:"back"`
	Enough  int      `json:"enough_in_ten"` // of such times what is given before, and the round, is enough
	BeforeL float64  `json:"before_l"`
	HelperL float64  `json:"helper_l"`

	HelperDryL float64 `json:"helper_dry_l"` // on the round that is told, if no rain falls

	AwayRest
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
	return wateringOf(h, o, outlook.NewMemory())
}

func wateringOf(h *holding.Holding, o WateringOptions, m *outlook.Memory) (*WateringResult, error) {
	h, without := withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed})
	if err != nil {
		return nil, err
	}
	away, err := awayOf(o, s.Today)
	if err != nil {
		return nil, err
	}
	beds, dryL, err := watering.Of(s, m, away)
	if err != nil {
		return nil, err
	}
	r := wateringResult(h, s.Today, beds, dryL, away)
	for _, site := range without {
		r.Untold = append(r.Untold, site.Name)
	}
	return r, nil
}

// longestAway is the longest time away that is reckoned with [d].
const longestAway = 60

func awayOf(o WateringOptions, now cal.Date) (*watering.Away, error) {
	switch {
	case !o.Leave.IsSet():
		return nil, nil
	case !slices.Contains(AwayEnough(), o.enough()):
		return nil, fault.New(fault.OutOfRange, "desk.away_enough", words.Args{"given": o.Enough})
	case o.Back <= o.Leave:
		return nil, fault.New(fault.Invalid, "desk.away_order", words.Args{"leave": o.Leave, "back": o.Back})
	case o.Leave < now:
		return nil, fault.New(fault.OutOfRange, "desk.away_past", words.Args{"leave": o.Leave, "today": now})
	case o.Back-now > 300 || o.Back-o.Leave > longestAway:
		return nil, fault.New(fault.OutOfRange, "desk.away_long", words.Args{"n": longestAway})
	}
	return &watering.Away{Leave: o.Leave, Back: o.Back, Odds: float64(o.enough()) / 10}, nil
}

func wateringResult(h *holding.Holding, now cal.Date, beds []watering.Bed, dryL float64, away *watering.Away) *WateringResult {
	r := &WateringResult{Today: now, CanL: usualCanL, Beds: []BedThirst{}, Untold: []string{}}
	if h.CanL > 0 {
		r.CanL, r.CanTold = h.CanL, true
	}
	at := bedsOnRoute(h)
	slices.SortStableFunc(beds, func(a, b watering.Bed) int { return cmp.Compare(at[a.Bed], at[b.Bed]) })
	if away != nil {
		r.Away = &AwayThirst{Leave: away.Leave, Back: away.Back, Enough: int(math.Round(10 * away.Odds))}
	}
	for i := range beds {
		b := thirstOf(&beds[i], now, r.CanL)
		b.tell(h, now)
		r.Beds = append(r.Beds, b)
		r.add(&b)
		if b.Wants != nil && (r.First == nil || *b.Wants < r.First.On) {
			r.First = &FirstToWant{b.Bed, b.Name, *b.Wants}
		}
	}
	r.All.DryL = max(wholeL(dryL), r.All.WeekL)
	return r
}

// add sums what is told of a bed, so that all together is what the beds are told.
func (r *WateringResult) add(b *BedThirst) {
	r.All.NowL, r.All.NowCans = tenthOf(r.All.NowL+b.NowL), r.All.NowCans+b.NowCans
	r.All.WeekL, r.All.WeekCans = tenthOf(r.All.WeekL+b.WeekL), r.All.WeekCans+b.WeekCans
	r.All.UsesL = tenthOf(r.All.UsesL + b.UsesL)
	if r.Away != nil {
		r.Away.BeforeL, r.Away.HelperL = tenthOf(r.Away.BeforeL+b.BeforeL), tenthOf(r.Away.HelperL+b.HelperL)
	}
}

func thirstOf(b *watering.Bed, now cal.Date, canL float64) BedThirst {
	return BedThirst{Bed: b.Bed, AreaM2: tenthOf(b.AreaM2), Recorded: b.Told, MissingL: wholeL(b.MissingL),
		Litres: litresOf(b, canL), Gifts: giftsOf(b, now, now+aWeekOfJobs), Wants: dateOrNone(b.Wants), WantsDry: dateOrNone(b.WantsDry),
		ReadOn: dateOrNone(b.Read), ReadMoved: tenthOf(b.ReadL),
		BeforeL: wholeL(b.BeforeL), BeforeCans: CansOf(wholeL(b.BeforeL), canL), HelperL: wholeL(b.HelperL),
		Fails: dateOrNone(b.Fails), FailsDry: dateOrNone(b.FailsDry), Rounds: b.Rounds,
		Why: WaterWhy{HeldMM: tenthOf(b.Level.HeldMM), EasyMM: tenthOf(b.Level.EasyMM), MissingMM: tenthOf(b.Level.MissingMM), Seeds: b.Seeds,
			LostL: wholeL(b.LostWeekL), RainOn: dateOrNone(b.LastRain.On), RainMM: tenthOf(b.LastRain.MM)}}
}

// Gift is the water of a bed on a day of the middle week.
type Gift struct {
	On cal.Date `json:"on"`
	L  float64  `json:"l"`
}

// giftsOf are the days on which a bed is given any, from today up to a day: one list, which
// all pages, the jobs and the prompt tell.
func giftsOf(b *watering.Bed, now, until cal.Date) []Gift {
	out := []Gift{}
	for i, l := range b.Days {
		if on := now + cal.Date(i); on < until && wholeL(l) > 0 {
			out = append(out, Gift{on, wholeL(l)})
		}
	}
	return out
}

// litresOf sums the gifts as they are told, to whole litres each, so that the sums are
// those of the sheet in hand.
func litresOf(b *watering.Bed, canL float64) Litres {
	l := Litres{NowL: wholeL(b.NowL), NowCans: CansOf(wholeL(b.NowL), canL), UsesL: wholeL(b.UsesL)}
	for _, g := range giftsOf(b, 0, aWeekOfJobs) {
		l.WeekL = tenthOf(l.WeekL + g.L)
		l.WeekCans += CansOf(g.L, canL)
	}
	l.DryL = max(wholeL(b.WeekDryL), l.WeekL)
	return l
}

// wholeL rounds litres to whole ones, those of small pots to tenths.
func wholeL(litres float64) float64 {
	if litres < 5 {
		return tenthOf(litres)
	}
	return math.Round(litres)
}

// CansOf are cans to the half, no less than the litres.
func CansOf(litres, canL float64) float64 { return math.Ceil(2*litres/canL-1e-9) / 2 }

func dateOrNone(d cal.Date) *cal.Date {
	if !d.IsSet() {
		return nil
	}
	return &d
}
