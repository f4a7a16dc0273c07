//go:build generating

package chemistry

// builtin is empty while what stands in its place is made: a change of the rows'
// types would not compile with the old data.
var builtin Set
