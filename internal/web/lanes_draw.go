package web

import (
	"hash/fnv"
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/draw"
	"garner/internal/place"
	"garner/internal/words"
)

// Widths of the drawings of the ground [px].
const (
	planWidth  = 944.0
	planHeight = 570.0
	planPhone  = 358.0
	rowsWidth  = 660.0 // of beds without a plan
	lanesWidth = 1240.0
	bedHeight  = 46.0
)

// plan draws the site on its day, as wide as there is room.
func (s *groundShown) plan(width float64) string {
	o := draw.PlanOptions{WidthPX: width, HeightPX: planHeight, Label: s.say("web.lanes_plan_label", words.Args{"site": s.view.Site.Name, "day": planned(s.day, s.view.Today)}),
		Day: s.day, Selected: s.at.bed, Tried: s.touched, Free: s.say("web.lanes_free", nil), Names: heldNames,
		BedNames: bedNames,
		Bed: func(b *desk.BedYear) (string, string) {
			return s.say("web.lanes_bed_label", words.Args{"bed": b.Name, "what": s.standsWords(b)}), s.at.withBed(b.ID).path()
		},
		Feature: s.featureNames, InLeaf: s.inLeaf, Metres: func(m float64) string { return s.say("web.lanes_metres", words.Args{"n": m}) }, North: s.say("web.lanes_north", nil),
		Percent: s.words.Format().Percent}
	if s.view.Drawn {
		o.Light = s.light
	} else {
		o.WidthPX = min(width, rowsWidth)
	}
	byBed := map[*desk.HeldGround]*desk.BedYear{}
	for _, b := range s.view.Beds {
		for i := range b.Held {
			byBed[&b.Held[i]] = b
		}
	}
	o.Until = func(h *desk.HeldGround) []string { return s.untilWords(byBed[h], h) }
	return draw.Plan(s.view, o)
}

// bedNames are a bed's names on a plan, the longest first. A bed that is numbered is
// told by its number, where there is little room "Frame, left" by its last word.
func bedNames(b *desk.BedYear) []string {
	name := b.Name
	if name == "" {
		name = b.ID
	}
	at := strings.LastIndexByte(name, ' ')
	if at > 0 && leadingDigits(name[at+1:]) > 0 {
		return []string{name[at+1:]}
	}
	if at := strings.LastIndex(name, ", "); at > 0 {
		return []string{name, name[at+2:]}
	}
	return []string{name}
}

// standsWords name what stands in a bed on the day.
func (s *groundShown) standsWords(b *desk.BedYear) string {
	var out []string
	for i := range b.Held {
		if h := &b.Held[i]; h.HoldsOn(s.day) {
			out = append(out, h.Name)
		}
	}
	if share, _ := b.FreeOn(s.day); share > leastFreeTold || len(out) == 0 {
		out = append(out, s.say("web.lanes_free", nil))
	}
	return strings.Join(out, ", ")
}

// featureNames name what stands round the beds, the longest first.
func (s *groundShown) featureNames(f *place.Feature) []string {
	name := f.Name
	if name == "" {
		name = string(f.Kind)
	}
	switch {
	case f.Kind == place.DeciduousTree:
		state := "web.lanes_bare"
		if s.inLeaf(f) {
			state = "web.lanes_in_leaf"
		}
		return []string{s.say(state, words.Args{"name": name}), name}
	case f.HeightM > 0:
		return []string{s.say("web.lanes_feature", words.Args{"name": name, "height": f.HeightM}), name}
	}
	return []string{name}
}

// inLeaf tells whether a tree has its leaves in the month of the day.
func (s *groundShown) inLeaf(f *place.Feature) bool {
	for i := range s.light.Features {
		if l := &s.light.Features[i]; l.ID == f.ID {
			return !l.Bare
		}
	}
	return true
}

func (s *groundShown) scale() draw.Scale {
	return draw.Scale{From: s.view.From, Days: 7 * s.view.Weeks, WidthPX: lanesWidth}
}

// axis draws the months over the beds and the line of the plan's date.
func (s *groundShown) axis() (axis, line string) {
	texts := s.axisTexts("", false)
	o := draw.DateLineOptions{Label: s.say("web.lanes_axis", nil), Months: texts.Months, Year: texts.Year, At: s.day, Today: s.view.Today,
		Slider: s.say("web.lanes_date_line", nil), AtText: s.words.Text(planned(s.day, s.view.Today)), AtName: s.dayWords(s.day),
		Month: func(first cal.Date) (string, string) {
			return s.say("web.lanes_plan_on", words.Args{"day": planned(first, s.view.Today)}), s.at.onDay(first).path()
		}}
	return draw.DateAxis(s.scale(), o), draw.DateLine(s.scale(), o)
}

// The height at which the thinnest part of a bed can still carry a name, and the
// most that a bed may take for it [px].
const (
	namedPart     = 12.0
	tallestHeight = 80.0
)

// laneThickness is how thick a bed's lane is: more where it is held in small parts.
func laneThickness(b *desk.BedYear) float64 {
	height := bedHeight
	for i := range b.Held {
		if h := &b.Held[i]; h.Share > 0 && !h.Leans() {
			height = max(height, namedPart/h.Share)
		}
	}
	return min(height, tallestHeight)
}

// laneRow draws a bed's year.
func (s *groundShown) laneRow(b *desk.BedYear) laneRow {
	chosen := b.ID == s.at.bed
	r := laneRow{ID: b.ID, Name: b.Name, Path: s.at.withBed(b.ID).path(), Chosen: chosen}
	for i := range b.Covers {
		if c := &b.Covers[i]; c.On < s.view.From && !c.Off.IsSet() {
			r.Under = s.coverWords(c)
		}
	}
	r.Draw = draw.BedLane(b, s.scale(), draw.BedLaneOptions{HeightPX: laneThickness(b), Tried: s.touched, Tab: chosen, StepM2: areaStep(b),
		Label: s.say("web.lanes_lane_label", words.Args{"bed": b.Name, "text": s.bedYearWords(b)}),
		Names: heldNames, Title: func(h *desk.HeldGround) string { return capital(s.heldWords(h)) }, Free: s.freeWords, Cover: s.coverWords,
		Ring: func(h *desk.HeldGround) (string, string) {
			return s.say("web.lanes_ring", words.Args{"name": h.Name, "bed": b.Name}), s.words.Text(planned(h.Date, s.view.Today))
		}})
	r.Key = laneKey(&r)
	r.Same = slices.Contains(s.have, r.Key)
	return r
}

// haveHeader names what is on the screen already and need not be sent.
const haveHeader = "X-Have"

func laneKey(r *laneRow) string {
	h := fnv.New64a()
	for _, text := range []string{r.ID, r.Name, r.Under, strconv.FormatBool(r.Chosen), r.Draw} {
		_, _ = h.Write([]byte(text + "\x00")) // a hash takes everything
	}
	return strconv.FormatUint(h.Sum64(), 36)
}

func (s *groundShown) coverWords(c *desk.CoverTime) string {
	return s.named("desk.value_covers.kind.", c.Kind)
}
