package page

import (
	"fmt"
	"hash/crc32"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/packcheck/setup"
)

// linkMark begins the fragment of every link; another form gets another number.
const linkMark = "packcheck1"

// mostLink bounds a fragment in bytes: what messengers and forums pass on whole.
// Own choice.
const mostLink = 8000

// besideKey begins the names under which a link holds the batteries beside the one
// that is asked about: beside.1 and on. No key of a setup begins like that.
const besideKey = "beside."

// triedKey is the name under which a link holds the mark of a way out that is tried. No
// key of a setup is called like that.
const triedKey = "tried.way"

// wayMark tells a way out by the keys that it sets: a link holds no words of it, because
// whoever opens one has them from the engine and not from a stranger.
func wayMark(sets map[string]string) string {
	sum := crc32.NewIEEE()
	for _, key := range slices.Sorted(maps.Keys(sets)) {
		fmt.Fprintf(sum, "%q=%q", key, sets[key])
	}
	return fmt.Sprintf("%08x", sum.Sum32())
}

// isMark reports whether a text is what [wayMark] writes.
func isMark(text string) bool { return len(text) == 8 && strings.Trim(text, "0123456789abcdef") == "" }

// besides are the batteries beside it under their names.
func besides(packs []string) map[string]string {
	out := map[string]string{}
	for i, label := range packs {
		out[besideKey+strconv.Itoa(i+1)] = label
	}
	return out
}

// Link writes a setup, the labels of batteries to set beside its own, and the mark of a
// way out that is tried on it (empty = none), as the fragment of a link, without its "#": the mark, then key=text for every key in
// alphabetical order, then a sum of all of it, parted by "&". Whatever is no letter,
// digit, "-", "_" or "." is percent-encoded, so that it stays whole inside any
// message. Errors are setups that [Unlink] would not take.
func Link(given map[string]string, packs []string, way string) (string, error) {
	if len(given) == 0 {
		return "", fmt.Errorf("there is nothing to hand on yet")
	}
	if len(packs) > mostBeside || slices.Contains(packs, "") {
		return "", fmt.Errorf("at most %d other batteries can be handed on, each with its label", mostBeside)
	}
	all := besides(packs)
	maps.Copy(all, given)
	if way != "" {
		if !isMark(way) {
			return "", fmt.Errorf("%q is no mark of a way out", way)
		}
		all[triedKey] = way
	}
	if faults := bounded(all); faults != nil {
		return "", fmt.Errorf("%s", faults[0].Says)
	}
	var b strings.Builder
	b.WriteString(linkMark)
	for _, key := range slices.Sorted(maps.Keys(all)) {
		b.WriteByte('&')
		escape(&b, key)
		b.WriteByte('=')
		escape(&b, all[key])
	}
	fmt.Fprintf(&b, "&%08x", crc32.ChecksumIEEE([]byte(b.String())))
	if b.Len() > mostLink {
		return "", fmt.Errorf("this setup is too large for a link: save it as a file")
	}
	return b.String(), nil
}

