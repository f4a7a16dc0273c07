//go:build generating

package tables

// builtin is empty while what stands in its place is made: a change of the rows'
// types would not compile with the old data.
var builtin Tables
