package main

import (
	"go/ast"
	"go/token"
	"go/types"
	"slices"

	"example.org/packcheck/internal/policy"
)

// findings are the findings that an expression may be.
func (w *walk) findings(e ast.Expr, s state) []made {
	switch e := e.(type) {
	case *ast.ParenExpr:
		return w.findings(e.X, s)
	case *ast.UnaryExpr:
		return w.findings(e.X, s)
	case *ast.Ident:
		if m, ok := s.found[w.Info.Uses[e]]; ok {
			return []made{m}
		}
	case *ast.CompositeLit:
		if policy.IsFinding(w.Info.TypeOf(e)) {
			return w.literal(e, s)
		}
	case *ast.CallExpr:
		var out []made
		for _, end := range w.inside(e, s) {
			out = append(out, end.found...)
		}
		return out
	}
	return nil
}

// literal is a finding that stands there.
func (w *walk) literal(e *ast.CompositeLit, s state) []made {
	out := []made{nothing()}
	for _, elt := range e.Elts {
		kv := elt.(*ast.KeyValueExpr)
		name := kv.Key.(*ast.Ident).Name
		if inTable(name) {
			out = withEach(out, name, w.values(kv.Value, s))
		}
	}
	return out
}

// withEach sets a field to each of its possible values.
func withEach(list []made, name string, values []string) []made {
	var out []made
	for _, m := range list {
		for _, v := range values {
			*m.field(name) = v
			out = append(out, m)
		}
	}
	return out
}

// inside goes through a function of this package that is given findings, for each
// of those that it may be given.
func (w *walk) inside(call *ast.CallExpr, s state) []ending {
	f := w.body(call)
	if f == nil || w.depth >= mostDepth {
		return nil
	}
	given := []map[int]made{{}}
	for i, arg := range call.Args {
		if !policy.IsFinding(w.Info.TypeOf(arg)) {
			continue
		}
		var more []map[int]made
		for _, m := range w.findings(arg, s) {
			for _, g := range given {
				with := map[int]made{i: m}
				for k, v := range g {
					with[k] = v
				}
				more = append(more, with)
			}
		}
		given = more
	}
	var out []ending
	w.depth++
	for _, g := range given {
		out = append(out, w.run(f, w.enter(f, call, s, g), false)...)
	}
	w.depth--
	return out
}

// scan notes the findings that an expression puts on a list.
func (w *walk) scan(e ast.Expr, s state) {
	ast.Inspect(e, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncLit:
			return false
		case *ast.CompositeLit:
			if list, is := w.Info.TypeOf(n).Underlying().(*types.Slice); is && policy.IsFinding(list.Elem()) {
				for _, elt := range n.Elts {
					if lit, is := elt.(*ast.CompositeLit); is {
						w.note(w.literal(lit, s)...) // its type may be left out
					} else {
						w.note(w.findings(elt, s)...)
					}
				}
			}
		case *ast.CallExpr:
			w.passes(n, s)
		}
		return true
	})
}

// passes notes what is handed to append, or to a function that takes any number;
// a function of this package that takes one is gone through.
func (w *walk) passes(call *ast.CallExpr, s state) {
	var given []made
	for _, arg := range call.Args {
		if policy.IsFinding(w.Info.TypeOf(arg)) {
			given = append(given, w.findings(arg, s)...)
		}
	}
	if given == nil {
		return
	}
	sig, is := w.Info.TypeOf(call.Fun).Underlying().(*types.Signature)
	if id, builtin := call.Fun.(*ast.Ident); builtin && id.Name == "append" || is && sig.Variadic() {
		w.note(given...)
		return
	}
	w.inside(call, s)
}

// throughPointers is what becomes of findings that a call is given the address of.
func (w *walk) throughPointers(e ast.Expr, s state) []state {
	call, is := e.(*ast.CallExpr)
	if !is {
		return []state{s}
	}
	for i, arg := range call.Args {
		at, is := arg.(*ast.UnaryExpr)
		if !is || at.Op != token.AND || !policy.IsFinding(w.Info.TypeOf(at.X)) {
			continue
		}
		f, id := w.body(call), at.X.(*ast.Ident)
		if f == nil {
			continue
		}
		param := w.Info.Defs[f.Type.Params.List[i].Names[0]]
		var out []state
		for _, end := range w.inside(call, s) {
			with := s.clone()
			with.found[w.Info.Uses[id]] = end.at.found[param]
			out = append(out, with)
		}
		return distinct(out)
	}
	return []state{s}
}

// leave is a return.
func (w *walk) leave(stmt *ast.ReturnStmt, s state) {
	end := ending{at: s}
	for _, e := range stmt.Results {
		w.scan(e, s)
		if policy.IsFinding(w.Info.TypeOf(e)) {
			end.found = append(end.found, w.findings(e, s)...)
		}
		end.results = append(end.results, one(w.values(e, s)))
	}
	if w.top {
		w.note(end.found...)
	}
	w.ends = append(w.ends, end)
}

