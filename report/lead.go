package report

import (
	"strings"

	"example.org/packcheck/answer"
)

// Lead returns the first three lines of the text report: verdict, gravest reason and next
// step. Each is a line of at most [Columns] characters, or two such with a line end between
// them where none of its sentences ends on one; none has a line end behind it.
// They are for an answer that is still growing; a finished one is a report, with
// its safety lines. The error is that of [Write] for an unfinished assessment.
func Lead(a *answer.Assessment) ([3]string, error) {
	var out [3]string
	if unfinished(a) {
		return out, errUnfinished
	}
	lines, _ := newBuilder(a).lead()
	for i, f := range lines[:min(len(lines), len(out))] {
		out[i] = strings.Join(wrap(f.name+": ", leadHang, inBox(f.value), Columns), "\n")
	}
	return out, nil
}
