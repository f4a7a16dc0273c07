package chemistry

import "math"

// Spread of the loss in store about the profile's figure. Makers' sheets of
// sealed lead-acid print 3 to 6.3 % a month where the profile has 3 (91/82/64 %
// left after 3/6/12 months on one, 95/90/81 % after 1/2/3 on another), of
// lithium-ion 2 to 3 % and for one cell less than 5 %.
const (
	slowLoss     = 0.6
	fastLoss     = 1.7
	fastLossLead = 2.2
)

// usualDoublingK stands in where a profile does not say how fast its loss grows
// with temperature: the usual rule of thumb. Common practice, no published
// source.
const usualDoublingK = 10

// MonthlyLoss returns the share of a full charge that a pack of this chemistry
// loses by itself in thirty days at the given temperature: the profile's
// figure, doubling for every so many kelvin, with the spread of what makers
// print.
func (p Profile) MonthlyLoss(tempC float64) (least, likely, most float64) {
	doubling := p.Keeping.DoublingK
	if doubling <= 0 {
		doubling = usualDoublingK
	}
	likely = p.Keeping.LossPerMonth * math.Exp2((tempC-p.Keeping.AtC)/doubling)
	fast := fastLoss
	if p.Family == LeadAcid {
		fast = fastLossLead
	}
	return slowLoss * likely, likely, fast * likely
}
