package desk

import (
	"reflect"
	"slices"

	"garner/internal/cal"
	"garner/internal/words"
)

// FrostHot is one matter of heat, with all the beds and sowings that it is about.
type FrostHot struct {
	Rule   string
	Name   words.Phrase
	Does   words.Phrase // what growers do about it
	Source string
	From   cal.Date // the first day on which it may be too hot, or of the first sowing
	At     []FrostHotAt
}

// FrostHotAt is what is too hot at a bed, or at several of which the same is to be told.
type FrostHotAt struct {
	Beds []FrostHotBed
	Says []words.Phrase // dates to be sharpened
}

// FrostHotBed is a bed, or a planting where a sowing is concerned.
type FrostHotBed struct{ ID, Name string }

// Hot gathers what is too hot by its rules, in the order of their first days, sowings
// after what stands.
func (r *FrostResult) Hot() (standing, sown []FrostHot) {
	for i := range r.Heat {
		h := &r.Heat[i]
		standing = gatherHot(standing, FrostHot{Rule: h.Rule, Does: h.Does, Source: h.Source, From: h.Days[0].Date}, FrostHotBed{h.Bed, h.Name}, h.Says)
	}
	for i := range r.Sowings {
		s := &r.Sowings[i]
		sown = gatherHot(sown, FrostHot{Rule: s.Rule, Does: s.Does, Source: s.Source, From: s.On}, FrostHotBed{s.Planting, s.Name}, s.Says)
	}
	for _, list := range [][]FrostHot{standing, sown} {
		slices.SortStableFunc(list, func(a, b FrostHot) int { return int(a.From - b.From) })
	}
	return standing, sown
}

// gatherHot adds a bed to the matter that it is about, beside beds of which the same is
// to be told.
func gatherHot(list []FrostHot, of FrostHot, bed FrostHotBed, says []words.Phrase) []FrostHot {
	at := slices.IndexFunc(list, func(h FrostHot) bool { return h.Rule == of.Rule })
	if at < 0 {
		of.Name = words.P("desk.frost_hot_"+of.Rule, nil)
		at, list = len(list), append(list, of)
	}
	h := &list[at]
	h.From = min(h.From, of.From)
	for k := range h.At {
		if reflect.DeepEqual(h.At[k].Says, says) {
			h.At[k].Beds = append(h.At[k].Beds, bed)
			return list
		}
	}
	h.At = append(h.At, FrostHotAt{[]FrostHotBed{bed}, says})
	return list
}
