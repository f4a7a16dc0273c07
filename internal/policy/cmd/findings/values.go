package main

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/internal/policy"
)

// truth is what is known of a condition.
type truth int

const (
	no truth = iota
	maybe
	yes
)

func truly(b bool) truth {
	if b {
		return yes
	}
	return no
}

// condition says whether a condition holds, as far as constants settle it.
func (w *walk) condition(e ast.Expr, s state) truth {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return w.condition(e.X, s)
	case *ast.UnaryExpr:
		if e.Op == token.NOT {
			return yes - w.condition(e.X, s)
		}
	case *ast.Ident:
		switch one(w.values(e, s)) {
		case "true":
			return yes
		case "false":
			return no
		}
	case *ast.BinaryExpr:
		switch e.Op {
		case token.LAND:
			return min(w.condition(e.X, s), w.condition(e.Y, s))
		case token.LOR:
			return max(w.condition(e.X, s), w.condition(e.Y, s))
		case token.EQL, token.NEQ, token.LSS, token.LEQ, token.GTR, token.GEQ:
			return compare(e.Op, w.values(e.X, s), w.values(e.Y, s))
		}
	}
	return maybe
}

// caseHolds is the condition of one expression of a case.
func (w *walk) caseHolds(tag, e ast.Expr, s state) truth {
	if tag == nil {
		return w.condition(e, s)
	}
	return compare(token.EQL, w.values(tag, s), w.values(e, s))
}

// compare settles a comparison of single known values.
func compare(op token.Token, a, b []string) truth {
	if len(a) != 1 || len(b) != 1 || a[0] == unknown || b[0] == unknown {
		return maybe
	}
	x, errX := strconv.Atoi(a[0])
	y, errY := strconv.Atoi(b[0])
	order := strings.Compare(a[0], b[0])
	switch {
	case errX == nil && errY == nil:
		order = x - y
	case op != token.EQL && op != token.NEQ:
		return maybe
	}
	switch op {
	case token.EQL:
		return truly(order == 0)
	case token.NEQ:
		return truly(order != 0)
	case token.LSS:
		return truly(order < 0)
	case token.LEQ:
		return truly(order <= 0)
	case token.GTR:
		return truly(order > 0)
	}
	return truly(order >= 0)
}

// values returns what an expression may be worth.
func (w *walk) values(e ast.Expr, s state) []string {
	if v := w.Info.Types[e].Value; v != nil {
		switch v.Kind() {
		case constant.String:
			return []string{constant.StringVal(v)}
		case constant.Int, constant.Bool:
			return []string{v.ExactString()}
		}
		return []string{unknown}
	}
	switch e := e.(type) {
	case *ast.ParenExpr:
		return w.values(e.X, s)
	case *ast.Ident:
		if v, ok := s.word[w.Info.Uses[e]]; ok {
			return []string{v}
		}
	case *ast.SelectorExpr:
		return []string{w.selected(e, s)}
	case *ast.CallExpr:
		return w.called(e, s)
	}
	return []string{unknown}
}

// selected is a field of a finding or of a row; of a source that stands in the
// data, whose data.
func (w *walk) selected(e *ast.SelectorExpr, s state) string {
	if id, is := e.X.(*ast.Ident); is {
		obj := w.Info.Uses[id]
		if m, ok := s.found[obj]; ok {
			if f := m.field(e.Sel.Name); f != nil {
				return *f
			}
		}
		if row, ok := s.row[obj]; ok {
			return w.inRow(row, e.Sel.Name, s)
		}
	}
	if !strings.HasSuffix(e.Sel.Name, "Source") {
		return unknown
	}
	switch of := w.Info.TypeOf(e.X).String(); {
	case strings.Contains(of, "/chemistry."):
		return "the chemistry's"
	case strings.Contains(of, "/tables."):
		return "the table's"
	}
	return "the figure's"
}

// inRow is a field of a struct that stands there as a literal.
func (w *walk) inRow(row *ast.CompositeLit, name string, s state) string {
	fields, is := w.Info.TypeOf(row).Underlying().(*types.Struct)
	if !is {
		return unknown
	}
	for i, e := range row.Elts {
		if kv, is := e.(*ast.KeyValueExpr); is {
			if kv.Key.(*ast.Ident).Name == name {
				return one(w.values(kv.Value, s))
			}
		} else if fields.Field(i).Name() == name {
			return one(w.values(e, s))
		}
	}
	return ""
}

// one is the single value, unknown where there are several.
func one(list []string) string {
	if len(list) == 1 {
		return list[0]
	}
	return unknown
}

// called is what a call may give: the lesser or greater of two, a conversion, or
// the results of a function of this package that gives a level or the like.
func (w *walk) called(call *ast.CallExpr, s state) []string {
	if id, is := call.Fun.(*ast.Ident); is && len(call.Args) == 2 && (id.Name == "min" || id.Name == "max") {
		return ofTwo(id.Name, w.values(call.Args[0], s), w.values(call.Args[1], s))
	}
	var out []string
	for _, tuple := range w.tuples(call, s) {
		if len(tuple) == 1 && !slices.Contains(out, tuple[0]) {
			out = append(out, tuple[0])
		}
	}
	if out == nil {
		return []string{unknown}
	}
	slices.Sort(out)
	return out
}

// ofTwo is the lesser or the greater, of all that the two may be.
func ofTwo(name string, first, second []string) []string {
	var out []string
	for _, a := range first {
		for _, b := range second {
			pick := b
			switch less := compare(token.LSS, []string{a}, []string{b}); {
			case less == maybe:
				pick = unknown
			case (less == yes) == (name == "min"):
				pick = a
			}
			if !slices.Contains(out, pick) {
				out = append(out, pick)
			}
		}
	}
	return out
}

// tuples are the results that a function of this package may return together.
func (w *walk) tuples(call *ast.CallExpr, s state) [][]string {
	f := w.body(call)
	if f == nil || w.depth >= mostDepth || !givesMeaning(w.Info.TypeOf(call)) {
		return nil
	}
	w.depth++
	ends := w.run(f, w.enter(f, call, s, nil), false)
	w.depth--
	var out [][]string
	for _, e := range ends {
		if !slices.ContainsFunc(out, func(o []string) bool { return slices.Equal(o, e.results) }) {
			out = append(out, e.results)
		}
	}
	slices.SortFunc(out, slices.Compare)
	return out
}

// givesMeaning reports whether a call returns types of package answer.
func givesMeaning(t types.Type) bool {
	return t != nil && strings.Contains(t.String(), policy.ModulePath+"/answer.")
}

// body is the function of this package that is called, nil for any other.
func (w *walk) body(call *ast.CallExpr) *ast.FuncDecl {
	switch f := ast.Unparen(call.Fun).(type) {
	case *ast.Ident:
		return w.bodies[w.Info.Uses[f]]
	case *ast.SelectorExpr:
		return w.bodies[w.Info.Uses[f.Sel]]
	}
	return nil
}

// enter is the state in which a called function begins.
func (w *walk) enter(f *ast.FuncDecl, call *ast.CallExpr, s state, found map[int]made) state {
	in := newState()
	i := 0
	for _, field := range f.Type.Params.List {
		for _, name := range field.Names {
			obj := w.Info.Defs[name]
			if m, ok := found[i]; ok {
				in.found[obj] = m
			} else if i < len(call.Args) && obj != nil {
				if v := one(w.values(call.Args[i], s)); v != unknown {
					in.word[obj] = v
				}
			}
			i++
		}
	}
	return in
}