// Unlink reads a fragment that [Link] wrote. It takes nothing else: whatever was cut
// off, added or changed on the way is an error, in a plain sentence.
func Unlink(fragment string) (given map[string]string, packs []string, way string, err error) {
	if len(fragment) > mostLink {
		return nil, nil, "", fmt.Errorf("this link is too long: it has %d signs, at most %d are read", len(fragment), mostLink)
	}
	mark, _, _ := strings.Cut(fragment, "&")
	if mark != linkMark {
		return nil, nil, "", fmt.Errorf("this link holds no setup that this page knows")
	}
	end := strings.LastIndexByte(fragment, '&')
	if end < 0 || fragment[end+1:] != fmt.Sprintf("%08x", crc32.ChecksumIEEE([]byte(fragment[:end]))) {
		return nil, nil, "", fmt.Errorf("this link was cut off or changed on the way: ask for it once more, or for the setup file")
	}
	pairs := strings.Split(fragment[:end], "&")[1:]
	if len(pairs) == 0 || len(pairs) > mostKeys {
		return nil, nil, "", fmt.Errorf("this link holds %d keys, 1 to %d are read", len(pairs), mostKeys)
	}
	given = map[string]string{}
	last := ""
	for _, pair := range pairs {
		k, t, found := strings.Cut(pair, "=")
		key, ok := unescape(k)
		text, okText := unescape(t)
		if !found || !ok || !okText || text == "" || key <= last {
			return nil, nil, "", fmt.Errorf("this link is not written as this page writes them")
		}
		given[key], last = text, key
	}
	if faults := bounded(given); faults != nil {
		return nil, nil, "", fmt.Errorf("%s", faults[0].Says)
	}
	for len(packs) < mostBeside {
		key := besideKey + strconv.Itoa(len(packs)+1)
		label, is := given[key]
		if !is {
			break
		}
		packs = append(packs, label)
		delete(given, key)
	}
	way = given[triedKey]
	delete(given, triedKey)
	if way != "" && !isMark(way) {
		return nil, nil, "", fmt.Errorf("this link is not written as this page writes them")
	}
	if len(given) == 0 {
		return nil, nil, "", fmt.Errorf("this link holds batteries to compare, or a way out, and no setup that they belong to")
	}
	return given, packs, way, nil
}

// plainSign reports whether a byte stands for itself in a link.
func plainSign(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '-' || c == '_' || c == '.'
}

func escape(b *strings.Builder, text string) {
	for i := range len(text) {
		if c := text[i]; plainSign(c) {
			b.WriteByte(c)
		} else {
			fmt.Fprintf(b, "%%%02X", c)
		}
	}
}

// unescape is strict: only what [escape] writes.
func unescape(text string) (string, bool) {
	out := make([]byte, 0, len(text))
	for i := 0; i < len(text); i++ {
		if plainSign(text[i]) {
			out = append(out, text[i])
			continue
		}
		if text[i] != '%' || i+3 > len(text) || strings.ToUpper(text[i:i+3]) != text[i:i+3] {
			return "", false
		}
		n, err := strconv.ParseUint(text[i+1:i+3], 16, 8)
		if err != nil || plainSign(byte(n)) {
			return "", false
		}
		out = append(out, byte(n))
		i += 2
	}
	return string(out), true
}

// link writes what is given as a fragment.
func link(r *Request) Reply {
	if faults := whole(r.Given); faults != nil {
		return Reply{Faults: faults}
	}
	text, err := Link(r.Given, r.Packs, r.Way)
	if err != nil {
		return said(capital(err.Error()) + ".")
	}
	return Reply{Text: text}
}

// unlink lays out the setup that a fragment holds.
func unlink(r *Request) Reply {
	given, packs, way, err := Unlink(r.Text)
	if err != nil {
		return said(capital(err.Error()) + ".")
	}
	for _, label := range packs {
		if fault := unreadable(label); fault != "" {
			return said("Of another battery " + fault)
		}
	}
	reply := fields(&Request{Given: given})
	if reply.Faults == nil {
		reply.Packs, reply.Way = packs, way
	}
	return reply
}

// save is what is given as a setup file.
func save(r *Request) Reply {
	s, err := setup.Of(r.Given)
	if err != nil {
		return Reply{Faults: faultsOf(err)}
	}
	var out strings.Builder
	if _, err := s.WriteTo(&out); err != nil {
		return said(capital(err.Error()) + ".")
	}
	return Reply{Text: out.String()}
}

// open lays out a setup file.
func open(r *Request) Reply {
	s, err := setup.Read(strings.NewReader(r.Text), "")
	if err != nil {
		return Reply{Faults: faultsOf(err)}
	}
	given := s.Values()
	if faults := bounded(given); faults != nil {
		return Reply{Faults: faults}
	}
	return fields(&Request{Given: given})
}
