package desk

import (
	"math"
	"testing"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/jobs"
)

// givenOnSheet are the litres of the week's sheet, by bed: its waterings, and the feed that
// goes with them and takes its litres off them.
func givenOnSheet(v *JobsView) map[string]float64 {
	out := map[string]float64{}
	for _, l := range v.Lines() {
		if l.Kind == jobs.Water {
			out[l.Stop.Bed] += l.Amount.Litres
		}
		for _, n := range l.Notes {
			if n.Key == "jobs.feed_with_water" {
				out[l.Stop.Bed] += n.Args["litres"].(float64)
			}
		}
	}
	return out
}

// The week's water is one number: the sheet's waterings, the page of water, the prompt, and
// the bed's own days add up to the same, bed by bed and in all; what is to be given today
// is what the sheet says for today. In the demo's July and in the south's January.
func TestTheWeeksWaterIsOneNumber(t *testing.T) {
	for name, h := range map[string]*holding.Holding{"july": inJuly(t), "south": southern(t)} {
		o := NewOffice(newShelf(h))
		page, err := o.WateringView(WateringOptions{})
		if err != nil {
			t.Fatal(err)
		}
		week, err := o.JobsView(JobsOptions{})
		if err != nil {
			t.Fatal(err)
		}
		prompt, err := Watering(h, WateringOptions{Leave: cal.None, Back: cal.None, Seed: pageSeed})
		if err != nil {
			t.Fatal(err)
		}
		sheet, sum, now, cans := givenOnSheet(week), 0.0, 0.0, 0.0
		for i, b := range page.Beds {
			days := 0.0
			for _, g := range b.Gifts {
				days += g.L
				if g.On < page.Today || g.On >= page.Today+7 {
					t.Errorf("%s, %s: water on %v", name, b.Name, g.On)
				}
			}
			if math.Abs(days-b.WeekL) > 0.01 || math.Abs(sheet[b.Bed]-b.WeekL) > 0.01 || prompt.Beds[i].WeekL != b.WeekL || b.DryL < b.WeekL {
				t.Errorf("%s, %s: %v L on the page, %v on its days, %v on the sheet, %v at the prompt, %v if dry", name, b.Name, b.WeekL, days, sheet[b.Bed], prompt.Beds[i].WeekL, b.DryL)
			}
			first := 0.0
			if len(b.Gifts) > 0 && b.Gifts[0].On == page.Today {
				first = b.Gifts[0].L
			}
			if first != b.NowL || len(b.Gifts) > 0 && (b.Wants == nil || *b.Wants != b.Gifts[0].On) {
				t.Errorf("%s, %s: %v L today, %v, in want on %v", name, b.Name, b.NowL, b.Gifts, b.Wants)
			}
			sum, now, cans = sum+b.WeekL, now+b.NowL, cans+b.WeekCans
		}
		if sum < 200 || name == "july" && now <= 0 || math.Abs(sum-page.All.WeekL) > 0.1 || math.Abs(now-page.All.NowL) > 0.1 || math.Abs(cans-page.All.WeekCans) > 0.01 || page.All != prompt.All {
			t.Errorf("%s: the beds ask %v L, %v today, %v cans; all together %+v, at the prompt %+v", name, sum, now, cans, page.All, prompt.All)
		}
	}
}

func inJuly(t testing.TB) *holding.Holding {
	h := sampleHolding(t)
	h.Today = cal.Of(2027, 7, 12)
	return h
}

// The page of a time away and the note for whoever comes tell the same litres of every
// bed, and their sum.
func TestTheHelpersWaterIsOneNumber(t *testing.T) {
	h := inJuly(t)
	o := NewOffice(newShelf(h))
	ask := WateringOptions{Leave: h.Today + 2, Back: h.Today + 16}
	for _, every := range []int{0, 2} {
		v, err := o.AwayView(ask, every)
		if err != nil {
			t.Fatal(err)
		}
		note := map[string]float64{}
		for _, s := range v.Rest.Round.Stops {
			note[s.Bed] += sumOf(s.Litres)
		}
		sum, before := 0.0, 0.0
		for _, b := range v.Beds {
			if math.Abs(note[b.Bed]-b.HelperDryL) > 0.06 {
				t.Errorf("every %d days, %s: %v L on the page, %v on the note", every, b.Name, b.HelperDryL, note[b.Bed])
			}
			sum, before = sum+b.HelperDryL, before+b.BeforeL
		}
		if sum <= 0 || before <= 0 || math.Abs(sum-v.Away.HelperDryL) > 0.1 || math.Abs(before-v.Away.BeforeL) > 0.1 {
			t.Errorf("every %d days: the beds %v L before and %v meanwhile, all %+v", every, before, sum, v.Away)
		}
	}
	plain, err := o.WateringView(ask)
	if err != nil || plain.Away.HelperDryL != 0 {
		t.Errorf("telling a round changed what others hold: %+v, %v", plain.Away, err)
	}
}

func southern(t testing.TB) *holding.Holding {
	t.Helper()
	h, err := Sample("south")
	if err != nil {
		t.Fatal(err)
	}
	return h
}
