// Package report writes one [answer.Assessment] as text, Markdown, BBCode,
// HTML or JSON.
//
// For most uses call [Write] with the format that the reader needs, or
// [Text] for the plain one.
//
// # Model
//
// The assessment is made into one document: titled sections of name/value
// lines, paragraphs, lists and findings. Text, Markdown and BBCode are thin
// writers over that document, so that each holds what the others hold. JSON is
// the assessment itself.
//
// There are three lengths. The page, which is what comes without options, keeps
// to [PageLines] lines of [Columns] characters and to [PageCharacters]
// characters in the dialects for forums: the answer, why, the few figures that
// people ask for, ways out, what to find out next, how sure it is, safety. The
// full report has everything, the short one ten lines.
//
// HTML is one file without scripts that loads nothing: the page with a drawing
// of the circuit, ranges beside the original's, plots of one course of it and
// lists to tick, and everything else folded. It prints on two sheets.
//
// What a report holds, and in which order, follows from the typed fields of the
// assessment alone. Its sentences are printed and never read: reworded, they
// leave the same report. In front of a finding stands how sure it is: nothing
// where it holds in nine draws of ten, "Likely, in 7 of 10", "Possibly, in 3 of 10" or
// "Seldom, in 1 of 30", the first of a report with what it is of. A figure in such a
// finding is that of the vehicles that have it, and not of all. The page explains behind its first use what somebody at home would have
// to look up, and names no option that nobody with a printout could type.
//
// Every figure with a name is rounded in one place, to what its range supports,
// and printed the same everywhere: the likely value, and in brackets where eight
// of ten lie, in the user's units first.
//
// The first three lines of every format but JSON answer whether it may be used
// like this, say the gravest reason and the next step, because many readers
// paste no more than that. Where no sentence or clause of one ends on a line of text it
// takes two; none ends in dots. JSON carries reason and next step in "headline", as sure as
// here, and before them the answer in other words, without its level. Its sentences
// have metric units in front, whatever the user wrote in.
//
// # Assumptions
//
// No string of the assessment is trusted: titles and labels come from whoever
// wrote the setup. Whatever could end a code box, open a tag or obey a terminal
// is taken out or escaped.
//
// # Limits
//
// Text, Markdown and BBCode are ASCII. Letters that have a common ASCII
// spelling get it, others print as question marks; JSON keeps them. A figure
// that does not exist prints as "not known" or is said in words, and is null in
// JSON; it is never zero.
//
// Where findings are many, the full report tells those of wear and parts in a few
// words; of the sources of what may hurt somebody it says what they are, the
// others it names. It has every part, figure, assumption, source, caution and note. Where
// it would pass 250 lines of text its sections run on into one another; where that is
// not enough, it is longer. What to change is told where there are no ways out: these
// are sets of changes, each computed. JSON holds everything, whole.
//
// The safety lines are part of every format and length. No option removes
// them.
package report

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.org/packcheck/answer"
)

// Format names a form of the report.
type Format string

// The formats.
const (
	FormatText     Format = "text"
	FormatMarkdown Format = "markdown"
	FormatBBCode   Format = "bbcode"
	FormatHTML     Format = "html"
	FormatJSON     Format = "json"
)

// Formats returns every format, the plainest first.
func Formats() []Format {
	return []Format{FormatText, FormatMarkdown, FormatBBCode, FormatHTML, FormatJSON}
}

// ParseFormat finds the format of a name, which is its text in any case. The
// error lists the names there are.
func ParseFormat(name string) (Format, error) {
	f := Format(strings.ToLower(strings.TrimSpace(name)))
	if slices.Contains(Formats(), f) {
		return f, nil
	}
	names := make([]string, len(Formats()))
	for i, known := range Formats() {
		names[i] = string(known)
	}
	return "", fmt.Errorf("unknown format %q (there are %s)", name, strings.Join(names, ", "))
}

