package notebook

import (
	"fmt"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/words"
)

func context(t testing.TB) Context {
	t.Helper()
	b, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	beds, _, faults := ReadBeds("11 beds 6 x 1.2, tunnel 6 x 4\n2 frames 1.2 x 0.8, 4 pots 40 cm; wall border 9 x 0,8")
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	return Context{Book: b, Beds: beds, Today: cal.Of(2027, 1, 4), Plan: "main"}
}

// written shows a planting in short: bed, crop and use, method, day and area with
// how far they may be off.
func written(l Line) string {
	p := l.Planting
	if p == nil {
		return "-"
	}
	return fmt.Sprintf("%s %s %s %s %s±%d %.2f±%g", p.Bed, p.Crop, p.Use, p.Method, p.Date, p.DateWithinD, p.AreaM2, p.AreaWithin)
}

func keys(phrases []words.Phrase) string {
	var out []string
	for _, p := range phrases {
		out = append(out, strings.TrimPrefix(p.Key, "notebook."))
	}
	return strings.Join(out, " ")
}

// Lines as growers of our acquaintance write them, on 4 January 2027, with what
// they mean and what must be asked. Areas of counts follow the book's distances:
// 42 leeks at 0.15 by 0.3 m are 1.89 m2.
func TestLines(t *testing.T) {
	x := context(t)
	for _, c := range []struct{ line, want, asked string }{
		{"leeks bed 1, 42 left", "b1 leek winter plant 2026-06-20±21 1.89±0.2", ""},
		{"carrots early July, half bed 5", "b5 carrot overwintered seed 2027-07-05±5 3.60±0", ""},
		{"a row of spinach in the tunnel, early March", "t1 spinach summer seed 2027-03-05±5 1.83±0.15", ""},
		{"garlic 40 cloves October bed 3", "b3 garlic softneck set 2026-10-16±15 1.50±0.2", ""},
		{"tomatoes 6 plants tunnel mid May", "t1 tomato cover plant 2027-05-15±5 2.03±0.2", ""},
		{"3 m2 potatoes bed 2 April", "b2 potato early set 2027-04-16±15 3.00±0", ""},
		{"sow lettuce 20 March bed 4 1 m", "b4 lettuce leaf seed 2027-03-20±0 1.20±0", ""},
		{"onion sets, bed 6, half, 2027-03-25", "b6 onion sets set 2027-03-25±0 3.60±0", ""},
		{"peas, 2 rows of 3 m, bed 7, mid-April", "b7 pea table seed 2027-04-15±5 3.60±0.15", ""},
		{"Broad beans in frame 2, a third, sown 6 November", "f2 broad-bean autumn seed 2026-11-06±0 0.32±0", ""},
		{"bed 9: parsnips, 2 rows, early April", "b9 parsnip winter seed 2027-04-05±5 4.20±0.15", ""},
		{"kale bed 10 8 plants left", "b10 kale plant plant 2026-06-25±21 2.16±0.2", ""},
		{"12 leeks bed 8", "b8 leek winter plant 2026-06-20±21 0.54±0.2", "which_day"},
		{"some radish pot 2 20/3", "c2 radish summer seed 2027-03-20±0 0.03±0.5", ""},
		{"rhubarb in the wall border, 3 years old, 2 crowns", "w1 rhubarb table crown 2026-11-15±21 1.62±0.2", ""},
		{"sow celeriac 1 March bed 9, 10 plants", "b9 celeriac storage plant 2027-05-06±0 1.35±0.2", ""},
		{"winter lettuce in the tunnel, a third, sown last October", "t1 lettuce winter seed 2026-10-16±15 8.00±0", "sown_in_place"},
		{"purple sprouting broccoli bed 10, 8 plants, planted in July", "b10 sprouting-broccoli early plant 2026-07-16±15 2.88±0.2", ""},
		{"Tomato 'Cordwal' 6 plants tunnel 15/5", "t1 tomato cover plant 2027-05-15±0 2.03±0.2", ""},
		{"strawberries bed 11 planted 2024, whole bed", "b11 strawberry june plant 2024-08-15±21 7.20±0", ""},
		{"beetroot 1.5 m2 bed 3 end of April", "b3 beetroot table seed 2027-04-28±2 1.50±0", ""},
		{"courgettes: 3 plants, bed 4, 1st of June", "b4 courgette table plant 2027-06-01±0 2.43±0.2", ""},
		{"3 courgette plants bed 4 June 1", "b4 courgette table plant 2027-06-01±0 2.43±0.2", ""},
		{"runner beans 2 m of bed 5 late May", "b5 runner-bean table seed 2027-05-26±5 2.40±0", ""},
		{"sweetcorn 2 x 1.2 bed 6 25.5.", "b6 sweetcorn table seed 2027-05-25±0 2.40±0", ""},
		{"chard a 3 m row bed 7 May 10 2027", "b7 chard leaf seed 2027-05-10±0 1.14±0.15", ""},
		{"mangetout 1 row bed 8 3/25", "b8 pea mangetout seed 2027-03-25±0 3.60±0.15", ""},
		{"squash about 20 May bed 9 4 plants", "b9 courgette table plant 2027-05-20±7 3.24±0.2", ""},
		{"autumn raspberries border half", "w1 raspberry autumn crown 2026-11-20±21 3.60±0", "which_day"},
		{"asparagus bed 11, 5 years old, all of it", "b11 asparagus table crown 2026-04-05±21 7.20±0", ""},
		{"radishes bed 2 half midsummer", "b2 radish winter seed 2027-06-24±7 3.60±0", ""},
		{"garlic bed 3 half last midwinter", "b3 garlic softneck set 2026-12-21±7 3.60±0", ""},
		{"potatoes bed 2 and 3, half, April", "b2 potato early set 2027-04-16±15 3.60±0", "other_beds"},
		{"potatoes beds 2, 3, half, April", "b2 potato early set 2027-04-16±15 3.60±0", "other_beds"},
		{"potatoes beds 2,3 half April", "b2 potato early set 2027-04-16±15 3.60±0", "other_beds"},
		{"leeks beds 2, 3 and 4, 10 left", "b2 leek winter plant 2026-06-20±21 0.45±0.2", "other_beds"},
		{"lettuce frames 1, 2 half 3 April", "f1 lettuce leaf seed 2027-04-03±0 0.48±0", "other_beds"},
		{"potatoes beds 2, 3 rows of 3 m, April", "b2 potato early set 2027-04-16±15 5.40±0.15", ""},
		{"beetroot beds 2, 10 percent, 3 May", "b2 beetroot table seed 2027-05-03±0 0.72±0", ""},
		{"potatoes bed 2 and 3 rows of 3 m April", "b2 potato early set 2027-04-16±15 5.40±0.15", ""},
		{"swedes bed 2 a quarter week 21", "b2 swede winter seed 2027-05-27±3 1.80±0", ""},
		{"early potatoes bed 1 30 tubers last week of March", "b1 potato early set 2027-03-28±3 5.40±0.2", ""},
		{"garlic b3 60 cloves planted 3 weeks ago", "b3 garlic softneck set 2026-12-14±3 2.25±0.2", ""},
		{"spring onions ½ row bed 4 today", "b4 spring-onion summer seed 2027-01-04±0 0.75±0.15", ""},
		{"cucumbers under glass in the tunnel, 4 plants, in 20 weeks", "t1 cucumber cover plant 2027-05-24±3 1.80±0.2", "not_read"},
		{"parsley a few in pot 1, spring", "c1 parsley leaf seed 2027-04-15±45 0.03±0.5", ""},
		{"lamb's lettuce frame 1 late August", "f1 lambs-lettuce leaf seed 2026-08-26±5 0.96±0.3", "how_much"},
		{"pak choi bed 5 40 percent 1 August", "b5 pak-choi head seed 2027-08-01±0 2.88±0", ""},
		{"pak-choi bed 5 40 % 1 August", "b5 pak-choi head seed 2027-08-01±0 2.88±0", ""},
		{"a dozen celery plants bed 6 10 June", "b6 celery table plant 2027-06-10±0 0.90±0.2", ""},
		{"French beans bed 7 60 cm early June", "b7 french-bean dwarf seed 2027-06-05±5 0.72±0", ""},
		{"climbing french beans bed 7 60 cm early June", "b7 french-bean climbing seed 2027-06-05±5 0.72±0", ""},
		{"broad bean 50 seeds bed 3 1 March", "b3 broad-bean spring seed 2027-03-01±0 4.60±0.4", ""},
		{"leek seedlings 80 bed 2 next June", "b2 leek winter plant 2027-06-16±15 3.60±0.2", ""},
		{"carrots variety unknown bed 4 half May", "b4 carrot table seed 2027-05-16±15 3.60±0", ""},
		{"carrots Amberley bed 4 half May", "b4 carrot table seed 2027-05-16±15 3.60±0", ""},
		{"salad leaves pot 3 all March-April", "c3 lettuce leaf seed 2027-03-31±31 0.12±0", ""},
		{"cabbage bed 1 last autumn, 12 left", "b1 cabbage spring plant 2026-10-15±45 1.18±0.2", ""},
		{"cauliflower 8 plants bed 2 2 square metres 20 April", "b2 cauliflower summer plant 2027-04-20±0 2.00±0", "not_read"},
		{"turnips bed 3 6 ft 20 july", "b3 turnip storage seed 2027-07-20±0 2.19±0", ""},
		{"jerusalem artichokes border 2 m still standing", "w1 jerusalem-artichoke winter set 2026-03-15±21 1.60±0", ""},
		{"sprouts bed 8 standing", "b8 brussels-sprout early plant 2026-05-15±21 7.20±0.3", "how_much"},
		{"spinach bed 9 half next autumn", "b9 spinach overwintered seed 2027-10-15±45 3.60±0", ""},
		{"leeks bed 1 half 20 June 1999", "b1 leek winter plant 1999-06-20±0 3.60±0", "long_ago"},
		{"peas under netting bed 7 late March 1 m", "b7 pea table seed 2027-03-26±5 1.20±0", "not_read"},
		{"PEAS BED 7 LATE MARCH 1 M", "b7 pea table seed 2027-03-26±5 1.20±0", ""},
		{"- onions (from sets), bed 6: 1/2, 25th March", "b6 onion sets set 2027-03-25±0 3.60±0", ""},
		{"lettuce bed 3 50 m April", "b3 lettuce leaf seed 2027-04-16±15 7.20±0", "too_large"},
		{"potatoes bed 2 whole 31 February", "b2 potato early set 2027-02-16±15 7.20±0", "not_read"},
		{"radishes bed 3 2 rows 29/2", "b3 radish summer seed 2027-03-01±0 1.80±0.15", ""},
		{"onions bed 3 wheelbarrow 20 March half", "b3 onion sets set 2027-03-20±0 3.60±0", "not_read"},
		{"carots bed 1", "-", "crop.unknown"},
		{"leaks bed 1", "-", "crop.unknown"},
		{"beans bed 2 May", "-", "crop_several"},
		{"carrots 4 April half", "-", "which_bed"},
		{"broccoli and kale bed 2", "-", "two_crops"},
		{"kale bed 12", "-", "bed_unknown"},
		{"lettuce in the frame March", "-", "bed_several"},
		{"bed 5 empty", "-", "crop.unknown_alone"},
		{"bed 5", "-", "which_crop"},
		{"xyzzy", "-", "which_bed crop.unknown_alone"},
		{"42", "-", "which_bed which_crop not_read"},
		{strings.Repeat("leek ", 200), "-", "too_long"},
	} {
		lines := Read(c.line, x)
		if len(lines) != 1 {
			t.Errorf("%q gives %d lines", c.line, len(lines))
			continue
		}
		if got := written(lines[0]); got != c.want {
			t.Errorf("%q\n is   %s\n want %s", c.line, got, c.want)
		}
		if got := keys(lines[0].Questions); got != c.asked {
			t.Errorf("%q asks %q, want %q", c.line, got, c.asked)
		}
		if p := lines[0].Planting; p != nil && lines[0].Vague != (p.DateWithinD > 0 || p.AreaWithin > 0) {
			t.Errorf("%q: vague %v", c.line, lines[0].Vague)
		}
	}
}

