package order

import (
	"iter"
	"math/rand/v2"
	"slices"
)

// move is a change of an order of blocks: the run that begins at from is put
// before what stood at to, or, where it is an exchange, the blocks at from and to
// change places.
type move struct {
	from, length, to int
	exchange         bool
}

// longestRun is how many blocks are moved as a run at most.
const longestRun = 4

// moves are all moves of an order of n blocks: single blocks first.
func moves(n int) iter.Seq[move] {
	return func(yield func(move) bool) {
		for length := 1; length <= longestRun; length++ {
			for from := range n - length + 1 {
				for to := range n + 1 {
					if !yield(move{from: from, length: length, to: to}) {
						return
					}
				}
			}
		}
		for from := range n {
			for to := from + 1; to < n; to++ {
				if !yield(move{from: from, to: to, exchange: true}) {
					return
				}
			}
		}
	}
}

// apply makes the move, into another slice of the same length. It is false where
// it changes nothing, or the book can't be in that order.
func (s *scorer) apply(m move, order, into []int32) bool {
	if m.exchange {
		copy(into, order)
		into[m.from], into[m.to] = order[m.to], order[m.from]
	} else {
		if m.to >= m.from && m.to <= m.from+m.length {
			return false
		}
		putRun(order, into, m)
	}
	return s.sound(into, s.stay)
}

func putRun(order, into []int32, m move) {
	run := order[m.from : m.from+m.length]
	if m.to < m.from {
		n := copy(into, order[:m.to])
		n += copy(into[n:], run)
		n += copy(into[n:], order[m.to:m.from])
		copy(into[n:], order[m.from+m.length:])
		return
	}
	n := copy(into, order[:m.from])
	n += copy(into[n:], order[m.from+m.length:m.to])
	n += copy(into[n:], run)
	copy(into[n:], order[m.to:])
}

// draw is a move at random: most often of a single block, and at times of one back
// to where it stands in the present order.
func (s *scorer) draw(order []int32, random *rand.Rand) move {
	n := len(order)
	from := random.IntN(n)
	switch random.IntN(10) {
	case 0, 1:
		before := order[from] - 1
		return move{from: from, length: 1, to: slices.Index(order, before) + 1}
	case 2, 3:
		return move{from: from, to: random.IntN(n), exchange: true}
	case 4, 5:
		length := min(2+random.IntN(longestRun-1), n-from)
		return move{from: from, length: length, to: random.IntN(n + 1)}
	}
	return move{from: from, length: 1, to: random.IntN(n + 1)}
}
