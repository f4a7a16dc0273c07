// Package quantity turns everyday quantities ("44 lb", "14 AWG", "29,5 kg",
// "20 to 26 kg") into plain numbers in one set of units, and numbers back into
// text that people read.
//
// For most uses call [Parse] at the way in and [FormatBoth] or [FormatRange]
// at the way out. Nothing else in this module reads or prints a unit.
//
// # Units
//
// Every [Kind] has one unit in which its numbers are held; [Kind.Unit] names
// it: V, A, Ohm, Ah, Wh, W, kg, m, mm2, AWG, degC, s, m/s, rad/s, N m/A, kg m2,
// H, F, N, years; fractions, grades, ratios and counts have none.
//
// # Numbers
//
// A decimal point and a decimal comma are both understood. A mark followed by
// exactly three digits may also part thousands ("1,000 mA"); such a number is
// taken as a decimal only where the other reading is absurd, and refused
// otherwise: a guess between one milliampere and one ampere is not made.
//
// # Limits
//
// Each kind has bounds beyond which a value is taken for a slip of the pen.
// They are common sense, not from any published source, and generous: what
// lies inside them may still be wrong for the thing described.
package quantity
