package setup

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// file is a file that a setup names, read up to its size limit.
type file struct {
	io.Reader
	name string
}

// open opens a file that the setup names and hands it to use. Names are taken
// from the folder of the setup file.
func (r *resolver) open(w Word, use func(*file) error) {
	name := w.Text
	if !filepath.IsAbs(name) {
		name = filepath.Join(r.setup.Dir, name)
	}
	f, err := os.Open(name)
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
