package page

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// mostBeside is how many batteries stand beside the one that is asked about.
const mostBeside = reckon.MostCompared - 1

// compare sets other batteries beside the one that is asked about, as markup.
func (s *Session) compare(r *Request) Reply {
	c, faults := s.sideBySide(r)
	if faults != nil {
		return Reply{Faults: faults}
	}
	markup, err := report.HTMLComparison(c)
	if err != nil {
		return said(err.Error())
	}
	return Reply{Text: markup}
}

// sideBySide sets other batteries beside the one that is asked about, in the same
// vehicle and on the same draws. A fault of one of them has its place as the key:
// "0" is the first.
func (s *Session) sideBySide(r *Request) (*answer.Comparison, []Fault) {
	if s.beside != nil && maps.Equal(s.besideGiven, r.Given) && slices.Equal(s.besidePacks, r.Packs) {
		return s.beside, nil
	}
	if faults := elsewhere(r.Given); faults != nil {
		return nil, faults
	}
	own, err := setup.Of(r.Given)
	if err != nil {
		return nil, faultsOf(err)
	}
	setups := []*setup.Setup{own}
	var faults []Fault
	for i, label := range r.Packs {
		place := fmt.Sprint(i)
		if wrong := bounded(map[string]string{answer.KeyPackLabel: label}); wrong != nil {
			faults = append(faults, Fault{place, wrong[0].Says})
			continue
		}
		other, err := own.Change(setup.Changes{Pack: label})
		if err == nil {
			_, err = other.Parts()
		}
		if err != nil {
			faults = append(faults, Fault{place, oneOf(err).Says})
			continue
		}
		setups = append(setups, other)
	}
	if faults != nil {
		return nil, faults
	}
	c, err := reckon.Compare(setups, reckon.Options{Draws: ManyDraws})
	if err != nil {
		return nil, faultsOf(err)
	}
	s.besideGiven, s.besidePacks, s.beside = maps.Clone(r.Given), slices.Clone(r.Packs), c
	return c, nil
}

// oneOf is the first fault of an error, in a field of its own: what key it is of says the
// field.
func oneOf(err error) Fault {
	var list setup.Faults
	if !errors.As(err, &list) {
		return faultsOf(err)[0]
	}
	first := list[0]
	if first.Key == answer.KeyPackLabel {
		first.Key = ""
	}
	out := faultsOf(setup.Faults{first})[0]
	out.Says = capital(out.Says)
	return out
}
