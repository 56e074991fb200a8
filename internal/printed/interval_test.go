package printed

import (
	"slices"
	"testing"
)

// What a row says follows the reading that the planting dates' own notes give:
// common practice of the tables, no other source.
func TestClaimsFollowTheSeasonAndThePrecision(t *testing.T) {
	home, standIn := &Region{}, &Region{StandIn: true}
	for _, c := range []struct {
		name   string
		date   Date
		region *Region
		want   []claim
	}{
		{"spring", Date{Start: 100, End: 130, Season: "spring", Precision: "half-month"}, home, []claim{{"first", 100, 114, true}}},
		{"autumn", Date{Start: 200, End: 240, Season: "fall", Precision: "day"}, home, []claim{{"last", 240, 240, true}}},
		{"autumn of a stand-in", Date{Start: 200, End: 240, Season: "fall", Precision: "day"}, standIn, []claim{{"last", 230, 250, true}}},
		{"all season", Date{Start: 100, End: 240, Season: "all", Precision: "start day, end month"}, home, []claim{{"first", 100, 100, true}, {"last", 210, 240, true}}},
		{"after the heat", Date{Start: 270, End: 30, Season: "fall-winter", Precision: "10 days"}, home, []claim{{"last", 21, 30, true}, {"first", 270, 279, false}}},
		{"kept for store", Date{Crop: "cabbage, storage", Start: 150, End: 170, Season: "all", Precision: "day"}, home, []claim{{"last", 170, 170, true}}},
		{"no limit", Date{Start: 150, Season: "spring", Text: "usual time, not the season limits"}, home, []claim{{"inside", 150, 150, true}}},
		{"earliest dates of a zone", Date{Start: 80, End: 120, Season: "spring", Precision: "day", Text: "range of EARLIEST safe dates"}, home, []claim{{"first", 80, 120, true}}},
		{"unknown precision", Date{Start: 360, Season: "spring", Precision: "about"}, home, []claim{{"first", 360, 9, true}}},
		{"says nothing", Date{Start: 100, Season: "fall"}, home, nil},
	} {
		if got := claims(&c.date, c.region); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// The distance is nought inside, signed outside, and goes round the new year.
func TestOutsideGoesRoundTheYear(t *testing.T) {
	for _, c := range []struct{ from, to, day, want int }{
		{100, 120, 110, 0}, {100, 120, 90, -10}, {100, 120, 125, 5},
		{350, 10, 365, 0}, {350, 10, 5, 0}, {350, 10, 340, -10}, {350, 10, 20, 10},
		{100, 100, 282, -183 + 365}, {5, 5, 360, -10},
	} {
		if got := outside(c.from, c.to, c.day); got != c.want {
			t.Errorf("outside(%d, %d, %d) = %d, want %d", c.from, c.to, c.day, got, c.want)
		}
	}
	for from := 1; from <= 365; from += 7 {
		for to := 1; to <= 365; to += 11 {
			for day := 1; day <= 365; day += 5 {
				if d := outside(from, to, day); abs(d) > 182 {
					t.Fatalf("outside(%d, %d, %d) = %d: further than half a year", from, to, day, d)
				}
			}
		}
	}
}

func TestTallyCountsWhatHasNoAnswerAsFar(t *testing.T) {
	d := &Date{Region: "here"}
	rows := []Row{
		{Date: d, End: "first", Counted: true, Group: "roots", Answer: true, Off: -3},
		{Date: d, End: "first", Counted: true, Group: "roots", Answer: true, Off: 21},
		{Date: d, End: "last", Counted: true, Group: "leaves", Answer: true, Off: 30},
		{Date: d, End: "last", Counted: true, Group: "leaves"},
		{Date: d, End: "first", Counted: false, Group: "leaves", Answer: true, Off: 99},
	}
	got := TalliesOf(rows)
	if want := (Tally{Dates: 4, Missed: 1, Median: 30, Mean: 18, Agree: 0.5, BiasDays: 16}); got.All != want {
		t.Errorf("all: %+v, want %+v", got.All, want)
	}
	if len(got.Ends) != 2 || got.Ends[0].Name != "first" || got.Ends[0].Agree != 1 || got.Ends[1].Missed != 1 {
		t.Errorf("ends: %+v", got.Ends)
	}
	if len(got.Regions) != 1 || len(got.Groups) != 2 {
		t.Errorf("regions %+v, groups %+v", got.Regions, got.Groups)
	}
}
