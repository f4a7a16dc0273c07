package pattern_test

import (
	"testing"

	"example.org/packcheck/internal/pattern"
)

func TestAPatternIsCompiledAtItsFirstUseAndOnlyThen(t *testing.T) {
	digits := pattern.New(`^[0-9]+$`)
	if first := digits.Get(); first != digits.Get() || !first.MatchString("12") || first.MatchString("1x") {
		t.Error("compiled twice, or wrongly")
	}
	broken := pattern.New(`(`) // nobody uses it yet
	defer func() {
		if recover() == nil {
			t.Error("a pattern that does not compile passed")
		}
	}()
	broken.Get()
}
