package desk_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/place"
	"garner/internal/words"
)

func bedView(t *testing.T, o *desk.Office, id string) *desk.BedView {
	t.Helper()
	v, err := o.BedView(id)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func told(phrases []words.Phrase) string {
	var lines []string
	for _, p := range phrases {
		lines = append(lines, words.English().Text(p))
	}
	return strings.Join(lines, "\n")
}

func save(t *testing.T, o *desk.Office, entry, table, id string, cells map[string]string) {
	t.Helper()
	base := int64(0)
	if id != "" {
		row, err := o.Row(table, id)
		if err != nil {
			t.Fatal(err)
		}
		base = row.Version
	}
	if _, err := o.Save(by(entry), table, id, cells, base); err != nil {
		t.Fatal(err)
	}
}

// Winter cabbages stand in Home 3 until spring 2027; kale after them is told,
// until the bed is silenced; a recorded disease is told all the same.
func TestRotationIsToldOnTheBed(t *testing.T) {
	o := sampleOffice(t)
	save(t, o, "kale too soon", "plantings", "", map[string]string{"plan": "p2027", "bed": "h3", "crop": "kale", "method": "plant", "date": "2028-06-20", "area_m2": "1"})
	clash := func() string {
		var lines []string
		for _, c := range bedView(t, o, "h3").Clashes {
			lines = append(lines, words.English().Text(c.Phrase))
		}
		return strings.Join(lines, "\n")
	}
	if got := clash(); !strings.Contains(got, "Cabbages stood here in 2026. Blackleg asks for four years between crops of the cabbage family: next from 2030.") {
		t.Errorf("kale after cabbages: %q", got)
	}
	save(t, o, "silence the bed", "beds", "h3", map[string]string{"rotation": "silent"})
	if v := bedView(t, o, "h3"); !v.Silent || len(v.Clashes)+len(v.Waits) != 0 {
		t.Errorf("silent: %+v", v.Clashes)
	}
	save(t, o, "clubroot", "records", "", map[string]string{"date": "2026-12-01", "what": "disease", "bed": "h3", "problem": "clubroot"})
	v := bedView(t, o, "h3")
	if got := clash(); !strings.Contains(got, "Clubroot was seen here in 2026 and stays in the ground for seven years.") {
		t.Errorf("clubroot: %q", got)
	}
	if len(v.Diseases) != 1 || v.Diseases[0].Name != "clubroot" {
		t.Errorf("%+v", v.Diseases)
	}
}

// What is recorded of the soil is told, and no longer due.
func TestSoilIsToldOnTheBed(t *testing.T) {
	o := sampleOffice(t)
	// Home 10 is 5 by 1.2 m: 180 to 300 L, at 90 L two to three barrows.
	if got := told(bedView(t, o, "h10").Soil.Due); !strings.Contains(got, "180 L to 300 L or 2 to 3 barrows of 90 L") {
		t.Errorf("due %q", got)
	}
	save(t, o, "compost", "records", "", map[string]string{"date": "2027-01-03", "what": "composted", "bed": "h10", "value": "3", "unit": "barrows"})
	save(t, o, "manure", "records", "", map[string]string{"date": "2027-01-02", "what": "manured", "bed": "h10"})
	v := bedView(t, o, "h10")
	if strings.Contains(told(v.Soil.Due), "Compost") || !strings.Contains(told(v.Soil.Last), "compost was spread on 3 January 2027, 270 L") {
		t.Errorf("last %q, due %q", told(v.Soil.Last), told(v.Soil.Due))
	}
	if !strings.Contains(told(v.Soil.Cautions), "until 2 May 2027") { // 120 days, 7 CFR 205.203
		t.Errorf("cautions %q", told(v.Soil.Cautions))
	}
}

// Green manures are offered for ground that is free, but none that clashes: no
// mustard in the winter before brassicas.
func TestBareGroundIsOfferedWhatSuits(t *testing.T) {
	o := sampleOffice(t)
	if free := bedView(t, o, "h10").Soil.Free; len(free) > 0 {
		t.Errorf("before there is a table it is told what is free: %+v", free)
	}
	if _, err := o.TableView(nil); err != nil {
		t.Fatal(err)
	}
	var all []string
	for _, b := range []string{"h10", "s1", "s3"} {
		for _, f := range bedView(t, o, b).Soil.Free {
			all = append(all, told(f.Offers))
			if b == "s3" && strings.Contains(told(f.Offers), "mustard") {
				t.Errorf("mustard before the brassicas of Row 3: %s", told(f.Offers))
			}
		}
	}
	if got := strings.Join(all, "\n"); !strings.Contains(got, "Sow phacelia between") || !strings.Contains(got, "Lay a sheet") || !strings.Contains(got, "Mulch it") {
		t.Errorf("%s", got)
	}
}

// What is told as bare on a bed's page is ground of the page of free ground: the
// same area from the same day.
func TestBareGroundIsTheFreeGround(t *testing.T) {
	o := sampleOffice(t)
	if _, err := o.TableView(nil); err != nil {
		t.Fatal(err)
	}
	space, err := o.SpaceView(desk.SpaceQuery{From: cal.None, Until: cal.None}, nil)
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, b := range space.Beds {
		for _, bare := range bedView(t, o, b.ID).Soil.Free {
			told++
			if !slices.ContainsFunc(space.Free, func(f desk.FreeSpace) bool {
				return f.Bed == b.ID && f.AreaM2 == bare.Says.Args["area"] && f.From.P50 == bare.Says.Args["from"] &&
					(f.Open || f.Until == bare.Says.Args["until"])
			}) {
				t.Errorf("%s: %v is no free ground", b.ID, bare.Says.Args)
			}
		}
	}
	if told < 10 {
		t.Errorf("only %d pieces of bare ground", told)
	}
}

// Taking the film off parts a spell in one entry that can be taken back; days
// that cannot be are refused beside their field.
func TestAFilmIsTakenOffAndPutOnAgain(t *testing.T) {
	o := sampleOffice(t)
	start := export(t, o)
	row, err := o.Row("covers", "h1-low")
	if err != nil {
		t.Fatal(err)
	}
	before := coversOver(t, o, "h1")
	off, on := cal.Of(2027, 4, 10), cal.Of(2027, 4, 20)
	for _, w := range []struct {
		off, on cal.Date
		column  string
	}{{cal.None, cal.None, "off"}, {cal.Of(2027, 3, 22), cal.None, "off"}, {cal.Of(2027, 5, 10), cal.None, "off"}, {off, off, "on"}, {off, cal.Of(2027, 5, 10), "on"}} {
		_, err := o.TakeOff(by("impossible"), "h1-low", w.off, w.on, row.Version)
		list, ok := err.(fault.List)
		if !ok || len(list) != 1 || list[0].At.Column != w.column {
			t.Errorf("off %s, on %s: %v", w.off, w.on, err)
		}
	}
	if _, err := o.TakeOff(by("film off"), "h1-low", off, on, row.Version); err != nil {
		t.Fatal(err)
	}
	want := before[0].Spell
	first, second := want, want
	first.Off, second.On = off, on
	after := coversOver(t, o, "h1")
	if len(after) != 2 || after[0].Spell != first || after[1].Spell != second {
		t.Errorf("%+v became %+v", before, after)
	}
	if _, err := o.TakeOff(by("film off twice"), "h1-low", off-3, cal.None, row.Version); err == nil {
		t.Error("a row that has moved was written over")
	}
	if _, err := o.Undo(by("undo film off"), by("film off").Entry); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(start, export(t, o)) {
		t.Error("taken back, the holding is not what it was")
	}
}

func coversOver(t *testing.T, o *desk.Office, bed string) []place.CoverSpell {
	t.Helper()
	h, err := o.Holding()
	if err != nil {
		t.Fatal(err)
	}
	var out []place.CoverSpell
	for _, c := range h.Covers {
		if c.Bed == bed {
			out = append(out, c)
		}
	}
	slices.SortFunc(out, func(a, b place.CoverSpell) int { return int(a.On - b.On) })
	return out
}

// What a cover does for a crop is what two whole tables differ by.
func TestWhatACoverDoesIsTheDifferenceOfTwoTables(t *testing.T) {
	o := sampleOffice(t)
	if _, err := o.TableView(nil); err != nil {
		t.Fatal(err)
	}
	needs, err := o.CoverNeeds("t1-skin")
	if err != nil || len(needs) == 0 {
		t.Fatal(needs, err)
	}
	with := plantingsOf(t, o, needs)
	row, err := o.Row("covers", "t1-skin")
	if err != nil {
		t.Fatal(err)
	}
	if _, err := o.Remove(by("no skin"), "covers", "t1-skin", row.Version, false); err != nil {
		t.Fatal(err)
	}
	without := plantingsOf(t, o, needs)
	helped := 0
	for id, need := range needs {
		if math.Abs(need.With-(1-with[id].Fails)) > 1e-9 || math.Abs(need.Without-(1-without[id].Fails)) > 1e-9 {
			t.Errorf("%s: %+v, tables say %v and %v", id, need, 1-with[id].Fails, 1-without[id].Fails)
		}
		if need.With > need.Without {
			helped++
		}
	}
	if helped == 0 {
		t.Error("the tunnel helps no crop")
	}
}

func plantingsOf(t *testing.T, o *desk.Office, ids map[string]desk.CoverNeed) map[string]desk.PlantingLine {
	t.Helper()
	out := map[string]desk.PlantingLine{}
	for id := range ids {
		v, err := o.PlantingView(id, nil)
		if err != nil {
			t.Fatal(err)
		}
		out[id] = v.PlantingLine
	}
	return out
}

// The demo lays out no more than there is; a third mesh in summer is one too
// many, and its hoops, on the bed's page and that of the covers.
func TestCoversAreAStock(t *testing.T) {
	o := sampleOffice(t)
	gear, err := o.GearView()
	if err != nil || len(gear.Short) != 0 {
		t.Fatalf("the demo is short: %s %v", told(gear.Short), err)
	}
	at := slices.IndexFunc(gear.Gear, func(g desk.GearLine) bool { return g.ID == "mesh" })
	if g := gear.Gear[at]; len(g.Uses) != 2 || g.Out != 0 {
		t.Errorf("mesh %+v", g)
	}
	save(t, o, "third mesh", "covers", "", map[string]string{"bed": "s4", "kind": string(cover.Mesh), "on": "2027-08-01", "off": "2027-09-01"})
	if gear, err = o.GearView(); err != nil {
		t.Fatal(err)
	}
	want := "From 1 August 2027, two pieces of mesh are out and one more is wanted for Row 4.\nFrom 1 August 2027, 22 hoops are out and three more are wanted for Row 4."
	if got := told(gear.Short); got != want {
		t.Errorf("%q", got)
	}
	v := bedView(t, o, "s4")
	if last := v.Covers[len(v.Covers)-1]; told(last.Short) != want {
		t.Errorf("on the bed: %q", told(last.Short))
	}
}

func TestSeedOnHandIsTold(t *testing.T) {
	o := sampleOffice(t)
	lots, err := o.OnHandView()
	if err != nil {
		t.Fatal(err)
	}
	at := slices.IndexFunc(lots, func(l desk.LotView) bool { return l.ID == "beet" })
	if at < 0 || lots[at].EnoughM2 <= 0 || lots[at].GoodTo <= 2025 || lots[at].Old {
		t.Errorf("%+v", lots)
	}
	save(t, o, "old parsnips", "onhand", "", map[string]string{"form": "seed", "crop": "parsnip", "amount": "5", "unit": "g", "since": "2023-09-01"})
	if lots, err = o.OnHandView(); err != nil {
		t.Fatal(err)
	}
	at = slices.IndexFunc(lots, func(l desk.LotView) bool { return l.Crop == "parsnip" })
	if !lots[at].Old { // parsnip seed keeps a year or two (common practice)
		t.Errorf("%+v", lots[at])
	}
}
