package setup

import (
	"reflect"
	"time"

	"example.org/packcheck/answer"
)

// Value is one quantity of a setup file. Its Range is in the unit that
// [Keys] names; the zero Value was not given.
type Value struct {
	answer.Range
	Given  bool          // the file has it
	Text   string        // as written
	Key    string        // full key, such as "original.pack.capacity"
	Line   int           // 1-based
	System answer.System // in which units

	read answer.Range // the Range as it was read, to know one that was set otherwise
}

// Word is one text of a setup file; the zero Word was not given.
type Word struct {
	Text  string // one of the right words in its usual spelling, or free text
	Given bool
	Key   string
	Line  int

	read string // as that of Value
}

// Flag is a yes or no of a setup file; the zero Flag was not given.
type Flag struct {
	Yes   bool
	Given bool
	Key   string
	Line  int
}

// Date is a day of a setup file; the zero Date was not given.
type Date struct {
	Day   time.Time // midnight UTC of that day
	Given bool
	Text  string
	Key   string
	Line  int

	read time.Time // as that of Value
}

// Place says whether and where a table stands in the file.
type Place struct {
	Given bool // the file has the table
	Line  int  // of its header, or of its first key
}

// Has reports whether a key of the table was given.
func (m *Measured) Has(name string) bool {
	f := registry.Get().field("measured", name)
	if f == nil {
		return false
	}
	v, ok := reflect.ValueOf(m).Elem().FieldByIndex(f.index[1:]).Interface().(Value)
	return ok && v.Given
}

// CameBack reports whether what had opened was seen to come back, as no blown fuse does.
func (m *Measured) CameBack() bool {
	return m.ResetSeconds.Given || m.RestoredBy.Text != "" && m.RestoredBy.Text != "nothing"
}

// TellsWear reports whether something was measured that a worn battery shows by: how long or
// how far a charge lasts, or its volts under load.
func (m *Measured) TellsWear() bool {
	return m.RideTime.Given || m.Distance.Given || m.LoadedVoltage.Given
}
