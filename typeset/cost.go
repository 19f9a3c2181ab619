package typeset

import "cmp"

// Cost is what the page ends of a book cost, worst first. Two books' page ends
// are compared field by field in this order; what is less is better. See
// [Cost.Compare].
type Cost struct {
	Forbidden   int // page ends that part what must not be parted, where nothing else fits
	Turned      int // stanzas parted at a turn of the leaf
	Split       int // stanzas parted at the gutter
	AgainstRule int // quatrains and sestets parted where their rule forbids it
	Pages       int // pages that hold something of a poem
	Unfaced     int // poems of two pages that do not face each other
	Uneven      int // pages of stanza-less verse whose depth is odd (2) or even and no multiple of four (1)
	Slack       int // the squares of the rows left empty at the foot, each poem's last page excepted
}

// Compare is negative where a is the better, positive where b is, 0 where
// nothing tells them apart.
func (a Cost) Compare(b Cost) int {
	return cmp.Or(
		cmp.Compare(a.Forbidden, b.Forbidden), cmp.Compare(a.Turned, b.Turned), cmp.Compare(a.Split, b.Split),
		cmp.Compare(a.AgainstRule, b.AgainstRule), cmp.Compare(a.Pages, b.Pages), cmp.Compare(a.Unfaced, b.Unfaced),
		cmp.Compare(a.Uneven, b.Uneven), cmp.Compare(a.Slack, b.Slack),
	)
}

// weight is a Cost packed two fields to a word, so that adding and comparing
// cost four operations. Differences of weights are weights too: fields never
// come near half a word.
type weight [4]int64

const (
	halfWord  = 32
	slackBits = 40
)

func (w *weight) add(v *weight) weight {
	return weight{w[0] + v[0], w[1] + v[1], w[2] + v[2], w[3] + v[3]}
}

func (w *weight) minus(v *weight) weight {
	return weight{w[0] - v[0], w[1] - v[1], w[2] - v[2], w[3] - v[3]}
}

// compare is negative where w is the lighter.
func (w *weight) compare(v *weight) int {
	for i := range w {
		if w[i] != v[i] {
			if w[i] < v[i] {
				return -1
			}
			return 1
		}
	}
	return 0
}

func weightOf(c Cost) weight {
	return weight{
		int64(c.Forbidden)<<halfWord + int64(c.Turned), int64(c.Split)<<halfWord + int64(c.AgainstRule),
		int64(c.Pages)<<halfWord + int64(c.Unfaced), int64(c.Uneven)<<slackBits + int64(c.Slack),
	}
}

// cost unpacks a weight that is no difference.
func (w *weight) cost() Cost {
	upper := func(v int64) int { return int(v >> halfWord) }
	lower := func(v int64) int { return int(v & (1<<halfWord - 1)) }
	return Cost{
		upper(w[0]), lower(w[0]), upper(w[1]), lower(w[1]), upper(w[2]), lower(w[2]),
		int(w[3] >> slackBits), int(w[3] & (1<<slackBits - 1)),
	}
}
