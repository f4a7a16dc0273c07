package main

import (
	"fmt"
	"go/constant"
	"go/types"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/policy"
)

// code is a constant that names a finding.
type code struct{ name, text, dir string }

// codes returns the finding codes that a package declares, in the order of their
// texts: its constants named Code and something.
func codes(p policy.Package) []code {
	var out []code
	for _, name := range p.Types.Scope().Names() {
		c, is := p.Types.Scope().Lookup(name).(*types.Const)
		if is && strings.HasPrefix(name, "Code") && c.Val().Kind() == constant.String {
			out = append(out, code{name, constant.StringVal(c.Val()), p.Dir})
		}
	}
	slices.SortFunc(out, func(a, b code) int { return strings.Compare(a.text, b.text) })
	return out
}

// row is one finding in the table.
type row struct {
	code
	made []made // each way in which it is made
}

// rows reads the module below root.
func rows(root string) ([]row, error) {
	packages, err := policy.Load(root)
	if err != nil {
		return nil, err
	}
	var out []row
	for _, p := range packages {
		declared := codes(p)
		if len(declared) == 0 {
			continue
		}
		byCode := map[string][]made{}
		found, err := read(p)
		if err != nil {
			return nil, err
		}
		for m := range found {
			byCode[m.code] = append(byCode[m.code], m)
		}
		for _, c := range declared {
			if byCode[c.text] == nil {
				return nil, fmt.Errorf("%s: nothing that makes %s was found", p.Dir, c.name)
			}
			out = append(out, row{c, byCode[c.text]})
		}
	}
	return out, nil
}

// table is the table of all findings in Markdown, package by package.
func table(root string) (string, error) {
	list, err := rows(root)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	b.WriteString("| package | code | level (harm) | item | change | source of the limit |\n|---|---|---|---|---|---|\n")
	for _, r := range list {
		fmt.Fprintf(&b, "| `%s` | `%s` | %s | %s | %s | %s |\n", r.dir, r.text, r.levels(),
			r.each(func(m made) string { return m.item }), r.each(func(m made) string { return m.change }), r.each(func(m made) string { return m.source }))
	}
	return b.String(), nil
}

// levels are the level and harm that it may have, worst first.
func (r row) levels() string {
	type pair struct {
		level answer.Level
		harm  answer.Harm
	}
	var pairs []pair
	for _, m := range r.made {
		level, errL := strconv.Atoi(m.level)
		harm, errH := strconv.Atoi(m.harm)
		if errL != nil || errH != nil {
			return "?" // the test does not let it pass
		}
		pairs = append(pairs, pair{answer.Level(level), answer.Harm(harm)})
	}
	slices.SortFunc(pairs, func(a, b pair) int {
		return -10*int(a.level-b.level) - int(a.harm-b.harm)
	})
	var out []string
	for _, p := range slices.Compact(pairs) {
		out = append(out, fmt.Sprintf("%v (%v)", p.level, p.harm))
	}
	return strings.Join(out, ", ")
}

// each are the different texts of a field, "-" for none.
func (r row) each(field func(made) string) string {
	var out []string
	for _, m := range r.made {
		text := field(m)
		if text == "" {
			text = "-"
		}
		out = append(out, text)
	}
	slices.Sort(out)
	return strings.Join(slices.Compact(out), " or ")
}
