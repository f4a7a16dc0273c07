package policy_test

import (
	"fmt"
	"go/types"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/policy"
)

// Whoever uses the module cannot name a type of an internal package: a public
// struct that has one in it, or a function that takes one, is half closed to them.
func TestNothingPublicIsMadeOfAnInternalType(t *testing.T) {
	seen := 0
	for _, p := range typedPackages(t) {
		if isInternal(p.Path) || strings.Contains(p.Path+"/", "/cmd/") {
			continue
		}
		for _, found := range internalInPublic(p.Types, &seen) {
			t.Error(found)
		}
	}
	if seen < 500 {
		t.Errorf("only %d public fields and signatures were looked at: the test looks in the wrong place", seen)
	}
}

func TestAnInternalTypeInPublicIsSeen(t *testing.T) {
	for text, want := range map[string]int{
		"type T struct { K quantity.Kind }":                                       1,
		"type T struct { quantity.Written }":                                      1,
		"type T struct { k quantity.Kind }":                                       0,
		"type T struct { R quantity.Range }":                                      0, // another name of a public type
		"type T struct { M map[string][]*quantity.Kind }":                         1,
		"type T struct { In struct { K quantity.Kind } }":                         1,
		"type t struct { K quantity.Kind }\ntype T struct { t }":                  1,
		"type t struct { K quantity.Kind }\nfunc f(t) {}":                         0,
		"func F() (quantity.Kind, error) { return 0, nil }":                       1,
		"type T struct{}\nfunc (T) F(...quantity.Kind) {}":                        1,
		"type T struct{}\nfunc (T) f(quantity.Kind) {}\nfunc g(quantity.Kind) {}": 0,
		"type T interface { F(quantity.Kind) }":                                   1,
		"type T func(quantity.Kind)":                                              1,
		"type T = quantity.Kind":                                                  1,
		"var V quantity.Kind":                                                     1,
		"const C = quantity.Voltage":                                              1,
		"type T[X any] struct { Of X }\nvar V T[quantity.Kind]":                   1,
		"type T struct { Next *T; K []T }":                                        0,
	} {
		p := sample(t, "package public\nimport \"example.org/packcheck/internal/quantity\"\nvar _ quantity.Kind\n"+text)
		seen := 0
		if got := internalInPublic(p.Types, &seen); len(got) != want {
			t.Errorf("%s: %d found (%v), want %d", text, len(got), got, want)
		}
	}
}

// isInternal reports whether others may not import a package of this module.
func isInternal(path string) bool {
	return strings.HasPrefix(path, policy.ModulePath+"/internal/")
}

// internalInPublic lists what others see of a package and cannot name. Seen counts
// what was looked at.
func internalInPublic(p *types.Package, seen *int) []string {
	var out []string
	look := func(where string, t types.Type) {
		*seen++
		if bad := internalIn(t, nil); bad != "" {
			out = append(out, fmt.Sprintf("%s.%s: %s", p.Path(), where, bad))
		}
	}
	for _, name := range p.Scope().Names() {
		o := p.Scope().Lookup(name)
		if !o.Exported() {
			continue
		}
		look(name, shapeOf(o))
		named, is := o.Type().(*types.Named)
		if _, isType := o.(*types.TypeName); !is || !isType {
			continue
		}
		for i := range named.NumMethods() {
			if m := named.Method(i); m.Exported() {
				look(name+"."+m.Name(), m.Type())
			}
		}
	}
	return out
}

// shapeOf is what stands behind a name: what a type is made of, or what a function
// takes and gives.
func shapeOf(o types.Object) types.Type {
	if named, is := o.Type().(*types.Named); is && named.Obj() == o {
		return named.Underlying()
	}
	return o.Type()
}

// internalIn names the first type of an internal package that others would meet in
// a type: in its exported fields, or in those of what it embeds.
func internalIn(t types.Type, within []types.Type) string {
	t = types.Unalias(t)
	if slices.Contains(within, t) {
		return ""
	}
	within = append(within, t)
	several := func(list ...types.Type) string {
		for _, inner := range list {
			if bad := internalIn(inner, within); bad != "" {
				return bad
			}
		}
		return ""
	}
	switch t := t.(type) {
	case *types.Named:
		o := t.Obj()
		switch {
		case o.Pkg() == nil:
			return ""
		case isInternal(o.Pkg().Path()):
			return o.Pkg().Path() + "." + o.Name()
		case !o.Exported(): // no other place where it is looked at
			return internalIn(t.Underlying(), within)
		}
		var args []types.Type
		for arg := range t.TypeArgs().Types() {
			args = append(args, arg)
		}
		return several(args...)
	case *types.Pointer:
		return several(t.Elem())
	case *types.Slice:
		return several(t.Elem())
	case *types.Array:
		return several(t.Elem())
	case *types.Chan:
		return several(t.Elem())
	case *types.Map:
		return several(t.Key(), t.Elem())
	case *types.Signature:
		return several(t.Params(), t.Results())
	case *types.Tuple:
		for v := range t.Variables() {
			if bad := internalIn(v.Type(), within); bad != "" {
				return bad
			}
		}
	case *types.Struct:
		for f := range t.Fields() {
			if f.Exported() || f.Embedded() {
				if bad := internalIn(f.Type(), within); bad != "" {
					return f.Name() + " is of " + bad
				}
			}
		}
	case *types.Interface:
		for m := range t.Methods() {
			if bad := internalIn(m.Type(), within); bad != "" {
				return bad
			}
		}
	}
	return ""
}
