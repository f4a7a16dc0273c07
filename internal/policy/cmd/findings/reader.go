package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"maps"
	"slices"

	"example.org/packcheck/internal/policy"
)

// unknown is a value that the text of the program does not settle.
const unknown = "?"

// made is what a finding is said to be at one place of the program: its fields
// as constants have them, numbers for levels and harms.
type made struct{ code, level, harm, item, change, source string }

// field returns the named field, nil for one that the table does not have.
func (m *made) field(name string) *string {
	switch name {
	case "Code":
		return &m.code
	case "Level":
		return &m.level
	case "Harm":
		return &m.harm
	case "Item":
		return &m.item
	case "Change":
		return &m.change
	case "Source":
		return &m.source
	}
	return nil
}

// nothing is a finding of which nothing was said: the zero value.
func nothing() made { return made{level: "0", harm: "0"} }

// inTable reports whether the table has the named field.
func inTable(name string) bool { return new(made).field(name) != nil }

// state is what the variables hold on one way through a function.
type state struct {
	found map[types.Object]made
	word  map[types.Object]string            // levels, harms, items, changes, texts
	row   map[types.Object]*ast.CompositeLit // one row of a table that is gone through
}

func newState() state {
	return state{map[types.Object]made{}, map[types.Object]string{}, map[types.Object]*ast.CompositeLit{}}
}

func (s state) clone() state {
	return state{maps.Clone(s.found), maps.Clone(s.word), maps.Clone(s.row)}
}

// same reports whether nothing that follows can tell the two apart.
func (s state) same(o state) bool {
	return maps.Equal(s.found, o.found) && maps.Equal(s.word, o.word) && maps.Equal(s.row, o.row)
}

// reader goes through the functions of one package on every way through them at
// once, and notes each finding that is put on a list or returned. It does not
// know which ways are possible: where two conditions exclude each other without
// saying so by a constant, it notes more than can happen, never less.
type reader struct {
	policy.Package
	bodies map[types.Object]*ast.FuncDecl
	noted  map[made]bool
	lost   []token.Pos // where a finding is changed that it does not follow
	depth  int
}

// mostDepth is how far calls are followed; helpers of makers are flat.
const mostDepth = 6

// read returns everything that the package makes; an error where it cannot tell.
func read(p policy.Package) (map[made]bool, error) {
	r := &reader{Package: p, bodies: map[types.Object]*ast.FuncDecl{}, noted: map[made]bool{}}
	for _, file := range p.Files {
		for _, d := range file.Decls {
			if f, is := d.(*ast.FuncDecl); is && f.Body != nil {
				r.bodies[p.Info.Defs[f.Name]] = f
			}
		}
	}
	for obj, f := range r.bodies {
		if !r.takesFinding(obj) { // else it is gone through where it is called
			r.run(f, newState(), true)
		}
	}
	if len(r.lost) > 0 {
		return nil, fmt.Errorf("%s: a finding is changed in a list: set it where it is made, so that the table can show it", p.Fset.Position(r.lost[0]))
	}
	return r.noted, nil
}

// takesFinding reports whether a function is given findings.
func (r *reader) takesFinding(f types.Object) bool {
	for v := range f.Type().(*types.Signature).Params().Variables() {
		if policy.IsFinding(v.Type()) {
			return true
		}
	}
	return false
}

// note keeps a finding that has a code; without one it came from elsewhere.
func (r *reader) note(list ...made) {
	for _, m := range list {
		if m.code != "" && m.code != unknown {
			r.noted[m] = true
		}
	}
}

// ending is one way out of a function: its results and its variables.
type ending struct {
	results []string
	found   []made
	at      state
}

// run goes through a body. What a top-level function returns is noted.
func (r *reader) run(f *ast.FuncDecl, from state, top bool) []ending {
	w := &walk{reader: r, top: top}
	left := w.block(f.Body.List, []state{from})
	for _, s := range left {
		w.ends = append(w.ends, ending{at: s})
	}
	return w.ends
}

// walk is one function under way.
type walk struct {
	*reader
	top               bool
	ends              []ending
	broken, continued []state
}

// distinct drops states that nothing tells apart.
func distinct(list []state) []state {
	var out []state
	for _, s := range list {
		if !slices.ContainsFunc(out, s.same) {
			out = append(out, s)
		}
	}
	return out
}

