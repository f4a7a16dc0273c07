package later_test

import (
	"sync"
	"testing"

	"example.org/packcheck/internal/later"
)

func TestAValueIsMadeAtItsFirstUseAndOnlyThen(t *testing.T) {
	made := 0
	v := later.Value[*int]{Make: func() *int { made++; return new(int) }}
	if made != 0 {
		t.Fatal("made before anybody asked")
	}
	got := make([]*int, 8)
	var all sync.WaitGroup
	for i := range got {
		all.Go(func() { got[i] = v.Get() })
	}
	all.Wait()
	for _, p := range got {
		if p == nil || p != got[0] {
			t.Errorf("%p after %p: want one value for all", p, got[0])
		}
	}
	if made != 1 {
		t.Errorf("made %d times", made)
	}
}
