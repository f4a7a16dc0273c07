package reckon

import (
	"slices"

	"example.org/packcheck/answer"
	"example.org/packcheck/battery"
	"example.org/packcheck/charge"
	"example.org/packcheck/cutoff"
	"example.org/packcheck/drive"
	"example.org/packcheck/internal/judge"
	"example.org/packcheck/wiring"
)

// Explanations returns the explanations of all findings there are, package by
// package.
func Explanations() []answer.Explanation {
	return slices.Concat(
		drive.Explanations(), wiring.Explanations(), battery.Explanations(), cutoff.Explanations(), charge.Explanations(), judge.Explanations(),
	)
}

// Explain says what stands behind a finding; false where no finding has that
// code.
func Explain(code string) (answer.Explanation, bool) { return answer.Explain(Explanations(), code) }