// A day without a year falls to either side of today by what would still stand.
func TestYearsFollowToday(t *testing.T) {
	for _, c := range []struct {
		today      cal.Date
		line, want string
	}{
		{cal.Of(2027, 1, 4), "garlic October bed 3 half", "2026-10-16"},
		{cal.Of(2027, 9, 1), "garlic October bed 3 half", "2027-10-16"},
		{cal.Of(2027, 4, 1), "carrots 25 March bed 3 half", "2027-03-25"},
		{cal.Of(2027, 8, 1), "carrots sown 1 May bed 3 half", "2027-05-01"},
		{cal.Of(2027, 1, 4), "carrots 1 May bed 3 half", "2027-05-01"},
		{cal.Of(2027, 11, 20), "carrots 1 May bed 3 half", "2028-05-01"},
		{cal.Of(2027, 1, 4), "carrots 1 May 2026 bed 3 half", "2026-05-01"},
		{cal.Of(2027, 3, 1), "leeks June bed 3 30 left", "2026-06-16"},
		{cal.Of(2027, 3, 1), "tomatoes June bed 3 half", "2027-06-16"},
		{cal.Of(2027, 1, 4), "lettuce bed 3 half yesterday", "2027-01-03"},
	} {
		x := context(t)
		x.Today = c.today
		l := Read(c.line, x)[0]
		if l.Planting == nil || l.Planting.Date.String() != c.want {
			t.Errorf("%q on %v: %s, want %s", c.line, c.today, written(l), c.want)
		}
	}
}

