package leftout

import "testing"

// Whatever the files hold, they are read or refused.
func FuzzReadFits(f *testing.F) {
	f.Add(freeFile, foldsFile[:2000])
	f.Add([]byte("scope,name\n"), []byte("left_out,digest,scope,name,parameter,value\nx,y,class,hardy,soil_minimum_c,\n"))
	f.Fuzz(func(t *testing.T, free, folds []byte) {
		numbers, err := readFree(free)
		if err != nil {
			return
		}
		kept, err := readFolds(folds, numbers)
		if err != nil {
			return
		}
		for _, fold := range kept {
			if len(fold.Values) != len(numbers) {
				t.Errorf("%d values of %d numbers", len(fold.Values), len(numbers))
			}
		}
	})
}
