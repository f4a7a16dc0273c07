package setup

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/packcheck/internal/nesting"
	"example.org/packcheck/internal/quantity"
	"github.com/BurntSushi/toml"
)

// Bounds on a whole file. A setup with every key twice stays far below them.
const (
	maxBytes = 1 << 20
	maxLines = 20_000
	maxKeys  = 500
	maxNest  = 8
)

// deepest is what no honest setup file comes near.
var deepest = nesting.Bounds{Depth: maxNest, KeyParts: maxNest + 1}

// OpenFile opens a file to read. A pipe that nobody writes to is not waited for: it
// holds nothing. Errors are those of [os.OpenFile].
func OpenFile(path string) (*os.File, error) { return os.OpenFile(path, os.O_RDONLY|nonBlocking, 0) }

// Load reads a setup file. A file whose form is not in order gives [Faults], and with them
// those that [Setup.Parts] would find; one that cannot be opened or read gives the error
// of the operating system, wrapped. A setup of good form may be unfinished, or its labels
// may mean nothing: that [Setup.Parts] tells.
func Load(path string) (*Setup, error) { return LoadWith(path, Changes{}) }

// LoadWith is [Load] with changes made to what the file says. Faults of both
// come at once.
func LoadWith(path string, c Changes) (*Setup, error) {
	f, err := OpenFile(path)
	if err != nil {
		return nil, fmt.Errorf("setup: %w", err)
	}
	defer f.Close()
	return read(f, decoder{name: path, dir: filepath.Dir(path)}, c)
}

// Read reads a setup from r; the name stands in messages. A setup that is not
// in order gives [Faults]. It may come from a stranger: no file that it names is
// opened, see [Changes.Dir].
func Read(r io.Reader, name string) (*Setup, error) { return ReadWith(r, name, Changes{}) }

// ReadWith is [Read] with changes made to what r says. Faults of both come at
// once.
func ReadWith(r io.Reader, name string, c Changes) (*Setup, error) {
	return read(r, decoder{name: name, dir: c.Dir}, c)
}

func read(r io.Reader, d decoder, c Changes) (*Setup, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("setup: reading %s: %w", d.name, err)
	}
	var s *Setup
	if text, ok := d.text(data); ok {
		s = d.decode(text)
	}
	whole := s != nil
	if !whole {
		s = &Setup{Name: d.name, Dir: d.dir}
	}
	if s, err = d.finish(s, c, whole); err != nil {
		return nil, err
	}
	return s, nil
}

// decoder turns one file into a Setup and gathers what is wrong.
type decoder struct {
	name   string
	dir    string // of the files that it names
	md     toml.MetaData
	faults Faults
}

func (d *decoder) fault(line int, key, read, want string) {
	d.faults = append(d.faults, Fault{File: d.name, Line: line, Key: key, Read: shorten(read), Want: want})
}

// text checks the bytes of a file before anything is decoded. It reports
// whether it is worth going on.
func (d *decoder) text(data []byte) (string, bool) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	bad := func(line int, read, want string) (string, bool) {
		d.fault(line, "", read, want)
		return "", false
	}
	switch {
	case len(data) > maxBytes:
		return bad(0, "more than 1 MiB", "a setup file of at most 1 MiB")
	case bytes.HasPrefix(data, []byte("\xff\xfe")), bytes.HasPrefix(data, []byte("\xfe\xff")):
		return bad(0, "UTF-16", `a file saved as UTF-8 (in an editor: "save as", encoding UTF-8)`)
	case bytes.HasPrefix(data, []byte("PK\x03\x04")), bytes.HasPrefix(data, []byte(`{\rtf`)), bytes.HasPrefix(data, []byte("\xd0\xcf\x11\xe0")):
		return bad(0, "a word processor's file", `a plain text file (in the word processor: "save as", plain text, UTF-8)`)
	case bytes.IndexByte(data, 0) >= 0:
		return bad(lineAt(data, bytes.IndexByte(data, 0)), "a zero byte", "a text file saved as UTF-8")
	}
	if !utf8.Valid(data) {
		i := 0
		for i < len(data) {
			r, n := utf8.DecodeRune(data[i:])
			if r == utf8.RuneError && n == 1 {
				break
			}
			i += n
		}
		return bad(lineAt(data, i), fmt.Sprintf("byte %#x", data[i]), "a text file saved as UTF-8")
	}
	// Old Macintosh line ends would make one long line of the file.
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	text = strings.ReplaceAll(text, "\r", "\n")
	if n := strings.Count(text, "\n"); n > maxLines {
		return bad(0, fmt.Sprintf("%d lines", n), fmt.Sprintf("at most %d lines", maxLines))
	}
	return text, true
}

