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
