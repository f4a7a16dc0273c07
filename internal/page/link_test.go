package page_test

import (
	"fmt"
	"hash/crc32"
	"maps"
	"net/url"
	"slices"
	"strings"
	"testing"

	"example.org/packcheck/internal/page"
)

// A link gives back what went in, whatever can be typed.
func TestLinksGiveBackWhatTheyHold(t *testing.T) {
	all := twenty()
	all["signs"] = map[string]string{"title": `<b>"Bramble" & Lane's</b> 100 % [url=x] # ? / \ ~ é 日本`, "pack.label": "12 V 7 Ah"}
	for name, given := range all {
		packs := []string{"12 V 7 Ah SLA", "12.8 V 10 Ah LiFePO4", "<b>12 V</b>"}[:len(given)%4]
		way := []string{"", "0123cdef"}[len(given)%2]
		fragment, err := page.Link(given, packs, way)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got, beside, mark, err := page.Unlink(fragment)
		if err != nil || !maps.Equal(got, given) || !slices.Equal(beside, packs) || mark != way {
			t.Errorf("%s: %q gives %v beside %v with %q, %v", name, fragment, got, beside, mark, err)
		}
		// A browser leaves such a fragment as it is.
		if u, err := url.Parse("file:///packcheck.html#" + fragment); err != nil || u.EscapedFragment() != fragment {
			t.Errorf("%s: a browser would write it as %q", name, u.EscapedFragment())
		}
	}
	for name, given := range map[string]map[string]string{
		"nothing": {}, "too long": {"title": strings.Repeat("x", 600)}, "a line end": {"title": "a\nb"},
	} {
		if fragment, err := page.Link(given, nil, ""); err == nil {
			t.Errorf("%s is written as %q", name, fragment)
		}
	}
}

// summed puts the right sum behind a fragment, so that a hostile one gets past it.
func summed(body string) string {
	return fmt.Sprintf("%s&%08x", body, crc32.ChecksumIEEE([]byte(body)))
}

