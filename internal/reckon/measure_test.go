package reckon_test

import (
	"strings"
	"testing"

	"example.org/packcheck/answer"
	"example.org/packcheck/internal/interview"
	"example.org/packcheck/internal/reckon"
	"example.org/packcheck/setup"
)

// fewDraws answers a setup of keys and texts, quickly.
func fewDraws(t *testing.T, values map[string]string) *answer.Assessment {
	t.Helper()
	return someDraws(t, values, 64)
}

func someDraws(t *testing.T, values map[string]string, draws int) *answer.Assessment {
	t.Helper()
	return answered(t, values, reckon.Options{Draws: draws})
}

// answered is the answer of a setup of some keys.
func answered(t *testing.T, values map[string]string, o reckon.Options) *answer.Assessment {
	t.Helper()
	s, err := setup.Of(values)
	if err != nil {
		t.Fatal(err)
	}
	a, err := reckon.Assess(s, o)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func TestWhatIsAdvisedToMeasureIsAlsoAsked(t *testing.T) {
	s, err := setup.Of(map[string]string{"pack.label": "12 V 7 Ah"})
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.Parts()
	if err != nil {
		t.Fatal(err)
	}
	keys := reckon.Measurable(p)
	if len(keys) < 15 {
		t.Errorf("only %q can be measured", keys)
	}
	questions := interview.ByKey()
	for _, key := range keys {
		if questions[key].How == "" {
			t.Errorf("nobody is told how to find out %s", key)
		}
	}
	a := fewDraws(t, map[string]string{"pack.label": "12 V 7 Ah"})
	if len(a.Measure) == 0 {
		t.Fatal("nothing is advised")
	}
	for _, m := range a.Measure {
		q := questions[m.Key]
		if m.How != q.How || m.Enter != q.Stands || m.Drives != q.Drives || !strings.HasSuffix(m.Asks, "?") {
			t.Errorf("%s: %+v is not what is asked: %+v", m.Key, m, q)
		}
	}
}
