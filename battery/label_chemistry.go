package battery

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"unicode"

	"example.org/packcheck/chemistry"
	"example.org/packcheck/internal/pattern"
)

// chemistryWords are tried in order; the first that stands on the label counts.
// What lithium is called comes before lead, which lithium packs name as what they
// replace. The letters before a size, as in INR18650 or IFP20, are those of
// IEC 61960-3 (from memory).
var chemistryWords = [...]struct {
	pattern *pattern.Lazy
	name    string
	cadmium bool
}{
	{pattern.New(`li-?\s?fe\s?y?\s?p[o0](?:4|\b)|\bli-fe\b|\blfp\b|iron[ -]?phosphate|\bifp?[rp](?:\b|\d)`), "lifepo4", false},
	{pattern.New(`li-?\s?ion|lithium[ -]ion|\bli-?\s?po(?:s|ly\w*)?\b|lithium[ -]poly|\bli-?hv\b|\b(?:nmc|ncm|nca|lco|lmo)\b|li(?:co|ni[a-z0-9./]*|mn2)o[24]|lithium[ -](?:cobalt|nickel|manganese)|\bi[cnm][rp](?:\b|\d)|\bhover-?\s?boards?\b`), "li-ion", false},
	{pattern.New(`ni-?\s?mh|nickel[ -]metal`), "nimh", false},
	{pattern.New(`ni-?\s?cd|nicad|nickel[ -]cad`), "nimh", true},
	{pattern.New(`\bgel\b`), "gel", false},
	{pattern.New(`\bagm\b|\bsla\b|vrla|valve[ -]?regulated|\blead(?:acid)?\b|\bacid\b|\bpb\b|\bopzv\b`), "agm", false},
	{perCellWatts, "agm", false},
	{liquidAcid, "agm", false},
	{starters, "agm", false},
}

// unmodelled are the cells that chemistry/data has no profile of, by what is
// printed on them; codes of primary cells are those of IEC 60086 (from memory).
var unmodelled = [...]struct {
	pattern *pattern.Lazy
	name    string
}{
	{pattern.New(`sodium|natrium|\bna-?\s?ion\b|\bnib\b|\bsib\b`), "sodium-ion"},
	{pattern.New(`titanate|\blto\b|li4ti5`), "lithium titanate"},
	{pattern.New(`\blmfp\b|li(?:fe)?mn(?:fe)?po4|manganese[ -]iron`), "lithium manganese iron phosphate"},
	{pattern.New(`alkaline|\blr(?:0?3|0?6|14|20|44)\b`), "alkaline"},
	{pattern.New(`\bni-?\s?zn\b|nickel[ -]zinc`), "nickel-zinc"},
	{pattern.New(`zinc|\bzn\b`), "zinc"},
	{pattern.New(`\bni-?\s?fe\b|nickel[ -]iron`), "nickel-iron"},
	{pattern.New(`limno2|li[ /-]mno2|manganese[ -]dioxide|thionyl|li-?socl2|iron[ -]disul|li-?fes2|lithium[ -](?:metal|primary|sul)|\bcr(?:123a?|p?2|\d{4})\b|\ber\d{5}`), "lithium cells that are never charged"},
	{pattern.New(`nickel[ -]hydrogen|\bni-?\s?h2\b`), "nickel-hydrogen"},
	{pattern.New(`(?:super|ultra)[ -]?cap(?:s?\b|acitor)|capacitor|\bedlc\b`), "supercapacitors"},
	{pattern.New(`\bnon[ -]?rechargeable|\bnot[ -]rechargeable|\bdo not recharge`), "cells that are never charged"},
}

// watchers are words for electronics that watch the cells of lithium, which lead-acid has none of.
const watchers = `\bbms\b|battery management|\bpcm\b`

