package main

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"

	"example.org/packcheck/setup"
)

// item is one setup to be judged, unread.
type item struct {
	line      int    // of the input, from 1; 0 where it is a file of its own
	name      string // stands in messages; of a file of its own, where it is
	dir       string // where files that it names are looked for
	text      []byte // of a line; nil where it is a file of its own
	anyFolder bool   // they may be anywhere
	fault     string // why it cannot be read at all
	share     float64
}

// input gives one setup after the other, and io.EOF behind the last.
type input interface {
	next() (item, error)
	close()
}

// longestLine bounds a line of the input, as package setup bounds a file.
const longestLine = 1 << 20

// lines are setups that stand in the lines of a stream.
type lines struct {
	r      *bufio.Reader
	closer io.Closer // nil for standard input
	name   string
	dir    string
	line   int
	read   int64
	of     int64 // bytes altogether; 0 = not known
}

func newLines(r io.Reader, name, dir string, size int64) *lines {
	return &lines{r: bufio.NewReaderSize(r, 64<<10), name: name, dir: dir, of: size}
}

func newFile(name string, size int64) (*lines, error) {
	f, err := setup.OpenFile(name)
	if err != nil {
		return nil, err
	}
	l := newLines(f, name, filepath.Dir(name), size)
	l.closer = f
	return l, nil
}

func (l *lines) close() {
	if l.closer != nil {
		l.closer.Close()
	}
}

// next returns the next line that is not empty.
func (l *lines) next() (item, error) {
	for {
		text, tooLong, err := l.readLine()
		if err != nil && (!errors.Is(err, io.EOF) || len(text) == 0) {
			return item{}, err
		}
		l.line++
		if l.line == 1 {
			text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
		}
		if text = bytes.TrimSpace(text); len(text) == 0 {
			continue
		}
		one := item{line: l.line, name: fmt.Sprintf("%s:%d", l.name, l.line), dir: l.dir, text: text}
		if tooLong {
			one.fault = fmt.Sprintf("longer than %d KiB", longestLine>>10)
		}
		if l.of > 0 {
			one.share = float64(l.read) / float64(l.of)
		}
		return one, nil
	}
}

// readLine reads to the end of a line, of which it keeps no more than the longest
// that is taken.
func (l *lines) readLine() (text []byte, tooLong bool, err error) {
	for {
		piece, err := l.r.ReadSlice('\n')
		l.read += int64(len(piece))
		if len(text)+len(piece) <= longestLine {
			text = append(text, piece...)
		} else {
			tooLong = true
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return text, tooLong, err
		}
	}
}

// folder is setups that are files of their own.
type folder struct {
	files []string
	given int
}

func newFolder(name string) (*folder, error) {
	files, err := filepath.Glob(filepath.Join(escaped(name), "*.toml"))
	if err != nil {
		return nil, err
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("no file in the folder %q ends in .toml", name)
	}
	slices.Sort(files)
	return &folder{files: files}, nil
}

// escaped takes the meaning from signs that stand for others in patterns.
func escaped(name string) string {
	var b bytes.Buffer
	for _, r := range name {
		if os.PathSeparator != '\\' && (r == '*' || r == '?' || r == '[' || r == '\\') {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}

func (f *folder) close() {}

func (f *folder) next() (item, error) {
	if f.given == len(f.files) {
		return item{}, io.EOF
	}
	name := f.files[f.given]
	f.given++
	return item{name: name, dir: filepath.Dir(name), share: float64(f.given) / float64(len(f.files))}, nil
}
