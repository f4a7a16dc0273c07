package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"example.org/packcheck"
	"example.org/packcheck/report"
	"example.org/packcheck/setup"
)

// answered is the line of one setup.
type answered struct {
	line  []byte
	code  int // exitFine, exitInput or exitOther
	share float64
}

// batchFault is one thing that is wrong with a setup of a batch.
type batchFault struct {
	Line int    `json:"line,omitempty"` // of a whole setup file
	Key  string `json:"key,omitempty"`
	Read string `json:"read,omitempty"`
	Want string `json:"want,omitempty"`
	Text string `json:"text"` // all of it in words
}

// head is what stands in front of an answer.
type head struct {
	Line  int             `json:"line,omitempty"`
	File  string          `json:"file,omitempty"`
	ID    json.RawMessage `json:"id,omitempty"`
	Error []batchFault    `json:"error,omitempty"`
}

// judgedItem reads and judges one setup. Whatever goes wrong with it is in its line:
// the others are judged all the same.
func judgedItem(i item, o packcheck.Options) (out answered) {
	h := head{Line: i.line}
	if i.text == nil {
		h.File = filepath.Base(i.name)
	}
	defer func() {
		if x := recover(); x != nil {
			out = h.failed(exitOther, fmt.Errorf("packcheck broke on this setup, which is a mistake of ours: %v", x))
		}
		out.share = i.share
	}()
	s, err := h.readItem(i)
	if err != nil {
		return h.failed(exitInput, err)
	}
	a, err := packcheck.AssessWith(context.Background(), s, o)
	if err != nil {
		return h.failed(codeOf(asInput(err)), err)
	}
	front, err := json.Marshal(h)
	if err != nil {
		return h.failed(exitOther, err)
	}
	last := len(front) - 1
	line := bytes.NewBuffer(front[:last])
	if err := report.Write(line, a, report.Options{Format: report.FormatJSON, OneLine: true}); err != nil {
		return h.failed(exitOther, err)
	}
	line.Bytes()[last] = ',' // in place of the braces between the two
	return answered{line: line.Bytes()}
}

// codeOf is the exit code that an error leads to.
func codeOf(err error) int {
	var coded codedError
	if errors.As(err, &coded) {
		return coded.code
	}
	return exitOther
}

// failed is the line of a setup without an answer.
func (h head) failed(code int, err error) answered {
	var faults setup.Faults
	h.Error = nil
	if errors.As(err, &faults) {
		for _, f := range faults {
			h.Error = append(h.Error, batchFault{f.Line, f.Key, f.Read, f.Want, f.Error()})
		}
	} else {
		h.Error = []batchFault{{Text: err.Error()}}
	}
	line, err := json.Marshal(h)
	if err != nil { // cannot be: the id was read as JSON
		line = fmt.Appendf(nil, `{"line":%d,"error":[{"text":"not written"}]}`, h.Line)
	}
	return answered{line: append(line, '\n'), code: code}
}

// readItem reads the setup of an item and notes its id.
func (h *head) readItem(i item) (*setup.Setup, error) {
	if i.text == nil {
		return setup.LoadWith(i.name, setup.Changes{AnyFolder: i.anyFolder})
	}
	if i.fault != "" {
		return nil, i.wrong("", i.fault, "a setup in one line")
	}
	object, twice, ok := objectOf(i.text)
	if !ok {
		return nil, i.wrong("", shown(i.text), `an object in one line, such as {"pack.label": "12 V 7 Ah"}`)
	}
	h.ID = object["id"]
	delete(object, "id")
	values := make(map[string]string, len(object))
	var faults setup.Faults
	for key, raw := range twice {
		faults = append(faults, setup.Fault{File: i.name, Key: key, Read: shown(raw), Want: "each key once only"})
	}
	for key, raw := range object {
		text, want := textOf(key, raw)
		if want != "" {
			faults = append(faults, setup.Fault{File: i.name, Key: key, Read: shown(raw), Want: want})
		}
		values[key] = text
	}
	if len(faults) > 0 {
		return nil, sortedFaults(append(faults, i.othersWrong(values, faults)...))
	}
	text, whole := values["toml"]
	if whole && len(values) > 1 {
		return nil, i.wrong("toml", "other keys beside it", "a whole setup file, or keys, but not both")
	}
	if whole {
		return setup.ReadWith(strings.NewReader(text), i.name, i.place())
	}
	return setup.OfWith(values, i.name, i.place())
}

// textOf is a value as a setup file has it: a text, or a number or a yes that may stand
// there without quotes. Want is what would be right in place of anything else; text is
// then what stands there, since the key is not missing.
func textOf(key string, raw json.RawMessage) (text, want string) {
	if json.Unmarshal(raw, &text) == nil && !bytes.Equal(raw, []byte("null")) {
		return text, ""
	}
	switch raw[0] {
	case '{':
		return string(raw), fmt.Sprintf(`keys with their table in front: "%s.KEY"`, key)
	case '[', 'n':
		return string(raw), `a text, as it stands in a setup file: "12 V"`
	}
	if key == "toml" {
		return string(raw), "a whole setup file as a text"
	}
	return string(raw), ""
}

// objectOf parts one object into its keys, and those that come again with what stands
// there; not ok where the text is anything else.
func objectOf(text []byte) (object, twice map[string]json.RawMessage, ok bool) {
	in := json.NewDecoder(bytes.NewReader(text))
	if first, err := in.Token(); err != nil || first != json.Delim('{') {
		return nil, nil, false
	}
	object, twice = map[string]json.RawMessage{}, map[string]json.RawMessage{}
	for in.More() {
		name, err := in.Token()
		key, isKey := name.(string)
		var raw json.RawMessage
		if err != nil || !isKey || in.Decode(&raw) != nil {
			return nil, nil, false
		}
		if _, again := object[key]; again {
			twice[key] = raw
			continue
		}
		object[key] = raw
	}
	if _, err := in.Token(); err != nil { // the end of the object
		return nil, nil, false
	}
	_, err := in.Token()
	return object, twice, errors.Is(err, io.EOF)
}

// place is where files are looked for that the setup names.
func (i item) place() setup.Changes { return setup.Changes{Dir: i.dir, AnyFolder: i.anyFolder} }

func (i item) wrong(key, read, want string) error {
	return setup.Faults{{File: i.name, Key: key, Read: read, Want: want}}
}

// shown is the beginning of what was read.
func shown(text []byte) string {
	const most = 40
	if len(text) > most {
		return strings.ToValidUTF8(string(text[:most]), "") + "..."
	}
	return strings.ToValidUTF8(string(text), "?")
}

// othersWrong are the faults of the keys that are texts, told in the same round as
// those of the others.
func (i item) othersWrong(values map[string]string, told setup.Faults) setup.Faults {
	if _, whole := values["toml"]; whole {
		return nil
	}
	s, err := setup.OfWith(values, i.name, i.place())
	if err == nil {
		_, err = s.Parts()
	}
	var all setup.Faults
	errors.As(err, &all)
	return slices.DeleteFunc(slices.Clone(all), func(f setup.Fault) bool {
		return slices.ContainsFunc(told, func(t setup.Fault) bool { return t.Key == f.Key })
	})
}
