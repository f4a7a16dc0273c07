package interview

import (
	"example.org/packcheck/answer"
	"example.org/packcheck/drive"
	"example.org/packcheck/setup"
)

// creepMS is a speed at which no vehicle is worth anything: who is too young for it is so at
// any other.
const creepMS = 0.1

// TooYoung says, as the report will, that who rides is too young for any such vehicle,
// whatever else is told; empty where the age is not told or no word.
func TooYoung(given map[string]string) string {
	age := given[answer.KeyRiderAge]
	if age == "" {
		return ""
	}
	s, err := setup.Of(map[string]string{answer.KeyRiderAge: age})
	if err != nil {
		return ""
	}
	for _, f := range (drive.SpeedCheck{SpeedMS: creepMS, AgeYears: s.Rider.Age.Low}).Findings() {
		if f.OfAge {
			return f.Title + " " + f.Advice
		}
	}
	return ""
}
