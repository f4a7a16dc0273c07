package ask

import (
	"fmt"
	"slices"

	"example.org/packcheck/answer"
)

// Over puts answers to one question together that was asked with ranges: likely
// is that of the middle, the others those of the ends. Figures span all of them; what is
// said is of the worst, because one of the ends may be true. Where something is to be fitted,
// that and its figure are those of the end that asks for most.
func Over(likely Answer, ends ...Answer) Answer {
	out := likely
	for i := range ends {
		e := &ends[i]
		if levelOf(e) < levelOf(&out) || levelOf(e) == levelOf(&out) && e.asks <= out.asks {
			continue
		}
		worse := *e
		if worse.Asked = out.Asked; worse.asks == 0 {
			worse.is(out.Figure())
			worse.Beside = out.Beside
		}
		out = worse
	}
	out.Beside = slices.Clone(out.Beside)
	out.Words = slices.Clone(out.Words)
	sure := true // every end is judged alike
	for i := range ends {
		e := &ends[i]
		if out.asks == 0 { // what is fitted is that of the worst end alone
			f := out.Figure()
			e.widen(&f)
			out.is(f)
		}
		for k := range out.Beside {
			e.widen(&out.Beside[k])
		}
		sure = sure && levelOf(e) == levelOf(&out) && e.asks == out.asks
	}
	if len(ends) == 0 {
		return out
	}
	first := fmt.Sprintf("Over the range typed: %s.", figureWords(out.Figure()))
	if !sure {
		first += " It is judged by its worse end:"
	}
	out.Words = slices.Insert(out.Words, 0, first)
	return out
}

// widen has a figure hold that of the same name in this answer, wherever it stands:
// what is the first of one end may be the second of another.
func (a *Answer) widen(f *Figure) {
	for _, g := range append([]Figure{a.Figure()}, a.Beside...) {
		if g.What == f.What && g.Unit == f.Unit {
			f.span(g)
			return
		}
	}
}

// levelOf is how bad an answer is, as far as it was judged.
func levelOf(a *Answer) answer.Level {
	if a.Level == nil {
		return answer.Fine
	}
	return *a.Level
}

// span widens a figure to hold another.
func (f *Figure) span(other Figure) {
	f.Low, f.High = min(f.Low, other.Low), max(f.High, other.High)
	f.OrMore = f.OrMore && other.OrMore
}