// South of the line spring is in October, and the usual days lie half a year on.
func TestSouth(t *testing.T) {
	x := context(t)
	x.South = true
	for line, want := range map[string]string{
		"potatoes bed 2 half spring":        "b2 potato early set 2027-10-15±45 3.60±0",
		"radishes bed 2 half midsummer":     "b2 radish winter seed 2026-12-24±7 3.60±0",
		"tomatoes 6 plants tunnel November": "t1 tomato cover plant 2026-11-16±15 2.03±0.2",
		"leeks bed 1, 42 left":              "b1 leek winter plant 2026-12-19±21 1.89±0.2",
	} {
		if got := written(Read(line, x)[0]); got != want {
			t.Errorf("%q is %s, want %s", line, got, want)
		}
	}
}

// Every line of a notebook has an answer, ids are its own, and every phrase has a
// text.
func TestReadAnswersEveryLine(t *testing.T) {
	x := context(t)
	x.Taken = map[string]bool{"leek-26": true}
	lines := Read("leeks bed 1, 42 left\r\n\n   \nleeks bed 2 10 left\nnonsense\nleeks bed 3 10 left", x)
	ids := map[string]bool{"leek-26": true}
	if len(lines) != 4 || lines[1].Number != 5 {
		t.Fatalf("%+v", lines)
	}
	for _, l := range lines {
		if l.Planting != nil {
			if ids[l.Planting.ID] {
				t.Errorf("id %s twice", l.Planting.ID)
			}
			ids[l.Planting.ID] = true
		}
		for _, p := range append(l.Understood, l.Questions...) {
			if text := words.English().Text(p); strings.Contains(text, "{") || !words.English().Has(p.Key) {
				t.Errorf("%q: %s", l.Text, text)
			}
		}
	}
	if lines := Read("leeks", Context{Book: x.Book, Today: x.Today}); lines[0].Planting != nil || !strings.Contains(keys(lines[0].Questions), "no_beds") {
		t.Errorf("%+v", lines)
	}
}

