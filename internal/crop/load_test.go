package crop

import (
	"testing"
)

func TestBookLoadsWithoutFault(t *testing.T) {
	if _, err := Load(); err != nil {
		t.Fatal(err)
	}
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := Load(); err != nil {
			b.Fatal(err)
		}
	}
}
