package report

import (
	"io"
	"slices"

	"example.org/packcheck/answer"
)

// WriteBeside writes the page of an answer and, above its safety lines, how others
// stand beside it: one text to hand on, in the dialect that the options name. Errors
// are those of [Write] and [WriteComparison], and a format that is no dialect.
func WriteBeside(w io.Writer, a *answer.Assessment, c *answer.Comparison, o Options) error {
	if unfinished(a) || !finished(c) {
		return errUnfinished
	}
	doc, other := documentOf(withCautions(a), Options{}), comparisonPage(c)
	beside := []section{{title: "Beside other batteries", text: []string{"Battery A is the one above; the letters of ways out have nothing to do with these."}, facts: other.lead}}
	for _, s := range other.sections[:len(other.sections)-1] { // its safety lines stand there already
		s.sub = o.Format != FormatText && o.Format != "" // where titles below a title stand in lines of their own
		beside = append(beside, s)
	}
	safety := len(doc.sections) - 1
	doc.sections = slices.Insert(doc.sections, safety, beside...)
	out, err := written(o.Format, doc)
	if err != nil {
		return err
	}
	_, err = w.Write(out)
	return err
}