// Whatever is written, every line that is not blank has one answer; a planting is
// one that the bed holds; and the same text is read the same way again.
func FuzzRead(f *testing.F) {
	for _, s := range []string{"leeks bed 1, 42 left", "carrots early July, half bed 5\nx", "1/2/3 4.5.6 bed x m2", "½½½ row row", "week 99 bed 1 peas",
		"in 9999999 weeks peas bed 1", "99999999999999999999 peas bed 1", "next last this week of May", "peas bed 1 0 x 0", "' \" leek'", "\xff\x00 leek", "peas bed 1 month ago", "a a a a"} {
		f.Add(s)
	}
	x := context(f)
	f.Fuzz(func(t *testing.T, text string) {
		lines := Read(text, x)
		wanted := 0
		for _, l := range strings.Split(strings.ReplaceAll(text, "\r", "\n"), "\n") {
			if strings.TrimSpace(strings.ToValidUTF8(l, "?")) != "" {
				wanted++
			}
		}
		if len(lines) != min(wanted, mostLines) {
			t.Fatalf("%d lines of %d", len(lines), wanted)
		}
		again := Read(text, x)
		for i, l := range lines {
			if written(l) != written(again[i]) || keys(l.Questions) != keys(again[i].Questions) {
				t.Fatalf("%q is read otherwise the second time", l.Text)
			}
			p := l.Planting
			if p == nil {
				if len(l.Questions) == 0 {
					t.Fatalf("%q has neither a planting nor a question", l.Text)
				}
				continue
			}
			if p.AreaM2 < 0.01 || p.AreaM2 > 40 || p.DateWithinD < 0 || p.DateWithinD > 60 || p.AreaWithin < 0 || p.AreaWithin > 0.9 || !p.Date.IsSet() {
				t.Fatalf("%q: %s", l.Text, written(l))
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	x := context(b)
	text := strings.Repeat("a row of spinach in the tunnel, early March\n", 30)
	for b.Loop() {
		Read(text, x)
	}
}
