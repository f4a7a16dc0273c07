package report

import "example.org/packcheck/answer"

// Lead returns the first three lines of the text report, without line ends:
// verdict, gravest reason and next step, each of at most [Columns] characters.
// They are for an answer that is still growing; a finished one is a report, with
// its safety lines. The error is that of [Write] for an unfinished assessment.
func Lead(a *answer.Assessment) ([3]string, error) {
	var out [3]string
	if unfinished(a) {
		return out, errUnfinished
	}
	lines, _ := newBuilder(a).lead()
	for i, f := range lines[:min(len(lines), len(out))] {
		out[i] = inBox(f.name + ": " + f.value)
	}
	return out, nil
}
