package desk

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/words"
)

// SurplusView is what goes over of a vegetable.
type SurplusView struct {
	Vegetable, Plural string
	Weeks             []SurplusWeek // in which something worth a word does, more often than not
	First, Last       cal.Date      // the first such run: its first and last day
	Kg                float64       // in that run, in the middle year
	Crop, Use         string        // most of it is of
	Ways              []WayView     // what to do before it goes over
	Course            []float64     // mean by week of the table [kg]: the table's over
	FullKg            float64       // over all the weeks, for want of room in its store
	NoTimeKg          float64       // the same for want of time in the kitchen
	Says              words.Phrase
	Wants             []words.Phrase // what it goes over for want of
}

// SurplusWeek is what goes over in one week [kg].
type SurplusWeek struct {
	Week            cal.Date // Monday
	Poor, Mid, Good float64
	Chance          float64
}

// WayView is one thing to do with what goes over.
type WayView struct {
	Kind    string // store, preserve or give
	Method  string
	Store   string  // id; empty: none
	RoomKg  float64 // that stays free in it
	Says    words.Phrase
	Prepare []words.Phrase // how it is made ready for the store
}

// GiveWeek is what is left to give away in a week.
type GiveWeek struct {
	Week  cal.Date // Monday
	Lines []GiveLine
}

// GiveLine is one vegetable to give away [kg].
type GiveLine struct {
	Vegetable, Plural string
	Kg, Good          float64 // in the middle and in the good year
}

// likelySurplus is the chance of going over from which a week is told.
const likelySurplus = 0.5

// surplusPause is how many weeks a run of surplus may break off for.
const surplusPause = 2

// surpluses lists what goes over, the first first.
func (n *namer) surpluses(t *outlook.Table, levels []outlook.Levels) []SurplusView {
	var out []SurplusView
	for _, s := range t.Surpluses() {
		v := SurplusView{Vegetable: s.Vegetable, Plural: vegetablePlural(n.a.setting.Book, s.Vegetable), Course: s.Kg}
		for k, chance := range s.Chance {
			if week := t.From + cal.Date(7*k); chance >= likelySurplus && week+6 >= n.a.setting.Today {
				v.Weeks = append(v.Weeks, SurplusWeek{week, s.Poor[k], s.Mid[k], s.Good[k], chance})
			}
		}
		if len(v.Weeks) == 0 {
			continue
		}
		v.firstRun()
		if len(s.From) > 0 {
			v.Crop, v.Use = s.From[0].Crop, s.From[0].Use
		}
		for _, from := range s.From {
			v.FullKg += from.FullKg
			v.NoTimeKg += from.NoTimeKg
		}
		v.Wants = v.wantOf()
		v.Ways = n.ways(t, &v, levels)
		v.Says = words.P("desk.surplus_says", words.Args{"first": v.First, "weeks": int(v.Last-v.First+1) / 7, "kg": v.Kg})
		out = append(out, v)
	}
	slices.SortStableFunc(out, func(a, b SurplusView) int { return cmp.Compare(a.First, b.First) })
	return out
}

// wantOf says what goes over for want of room, and of time in the kitchen.
func (v *SurplusView) wantOf() []words.Phrase {
	var out []words.Phrase
	if v.FullKg >= outlook.WorthGiving {
		out = append(out, words.P("desk.surplus_no_room", words.Args{"kg": v.FullKg}))
	}
	if v.NoTimeKg >= outlook.WorthGiving {
		out = append(out, words.P("desk.surplus_no_time", words.Args{"kg": v.NoTimeKg}))
	}
	return out
}

// firstRun adds up the weeks that follow one another.
func (v *SurplusView) firstRun() {
	v.First = v.Weeks[0].Week
	v.Last = v.First - 1
	for _, w := range v.Weeks {
		if w.Week > v.Last+1+7*surplusPause {
			return
		}
		v.Last = w.Week + 6
		v.Kg += w.Mid
	}
}