// Options choose the form of a report. The zero value is the page as text.
type Options struct {
	Format Format // empty means [FormatText]
	Full   bool   // everything, in place of the page
	Short  bool   // ten lines at most, safety lines included; goes before Full

	OneLine bool // whole JSON on one line, for files with an answer in each

	// Explain says what stands behind a finding's code; HTML folds it in. Nil
	// leaves it out.
	Explain func(code string) (answer.Explanation, bool)
}

var errUnfinished = errors.New("report: not a finished assessment")

// unfinished reports whether an assessment has not been made whole.
func unfinished(a *answer.Assessment) bool {
	return a == nil || a.Schema != answer.Schema || a.Headline[0] == ""
}

// Write writes the assessment as the options say. The report is made whole
// before the first byte goes out, and goes out in one call of w.Write. Errors
// are those of w, an unknown format, and an assessment that nobody finished:
// without schema or verdict it would print as one that found nothing wrong.
func Write(w io.Writer, a *answer.Assessment, o Options) error {
	if unfinished(a) {
		return errUnfinished
	}
	out, err := render(withCautions(a), o)
	if err != nil {
		return err
	}
	_, err = w.Write(out)
	return err
}

// Text writes the page as ASCII lines of at most [Columns] characters.
func Text(w io.Writer, a *answer.Assessment) error {
	return Write(w, a, Options{Format: FormatText})
}

// Markdown writes the page as CommonMark.
func Markdown(w io.Writer, a *answer.Assessment) error {
	return Write(w, a, Options{Format: FormatMarkdown})
}

// BBCode writes the page in the markup of web forums.
func BBCode(w io.Writer, a *answer.Assessment) error {
	return Write(w, a, Options{Format: FormatBBCode})
}

// JSON writes the assessment as indented JSON. Numbers have nine digits that
// count; what is not finite is null; lists are never null.
func JSON(w io.Writer, a *answer.Assessment) error {
	return Write(w, a, Options{Format: FormatJSON})
}

// Short writes the text report in ten lines at most.
func Short(w io.Writer, a *answer.Assessment) error {
	return Write(w, a, Options{Format: FormatText, Short: true})
}

// render makes the bytes of a report.
func render(a *answer.Assessment, o Options) ([]byte, error) {
	if o.Format == FormatJSON {
		if o.Short {
			return shortJSON(a)
		}
		return wholeJSON(a, o.OneLine)
	}
	if o.Format == FormatHTML {
		if o.Short {
			return shortHTML(a), nil
		}
		return writeHTML(a, o), nil
	}
	return written(o.Format, documentOf(a, o))
}

// written makes the bytes of a document in one of the dialects.
func written(f Format, doc *document) ([]byte, error) {
	var d dialect
	switch f {
	case FormatText, "":
		d = &textDialect{wide: doc.wide}
	case FormatMarkdown:
		d = &markdownDialect{}
	case FormatBBCode:
		d = &bbcodeDialect{}
	default:
		return nil, fmt.Errorf("report: unknown format %q", f)
	}
	return finish(doc.render(d)), nil
}

// documentOf builds the document of the length that is wanted.
func documentOf(a *answer.Assessment, o Options) *document {
	switch {
	case o.Short:
		return buildShort(a)
	case o.Full:
		return build(a)
	}
	return buildPage(a)
}

// finish ends a report in one line end.
func finish(out []byte) []byte { return append(bytes.TrimRight(out, "\n"), '\n') }

// standing are the safety lines of an assessment that brings none. They rest
// on nothing that was computed.
var standing = [...]string{
	"The maker's instructions, local codes and licensed practice come before this report.",
	"A changed vehicle no longer is the one that was tested when it was sold.",
	"These are computed figures. Try the vehicle without a child first, and stay within reach after that.",
}

// withCautions makes sure that no report leaves without safety lines. The
// assessment of the caller is not changed.
func withCautions(a *answer.Assessment) *answer.Assessment {
	for _, c := range a.Cautions {
		if clean(c) != "" {
			return a
		}
	}
	b := *a
	b.Cautions = standing[:]
	return &b
}
