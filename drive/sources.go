package drive

import "example.org/packcheck/answer"

// The IDs of this package's sources.
const (
	srcRating    = answer.PartRating
	srcMotorLaw  = "motor-equations"
	srcOwn       = "drive-judgement"
	srcWeld      = "cpsc-92-008"
	srcClass     = "iec-60085"
	srcLife      = "montsinger"
	srcPlastic   = "plastic-softening"
	srcPrecharge = "precharge-guides"
	srcReaction  = "reaction-1984"
	srcOldSpeed  = "ride-on-speed-1998"
	srcFastest   = "ride-on-speed-24v"
	srcUnder3    = "en-71-1-2009"
	srcEnergy    = "kinetic-energy"
	srcBrake     = "en-71-1-brake"
	srcFree      = "en-71-1-free"
	srcManuals   = "ride-on-manuals"
	srcStable    = "astm-f963-stability"
	srcToyVolts  = "astm-f963-voltage"
	srcSold      = "ride-on-speed-sold"
	srcSlow      = "ride-on-speed-6v"
)

// Sources returns every source that this package's findings rest on, in order
// of their IDs.
func Sources() []answer.Source {
	return []answer.Source{
		{ID: srcStable, Text: "ASTM F963, 4.15: toys to sit on are tested for stability on a slope of 10 degrees", Known: "copy of a summary, partly garbled"},
		{ID: srcToyVolts, Text: "ASTM F963, 4.25.2: toys have at most 24 V DC nominal between accessible points", Known: "copy of a summary"},
		{ID: srcWeld, Text: "US Consumer Product Safety Commission, Release 92-008, 25 October 1991: about 12 000 ride-ons with an 18 V system recalled because the foot-switch contacts may weld together during the initial surge", Known: "copy"},
		{ID: srcOwn, Text: "This package's own choice of where to warn; no published limit", Known: "common practice"},
		{ID: srcUnder3, Text: "EN 71-1:2005+A8:2009, rationale: no speed limitation for electrically driven toys for children over 3 years, so none of them is meant for younger ones", Known: "copy"},
		{ID: srcBrake, Text: "EN 71-1, test of the motor brake of ride-on toys: the loaded toy, pulled at 2 m/s, must resist (M + 50) x 1.7 N for 36 months and older, M the mass of the toy in kg; as the maker of a test rig prints it", Known: "copy"},
		{ID: srcFree, Text: "EN 71-1:2005+A8:2009, rationale: ride-on toys that roll free need a brake; none is asked for below 1 m/s where the feet are free", Known: "copy"},
		{ID: srcClass, Text: "IEC 60085: insulation classes A 105, E 120, B 130, F 155, H 180, N 200 degrees C", Known: "copy"},
		{ID: srcEnergy, Text: "Kinetic energy goes with the square of speed", Known: "computed"},
		{ID: srcLife, Text: "Montsinger's rule: insulation lives half as long for every 10 K above its limit", Known: "copy"},
		{ID: srcMotorLaw, Text: "Permanent-magnet motor: V = R I + K w, blocked current V/R, reversal (V + E)/R; as in A. E. Fitzgerald, C. Kingsley, S. D. Umans, Electric Machinery, ch. 7", Known: "copy"},
		{ID: srcRating, Text: "The rating of the part itself, as its maker or seller prints it", Known: "as given in the setup"},
		{ID: srcPlastic, Text: "Nylon end bells and plastic gears soften between 100 and 130 degrees C; trade knowledge", Known: "memory"},
		{ID: srcPrecharge, Text: "Component makers' pre-charge guides: charged after five time constants, within 0.5 to 2 s, the resistor absorbs C V^2/2", Known: "copy"},
		{ID: srcReaction, Text: "Simple acoustic reaction time of 56 children of 4 to 14 years, Dev. Med. Child Neurol. 26 (1984) 490-494: 465 ms at 5 years, 190 ms at 15", Known: "copy"},
		{ID: srcManuals, Text: "Manuals of ride-ons: riders up to 29.5 kg on a 6 V one with one seat, 59 kg on a 12 V one with two seats, 25 kg on a 12 V one with a board for 37 to 95 months; the class between is judgement", Known: "copy"},
		{ID: srcOldSpeed, Text: "Newspaper reports of the US ride-on recall of 22 October 1998: the vehicles ran at 1 to 5 mph (1.6 to 8 km/h)", Known: "copy"},
		{ID: srcFastest, Text: "A design engineer's published portfolio: a 24 V-class ride-on for children of 3 to 8 years, designed for 8 mph (12.9 km/h)", Known: "copy"},
		{ID: srcSlow, Text: "An owner's post of 2003 on a 6 V ride-on with two motors, sold from 18 months: 3.5 mph (5.6 km/h)", Known: "copy"},
		{ID: srcSold, Text: "A seller's guide to ride-ons: top speeds are rarely above 5 or 6 mph (9.7 km/h)", Known: "copy"},
	}
}