var (
	// liquidAcid are words for lead-acid that is not sealed, sealedAcid those for one that is,
	// and starters those for one that starts engines and mostly is not; of the car that a child
	// rides on nothing is said. From memory.
	liquidAcid = pattern.New(`flooded|\bvented\b|\bwet[ -](?:cells?|lead|acid|batter\w*)\b|\bacid wet\b|(?:ah|\dv|^) wet\b|\bopen (?:cells?|lead|acid)\b|\bopzs\b|\befb\b`)
	sealedAcid = pattern.New(`\bagm\b|\bsla\b|\bgel\b|vrla|valve[ -]?regulated|\bsealed\b|non[ -]?spill|spill[ -]?proof|leak[ -]?proof|\bopzv\b`)
	starters   = pattern.New(`\bsli\b|\b(?:starter|starting) batter|\bcar batter|\bcca\b|cranking|\d\s*a\s*\(?en\b`)
	childsCar  = pattern.New(`\btoys?\b|\bkid|\bchild|\bride|\briding|\belectric|\bremote|\brc\b`)
	// someLithium is what sellers print on either kind.
	someLithium = pattern.New(`lithium|\bli\b|` + watchers + `|\blib\b|\bpolymer\b|\bhover-?\s?boards?\b`)
	// electronics are words for what switches a battery off by itself.
	electronics = pattern.New(watchers + `|\bpcb\b|protection (?:board|circuit|module)|protected\b`)
	// ridden are names of what lithium batteries are sold for as a whole, with electronics that
	// watch every cell, as EN 15194 and UL 2272 ask of them. From memory.
	ridden = pattern.New(`\bhover-?\s?boards?\b|\be-?\s?(?:bi(?:ke|cycle)s?|scooters?)\b|\belectric (?:bi(?:ke|cycle)s?|scooters?)\b|\bpedelecs?\b`)
	// noElectronics are words for their absence. From memory.
	noElectronics = pattern.New(`unprotected|\bbare cells?\b|\b(?:no|non|not|without|w/o|excl\w*)[ -]+(?:an? |any |built[ -]in |internal )*(?:bms|battery management|pcm|pcb|protect)|\b(?:bms|pcm|pcb)[ :]*(?:is )?(?:not?\b|none|excl|separate)`)
	// notOfLead are words with lead in them that do not tell what is inside.
	notOfLead = pattern.New(`lead[ -]free|lead (?:wires?|cables?|length)`)
	// inPlaceOf marks the name of what a pack stands in for.
	inPlaceOf = pattern.New(`replac|instead of|in place of|substitut|drop[ -]?in|upgrade|alternative`)
	// formatPattern are sizes of round cells in millimetres, those of lithium alone.
	formatPattern = pattern.New(`(?:^|[^\d.])(14500|16340|18350|18500|18650|20700|21700|26650|26700|32140|32650|32700|33140|38120|40152)(?:\D|$)`)
)

// readChemistry finds what the words say is inside.
func (w *words) readChemistry(s string) {
	s = notOfLead.Get().ReplaceAllString(s, " ")
	w.unmodelled = unmodelledIn(s)
	leadWord := false
	for _, c := range chemistryWords {
		if c.pattern.Get().MatchString(s) {
			leadWord = leadWord || isLead(c.name)
			if w.chemistry == "" {
				w.chemistry, w.nickelCadmium = c.name, c.cadmium
			}
		}
	}
	if m := formatPattern.Get().FindStringSubmatchIndex(s); m != nil && !besideFigure.Get().MatchString(s[m[3]:]) {
		w.format = s[m[2]:m[3]]
	}
	if w.chemistry == "" || isLead(w.chemistry) {
		word := someLithium.Get().FindString(s)
		if len(word) <= len("bms") {
			word = strings.ToUpper(word)
		}
		if w.lithium = cmp.Or(word, w.format); w.lithium != "" {
			w.chemistry = ""
		}
	}
	if isLead(w.chemistry) && !sealedAcid.Get().MatchString(s) {
		w.liquidAcid = liquidAcid.Get().MatchString(s)
		w.starter = !w.liquidAcid && starters.Get().MatchString(s) && !childsCar.Get().MatchString(s)
	}
	w.noElectronics = noElectronics.Get().MatchString(s)
	w.electronics = !isLead(w.chemistry) && !w.noElectronics && electronics.Get().MatchString(s)
	w.ridden = ridden.Get().MatchString(s)
	w.leadToo = leadWord && !isLead(w.chemistry) && !inPlaceOf.Get().MatchString(s)
}

// isLead reports whether one of chemistryWords is of lead-acid.
func isLead(name string) bool { return name == "agm" || name == "gel" }

// besideFigure is what makes a size of a cell a figure: "14500 mAh".
var besideFigure = pattern.New(`^\s*(?:m?ah|m?wh|v)\b`)

// unmodelledIn names the cells that a label tells and of which there is no profile.
func unmodelledIn(s string) string {
	for _, c := range unmodelled {
		if c.pattern.Get().MatchString(s) {
			return c.name
		}
	}
	return ""
}

