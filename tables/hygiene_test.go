package tables_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/packcheck/tables"
	"github.com/BurntSushi/toml"
	"github.com/google/go-cmp/cmp"
)

// sourcesUsed collects every value of a key "source", at any depth.
func sourcesUsed(v any, used map[string]bool) {
	table, ok := v.(map[string]any)
	if !ok {
		return
	}
	for key, value := range table {
		if id, ok := value.(string); ok && key == "source" {
			used[id] = true
			continue
		}
		sourcesUsed(value, used)
	}
}

func TestEachDataFileDefinesExactlyTheSourcesThatItsRowsUse(t *testing.T) {
	files, err := filepath.Glob("data/*.toml")
	if err != nil || len(files) < 8 {
		t.Fatalf("data files: %v, %v", files, err)
	}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var file map[string]any
		if _, err := toml.Decode(string(text), &file); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		defined := file["source"].(map[string]any)
		delete(file, "source")
		used := map[string]bool{}
		sourcesUsed(file, used)
		if diff := cmp.Diff(slices.Sorted(maps.Keys(defined)), slices.Sorted(maps.Keys(used))); diff != "" {
			t.Errorf("%s: sources (-defined +used):\n%s", name, diff)
		}
	}
}

func TestEverySourceSaysWhatItIsAndHowItIsKnown(t *testing.T) {
	sources := tables.Builtin().Sources()
	known := []string{"primary", "copy", "computed", "memory", "estimate", "judgement", "common practice"}
	last := ""
	for _, s := range sources {
		if s.ID <= last {
			t.Errorf("source %q after %q: want sorted unique IDs", s.ID, last)
		}
		last = s.ID
		if strings.ToLower(s.ID) != s.ID || strings.ContainsAny(s.ID, " _") {
			t.Errorf("source ID %q: want lower case with hyphens", s.ID)
		}
		if len(s.Text) < 20 {
			t.Errorf("source %q: text %q names no title or clause", s.ID, s.Text)
		}
		if !slices.ContainsFunc(known, func(k string) bool { return strings.HasPrefix(s.Known, k) }) {
			t.Errorf("source %q: known = %q begins with none of %v", s.ID, s.Known, known)
		}
		for _, r := range s.Text + s.Known {
			if r > 126 {
				t.Errorf("source %q: %q is not ASCII", s.ID, r)
			}
		}
		if got, ok := tables.Builtin().Source(s.ID); !ok || got != s {
			t.Errorf("Source(%q) = %v, %v", s.ID, got, ok)
		}
	}
	if _, ok := tables.Builtin().Source("no-such"); ok {
		t.Error("an unknown source ID was found")
	}
}

func TestRememberedSourcesAreNotFirm(t *testing.T) {
	b := tables.Builtin()
	for _, s := range b.Sources() {
		read := strings.HasPrefix(s.Known, "primary") || strings.HasPrefix(s.Known, "copy") || strings.HasPrefix(s.Known, "computed")
		if b.Firm(s.ID) != read {
			t.Errorf("Firm(%q) = %v with known = %q", s.ID, b.Firm(s.ID), s.Known)
		}
	}
	for _, id := range []string{"iso-10133-a", "sae-j553-times", "motor-trade", "ground-judgement", "joint-heat-own", "no-such"} {
		if b.Firm(id) {
			t.Errorf("%s passes for firm", id)
		}
	}
}

// figureNames reads the constants of type FigureName out of the code.
func figureNames(t *testing.T) []string {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), "figure.go", nil, 0)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	ast.Inspect(file, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		if id, ok := spec.Type.(*ast.Ident); ok && id.Name == "FigureName" {
			name, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
			if err != nil {
				t.Fatal(err)
			}
			names = append(names, name)
		}
		return true
	})
	slices.Sort(names)
	return names
}

func TestEveryFigureNameHasARowAndEveryRowAName(t *testing.T) {
	var rows []string
	for _, f := range tables.Builtin().Figures() {
		rows = append(rows, string(f.Name))
		if f.What == "" || !f.Known() || !(f.Low <= f.Likely && f.Likely <= f.High) {
			t.Errorf("figure %s: %+v", f.Name, f)
		}
		if got := tables.Builtin().Figure(f.Name); got != f {
			t.Errorf("Figure(%s) = %+v, listed as %+v", f.Name, got, f)
		}
	}
	if diff := cmp.Diff(figureNames(t), rows); diff != "" {
		t.Errorf("figures (-names +rows):\n%s", diff)
	}
}

func TestAnUnknownFigureCannotPassForALimit(t *testing.T) {
	f := tables.Builtin().Figure("no-such")
	if !math.IsNaN(f.Low) || !math.IsNaN(f.Likely) || !math.IsNaN(f.High) || f.Known() {
		t.Errorf("unknown figure = %+v", f)
	}
}

func TestAWGConstantsInTheCodeAgreeWithTheTable(t *testing.T) {
	// ASTM B258-02: the ratio of successive sizes is the 39th root of 92.
	ratio := tables.AWGDiameterMM(13) / tables.AWGDiameterMM(14)
	if want := tables.Builtin().Figure(tables.AWGRatio).Likely; math.Abs(ratio-want) > 5e-8 {
		t.Errorf("ratio of AWG sizes %.8f, table %.8f", ratio, want)
	}
}

func TestCallersCannotWriteIntoATable(t *testing.T) {
	b := tables.Builtin()
	f, _ := b.Fuse("small blade")
	f.Gates[0].Ratio, f.RatingsA[0], f.Words[0], f.Heat[0].Y, f.ColdOhm[0].Y, f.MeltingA2s[0].Y, f.VoltagesV[0] = 9, 9, "x", 9, 9, 9, 9
	again, _ := b.Fuse("small blade")
	if cmp.Equal(f, again) || again.Gates[0].Ratio != 1 || again.RatingsA[0] != 1 || again.VoltagesV[0] != 32 {
		t.Error("a caller's change of a fuse row reached the table")
	}
	g, _ := b.Ground("gravel")
	g.Words[0] = "x"
	b.Grounds()[0].Words[0] = "x"
	b.Joints()[0].Words[0] = "x"
	b.MotorCans()[0].Words[0] = "x"
	b.VehicleClasses()[0].Words[0] = "x"
	i, _ := b.Insulation("pvc")
	i.Words[0] = "x"
	b.Sources()[0].Text = "x"
	b.Figures()[0].What = "x"
	for _, one := range b.Grounds() {
		if slices.Contains(one.Words, "x") {
			t.Error("a caller's change of a ground row reached the table")
		}
	}
	if slices.Contains(b.Joints()[0].Words, "x") || slices.Contains(b.MotorCans()[0].Words, "x") ||
		slices.Contains(b.VehicleClasses()[0].Words, "x") || b.Sources()[0].Text == "x" || b.Figures()[0].What == "x" {
		t.Error("a caller's change reached the table")
	}
	if i, _ := b.Insulation("pvc"); slices.Contains(i.Words, "x") {
		t.Error("a caller's change of an insulation row reached the table")
	}
}