// hostile are fragments as strangers may send them: none is a setup.
func hostile() []string {
	right, _ := page.Link(map[string]string{"pack.label": "20 V max 4 Ah", "rider.age": "4 years"}, nil, "")
	label := "packcheck1&pack.label="
	list := []string{
		"x", "packcheck1", "packcheck1&", "packcheck1&&", "packcheck2&pack.label=12%20V&00000000", "packcheck1&pack.label=12%20V", "&", "=", "%", "#", "?",
		right + "x", right[:len(right)-1], right[1:], strings.ToUpper(right), strings.Replace(right, "4", "9", 1), right + "&", right + right, " " + right, right + " ", right + "#",
		strings.ReplaceAll(right, "%20", "+"), strings.ReplaceAll(right, "%", "%25"), strings.ReplaceAll(right, "&", "&amp;"), strings.ReplaceAll(right, "%20", " "),
		"<script>alert(1)</script>", "%3Cscript%3Ealert(1)%3C/script%3E", "javascript:alert(1)", "data:text/html,<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>",
		"../../../etc/passwd", "__proto__", "constructor", strings.Repeat("a", 100_000), strings.Repeat("&", 7000), strings.Repeat("packcheck1&", 600),
		summed("packcheck1"), summed("packcheck1&"), summed("packcheck1&="), summed("packcheck1&pack.label"), summed(label), summed("packcheck1&=12%20V"),
		summed(label + "12+V"), summed(label + "12%20V&tried.way=fit%20it"), summed("packcheck1&tried.way=0123cdef"), summed(label + "12%2"), summed(label + "12%zz"), summed(label + "12%2a"), summed(label + "%41"), summed(label + "12 V"), summed(label + "a=b"),
		summed(label + "%00"), summed(label + "%0A"), summed(label + "%FF%FE"), summed(label + "%E2%80%AE"), summed(label + "%C0%80"), summed(label + "%1B%5B2J"),
		summed(label + strings.Repeat("9", 600)), summed(label + "12%20V&pack.label=6%20V"), summed("packcheck1&rider.age=4&pack.label=12%20V"),
		summed("packcheck1&__proto__=x"), summed("packcheck1&constructor=x"), summed("packcheck1&hasOwnProperty=x"), summed("packcheck1&pack.__proto__=x"),
		summed("packcheck1&original.original.pack.label=12%20V"), summed("packcheck1&pack.label=12%20V&tables_file=%2Fetc%2Fpasswd"),
		summed("packcheck1&load.pattern=http%3A%2F%2Fexample.org%2Fx.csv&pack.label=12%20V%207%20Ah"), summed("packcheck1&pack.chemistry_file=x.toml&pack.label=12%20V"),
		summed("packcheck1&rider.mass=NaN"), summed("packcheck1&rider.mass=-5%20kg"), summed("packcheck1&rider.mass=1e308%20kg"), summed("packcheck1&rider.mass=99999999999999999999%20kg"),
		summed("packcheck1&pack.cells_in_series=0"), summed("packcheck1&pack.cells_in_series=1000000"), summed("packcheck1&vehicle.ground=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E"),
		summed("packcheck1&vehicle.ground=%3Cimg%20src%3Dx%20onerror%3Dalert%281%29%3E"), summed("packcheck1&%3Cscript%3E=1"), summed("packcheck1&pack.lable=12%20V"),
		summed("packcheck1&beside.1=12%20V%207%20Ah"), summed("packcheck1&beside.1=bananas&pack.label=12%20V%207%20Ah"), summed("packcheck1&beside.2=12%20V&pack.label=12%20V%207%20Ah"),
		summed("packcheck1&beside.1=6%20V&beside.2=6%20V&beside.3=6%20V&beside.4=6%20V&pack.label=12%20V%207%20Ah"), summed("packcheck1&beside.1=%3Cscript%3E&pack.label=12%20V%207%20Ah"),
		summed("packcheck1&outing.wanted=9999999%20h"), summed("packcheck1&vehicle.has_board=perhaps"),
	}
	many := "packcheck1"
	for i := range 300 {
		many += fmt.Sprintf("&k%04d=1", i)
	}
	return append(list, summed(many))
}

// Every one of them is refused in a plain sentence, and nothing of it is laid out.
func TestStrangersLinksAreRefusedPlainly(t *testing.T) {
	list := hostile()
	if len(list) < 50 {
		t.Fatalf("only %d hostile fragments", len(list))
	}
	for _, fragment := range list {
		reply, _ := asked(t, page.Request{Do: "unlink", Text: fragment})
		if len(reply.Faults) == 0 || reply.Fields != nil || reply.Given != nil || reply.Parts != nil {
			t.Errorf("%.80q gives %+v", fragment, reply)
			continue
		}
		for _, f := range reply.Faults {
			if len(f.Says) < 20 || len(f.Says) > 500 || strings.ContainsAny(f.Says, "\n\x1b\x00") {
				t.Errorf("%.80q says %q", fragment, f.Says)
			}
		}
	}
}

// What is read at all is what would be written.
func FuzzUnlink(f *testing.F) {
	for _, fragment := range hostile() {
		f.Add(fragment)
	}
	for _, given := range twenty() {
		if fragment, err := page.Link(given, []string{"12 V 7 Ah SLA"}, ""); err == nil {
			f.Add(fragment)
		}
	}
	f.Fuzz(func(t *testing.T, fragment string) {
		for _, text := range []string{fragment, summed(fragment), summed("packcheck1&" + fragment)} {
			given, packs, way, err := page.Unlink(text)
			if err != nil {
				if given != nil || err.Error() == "" {
					t.Errorf("%q gives %v with %v", text, given, err)
				}
				continue
			}
			if again, err := page.Link(given, packs, way); err != nil || again != text {
				t.Errorf("%q holds %v, which is written as %q, %v", text, given, again, err)
			}
			if reply, _ := asked(t, page.Request{Do: "unlink", Text: text}); (reply.Faults == nil) == (reply.Fields == nil) {
				t.Errorf("%q is laid out as %+v", text, reply)
			}
		}
	})
}
