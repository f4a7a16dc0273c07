// Package rows keeps named rows sorted by name. Unlike a map it can be written
// out as plain data, which costs a program nothing at its start, and it is walked
// in the same order every time.
package rows

import "slices"

// Row is one row with its name.
type Row[V any] struct {
	Name  string
	Value V
}

// Rows are sorted by name, each name once. The nil Rows are empty.
type Rows[V any] []Row[V]

// Get returns the row of this name.
func (r Rows[V]) Get(name string) (V, bool) {
	if i, ok := r.find(name); ok {
		return r[i].Value, true
	}
	var none V
	return none, false
}

// Has reports whether there is a row of this name.
func (r Rows[V]) Has(name string) bool {
	_, ok := r.find(name)
	return ok
}

// Names returns all names, sorted.
func (r Rows[V]) Names() []string {
	names := make([]string, len(r))
	for i := range r {
		names[i] = r[i].Name
	}
	return names
}

// With returns rows that have this one as well, in place of one of the same
// name; r stays as it is.
func (r Rows[V]) With(name string, value V) Rows[V] {
	i, ok := r.find(name)
	out := make(Rows[V], 0, len(r)+1)
	out = append(append(out, r[:i]...), Row[V]{name, value})
	if ok {
		i++
	}
	return append(out, r[i:]...)
}

// Without returns the rows but for the one of this name; r stays as it is.
func (r Rows[V]) Without(name string) Rows[V] {
	i, ok := r.find(name)
	if !ok {
		return r
	}
	return slices.Concat(r[:i], r[i+1:])
}

// find is a search by halves that copies no row.
func (r Rows[V]) find(name string) (int, bool) {
	lo, hi := 0, len(r)
	for lo < hi {
		if mid := (lo + hi) / 2; r[mid].Name < name {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	return lo, lo < len(r) && r[lo].Name == name
}
