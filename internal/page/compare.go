package page

import (
	"errors"
	"fmt"

	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// compare sets other batteries beside the one that is asked about, in the same
// vehicle and on the same draws. A fault of one of them has its place as the key:
// "0" is the first.
func compare(r *Request) Reply {
	if faults := elsewhere(r.Given); faults != nil {
		return Reply{Faults: faults}
	}
	own, err := setup.Of(r.Given)
	if err != nil {
		return Reply{Faults: faultsOf(err)}
	}
	setups := []*setup.Setup{own}
	var faults []Fault
	for i, label := range r.Packs {
		place := fmt.Sprint(i)
		if wrong := bounded(map[string]string{"pack.label": label}); wrong != nil {
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
		return Reply{Faults: faults}
	}
	c, err := reckon.Compare(setups, reckon.Options{Draws: ManyDraws})
	if err != nil {
		return Reply{Faults: faultsOf(err)}
	}
	markup, err := report.HTMLComparison(c)
	if err != nil {
		return said(err.Error())
	}
	return Reply{Text: markup}
}

// oneOf is the first fault of an error.
func oneOf(err error) Fault {
	var list setup.Faults
	if errors.As(err, &list) {
		return faultsOf(list[:1])[0]
	}
	return faultsOf(err)[0]
}
