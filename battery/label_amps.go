package battery

import (
	"slices"
	"strings"

	"example.org/packcheck/internal/pattern"
)

// What the words beside amps on a label say that they are. From memory of such labels.
var (
	ampsLasting  = pattern.New(`discharg|\bcont(?:inuous(?:ly)?)?\b|\b(?:bms|pcm|pcb|protection|output|load|working|max(?:imum)?)\b`)
	ampsCharging = pattern.New(`(?:^|[^s])charg|\binitial\b`)
	ampsBrief    = pattern.New(`\b(?:peak|pulse|surge|burst|instant\w*|moment\w*|short|inrush|blocked|start\w*)\b`)
	ampsBehind   = pattern.New(`^\s*` + forSeconds)
	ampsSeconds  = pattern.New(`(\da(?:mps?)?|\d\s+a(?:mps?)?)\s*` + forSeconds)
	ampsClause   = pattern.New(`[\d;,()|]`)
	ampsWords    = [...]*pattern.Lazy{ampsLasting, ampsCharging, ampsBrief}
)

// forSeconds are no cells in series, as in "5 s".
const forSeconds = `(?:[(@/]\s*(?:for\s*)?|(?:max\.?\s*)?for\s*)\d+(?:\s*(?:-|~|to)\s*\d+)?\s*(?:m?s|sec\w*)\b`

// lastingA returns the least amps that a label says the battery may give for long, by the
// words before them or, where those say nothing, behind them; 0 where there are none.
func lastingA(s string) float64 {
	least := 0.0
	for _, m := range bareAmps.Get().FindAllStringSubmatchIndex(s, 12) {
		before, behind := s[:m[0]], s[m[1]:]
		if at := ampsClause.Get().FindAllStringIndex(before, -1); len(at) > 0 {
			before = before[at[len(at)-1][1]:]
		}
		brief := ampsBehind.Get().MatchString(behind)
		if at := ampsClause.Get().FindStringIndex(behind); at != nil {
			behind = behind[:at[0]]
		}
		words := before
		if !slices.ContainsFunc(ampsWords[:], func(p *pattern.Lazy) bool { return p.Get().MatchString(before) }) {
			words = behind
		}
		charging := ampsCharging.Get().MatchString(words) && !strings.Contains(words, "discharg")
		if brief || charging || ampsBrief.Get().MatchString(words) || !ampsLasting.Get().MatchString(words) {
			continue
		}
		if a := wholeUnits(s, m); a > 0 && (least == 0 || a < least) {
			least = a
		}
	}
	return least
}
