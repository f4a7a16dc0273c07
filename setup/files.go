package setup

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/packcheck/internal/nesting"
)

// file is a file that a setup names, read up to its size limit.
type file struct {
	io.Reader
	name string
}

// open opens a file that the setup names and hands it to use. Names are taken
// from the folder of the setup file, and none leads out of it unless the caller
// allowed that. A setup without a folder has none to look in.
func (r *resolver) open(w Word, use func(*file) error) {
	name := w.Text
	if !filepath.IsAbs(name) {
		name = filepath.Join(r.setup.Dir, name)
	}
	f, err := r.setup.openFile(name)
	if err == nil {
		var info fs.FileInfo
		if info, err = f.Stat(); err == nil && !info.Mode().IsRegular() {
			err = errors.New("not a plain file")
		}
	}
	if err != nil {
		var pe *fs.PathError
		if errors.As(err, &pe) {
			err = pe.Err // the name is printed already
		}
		r.foreign(w, name, err)
		return
	}
	defer f.Close()
	r.foreign(w, name, use(&file{Reader: f, name: name}))
}

// openFile opens a file in the setup's folder or below, or anywhere where that
// was allowed. What is no plain file is not waited for.
func (s *Setup) openFile(name string) (*os.File, error) {
	if s.AnyFolder {
		return OpenFile(name)
	}
	if s.Dir == "" {
		return nil, errNoFolder
	}
	folder, err := filepath.Abs(s.Dir)
	if err != nil {
		return nil, err
	}
	if name, err = filepath.Abs(name); err != nil {
		return nil, err
	}
	inside, err := filepath.Rel(folder, name)
	if err != nil || !filepath.IsLocal(inside) {
		return nil, errOutside
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	f, err := root.OpenFile(inside, os.O_RDONLY|nonBlocking, 0)
	if err != nil && !errors.Is(err, fs.ErrNotExist) && !errors.Is(err, fs.ErrPermission) {
		return nil, errOutside // a link that leads out
	}
	return f, err
}

var (
	errOutside  = errors.New("it lies outside the setup's own folder, which has to be allowed")
	errNoFolder = errors.New("this setup has no folder to look in, being no file, and was given none")
)

// table reads a TOML table file whole and refuses one that was made to exhaust
// the decoder, as it is refused in the setup itself.
func (f *file) table() (io.Reader, error) {
	data, err := io.ReadAll(io.LimitReader(f, maxBytes+1))
	switch {
	case err != nil:
		return nil, err
	case len(data) > maxBytes:
		return nil, errors.New("larger than 1 MiB")
	}
	if problem, line := nesting.Check(string(data), deepest); problem != "" {
		return nil, fmt.Errorf("line %d: %s", line, problem)
	}
	return bytes.NewReader(data), nil
}
