// Package charge judges a charger on a pack and a pack in store.
//
// For most uses call [ParseLabel] on the charger's label, [Match] to hear
// whether it may be used at all, and [Simulate] for hours to full and when to
// unplug. [Keep] says what is left of a pack in store and when to top it up;
// [Diagnose] whether an old sealed battery is flat, worn or badly connected.
package charge
