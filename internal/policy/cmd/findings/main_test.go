package main

import (
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"

	"example.org/packcheck"
	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// root is the root of the module, seen from here.
const root = "../../../.."

// known is what the reader makes of the program, read once.
var known = sync.OnceValues(func() ([]row, error) { return rows(root) })

func TestTheTableInTheDocumentIsUpToDate(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, document))
	if err != nil {
		t.Fatal(err)
	}
	made, err := table(root)
	if err != nil {
		t.Fatal(err)
	}
	if strings.Contains(made, unknown) {
		t.Errorf("the reader does not make out a level in\n%s", made)
	}
	renewed, err := replaced(string(text), made)
	if err != nil {
		t.Fatal(err)
	}
	if renewed == string(text) {
		return
	}
	old := strings.Split(string(text), "\n")
	for line := range strings.SplitSeq(renewed, "\n") {
		if !slices.Contains(old, line) {
			t.Errorf("missing in %s: %s", document, line)
		}
	}
	t.Error("run: go run ./internal/policy/cmd/findings")
}

// The table comes from the text of the program; this comes from running it. An
// answer may tell a finding milder than it was made, never graver.
func TestWhatIsFoundStandsInTheTable(t *testing.T) {
	list, err := known()
	if err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(root, "examples", "*.toml"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no examples: %v", err)
	}
	seen := 0
	for _, name := range files {
		s, err := packcheck.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		a, err := packcheck.AssessWith(t.Context(), s, packcheck.Options{Draws: 32})
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range a.Findings {
			seen++
			i := slices.IndexFunc(list, func(r row) bool { return r.text == f.Code })
			if i < 0 || !slices.ContainsFunc(list[i].made, func(m made) bool {
				return m.item == string(f.Item) && m.change == string(f.Change) && m.level >= strconv.Itoa(int(f.Level)) &&
					(m.source == f.Source || strings.HasSuffix(m.source, "'s") || f.LimitKey != "" && strings.Contains(m.source, answer.PartRating)) // whose print somebody assumed
			}) {
				t.Errorf("%s: %s (%v, %q, %q, source %q) is not in the table", filepath.Base(name), f.Code, f.Level, f.Item, f.Change, f.Source)
			}
		}
	}
	if seen < 20 {
		t.Errorf("only %d findings in all examples: this shows little", seen)
	}
}

// The reader follows what makers do: levels set together, helpers that are given
// a finding or its address, tables that are gone through. What each package's
// own tests fire says that these rows are right.
func TestTheReaderFollowsTheMakers(t *testing.T) {
	list, err := known()
	if err != nil {
		t.Fatal(err)
	}
	for code, want := range map[string]string{
		battery.CodeTooHot:             "danger (child), danger (house), fix first (child), fix first (part)", // battery: one finding, changed by a switch
		drive.CodeLaunchOverController: "fix first (part), watch (wear)",                                      // drive: a table, and its address handed on
		charge.CodeNeverStops:          "danger (house), fix first (house), fix first (part), watch (wear)",   // charge: two results of a helper
		drive.CodeToothLoadBlocked:     "fix first (part), watch (wear)",                                      // drive: begun by one function, ended by another
		wiring.CodeWireCarries:         "watch (wear), fine (wear)",                                           // wiring: a level that a helper gives
		judge.CodeCellsAssumed:         "fix first (house), watch (house)",                                    // judge
		cutoff.CodeWeakCellReversed:    "danger (house), fix first (part)",                                    // cutoff
		cutoff.CodeIdleMonth:           "watch (wear)",                                                        // cutoff
	} {
		i := slices.IndexFunc(list, func(r row) bool { return r.text == code })
		if i < 0 || list[i].levels() != want {
			t.Errorf("%s: want %s, got %s", code, want, levelsAt(list, i))
		}
	}
}

func levelsAt(list []row, i int) string {
	if i < 0 {
		return "no row"
	}
	return list[i].levels()
}
