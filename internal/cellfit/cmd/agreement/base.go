package main

import (
	"fmt"

	"example.org/packcheck/chemistry"
)

// start is the profile that the dataset's fit starts from: the built-in one, or
// the member that is another specimen of the same cell.
func (d dataset) start() (chemistry.Profile, error) {
	if d.like != "" {
		m, ok := chemistry.Builtin().Member(d.like)
		if !ok {
			return chemistry.Profile{}, fmt.Errorf("no member %q", d.like)
		}
		return m.Profile, nil
	}
	p, ok := chemistry.Builtin().Profile(d.base)
	if !ok {
		return chemistry.Profile{}, fmt.Errorf("no profile %q", d.base)
	}
	return p, nil
}
