package policy_test

import (
	"fmt"
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/packcheck/internal/policy"
)

// typed is the module with its types, read once.
var typed = sync.OnceValues(func() ([]policy.Package, error) { return policy.Load(root) })

func typedPackages(t *testing.T) []policy.Package {
	t.Helper()
	all, err := typed()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 10 {
		t.Fatalf("only %d packages found below %s: the test looks in the wrong place", len(all), root)
	}
	return all
}

// mayMatch are the functions that may look at a finding's words, and why.
var mayMatch = map[string]string{
	"answer.Sort":             "of two findings alike in everything else, which comes first",
	"internal/reckon.changes": "the same sentence is listed once",
	"report.otherDangers":     "the sentence that the first lines have is not said again",
}

// A finding says in typed fields what it means. Whoever compares or searches its
// Title or Advice makes English the data again: a better sentence would then
// change an answer. Followed are texts, lists of them, variables, fields and
// functions of one package, and what functions of the same package are handed.
// Not seen is what leaves the package (as Assessment.Changes or Headline do) and
// what becomes of a text that a report has cleaned or wrapped: that a report
// reads no sentence is shown by the test in package report that rewords them all.
func TestNobodyReadsWhatAFindingSays(t *testing.T) {
	used := map[string]bool{}
	for _, p := range typedPackages(t) {
		w := &wording{Package: p, carries: map[types.Object]bool{}, direct: p.Dir == "report"}
		for _, at := range w.matches() {
			where := p.Dir + "." + at.in
			if mayMatch[where] != "" {
				used[where] = true
				continue
			}
			t.Errorf("%s: %s looks at the words of a finding; read its fields", p.Fset.Position(at.pos), where)
		}
	}
	for where := range mayMatch {
		if !used[where] {
			t.Errorf("%s no longer looks at the words of a finding: take it off the list", where)
		}
	}
}

// match is one place that looks at words.
type match struct {
	in  string // function
	pos token.Pos
}

// wording follows the words of findings through one package.
type wording struct {
	policy.Package
	carries map[types.Object]bool // variables, fields and functions that hold words
	direct  bool                  // follow nothing: only the fields themselves count
}

// matches returns every place at which words are compared or searched.
func (w *wording) matches() []match {
	for before := -1; !w.direct && before != len(w.carries); {
		before = len(w.carries)
		for _, file := range w.Files {
			ast.Inspect(file, w.spread)
		}
	}
	var out []match
	for _, file := range w.Files {
		for _, d := range file.Decls {
			in := "a declaration"
			if f, is := d.(*ast.FuncDecl); is {
				in = f.Name.Name
			}
			ast.Inspect(d, func(n ast.Node) bool {
				if w.looks(n) {
					out = append(out, match{in, n.Pos()})
				}
				return true
			})
		}
	}
	return out
}

// textual reports whether a type is text or a list of texts.
func textual(t types.Type) bool {
	if t == nil {
		return false
	}
	switch u := t.Underlying().(type) {
	case *types.Basic:
		return u.Info()&types.IsString != 0
	case *types.Slice:
		return textual(u.Elem())
	case *types.Array:
		return textual(u.Elem())
	case *types.Tuple:
		return false
	}
	return false
}

// words reports whether an expression holds the words of a finding.
func (w *wording) words(e ast.Expr) bool {
	if e == nil || !textual(w.Info.TypeOf(e)) {
		return false
	}
	switch e := e.(type) {
	case *ast.ParenExpr:
		return w.words(e.X)
	case *ast.Ident:
		return w.carries[w.Info.Uses[e]]
	case *ast.SelectorExpr:
		if (e.Sel.Name == "Title" || e.Sel.Name == "Advice") && policy.IsFinding(w.Info.TypeOf(e.X)) {
			return true
		}
		return w.carries[w.Info.Uses[e.Sel]]
	case *ast.BinaryExpr:
		return w.words(e.X) || w.words(e.Y)
	case *ast.IndexExpr:
		return w.words(e.X)
	case *ast.SliceExpr:
		return w.words(e.X)
	case *ast.CompositeLit:
		return slices.ContainsFunc(e.Elts, w.words)
	case *ast.CallExpr:
		if slices.ContainsFunc(e.Args, w.words) {
			return true
		}
		return w.carries[w.called(e)]
	}
	return false
}

// called is the function of a call, nil for a conversion or a function value.
func (w *wording) called(call *ast.CallExpr) types.Object {
	switch f := ast.Unparen(call.Fun).(type) {
	case *ast.Ident:
		return w.Info.Uses[f]
	case *ast.SelectorExpr:
		return w.Info.Uses[f.Sel]
	}
	return nil
}

// holds notes that a variable, field or function holds words.
func (w *wording) holds(e ast.Expr) {
	switch e := ast.Unparen(e).(type) {
	case *ast.Ident:
		if obj := w.Info.Defs[e]; obj != nil {
			w.carries[obj] = true
		} else if obj := w.Info.Uses[e]; obj != nil {
			w.carries[obj] = true
		}
	case *ast.SelectorExpr:
		// Every maker sets Title and Advice; those are looked for as such.
		if !policy.IsFinding(w.Info.TypeOf(e.X)) {
			w.carries[w.Info.Uses[e.Sel]] = true
		}
	case *ast.IndexExpr:
		w.holds(e.X)
	}
}

