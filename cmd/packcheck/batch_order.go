package main

import (
	"cmp"
	"errors"
	"io"
	"slices"

	"example.org/packcheck/setup"
)

// inOrder has workers judge the items of an input and hands what came out to done
// in the order of the input. However long the input, no more than a few items for
// each worker are held at a time: whoever is ahead waits. An error of done ends it.
func inOrder(in input, workers int, judge func(item) answered, done func(answered) error) error {
	type job struct {
		item
		out chan answered
	}
	const ahead = 4 // for each worker: one slow setup keeps few others waiting
	waiting := make(chan job, ahead*workers)
	toDo := make(chan job)
	stop := make(chan struct{})
	var failed error // of the input; read once waiting is closed
	go func() {
		defer close(waiting)
		defer close(toDo)
		for {
			one, err := in.next()
			if err != nil {
				if !errors.Is(err, io.EOF) {
					failed = withCode(exitInput, err)
				}
				return
			}
			j := job{one, make(chan answered, 1)}
			for _, c := range [...]chan job{waiting, toDo} {
				select {
				case c <- j:
				case <-stop:
					return
				}
			}
		}
	}()
	for range workers {
		go func() {
			for j := range toDo {
				j.out <- judge(j.item)
			}
		}()
	}
	for j := range waiting {
		if err := done(<-j.out); err != nil {
			close(stop)
			return err
		}
	}
	return failed
}

// sortedFaults sorts faults by key: they come from a map.
func sortedFaults(faults setup.Faults) setup.Faults {
	slices.SortFunc(faults, func(a, b setup.Fault) int { return cmp.Compare(a.Key, b.Key) })
	return faults
}
