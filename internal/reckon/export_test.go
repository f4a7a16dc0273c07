package reckon

import "example.org/packcheck/answer"

// What the tests see of the counting.
var (
	Changes = changes
	Habits  = habits
)

// Count counts the findings of some draws, all of equal weight.
func Count(findings [][]answer.Finding, assumed ...string) []answer.Finding {
	j := &judgedTable{findings: findings, weight: make([]float64, len(findings))}
	for i := range j.weight {
		j.weight[i] = 1 / float64(len(findings))
	}
	g := guesses{keys: map[string]bool{}}
	for _, key := range assumed {
		g.keys[key] = true
	}
	return count(j, g)
}
