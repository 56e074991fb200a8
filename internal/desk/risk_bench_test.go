package desk

import (
	"testing"
)

// BenchmarkRisk is everything at risk in the demo, without its table.
func BenchmarkRisk(b *testing.B) {
	h, err := Sample("")
	if err != nil {
		b.Fatal(err)
	}
	setting, err := settingOf(h, OutlookOptions{})
	if err != nil {
		b.Fatal(err)
	}
	a := &asked{holding: h, setting: setting}
	for b.Loop() {
		w, err := newRiskWork(a, nil)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := w.view(); err != nil {
			b.Fatal(err)
		}
	}
}