// lineAt returns the 1-based line of a byte.
func lineAt(data []byte, at int) int { return bytes.Count(data[:at], []byte("\n")) + 1 }

// parse runs the TOML parser. Its own panics, which it raises for what its
// authors thought impossible, become errors.
func parse(text string) (tree map[string]toml.Primitive, md toml.MetaData, err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("this cannot be read as TOML")
		}
	}()
	md, err = toml.Decode(text, &tree)
	return tree, md, err
}

// decode parses the text. After a mistake in one line it goes on without that
// line, so that one missing quote does not hide the other mistakes of a file.
func (d *decoder) decode(text string) *Setup {
	const retries = 30
	lines := strings.Split(text, "\n")
	for range retries {
		text := strings.Join(lines, "\n")
		if _, line := nesting.Check(text, deepest); line > 0 {
			d.fault(line, "", "brackets or dotted names within one another", fmt.Sprintf("at most %d levels", maxNest))
			return nil
		}
		tree, md, err := parse(text)
		if err == nil {
			d.md = md
			if n := len(md.Keys()); n > maxKeys {
				d.fault(0, "", fmt.Sprintf("%d keys", n), fmt.Sprintf("at most %d", maxKeys))
				return nil
			}
			return d.whole(tree)
		}
		line := d.syntax(err, lines)
		if line == 0 {
			return nil
		}
		lines[line-1] = ""
	}
	return nil
}

// syntax notes one mistake in the TOML itself. It returns the line to leave out
// for another try, 0 when the rest of the file cannot be trusted without it.
func (d *decoder) syntax(err error, lines []string) int {
	line, message := nesting.Unreadable(err)
	if line < 1 || line > len(lines) {
		d.fault(0, "", "the file", "TOML: "+plainMessage(message))
		return 0
	}
	read := strings.TrimSpace(lines[line-1])
	name, value, isPair := strings.Cut(read, "=")
	want := "TOML: " + plainMessage(message)
	key, example := "", `the value in quotes, such as "7 Ah"`
	if isPair {
		key = strings.Trim(strings.TrimSpace(name), `"'`)
		table := headerAbove(lines, line-1)
		if f := registry.Get().field(strings.TrimPrefix(table, "original."), key); f != nil {
			example = "the value in quotes, such as " + f.Quoted()
			if f.What == "yes or no" {
				example = "true or false"
			}
		}
		key = strings.TrimPrefix(table+"."+key, ".")
	}
	switch value = strings.TrimSpace(value); {
	case strings.Contains(message, "already been defined"):
		want = "each table and key once only"
	case strings.HasPrefix(read, "["):
		want = "a table name in square brackets, such as [pack]"
	case isPair && strings.ContainsAny(value, "\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb"):
		want = "straight quotes, not the curly ones of a word processor: " + strconv.Quote(strings.Trim(value, "\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb\"' "))
	case isPair && value != "" && strings.IndexByte(`"'[{`, value[0]) < 0:
		want = example
	case isPair && strings.Contains(message, "strings cannot contain newlines"):
		want = "a closing quote on the same line"
	case isPair && strings.Contains(message, "top-level item to end"):
		want = "nothing behind the value but a # comment"
	case isPair && value == "":
		want = example
	}
	d.fault(line, shorten(key), read, want)
	multi := strings.Contains(read, `"""`) || strings.Contains(read, "'''")
	if !isPair || multi || value != "" && strings.IndexByte("[{", value[0]) >= 0 {
		return 0
	}
	return line
}

// headerAbove returns the name in the nearest table header above a line.
func headerAbove(lines []string, at int) string {
	for i := at - 1; i >= 0; i-- {
		l := strings.TrimSpace(lines[i])
		if strings.HasPrefix(l, "[") && !strings.HasPrefix(l, "[[") {
			name, _, _ := strings.Cut(strings.TrimPrefix(l, "["), "]")
			return strings.TrimSpace(name)
		}
	}
	return ""
}

// plainMessage makes a parser's message fit on one line.
func plainMessage(s string) string {
	return shorten(strings.Join(strings.Fields(strings.TrimPrefix(s, "toml: ")), " "))
}

// shorten keeps what was read to a readable length.
func shorten(s string) string {
	const most = 80
	return quantity.Clip(s, most)
}
