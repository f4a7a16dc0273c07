package nesting_test

import (
	"errors"
	"testing"

	"github.com/BurntSushi/toml"

	"example.org/packcheck/internal/nesting"
)

func TestUnreadableTellsTheLineThatIsWrong(t *testing.T) {
	for _, c := range []struct {
		text string
		line int
	}{
		{"a = 1\nb = 12,5\nc = 3\n", 2},
		{"[a]\n[b\nc = 3\n", 2}, // the decoder notices it in the line after
		{"a = 1979-13-01\n", 1},
	} {
		var tree map[string]any
		_, err := toml.Decode(c.text, &tree)
		if line, message := nesting.Unreadable(err); line != c.line || message == "" {
			t.Errorf("%q: line %d, %q", c.text, line, message)
		}
	}
	if line, message := nesting.Unreadable(errors.New("torn")); line != 0 || message != "torn" {
		t.Errorf("of any other error: line %d, %q", line, message)
	}
}
