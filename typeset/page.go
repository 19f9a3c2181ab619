package typeset

import "headland/pagemodel"

// Length is the unit of everything on a page: 1/64 pt. See [pagemodel.Length].
type Length = pagemodel.Length

// Point is a place on a page. The origin is the top left corner of the trim, x
// runs right and y down.
type Point struct{ X, Y Length }

// Rect is an area of a page, by its top left corner and its size.
type Rect struct{ X, Y, W, H Length }

// Role says what a row of type is.
type Role int

// The roles. Only verse and prose hold the poet's lines, and only they are
// numbered.
const (
	RoleVerse Role = iota
	RoleProse
	RoleTitle
	RoleSubtitle
	RoleDedication
	RoleEpigraph
	RoleHeading // of a part of a poem
	RolePlace   // closing place or date
	RoleSection // a section's title
	RoleFolio
	RoleRunning  // a running head
	RoleMatter   // words of the prelims or end matter
	RoleContents // a line of the contents or the index, and its folio
	RoleSign     // the sign at the foot of a page that hides a stanza break
)

var roleNames = [...]string{"verse", "prose", "title", "subtitle", "dedication", "epigraph", "heading", "place", "section", "folio", "running head", "matter", "contents", "sign"}

// String is the role in a word.
func (r Role) String() string { return roleNames[r] }

// Turn says how a row came to begin where it does.
type Turn int

// The three things that must stay apart: the poet's line, this edition's
// break, and the setting's turnover.
const (
	LineStart    Turn = iota // begins a line of the poem
	EditionBreak             // begins what this edition breaks off
	Turnover                 // carries over the tail of an overlong line
)

var turnNames = [...]string{"line", "edition break", "turnover"}

// String is the turn in words.
func (t Turn) String() string { return turnNames[t] }

// Glyph is one glyph of a run.
type Glyph struct {
	ID      uint32 // in the run's face
	X, Y    Length // of its origin, from the run's origin; y down
	Advance Length // to where the next glyph begins
	Cluster int    // byte offset in the run's text of the characters it stands for
}

// Run is glyphs of one face and size on one baseline.
type Run struct {
	Face   *Face
	Size   Length
	X      Length // of the run's origin, from the row's X
	Width  Length // the advance of the whole run
	Glyphs []Glyph
	Text   string // the characters, exactly
	Start  int    // byte offset of Text in the source line's text
}

// Row is one set line: a line of the poem, or a piece of one.
type Row struct {
	Poem       pagemodel.PoemID
	Line       pagemodel.LineID // 0 unless the role is verse or prose
	Role       Role
	Turn       Turn
	Start, End int    // the bytes of the source text that stand here, end spaces left out
	Number     int    // among the page's rows of verse and prose, from 1; 0 for others
	Grid       int    // the row of the baseline grid, from 1 at the head
	X          Length // of the first glyph's origin, from the left of the trim
	Baseline   Length // from the top of the trim
	Width      Length // of the ink's advance, end spaces left out
	Overrun    Length // on a line's first row: by how much the line exceeds its room; else 0
	Room       Length // the width that the line had, from X
	Last       bool   // this row ends the poet's line
	Turned     bool   // lies on its side: X runs up from the foot of the trim, Baseline right from its left edge
	Runs       []Run

	ranged bool // of a line that is centred or ranged right: it does not move with the poem's left edge
}

// Ref is the poet's line that the row shows.
func (r *Row) Ref() pagemodel.LineRef { return pagemodel.LineRef{Poem: r.Poem, Line: r.Line} }

// Page is one page, complete. Whoever asked for it may keep it; nothing in it
// may be changed.
type Page struct {
	Number int    // from 1, a recto
	Folio  string // as printed; "" on a blind page
	Side   pagemodel.Side
	Trim   pagemodel.Trim
	Text   Rect // where the text may stand: measure by depth
	Rows   []Row
}

// XAt is the x, from the left of the trim, of the edge before the byte offset
// of the row's source text. Within a ligature it is a share of its width.
func (r *Row) XAt(offset int) Length {
	for i := range r.Runs {
		run := &r.Runs[i]
		if offset < run.Start+len(run.Text) || i == len(r.Runs)-1 {
			return r.X + run.X + run.xAt(offset-run.Start)
		}
	}
	return r.X
}

func (run *Run) xAt(offset int) Length {
	if offset <= 0 {
		return 0
	}
	for i := 0; i < len(run.Glyphs); {
		g := run.Glyphs[i]
		next, end, width := run.cluster(i)
		if offset < end {
			return g.X + width*Length(offset-g.Cluster)/Length(max(1, end-g.Cluster))
		}
		i = next
	}
	return run.Width
}

// cluster is the cluster that begins with glyph i: the glyph after it, the
// byte offset where its characters end, and its advance.
func (run *Run) cluster(i int) (next, end int, width Length) {
	c := run.Glyphs[i].Cluster
	for next = i; next < len(run.Glyphs) && run.Glyphs[next].Cluster == c; next++ {
		width += run.Glyphs[next].Advance
	}
	end = len(run.Text)
	if next < len(run.Glyphs) {
		end = run.Glyphs[next].Cluster
	}
	return next, end, width
}

// OffsetAt is the byte offset of the row's source text whose edge lies nearest
// to x, which counts from the left of the trim.
func (r *Row) OffsetAt(x Length) int {
	var offsets []int
	for _, run := range r.Runs {
		for i := range run.Text {
			offsets = append(offsets, run.Start+i)
		}
	}
	offsets = append(offsets, r.End)
	p := piece{runs: r.Runs, width: r.Width}
	best, far := r.Start, Length(1<<30)
	for i, at := range p.xs(offsets) {
		if d := abs(r.X + at - x); d < far {
			best, far = offsets[i], d
		}
	}
	return best
}

// RowAt is the index of the row whose line of the grid the y lies in, or the
// nearest one; -1 on a page without rows.
func (p *Page) RowAt(y Length) int {
	best, far := -1, Length(1<<30)
	for i := range p.Rows {
		r := &p.Rows[i]
		middle := r.Baseline
		if len(r.Runs) > 0 {
			middle -= r.Runs[0].Size / 3
		}
		if d := abs(middle - y); d < far {
			best, far = i, d
		}
	}
	return best
}

// At finds the text at a point: the row and the byte offset in its source
// text. It is false where no row of the poet's lines is within a line of y.
func (p *Page) At(at Point) (row int, offset int, ok bool) {
	i := p.RowAt(at.Y)
	if i < 0 || p.Rows[i].Line == 0 || len(p.Rows[i].Runs) == 0 {
		return 0, 0, false
	}
	r := &p.Rows[i]
	size := r.Runs[0].Size
	if at.Y < r.Baseline-size*5/4 || at.Y > r.Baseline+size*3/4 {
		return 0, 0, false
	}
	return i, r.OffsetAt(at.X), true
}

func abs(l Length) Length {
	if l < 0 {
		return -l
	}
	return l
}
