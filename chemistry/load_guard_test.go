package chemistry_test

import (
	"strings"
	"testing"

	"example.org/packcheck/chemistry"
)

// Small files that would keep the decoder busy for minutes are refused before
// they are decoded.
func TestFilesMadeToExhaustTheDecoderAreRefused(t *testing.T) {
	for _, text := range []string{
		"x = " + strings.Repeat("[", 5000) + strings.Repeat("]", 5000),
		strings.Repeat("a.", 5000) + "b = 1",
		"x = " + strings.Repeat("{a = ", 5000) + "1" + strings.Repeat("}", 5000),
	} {
		if _, err := chemistry.Builtin().Extend(strings.NewReader(text), "own.toml"); err == nil || !strings.HasPrefix(err.Error(), "own.toml:1") {
			t.Errorf("%.10s...: %v", text, err)
		}
	}
}
