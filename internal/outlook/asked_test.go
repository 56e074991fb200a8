package outlook_test

import (
	"reflect"
	"testing"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/fault"
	"garner/internal/outlook"
)

// A bed behind a wall is asked for less than in full light from spring to autumn,
// one in the open for as much; its share of light counts where it is not drawn.
// What is asked in full light is the same for all beds under the same covers.
func TestAskedOfBeds(t *testing.T) {
	h := drawn()
	h.Beds[1].Light, h.Covers = 1, nil
	m := outlook.NewMemory()
	beds, err := outlook.AskedOfBeds(setting(t, h, 1), m)
	if err != nil || len(beds) != 2 || beds[0].Bed != "b1" || beds[1].Bed != "b2" {
		t.Fatalf("%v, %v", beds, err)
	}
	walled, open := beds[0], beds[1]
	for month := 3; month <= 8; month++ {
		if !(walled.MM[month] < 0.95*walled.OpenMM[month]) || walled.OpenMM[month] != open.OpenMM[month] {
			t.Errorf("month %d: %.1f mm behind the wall, %.1f in full light; %.1f beside", month+1, walled.MM[month], walled.OpenMM[month], open.OpenMM[month])
		}
		if got := open.MM[month] / open.OpenMM[month]; got < 0.98 || got > 1 {
			t.Errorf("month %d: far from the wall %.3f of what full light asks", month+1, got)
		}
	}
	if july := open.OpenMM[6]; july < 80 || july > 125 || open.OpenMM[0] > 30 {
		t.Errorf("July asks %.0f mm, January %.0f", july, open.OpenMM[0])
	}
	again, err := outlook.AskedOfBeds(setting(t, h, 1), m)
	if err != nil || !reflect.DeepEqual(again, beds) {
		t.Errorf("asked again %v, before %v (%v)", again, beds, err)
	}
	h.Beds[1].Light = 0.6
	if dim, err := outlook.AskedOfBeds(setting(t, h, 1), m); err != nil || !(dim[1].MM[6] < 0.8*open.MM[6]) {
		t.Errorf("with 0.6 of the light %v, in all %v (%v)", dim[1].MM, open.MM, err)
	}
}

// A film counts while it lies on the bed, and in full light too.
func TestAskedUnderACover(t *testing.T) {
	h := small()
	h.Beds[1].Light = 1
	h.Covers[0].Spell = cover.Spell{Kind: cover.Tunnel, On: cal.Of(2027, 4, 1), Off: cal.Of(2027, 9, 1)}
	beds, err := outlook.AskedOfBeds(setting(t, h, 1), outlook.NewMemory())
	if err != nil {
		t.Fatal(err)
	}
	open, covered := beds[0], beds[1]
	for month := range 12 {
		ratio, on := covered.OpenMM[month]/open.OpenMM[month], month >= 3 && month < 8
		if on && !(ratio > 0.5 && ratio < 0.85) || !on && ratio != 1 || covered.MM[month] != covered.OpenMM[month] {
			t.Errorf("month %d: %.2f of the open", month+1, ratio)
		}
	}
}

func TestAskedWithoutWeather(t *testing.T) {
	h := small()
	h.Sites[0].Weather = ""
	if _, err := outlook.AskedOfBeds(setting(t, h, 1), outlook.NewMemory()); fault.KindOf(err) != fault.NotFound {
		t.Errorf("%v", err)
	}
}

func BenchmarkAskedOfBeds(b *testing.B) {
	s, m := setting(b, drawn(), 1), outlook.NewMemory()
	b.ReportAllocs()
	for range b.N {
		if _, err := outlook.AskedOfBeds(s, m); err != nil {
			b.Fatal(err)
		}
	}
}
