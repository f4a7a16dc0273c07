package policy_test

import (
	"go/ast"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/internal/policy"
)

// rows is the house plan, lowest row first. A package may import packages of
// lower rows, never one of its own.
var rows = map[string]int{
	"answer":           0, // what an answer is; no logic
	"fault":            0, // what is wrong in a file
	"internal/nesting": 0,
	"internal/rows":    0,
	"internal/literal": 0,
	"internal/pattern": 0,
	"internal/later":   0,
	"internal/policy":  0,

	"internal/draws": 1, // the mathematics of draws, roots and bent branches
	"internal/solve": 0,
	"internal/bend":  0,

	"internal/portable": 0, // the same bits on every processor

	"internal/findingtest": 1, // what a finding owes, for tests
	"internal/browsertest": 0, // starts a browser, for tests

	"chemistry":         1,
	"tables":            1,
	"internal/quantity": 1,

	"battery": 2,
	"drive":   2,
	"wiring":  2,
	"report":  2, // beside the physics: it sees nothing but the answer

	"charge":           3,
	"cutoff":           3,
	"internal/cellfit": 3,

	"setup":         4,
	"internal/ride": 4,

	"internal/interview": 5, // what to ask, and what the answers fill in

	"internal/build":  5, // parts and one draw to a case
	"internal/judge":  6, // one case to its findings
	"ask":             6, // one question to its answer
	"internal/reckon": 7, // all draws to an answer

	".":             8,
	"internal/page": 8, // the same, for a browser
}

// commands is the row of every program.
const commands = 9

// alone know nothing of this module: each can be read by itself.
var alone = []string{"answer", "fault", "internal/nesting", "internal/rows", "internal/literal", "internal/pattern", "internal/later", "internal/policy", "internal/browsertest", "internal/solve", "internal/bend", "internal/portable"}

// sees says what a package may import at most, where its row alone says too little.
var sees = map[string][]string{
	"report":         {"answer", "internal/quantity", "internal/later"},
	"internal/draws": {"internal/portable"}, // numbers alone
	".":              {"answer", "setup", "internal/reckon"},
	"internal/ride":  {"battery", "cutoff", "drive", "wiring", "internal/solve", "internal/portable"}, // numbers in time: no keys, no findings
}

func TestImportsPointDownwards(t *testing.T) {
	planned := map[string]bool{}
	for _, s := range packages(t) {
		planned[s.dir] = true
		row, ok := rows[s.dir]
		if isCommand(s) {
			row, ok = commands, true
		}
		if !ok {
			t.Errorf("%s has no row in the plan; give it one in this test", s.dir)
			continue
		}
		for _, dir := range ours(t, s) {
			if other, ok := rows[dir]; !ok || other >= row {
				t.Errorf("%s imports %s, which is not in a lower row", s.dir, dir)
			}
			if most, limited := sees[s.dir]; slices.Contains(alone, s.dir) || limited && !slices.Contains(most, dir) {
				t.Errorf("%s imports %s: it may see %q of this module at most", s.dir, dir, most)
			}
		}
	}
	for dir := range rows {
		if !planned[dir] {
			t.Errorf("the plan has a row for %s, which is no package", dir)
		}
	}
}

// mostFloors is how many packages may stand on one another.
const mostFloors = 10

func TestTheHouseHasFewFloors(t *testing.T) {
	imports := map[string][]string{}
	for _, s := range packages(t) {
		imports[s.dir] = ours(t, s)
	}
	tallest := tower(imports)
	if len(tallest) > mostFloors {
		t.Errorf("%d floors, want at most %d: %s", len(tallest), mostFloors, strings.Join(tallest, " on "))
	}
	if len(tallest) < 5 {
		t.Errorf("only %d floors: the test looks in the wrong place", len(tallest))
	}
}

// The test above must be able to fail.
func TestTowersAreMeasured(t *testing.T) {
	imports := map[string][]string{"a": {"b", "d"}, "b": {"c"}, "c": nil, "d": nil}
	if got := strings.Join(tower(imports), " "); got != "a b c" {
		t.Errorf("the longest chain is %q, want a b c", got)
	}
}

// tower is the longest chain of imports, from the top.
func tower(imports map[string][]string) []string {
	known := map[string][]string{}
	var from func(dir string) []string
	from = func(dir string) []string {
		if chain, ok := known[dir]; ok {
			return chain
		}
		var longest []string
		for _, below := range imports[dir] {
			if chain := from(below); len(chain) > len(longest) {
				longest = chain
			}
		}
		known[dir] = append([]string{dir}, longest...)
		return known[dir]
	}
	var tallest []string
	for dir := range imports {
		if chain := from(dir); len(chain) > len(tallest) || len(chain) == len(tallest) && slices.Compare(chain, tallest) < 0 {
			tallest = chain
		}
	}
	return tallest
}

// isCommand reports whether the package is a program: packcheck itself, the engine
// of the page, or one that makes figures or tables for this module.
func isCommand(s source) bool {
	for _, file := range s.files {
		return file.Name.Name == "main" && (strings.Contains("/"+s.dir, "/cmd/") || s.dir == "internal/page/engine")
	}
	return false
}

// imports returns the import paths of a file.
func imports(t *testing.T, file *ast.File) []string {
	t.Helper()
	var all []string
	for _, spec := range file.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, imported)
	}
	return all
}

// ours returns the folders of this module that a package imports, sorted.
func ours(t *testing.T, s source) []string {
	t.Helper()
	var dirs []string
	for _, name := range s.names() {
		for _, imported := range imports(t, s.files[name]) {
			if dir, is := below(imported); is {
				dirs = append(dirs, dir)
			}
		}
	}
	slices.Sort(dirs)
	return slices.Compact(dirs)
}

// below returns the folder of an import path of this module.
func below(imported string) (dir string, ours bool) {
	if imported == policy.ModulePath {
		return ".", true
	}
	return strings.CutPrefix(imported, policy.ModulePath+"/")
}
