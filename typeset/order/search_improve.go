package order

import (
	"math"
	"math/rand/v2"
	"slices"
)

// Larger books are searched by annealing (Kirkpatrick, Gelatt and Vecchi, Science
// 220, 1983): an order is changed a little, again and again, and a change for the
// worse is taken the less readily the later it comes. Every round ends by going
// downhill, by the best single move, as far as that goes.

// The rounds: how many changes the first one tries and the longest, and how many
// moved poems an unfaced poem or a blank weighs in them, by turns. The last weight
// puts any number of moved poems second, as the comparison of scores does.
const (
	firstRound   = 20_000
	longestRound = 500_000
)

var lossWeights = [...]float64{4, 12, 40}

// amissWeight is what it weighs that a condition is not met, in moved poems.
const amissWeight = 30

// coldest is how many moved poems worse a change may be at the end of a round.
const coldest = 0.15

// improve looks for better and better orders until it is stopped or nothing can
// be better.
func (s *search) improve(begin []int32) {
	for _, order := range [][]int32{begin, s.present()} {
		s.descend(order)
	}
	random := rand.New(rand.NewPCG(1, 2))
	for round, steps := 0, firstRound; !s.done() && !s.unbeatable(); round++ {
		from := s.order
		if from == nil || round%4 == 3 {
			from = begin
		}
		best := s.anneal(from, steps, lossWeights[round%len(lossWeights)], random)
		s.descend(best)
		steps = min(2*steps, longestRound)
	}
}

// unbeatable says that nothing can be better than the best so far: it loses no
// more than any order must, and moves one poem at most, of which all ways have
// been tried from the present order.
func (s *search) unbeatable() bool {
	return s.order != nil && s.worth.loss == s.least && s.worth.moved <= 1
}

// worthOf scores an order, all told.
func (s *search) worthOf(order []int32) score { return s.full(s.floor(order)) }

// descend goes from an order to the best that differs from it by one move, and on
// from there, until none is better. All orders on the way that meet the conditions
// are reported where they are the best so far.
func (s *search) descend(order []int32) {
	order = slices.Clone(order)
	worth := s.worthOf(order)
	s.take(order, worth)
	for {
		next, better := s.bestMove(order, worth)
		if next == nil {
			return
		}
		order, worth = next, better
	}
}

// bestMove is the best order that moving one run of blocks, or exchanging two,
// gives, or nil where none is better than worth.
func (s *search) bestMove(order []int32, worth score) ([]int32, score) {
	var best []int32
	scratch := make([]int32, len(order))
	for m := range moves(len(order)) {
		if s.done() {
			return nil, worth
		}
		if !s.apply(m, order, scratch) {
			continue
		}
		floor := s.floor(scratch)
		if floor.compare(worth) >= 0 {
			continue
		}
		if w := s.full(floor); w.compare(worth) < 0 {
			best, worth = slices.Clone(scratch), w
			s.take(best, w)
		}
	}
	return best, worth
}

// anneal changes an order so many times, and gives the best order that it came
// by. A change for the worse is taken if it is no worse than the heat times a
// number drawn from the exponential distribution, which is the usual rule.
func (s *search) anneal(from []int32, steps int, loss float64, random *rand.Rand) []int32 {
	order, scratch := slices.Clone(from), make([]int32, len(from))
	worth := s.worthOf(order)
	best, bestWorth := slices.Clone(order), worth
	hottest := loss / 2
	for i := range steps {
		if i%256 == 0 && s.done() {
			break
		}
		if !s.apply(s.draw(order, random), order, scratch) {
			continue
		}
		heat := hottest * math.Pow(coldest/hottest, float64(i)/float64(steps))
		bound := worth.weigh(loss) + heat*random.ExpFloat64()
		floor := s.floor(scratch)
		if floor.weigh(loss) > bound {
			continue
		}
		w := s.full(floor)
		if w.weigh(loss) > bound {
			continue
		}
		order, scratch, worth = scratch, order, w
		s.take(order, worth)
		if worth.compare(bestWorth) < 0 {
			copy(best, order)
			bestWorth = worth
		}
	}
	return best
}

// weigh is a score in one number, in moved poems, where an unfaced poem or a blank
// weighs so many.
func (s score) weigh(loss float64) float64 {
	return amissWeight*float64(s.amiss) + loss*float64(s.loss) + float64(s.moved) + 0.3*float64(s.tally.Parted) + 0.1*float64(s.tally.Extent)
}
