// Package packcheck answers whether a battery suits a children's battery
// ride-on vehicle: how fast it goes, how long it lasts with this child on this
// ground, how hard the first shove at launch hits, what keeps the pack from
// being drained to ruin, which charger is right, and what must change first.
//
// For most uses call [Load] with a setup file and [Assess] with what it
// returns; package report prints the [Assessment].
//
//	s, err := packcheck.Load("tractor.toml")
//	if err != nil {
//		return err // one line for every fault in the file
//	}
//	a, err := packcheck.Assess(s)
//
// # Model
//
// The setup's gaps are filled with ranges, each marked as assumed. One fully
// specified case (package ride) is computed with everything at its likely
// value, then with each unknown at either end, then at the corners that matter:
// for each figure the few unknowns that move it most, all together at the end
// that raises it and at the end that lowers it.
//
// # Assumptions
//
// Whatever the setup does not say is listed in the Assessment, the most
// important first, and so is what to measure to narrow the answer.
//
// # Limits
//
// It computes; it does not test. What depends on an unknown is judged at the
// unknown's worse end as well, and the verdict is never better than that
// allows. See the README for what is not modelled.
//
// # Sources
//
// Every limit names its source in the finding that it is held against;
// Assessment.Sources lists those that the answer rests on.
package packcheck

import (
	"io"

	"example.org/packcheck/setup"
)

// Load reads a setup file. What is wrong with it comes back as [setup.Faults],
// all of it at once.
func Load(path string) (*setup.Setup, error) { return setup.Load(path) }

// Read reads a setup from r; name stands in for the file name in faults.
func Read(r io.Reader, name string) (*setup.Setup, error) { return setup.Read(r, name) }
