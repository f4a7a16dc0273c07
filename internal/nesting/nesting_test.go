package nesting_test

import (
	"strings"
	"testing"

	"example.org/packcheck/internal/nesting"
)

var few = nesting.Bounds{Depth: 3, KeyParts: 4, Values: 6}

func TestCheckFindsWhatIsTooMuch(t *testing.T) {
	for _, c := range []struct {
		name, text string
		line       int // 0 = nothing is wrong
	}{
		{"plain", "a = 1\n[b]\nc = \"x\"\n", 0},
		{"as deep as allowed", "a = [[[1]]]\n", 0},
		{"too deep", "a = 1\nb = [[[[1]]]]\n", 2},
		{"inline tables count", "a = {b = {c = {d = {e = 1}}}}\n", 1},
		{"closing counts back", "a = [[1], [2], [3]]\n", 0},
		{"a long dotted key", "x = 1\na.b.c.d.e = 1\n", 2},
		{"a decimal point is no long key", "a = 1.5\nb = 2.5\n", 0},
		{"too many values", "a = [1, 2, 3, 4, 5, 6, 7]\n", 1},
		{"strings do not count", "a = \"[[[[[\"\nb = '{{{{{'\nc = \"\"\"\n[[[[[\n\"\"\"\n", 0},
		{"nor do escaped quotes end them", `a = "\"[[[[["` + "\n", 0},
		{"comments do not count", "# [[[[[[ \"\na = 1\n", 0},
		{"an open string ends with its line", "a = \"x\nb = [[[[1]]]]\n", 2},
		{"lines within strings are counted", "a = '''\n\n\n'''\nb = [[[[1]]]]\n", 5},
		{"nothing", "", 0},
	} {
		problem, line := nesting.Check(c.text, few)
		if line != c.line || (problem != "") != (c.line > 0) {
			t.Errorf("%s: %q in line %d, want line %d", c.name, problem, line, c.line)
		}
	}
}

func TestCheckIsQuickWithHugeTexts(t *testing.T) {
	big := nesting.Bounds{Depth: 1 << 30, KeyParts: 1 << 30}
	for _, text := range []string{strings.Repeat("[", 1<<20), strings.Repeat("a.", 1<<19), strings.Repeat("\"", 1<<20)} {
		if problem, _ := nesting.Check(text, big); problem != "" {
			t.Errorf("%.10s...: %s", text, problem)
		}
	}
}

func FuzzCheck(f *testing.F) {
	f.Add("a = [1]\n[b.c]\nd = \"x\" # y")
	f.Add("a = \"\"\"\"\"\"\"\"")
	f.Fuzz(func(t *testing.T, text string) {
		problem, line := nesting.Check(text, few)
		if line < 0 || line > strings.Count(text, "\n")+1 || (problem == "") != (line == 0) {
			t.Errorf("%q in line %d", problem, line)
		}
	})
}
