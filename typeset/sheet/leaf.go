package sheet

import (
	"headland/pagemodel"
	"headland/typeset"
)

// Kind says what words beside the verse are.
type Kind int

// The kinds of words on a leaf.
const (
	Title       Kind = iota
	PrintedPage      // where to turn to in the book
	Talk             // what is said before the poem
	Spare            // that it is read only if there is time
	Aside            // a word said otherwise, above the line
	TurnSign         // before what is turned over
	Catchword        // the first words of what comes next
	Folio            // the leaf's own number, on paper
)

// Words are words on a leaf that are no lines of the poem.
type Words struct {
	Kind Kind
	typeset.Row
}

// Leaf is what is seen at once: an item of the running order or a part of it. Its
// rows count as a page's do, from the top left corner of the trim. Nothing in it may
// be changed.
type Leaf struct {
	Item  int           // of the running order, from 0
	First bool          // the item begins here
	Last  bool          // and ends here
	Verse []typeset.Row // the poem's rows, with its subtitle, dedication and the like, under the book's identities
	Words []Words
	Size  typeset.Length // of the verse, 0 where only something is said
}

// Copy is a running order in large type. It never changes once made.
type Copy struct {
	Reading pagemodel.Reading
	Format  Format
	Leaves  []Leaf
}

// LeafOf is the first leaf of an item, from 0; the last one of all where it has
// none.
func (c *Copy) LeafOf(item int) int {
	for i := range c.Leaves {
		if c.Leaves[i].Item >= item {
			return i
		}
	}
	return len(c.Leaves) - 1
}

// Pages are the leaves as pages, for paper.
func (c *Copy) Pages() []*typeset.Page {
	pages := make([]*typeset.Page, len(c.Leaves))
	for i := range c.Leaves {
		pages[i] = c.page(i)
	}
	return pages
}

// roles are what words are called as rows of a page.
var roles = [...]typeset.Role{
	Title: typeset.RoleTitle, PrintedPage: typeset.RoleRunning, Talk: typeset.RoleMatter,
	Spare: typeset.RoleRunning, Aside: typeset.RoleSign,
	TurnSign: typeset.RoleSign, Catchword: typeset.RoleRunning, Folio: typeset.RoleFolio,
}

// page is leaf i as a page: what stands above the verse first, then what stands
// below it, as one reads.
func (c *Copy) page(i int) *typeset.Page {
	l, f := &c.Leaves[i], &c.Format
	p := &typeset.Page{Number: i + 1, Trim: f.Trim, Side: pagemodel.Recto}
	p.Text = typeset.Rect{X: f.Side, Y: f.Head, W: f.measure(), H: f.Trim.Height - f.Head - f.Foot}
	for _, below := range [...]bool{false, true} {
		for _, w := range l.Words {
			if (w.Kind >= Aside) == below {
				w.Role = roles[w.Kind]
				p.Rows = append(p.Rows, w.Row)
			}
			if w.Kind == Folio {
				p.Folio = textOf(&w.Row)
			}
		}
		if !below {
			p.Rows = append(p.Rows, l.Verse...)
		}
	}
	return p
}
