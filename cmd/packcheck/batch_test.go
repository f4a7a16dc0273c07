package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	"example.org/packcheck"
	"github.com/google/go-cmp/cmp"
)

// benchLine is a setup that is judged at once.
const benchLine = `{"id": %d, "pack.label": "12 V 7 Ah", "pack.chemistry": "agm", "load.current": "5 A"}` + "\n"

// numbered is an input of n items.
type numbered struct {
	n, given int
	taken    *atomic.Int64
	fails    error
}

func (c *numbered) close() {}

func (c *numbered) next() (item, error) {
	if c.given == c.n {
		if c.fails != nil {
			return item{}, c.fails
		}
		return item{}, io.EOF
	}
	c.given++
	c.taken.Add(1)
	return item{line: c.given}, nil
}

func TestAnswersComeInTheOrderOfTheSetupsWhateverTakesLonger(t *testing.T) {
	for _, workers := range []int{1, 2, 7} {
		var got, want []int
		for i := range 60 {
			want = append(want, i+1)
		}
		slow := func(i item) answered {
			time.Sleep(time.Duration(i.line*37%11) * 100 * time.Microsecond)
			return answered{code: i.line}
		}
		err := inOrder(&numbered{n: 60, taken: &atomic.Int64{}}, workers, slow, func(a answered) error {
			got = append(got, a.code)
			return nil
		})
		if diff := cmp.Diff(want, got); diff != "" || err != nil {
			t.Errorf("%d workers: %v, order (-want +got):\n%s", workers, err, diff)
		}
	}
}

func TestNoMoreSetupsAreHeldThanAFewForEachWorker(t *testing.T) {
	var taken atomic.Int64
	release := make(chan struct{})
	go func() {
		for last := int64(-1); last != taken.Load(); time.Sleep(20 * time.Millisecond) {
			last = taken.Load()
		}
		close(release) // nobody reads on
	}()
	first, most := true, int64(0)
	err := inOrder(&numbered{n: 500, taken: &taken}, 2, func(item) answered { <-release; return answered{} }, func(answered) error {
		if first {
			first, most = false, taken.Load()
		}
		return nil
	})
	if err != nil || most > 20 || taken.Load() != 500 {
		t.Errorf("%v; %d of %d setups were read before the first was answered", err, most, taken.Load())
	}
}

func TestWhatEndsTheBatchIsReported(t *testing.T) {
	gone, broken := errors.New("nobody reads on"), errors.New("the disk is gone")
	answer := func(item) answered { return answered{} }
	if err := inOrder(&numbered{n: 99, taken: &atomic.Int64{}}, 2, answer, func(answered) error { return gone }); !errors.Is(err, gone) {
		t.Errorf("%v, want %v", err, gone)
	}
	if err := inOrder(&numbered{n: 9, taken: &atomic.Int64{}, fails: broken}, 2, answer, func(answered) error { return nil }); !errors.Is(err, broken) {
		t.Errorf("%v, want %v", err, broken)
	}
}

func TestALineThatIsTooLongIsNotHeldAndNotTheEnd(t *testing.T) {
	in := newLines(io.MultiReader(strings.NewReader(strings.Repeat("x", 3*longestLine)+"\n"), strings.NewReader(fmt.Sprintf(benchLine, 1))), "in", ".", 0)
	first, err := in.next()
	if err != nil || first.fault == "" || len(first.text) > longestLine || first.line != 1 {
		t.Errorf("%v, %d bytes, fault %q", err, len(first.text), first.fault)
	}
	second, err := in.next()
	if err != nil || second.fault != "" || second.line != 2 {
		t.Errorf("%v, %+v", err, second)
	}
	if _, err := in.next(); !errors.Is(err, io.EOF) {
		t.Errorf("%v, want the end", err)
	}
}

// watched writes lines and notes what memory is in use after some of them.
type watched struct {
	lines int
	heap  map[int]uint64
}

func (w *watched) Write(p []byte) (int, error) {
	w.lines += bytes.Count(p, []byte("\n"))
	if _, look := w.heap[w.lines]; look {
		runtime.GC()
		runtime.GC() // what was freed by finalizers, too
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		w.heap[w.lines] = m.HeapAlloc
	}
	return len(p), nil
}

// What a batch holds does not depend on how many setups went before: measured so far
// apart that 2 KB for each would show beside what is under way at either moment.
func TestWhatABatchHoldsDoesNotGrowWithWhatWentBefore(t *testing.T) {
	const early, late = 20, 300
	r, w := io.Pipe()
	go func() {
		for i := range late + 1 {
			fmt.Fprintf(w, benchLine, i)
		}
		w.Close()
	}()
	out := &watched{heap: map[int]uint64{early: 0, late: 0}}
	if err := batch("-", false, packcheck.Options{Draws: 16, Workers: 1}, 2, streams{in: r, direct: out, err: io.Discard}); err != nil {
		t.Fatal(err)
	}
	if grown := int64(out.heap[late]) - int64(out.heap[early]); grown > (late-early)*2<<10 {
		t.Errorf("the heap grew by %d KB from setup %d to %d", grown>>10, early, late)
	}
}

// A setup of a batch and its judgement, one core, by draws, with memory collected as in
// the command.
func BenchmarkBatch(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(growth))
	for _, n := range []int{64, 2048} {
		b.Run(fmt.Sprintf("draws-%d", n), func(b *testing.B) {
			one := item{line: 1, dir: ".", text: fmt.Appendf(nil, `{"toml": %q}`, labelsOnly)}
			began := ownTime(b)
			for b.Loop() {
				if a := judgedItem(one, packcheck.Options{Draws: n, Workers: 1}); a.code != exitFine {
					b.Fatalf("%s", a.line)
				}
			}
			b.ReportMetric(float64(b.N)/(ownTime(b)-began), "setups/cpu-s")
		})
	}
}

// ownTime is the processor time that the process has used, in seconds.
func ownTime(b *testing.B) float64 {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano()).Seconds()
}