// declare is a declaration with or without values.
func (w *walk) declare(stmt *ast.DeclStmt, s state) []state {
	gen, is := stmt.Decl.(*ast.GenDecl)
	if !is || gen.Tok != token.VAR {
		return []state{s}
	}
	out := []state{s}
	for _, spec := range gen.Specs {
		v := spec.(*ast.ValueSpec)
		for i, name := range v.Names {
			obj := w.Info.Defs[name]
			if obj == nil {
				continue
			}
			if i < len(v.Values) && len(v.Values) == len(v.Names) {
				out = w.setEach(out, name, v.Values[i])
			} else if policy.IsFinding(obj.Type()) {
				for k := range out {
					out[k] = out[k].clone()
					out[k].found[obj] = nothing()
				}
			}
		}
	}
	return out
}

// assign is an assignment or a short declaration.
func (w *walk) assign(stmt *ast.AssignStmt, s state) []state {
	for _, e := range stmt.Rhs {
		w.scan(e, s)
	}
	if stmt.Tok != token.ASSIGN && stmt.Tok != token.DEFINE {
		return []state{s}
	}
	if len(stmt.Lhs) == len(stmt.Rhs) {
		out := []state{s}
		for i, lhs := range stmt.Lhs {
			out = w.setEach(out, lhs, stmt.Rhs[i])
		}
		return out
	}
	call, is := stmt.Rhs[0].(*ast.CallExpr)
	if !is {
		return []state{s}
	}
	if out := w.assignFinding(stmt.Lhs, call, s); out != nil {
		return out
	}
	var out []state
	for _, tuple := range w.tuples(call, s) {
		with := s.clone()
		for i, lhs := range stmt.Lhs {
			if i < len(tuple) {
				w.set(with, lhs, tuple[i])
			}
		}
		out = append(out, with)
	}
	if out == nil {
		return []state{s}
	}
	return out
}

// assignFinding is an assignment from a call that returns a finding beside
// something else; nil where it is none.
func (w *walk) assignFinding(lhs []ast.Expr, call *ast.CallExpr, s state) []state {
	at := slices.IndexFunc(lhs, func(e ast.Expr) bool {
		id, is := e.(*ast.Ident)
		return is && w.object(id) != nil && policy.IsFinding(w.object(id).Type())
	})
	if at < 0 {
		return nil
	}
	var out []state
	for _, end := range w.inside(call, s) {
		for _, m := range end.found {
			with := s.clone()
			with.found[w.object(lhs[at].(*ast.Ident))] = m
			for i, v := range end.results {
				if i != at {
					w.set(with, lhs[i], v)
				}
			}
			out = append(out, with)
		}
	}
	return distinct(out)
}

// setEach sets what stands on the left to everything that the right may be.
func (w *walk) setEach(from []state, lhs, rhs ast.Expr) []state {
	id, named := lhs.(*ast.Ident)
	var out []state
	for _, s := range from {
		if named && policy.IsFinding(w.Info.TypeOf(lhs)) {
			for _, m := range w.findings(rhs, s) {
				with := s.clone()
				with.found[w.object(id)] = m
				out = append(out, with)
			}
			continue
		}
		if !named && !w.meant(lhs) {
			out = append(out, s)
			continue
		}
		for _, v := range w.values(rhs, s) {
			with := s.clone()
			w.set(with, lhs, v)
			out = append(out, with)
		}
	}
	if len(out) == 0 { // a finding from elsewhere
		return from
	}
	return distinct(out)
}

// meant reports whether the expression is a field of a finding in the table.
func (w *walk) meant(lhs ast.Expr) bool {
	sel, is := lhs.(*ast.SelectorExpr)
	return is && inTable(sel.Sel.Name) && policy.IsFinding(w.Info.TypeOf(sel.X))
}

// set sets a variable or a field of a finding.
func (w *walk) set(s state, lhs ast.Expr, v string) {
	switch lhs := lhs.(type) {
	case *ast.Ident:
		if obj := w.object(lhs); obj != nil {
			s.word[obj] = v
		}
	case *ast.SelectorExpr:
		if !w.meant(lhs) {
			return
		}
		id, is := lhs.X.(*ast.Ident)
		if !is { // a finding in a list or a struct: who is changed here is not followed
			w.lost = append(w.lost, lhs.Pos())
			return
		}
		m := s.found[w.Info.Uses[id]]
		*m.field(lhs.Sel.Name) = v
		s.found[w.Info.Uses[id]] = m
	}
}

func (w *walk) object(id *ast.Ident) types.Object {
	if obj := w.Info.Defs[id]; obj != nil {
		return obj
	}
	return w.Info.Uses[id]
}
