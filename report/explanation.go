package report

import (
	"bytes"
	"io"

	"example.org/packcheck/answer"
)

// Explanation writes half a page on one finding as text, in lines of at most
// [Columns] characters.
func Explanation(w io.Writer, e answer.Explanation) error {
	s := section{title: clean(e.Code)}
	for _, part := range partsOf(e) {
		s.text = append(s.text, part.name+" "+part.value)
	}
	t := &textDialect{}
	t.block("", 0, s.title)
	for _, p := range s.text {
		t.out.WriteByte('\n')
		t.block("", 0, p)
	}
	_, err := w.Write(append(bytes.TrimRight(t.bytes(), "\n"), '\n'))
	return err
}

// partsOf are the parts of an explanation with their names.
func partsOf(e answer.Explanation) []fact {
	return []fact{
		{"What it means.", clean(e.Means)},
		{"Why it hurts.", clean(e.Hurts)},
		{"Where the limit comes from.", clean(e.Limit)},
		{"What to do.", clean(e.Do)},
	}
}