// preserving are the methods that any household can take up.
var preserving = []string{"frozen", "dried", "bottled", "fermented"}

// ways lists what can be done before a vegetable goes over: the stores with room
// that stays free, ways of preserving that the household has no store for, and
// giving it away.
func (n *namer) ways(t *outlook.Table, v *SurplusView, levels []outlook.Levels) []WayView {
	var out []WayView
	_, u, err := useOf(n.a.setting.Book, v.Crop, v.Use)
	if err == nil {
		for i := range n.a.holding.Stores {
			if way, ok := n.storing(t, v, u, &n.a.holding.Stores[i], levels); ok {
				out = append(out, way)
			}
		}
		for _, row := range u.Storage {
			has := slices.ContainsFunc(n.a.holding.Stores, func(s larder.Store) bool { return s.Method == row.Method })
			if slices.Contains(preserving, row.Method) && !has {
				out = append(out, WayView{Kind: "preserve", Method: row.Method, Says: words.P("desk.way_preserve_"+row.Method, nil)})
			}
		}
	}
	return append(out, WayView{Kind: "give", Says: words.P("desk.way_give", nil)})
}

// storing is laying a surplus into a store in which it keeps.
func (n *namer) storing(t *outlook.Table, v *SurplusView, u *crop.Use, s *larder.Store, levels []outlook.Levels) (WayView, bool) {
	at := slices.IndexFunc(u.Storage, func(row crop.Storage) bool { return row.Method == s.Method })
	if at < 0 {
		return WayView{}, false
	}
	way := WayView{Kind: "store", Method: s.Method, Store: s.ID, RoomKg: roomLeft(t, s, v.First, levels)}
	north := len(n.a.holding.Sites) == 0 || n.a.holding.Sites[0].Location.LatitudeDeg >= 0
	args := words.Args{"store": s.Name, "kg": way.RoomKg, "weeks": int(larder.LifeDays(u.Storage[at], s.TemperatureC(v.First, north))+3) / 7}
	if s.Name == "" {
		args["store"] = s.ID
	}
	way.Says, way.Prepare = words.P("desk.way_store", args), preparingOf(n.a.setting.Book, v.Crop, &u.Storage[at])
	if way.RoomKg < leastRoom {
		way.Says, way.Prepare = words.P("desk.way_full", args), nil
	}
	return way, true
}

// leastRoom is the room worth telling [kg].
const leastRoom = 0.5

// roomLeft is the room that stays free in a store over the half year from a day,
// in nine years of ten, so that what is laid there pushes nothing out [kg].
func roomLeft(t *outlook.Table, s *larder.Store, from cal.Date, levels []outlook.Levels) float64 {
	at := slices.IndexFunc(levels, func(l outlook.Levels) bool { return l.Store == s.ID })
	if at < 0 || levels[at].Kg[8] == nil {
		return s.Holds()
	}
	high := levels[at].Kg[8]
	first := max(0, min(len(high)-1, int(from-t.From)))
	return max(0, s.Holds()-slices.Max(high[first:min(len(high), first+halfYear)]))
}

// halfYear is over how long room must stay free [d]. Judgement.
const halfYear = 182

// giveWeeks is how far ahead the list to give away reaches.
const giveWeeks = 12

// giveAway lists what is left in each of the weeks ahead.
func giveAway(v *LarderView) []GiveWeek {
	var out []GiveWeek
	for k := range giveWeeks {
		g := GiveWeek{Week: v.Today.Monday() + cal.Date(7*k)}
		for i := range v.Surplus {
			for _, w := range v.Surplus[i].Weeks {
				if w.Week == g.Week {
					g.Lines = append(g.Lines, GiveLine{v.Surplus[i].Vegetable, v.Surplus[i].Plural, w.Mid, w.Good})
				}
			}
		}
		if len(g.Lines) > 0 {
			out = append(out, g)
		}
	}
	return out
}
