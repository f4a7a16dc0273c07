package chemistry_test

import (
	"testing"

	"example.org/packcheck/chemistry"
)

func TestBuiltinLoads(t *testing.T) {
	if n := chemistry.Builtin().Names(); len(n) != 6 {
		t.Errorf("names = %v", n)
	}
}
