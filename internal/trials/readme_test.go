package trials_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"example.org/packcheck/report"
)

// shown finds what README.md shows: a comment that says what of, and the block
// behind it.
var shown = regexp.MustCompile("(?s)<!-- (packcheck|file) (\\S+)(.*?) -->\n```[a-z]*\n(.*?)```")

// What the README shows is what one gets. UPDATE_GOLDEN=1 writes it anew.
func TestTheREADMEShowsWhatOneGets(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	blocks := 0
	fresh := shown.ReplaceAllStringFunc(string(text), func(block string) string {
		blocks++
		m := shown.FindStringSubmatch(block)
		var got strings.Builder
		if m[1] == "file" {
			file, err := os.ReadFile(filepath.Join("../..", m[2]))
			if err != nil {
				t.Fatal(err)
			}
			got.Write(file)
		} else {
			options := report.Options{Short: strings.TrimSpace(m[3]) == "--short"}
			if err := report.Write(&got, example(t, strings.TrimPrefix(m[2], "examples/")), options); err != nil {
				t.Fatal(err)
			}
		}
		return strings.TrimSuffix(block, m[4]+"```") + got.String() + "```"
	})
	if blocks != 2 {
		t.Fatalf("%d blocks, want 2", blocks)
	}
	if fresh == string(text) {
		return
	}
	if os.Getenv("UPDATE_GOLDEN") == "" {
		t.Fatal("README.md shows something else than one gets; UPDATE_GOLDEN=1 go test ./internal/trials writes it anew")
	}
	if err := os.WriteFile("../../README.md", []byte(fresh), 0o644); err != nil {
		t.Fatal(err)
	}
}
