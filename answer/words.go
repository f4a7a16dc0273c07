package answer

// Words that a field holds where one of a few is right. JSON carries them as
// they stand.

// What [ChargeFigures] says of a charger. Any other word counts as
// [MatchUnknown].
const (
	MatchYes     = "yes"
	MatchCare    = "with care"     // may be used as the findings on charging say
	MatchNo      = "no"            // it must not be connected
	MatchUnknown = "unknown"       // not shown to suit
	MatchNone    = "not described" // the setup names no charger
)

// What opens first, in [CutoffFigures].
const (
	OpensPack       = "pack"
	OpensModule     = "module"
	OpensController = "controller"
	OpensNothing    = "nothing"
)