func (w *walk) block(stmts []ast.Stmt, states []state) []state {
	for _, stmt := range stmts {
		var next []state
		for _, s := range states {
			next = append(next, w.statement(stmt, s)...)
		}
		states = distinct(next)
	}
	return states
}

// statement returns the states after a statement; none where it leaves.
func (w *walk) statement(stmt ast.Stmt, s state) []state {
	switch stmt := stmt.(type) {
	case *ast.BlockStmt:
		return w.block(stmt.List, []state{s})
	case *ast.LabeledStmt:
		return w.statement(stmt.Stmt, s)
	case *ast.ExprStmt:
		w.scan(stmt.X, s)
		return w.throughPointers(stmt.X, s)
	case *ast.DeclStmt:
		return w.declare(stmt, s)
	case *ast.AssignStmt:
		return w.assign(stmt, s)
	case *ast.ReturnStmt:
		w.leave(stmt, s)
		return nil
	case *ast.BranchStmt:
		if stmt.Tok == token.CONTINUE {
			w.continued = append(w.continued, s)
		} else {
			w.broken = append(w.broken, s)
		}
		return nil
	case *ast.IfStmt:
		return w.branch(stmt, s)
	case *ast.SwitchStmt:
		return w.choose(stmt, s)
	case *ast.ForStmt:
		return append(w.loop(stmt.Body, []state{s}), s)
	case *ast.RangeStmt:
		w.scan(stmt.X, s)
		return append(w.loop(stmt.Body, w.rows(stmt, s)), s)
	}
	return []state{s}
}

// loop goes through a body once from each state.
func (w *walk) loop(body *ast.BlockStmt, from []state) []state {
	broken, continued := w.broken, w.continued
	w.broken, w.continued = nil, nil
	out := w.block(body.List, from)
	out = append(append(out, w.broken...), w.continued...)
	w.broken, w.continued = broken, continued
	return out
}

// rows binds the variable of a range to each row of a table that stands there.
func (w *walk) rows(stmt *ast.RangeStmt, s state) []state {
	lit, is := stmt.X.(*ast.CompositeLit)
	id, named := stmt.Value.(*ast.Ident)
	if !is || !named {
		return []state{s}
	}
	var out []state
	for _, e := range lit.Elts {
		if row, is := e.(*ast.CompositeLit); is {
			with := s.clone()
			with.row[w.Info.Defs[id]] = row
			out = append(out, with)
		}
	}
	if out == nil {
		return []state{s}
	}
	return out
}

func (w *walk) branch(stmt *ast.IfStmt, s state) []state {
	from := []state{s}
	if stmt.Init != nil {
		from = w.statement(stmt.Init, s)
	}
	var out []state
	for _, s := range from {
		w.scan(stmt.Cond, s)
		holds := w.condition(stmt.Cond, s)
		if holds != no {
			out = append(out, w.block(stmt.Body.List, []state{s.clone()})...)
		}
		switch {
		case holds == yes:
		case stmt.Else != nil:
			out = append(out, w.statement(stmt.Else, s.clone())...)
		default:
			out = append(out, s)
		}
	}
	return out
}

func (w *walk) choose(stmt *ast.SwitchStmt, s state) []state {
	from := []state{s}
	if stmt.Init != nil {
		from = w.statement(stmt.Init, s)
	}
	broken := w.broken
	w.broken = nil
	var out []state
	for _, s := range from {
		open := true // no case was sure to be taken yet
		var otherwise *ast.CaseClause
		for _, c := range stmt.Body.List {
			clause := c.(*ast.CaseClause)
			if clause.List == nil {
				otherwise = clause
				continue
			}
			holds := no
			for _, e := range clause.List {
				holds = max(holds, w.caseHolds(stmt.Tag, e, s))
			}
			if open && holds != no {
				out = append(out, w.block(clause.Body, []state{s.clone()})...)
			}
			open = open && holds != yes
		}
		switch {
		case open && otherwise != nil:
			out = append(out, w.block(otherwise.Body, []state{s.clone()})...)
		case open:
			out = append(out, s)
		}
	}
	out = append(out, w.broken...)
	w.broken = broken
	return out
}
