package answer

// Explanation says what stands behind one finding code, for somebody who reads
// it for the first time. It holds nothing of a particular setup.
type Explanation struct {
	Code  string `json:"code"`
	Means string `json:"means"` // what the finding says
	Hurts string `json:"hurts"` // why it matters, and to whom
	Limit string `json:"limit"` // where the limit comes from, and how well it is known
	Do    string `json:"do"`    // what to do about it
}

// Explain finds the explanation of a code in a list.
func Explain(list []Explanation, code string) (Explanation, bool) {
	for _, e := range list {
		if e.Code == code {
			return e, true
		}
	}
	return Explanation{}, false
}