// mayBe reports whether what a label says is inside may be of a kind.
func (w *words) mayBe(kind chemistry.Profile) bool {
	switch {
	case w.unmodelled != "", w.leadToo && kind.Family == chemistry.LeadAcid:
		return true
	case w.chemistry != "":
		return sameFamily(kind, w.chemistry)
	}
	return w.lithium == "" || kind.Family == chemistry.Lithium
}

// noModel is the error for a label of such cells.
func noModel(label, name string) error {
	names := chemistry.Builtin().Names()
	return fmt.Errorf("battery: label %q tells of %s: there is no profile of such cells, and nothing can be said of them; want a battery of %s or %s, or a profile of one's own",
		clip(label), name, strings.Join(names[:len(names)-1], ", "), names[len(names)-1])
}

// byFormat are the kinds of lithium that a size of cells may be of, likeliest first.
// Up to 21700 they are of lithium-ion as good as always, the thick ones of iron
// phosphate mostly (common practice, no published source); the volts of a cell, where
// they are known, tell it in any.
func (w *words) byFormat() []string {
	cellV := 0.0
	if w.cells > 0 {
		cellV = w.volts / float64(w.cells)
	}
	switch {
	case ofPhosphate(w.volts), phosphateCell(cellV):
		return []string{"lifepo4"}
	case cellV > 3.5, w.maxV > 0:
		return []string{"li-ion"}
	}
	switch w.format {
	case "26650", "26700":
		return []string{"li-ion", "lifepo4"}
	case "32140", "32650", "32700", "33140", "38120", "40152":
		return []string{"lifepo4", "li-ion"}
	}
	return []string{"li-ion"}
}

// phosphateCell reports whether nominal volts of a cell are those of iron phosphate.
func phosphateCell(v float64) bool { return math.Abs(v-3.2) < 0.06 }

// otherWords are those that stand on batteries and do not tell of what they are:
// units, how several are joined, how and in what it is used, and what any maker says of
// any. What is not among them may be a model's name, or the name of a chemistry.
const otherWords = " v vx ahx volt volts vdc dc ah ha mah ma wh kwh amp amps ampere amperes milliamp hour hours hr hrs watt watts " +
	"mm cm inch inches in kg lb lbs oz deg degc degf max min approx nom nominal rated rating capacity voltage current power energy rate " +
	"pcs pc piece pieces block blocks battery batteries bat batt pack packs cell cells each per both one two pair couple three four six eight times series parallel " +
	"wired joined connected and or the with without for from to at by is are it its an as of on off no not my our this that " +
	"rechargeable sealed deep cycle cyclic maintenance free type model size new old used original oem spare replacement replaces equivalent genuine " +
	"heavy duty high quality performance long life premium professional plus ultra " +
	"terminal terminals faston tab tabs spade post posts lug lugs connector plug wire wires lead leads harness fuse charger included " +
	"toy toys ride car cars kid kids child children electric vehicle tractor scooter truck quad bike motorcycle alarm ups backup emergency light lights " +
	"cordless drill tool tools power garden mower standby float use initial regulation charge charging discharge recharge constant less than do " +
	"nonspillable non spillable spill leak proof leakproof recycle recyclable dispose disposal properly warning caution danger keep away fire " +
	"flooded wet vented open starter starting efb sli acid " +
	"made date ce ul rohs black white red blue green grey "

// leadModel are names that models of sealed lead-acid have: letters, ampere-hours and volts
// (NP7-12), or cells, letters and ampere-hours (6-DZM-12). lithiumModel are such letters as
// may be short for a kind of lithium. From memory.
var (
	leadModel    = pattern.New(`^[a-z]{1,4}\d+(?:\.\d+)?-(?:6|8|12)[a-z]{0,2}$|^[346]-[a-z]{2,4}-\d+$`)
	lithiumModel = pattern.New(`l[ifb]|fe|if|na`)
)

// unread lists the words that are none of those, as they stand. A letter alone tells
// nothing: F1 and T2 are terminals.
func unread(text string) []string {
	var out []string
	for word := range strings.FieldsSeq(text) {
		if lower := strings.ToLower(word); leadModel.Get().MatchString(lower) && !lithiumModel.Get().MatchString(lower) {
			continue
		}
		for part := range strings.FieldsFuncSeq(strings.ToLower(word), func(r rune) bool { return !unicode.IsLetter(r) }) {
			if len(part) > 1 && !strings.Contains(otherWords, " "+part+" ") {
				out = append(out, strings.Trim(word, ".,;:()[]*\"'"))
				break
			}
		}
	}
	return out
}