// spread notes what words are assigned, handed and returned to.
func (w *wording) spread(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.AssignStmt:
		for i, lhs := range n.Lhs {
			if len(n.Lhs) == len(n.Rhs) && w.words(n.Rhs[i]) {
				w.holds(lhs)
			}
		}
	case *ast.ValueSpec:
		for i, name := range n.Names {
			if len(n.Names) == len(n.Values) && w.words(n.Values[i]) {
				w.holds(name)
			}
		}
	case *ast.RangeStmt:
		if w.words(n.X) && n.Value != nil {
			w.holds(n.Value)
		}
	case *ast.CompositeLit:
		fields, is := w.Info.TypeOf(n).Underlying().(*types.Struct)
		for i, e := range n.Elts {
			if kv, keyed := e.(*ast.KeyValueExpr); keyed && is && w.words(kv.Value) && !policy.IsFinding(w.Info.TypeOf(n)) {
				w.holds(kv.Key)
			} else if !keyed && is && w.words(e) {
				w.carries[fields.Field(i)] = true
			}
		}
	case *ast.FuncDecl:
		ast.Inspect(n, func(in ast.Node) bool {
			if ret, is := in.(*ast.ReturnStmt); is && len(ret.Results) == 1 && w.words(ret.Results[0]) {
				w.carries[w.Info.Defs[n.Name]] = true
			}
			_, inner := in.(*ast.FuncLit)
			return !inner
		})
	case *ast.CallExpr:
		f, is := w.called(n).(*types.Func)
		if !is || f.Pkg() != w.Types {
			return true
		}
		params := f.Signature().Params()
		for i, arg := range n.Args {
			if w.words(arg) && i < params.Len() {
				w.carries[params.At(i)] = true
			}
		}
	}
	return true
}

// builds are the functions of package strings that only make other texts.
var builds = []string{"Join", "Repeat", "ToLower", "ToUpper", "TrimSpace", "Map", "Clone", "ToValidUTF8", "NewReader"}

// looks reports whether a node compares or searches words.
func (w *wording) looks(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.BinaryExpr:
		compared := slices.Contains([]token.Token{token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ}, n.Op)
		return compared && (w.words(n.X) && !w.empty(n.Y) || w.words(n.Y) && !w.empty(n.X))
	case *ast.SwitchStmt:
		return n.Tag != nil && w.words(n.Tag)
	case *ast.CaseClause:
		return slices.ContainsFunc(n.List, w.words)
	case *ast.IndexExpr:
		_, is := w.Info.TypeOf(n.X).Underlying().(*types.Map)
		return is && w.words(n.Index)
	case *ast.CallExpr:
		f, is := w.called(n).(*types.Func)
		if !is || f.Pkg() == nil {
			return false
		}
		switch f.Pkg().Path() {
		case "strings":
			return !slices.Contains(builds, f.Name()) && slices.ContainsFunc(n.Args, w.words)
		case "slices", "cmp", "bytes", "regexp", "unicode", "unicode/utf8", "maps":
			return slices.ContainsFunc(n.Args, w.words)
		}
	}
	return false
}

// empty reports whether an expression is the empty text: whether there are words
// at all may be asked.
func (w *wording) empty(e ast.Expr) bool {
	v := w.Info.Types[e].Value
	return v != nil && v.Kind() == constant.String && constant.StringVal(v) == ""
}

// The test above must be able to fail: every way of reading is seen.
func TestReadingAFindingIsSeen(t *testing.T) {
	for body, want := range map[string]int{
		`return f.Found > f.Limit`:                                                0,
		`return f.Title == "Hot."`:                                                1,
		`return strings.HasPrefix(f.Advice, "Fit")`:                               1,
		`said := "so: " + f.Title; return strings.Contains(said, "hot")`:          1,
		`switch f.Title { case "Hot.": return true }; return false`:               1,
		`return map[string]bool{"Hot.": true}[f.Advice]`:                          1,
		`return about(f.Title)`:                                                   1,
		`for _, s := range []string{f.Title} { return s == other }; return 1 > 0`: 1,
		`return strings.TrimSpace(f.Title) == other`:                              1,
		`return strings.ToUpper(f.Title) + f.Advice != other`:                     1,
	} {
		text := fmt.Sprintf(`package sample
import ("strings"; "%s/answer")
var other = strings.ToLower("X")
func about(s string) bool { return s == other }
func reads(f answer.Finding) bool { %s }
`, policy.ModulePath, body)
		w := &wording{Package: sample(t, text), carries: map[types.Object]bool{}}
		if got := w.matches(); len(got) != want {
			t.Errorf("%s: %d places, want %d: %v", body, len(got), want, got)
		}
	}
	if strings.Contains(strings.Join(builds, " "), "Contains") {
		t.Error("searching is no building")
	}
}
