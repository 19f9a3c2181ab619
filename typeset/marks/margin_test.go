package marks

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"headland/pagemodel"
	"headland/pagemodel/difference"
	"headland/typeset"
	"headland/typeset/marks/overlay"
)

// everything is a proof with a correction of each kind, several of them in one
// row.
func everything(t testing.TB, lie pagemodel.Lie) *proof {
	p := newProof(lie)
	p.add(difference.Change{Kind: difference.Design, Field: "measure", Was: "83 mm", Is: "85 mm"}).Whose = pagemodel.Designers
	p.add(difference.Change{Kind: difference.MovePoem, Poem: p.poem(0), Field: "poem", Is: "the poem “The Proving Drawer” after the poem “Delivery”"})
	p.at(t, difference.Substitute, "street", "“lane”")
	p.at(t, difference.Italic, "dark", "“dark” in italic").Whose = pagemodel.Editors
	p.point(t, difference.Insert, "is up,| and leaning", "“already” in italic")
	p.at(t, difference.Delete, "warmest", "nothing")
	p.at(t, difference.Transpose, "floury thumb", "“thumb floury”")
	p.after(t, difference.OpenStanza, "What rises does so only being left alone:", "“alone: // the”")
	p.point(t, difference.TurnAt, "and then |the hour", "turned between “and then” and “the hour”").State = pagemodel.Queried
	p.at(t, difference.Substitute, "nobody", "“no one in the whole length of the street, or the next,”")
	p.point(t, difference.NewLine, "goes over,| counting", "“goes over, / counting”")
	p.after(t, difference.CloseStanza, "A cat goes over, counting every roof.", "“roof. / By”")
	p.point(t, difference.IndentLine, "|By five", "“By five” indented 2 em")
	p.point(t, difference.Space, "a clock| that", "“clock that” with 2 em of white")
	p.at(t, difference.Delete, "no one winds", "nothing")
	p.after(t, difference.RunOn, "a clock that no one winds and no one hears", "“hears except”").Whose = pagemodel.Printers
	p.at(t, difference.Roman, "blue", "“blue” in roman")
	p.at(t, difference.Bold, "house", "“house” in bold")
	p.at(t, difference.SmallCapitals, "school", "“school” in small capitals")
	p.lines(t, "The driver knows the road by its lights", "and the lights by how they go out.")
	p.point(t, difference.Space, "Nothing| is owed", "“Nothing is” with no space")
	p.at(t, difference.Transpose, "bread and morning", "“morning and bread”").Whose = pagemodel.Editors
	p.add(difference.Change{Kind: difference.Design, Poem: p.poem(1), Field: "size", Was: "the book’s", Is: "10 pt"})
	p.point(t, difference.CancelIndent, "|but bread", "“but bread and morning” not indented")
	return p
}

// rooms are the two ways in which pages are marked: on the page itself, and on
// proof paper.
var rooms = []typeset.Length{0, ProofRoom}

// each marks all pages of everything, upright and on its side, with and without
// proof paper.
func each(t *testing.T, test func(t *testing.T, p *proof, page *typeset.Page, room typeset.Length, o overlay.Overlay)) {
	for _, lie := range []pagemodel.Lie{pagemodel.Upright, pagemodel.Turned} {
		p := everything(t, lie)
		for n := 1; n <= p.set.Extent(); n++ {
			for _, room := range rooms {
				t.Run(fmt.Sprintf("%v, page %d, %v", lie, n, room), func(t *testing.T) {
					test(t, p, p.set.Page(n), room, OnProof(p.set, n, &p.list, p.setter, room))
				})
			}
		}
	}
}

// area is where a row of type stands, as the letters of a book face reach, on the
// page.
func area(p *typeset.Page, r *typeset.Row) box {
	size := r.Runs[0].Size
	top, bottom := r.Baseline-size*7/10, r.Baseline+size/4
	if r.Turned {
		return box{top, p.Trim.Height - r.X - r.Width, bottom, p.Trim.Height - r.X}
	}
	return box{r.X, top, r.X + r.Width, bottom}
}

func (b box) overlaps(o box) bool {
	return b.left < o.right && o.left < b.right && b.top < o.bottom && o.top < b.bottom
}

func (b box) contains(o box) bool {
	return b.left <= o.left && b.right >= o.right && b.top <= o.top && b.bottom >= o.bottom
}

// inMargin says that something stands beyond the text, as far from it as marks in
// the text never reach.
func inMargin(p *proof, page *typeset.Page, b box) bool {
	m := &marker{set: p.set, page: page, design: p.set.Collection().Design()}
	for _, turned := range []bool{false, true} {
		f := m.frame(turned)
		off := m.design.Size
		left, right := f.text.X-off, f.text.X+f.text.W+off
		if turned && (b.bottom < page.Trim.Height-right || b.top > page.Trim.Height-left) || !turned && (b.right < left || b.left > right) {
			return true
		}
	}
	return false
}

// Nothing in the margins overlaps anything else there, nor the text; only a ring
// holds words.
func TestMarginsAreLegible(t *testing.T) {
	each(t, func(t *testing.T, p *proof, page *typeset.Page, room typeset.Length, o overlay.Overlay) {
		var all []box
		for i := range o.Rows {
			all = append(all, area(page, &o.Rows[i]))
		}
		words := len(all)
		if words == 0 {
			t.Fatal("nothing stands in the margins")
		}
		for _, s := range o.Strokes {
			if b := boxOf(s); inMargin(p, page, b) {
				all = append(all, b)
			}
		}
		for i, a := range all {
			for k := range page.Rows {
				if a.overlaps(area(page, &page.Rows[k])) {
					t.Errorf("%v lies over the text at %v", a, area(page, &page.Rows[k]))
				}
			}
			for k, b := range all[:i] {
				if a.overlaps(b) && (i < words || k >= words || !a.contains(b)) && !partsOfOneMark(a, b) {
					t.Errorf("%v and %v overlap (%d and %d of %d words)", a, b, i, k, words)
				}
			}
		}
		paper := box{-room, -room, page.Trim.Width + room, page.Trim.Height + room}
		for _, b := range all {
			if !paper.contains(b) {
				t.Errorf("%v lies off the paper %v", b, paper)
			}
		}
	})
}

// partsOfOneMark says that two strokes touch as those of one mark do: no farther
// apart than the width of a mark, and no wider together.
func partsOfOneMark(a, b box) bool {
	whole := box{min(a.left, b.left), min(a.top, b.top), max(a.right, b.right), max(a.bottom, b.bottom)}
	em := pagemodel.Pt(11)
	return whole.right-whole.left <= em && whole.bottom-whole.top <= em
}

// label finds the number and letters of a correction.
var label = regexp.MustCompile(`(?:see )?([0-9]+) (AA|PE|EA|DA)$`)

// labels are the labels of a page's overlay, in the order in which they were set.
func labels(o *overlay.Overlay) []string {
	var all []string
	for i := range o.Rows {
		if found := label.FindString(o.Rows[i].Runs[0].Text); found != "" {
			all = append(all, strings.TrimPrefix(found, "see "))
		}
	}
	return all
}

// Every correction stands in the margins of the book just once, with its number
// and its letters.
func TestEveryCorrectionIsNumbered(t *testing.T) {
	for _, lie := range []pagemodel.Lie{pagemodel.Upright, pagemodel.Turned} {
		p := everything(t, lie)
		for _, room := range rooms {
			var got, want []string
			for n := 1; n <= p.set.Extent(); n++ {
				o := OnProof(p.set, n, &p.list, p.setter, room)
				got = append(got, labels(&o)...)
			}
			for _, c := range p.list.All {
				want = append(want, fmt.Sprintf("%d %s", c.Number, c.Whose))
			}
			slices.Sort(got)
			slices.Sort(want)
			if !slices.Equal(got, want) {
				t.Errorf("%v, %v: numbered are %q, want %q", lie, room, got, want)
			}
		}
	}
}

// Corrections of one row stand in the margin in the order of their words, level
// with the row where there is room.
func TestOrderAlongTheRow(t *testing.T) {
	p := newProof(pagemodel.Upright)
	p.at(t, difference.Delete, "one winds", "nothing")
	p.at(t, difference.Delete, "a clock", "nothing")
	p.at(t, difference.Substitute, "hears", "“heeds”")
	o := OnProof(p.set, 1, &p.list, p.setter, ProofRoom)
	if got := labels(&o); !slices.Equal(got, []string{"2 AA", "1 AA", "3 AA"}) {
		t.Errorf("they stand in the order %q", got)
	}
	row := p.set.Page(1).Rows[1]
	for i := range p.set.Page(1).Rows {
		if p.set.Page(1).Rows[i].Ref() == p.list.All[0].Change.Line {
			row = p.set.Page(1).Rows[i]
		}
	}
	x := row.X + row.Width
	for i := range o.Rows {
		if o.Rows[i].Baseline != row.Baseline || o.Rows[i].X <= x {
			t.Errorf("%q stands at %v, %v; before it %v, the row at %v", o.Rows[i].Runs[0].Text, o.Rows[i].X, o.Rows[i].Baseline, x, row.Baseline)
		}
		x = o.Rows[i].X + o.Rows[i].Width
	}
}

// New matter that fits stands in the margin; where it does not, the number says
// where it is to be read.
func TestNewMatterOrItsNumber(t *testing.T) {
	p := everything(t, pagemodel.Upright)
	texts := func(room typeset.Length) string {
		o := OnProof(p.set, 1, &p.list, p.setter, room)
		var all []string
		for i := range o.Rows {
			all = append(all, o.Rows[i].Runs[0].Text)
		}
		return strings.Join(all, "|")
	}
	for _, want := range []string{"lane|3 AA", "already|5 AA", "or the next,|10 AA"} {
		if got := texts(ProofRoom); !strings.Contains(got, want) {
			t.Errorf("on proof paper %q is missing in %q", want, got)
		}
	}
	if got := texts(0); !strings.Contains(got, "lane|3 AA") || !strings.Contains(got, "see 10 AA") || strings.Contains(got, "no one in") {
		t.Errorf("in the page's own margin stands %q", got)
	}
}

// Where the outer margin has no room beside a row, the half of the row towards the
// spine is marked in the inner margin.
func TestCrowdedRowUsesBothMargins(t *testing.T) {
	p := newProof(pagemodel.Upright)
	for _, word := range []string{"a clock", "that no one", "winds and", "hears"} {
		p.at(t, difference.Substitute, word, "“something else again”")
	}
	line := p.list.All[0].Change.Line
	for i := range p.list.All {
		if p.list.All[i].Change.Line != line {
			t.Fatal("the sample's words don't stand in one line")
		}
	}
	o := OnProof(p.set, 1, &p.list, p.setter, ProofRoom)
	text := p.set.Page(1).Text
	var left, right []string
	for i := range o.Rows {
		if found := label.FindString(o.Rows[i].Runs[0].Text); found == "" {
			continue
		} else if o.Rows[i].X < text.X {
			left = append(left, found)
		} else {
			right = append(right, found)
		}
	}
	if !slices.Equal(left, []string{"1 AA", "2 AA", "3 AA"}) || !slices.Equal(right, []string{"4 AA"}) {
		t.Errorf("left stand %q, right %q", left, right)
	}
}

// The same page is marked the same again, and neither the pages nor the list are
// touched.
func TestOnIsPure(t *testing.T) {
	p := everything(t, pagemodel.Upright)
	page, list := p.set.Page(1), slices.Clone(p.list.All)
	first := On(p.set, 1, &p.list, p.setter)
	On(p.set, 2, &p.list, p.setter)
	if again := On(p.set, 1, &p.list, typeset.NewSetter(typeset.Bundled())); !reflect.DeepEqual(first.Strokes, again.Strokes) || len(first.Rows) != len(again.Rows) {
		t.Error("a second overlay differs from the first")
	}
	if !reflect.DeepEqual(page.Rows, p.set.Page(1).Rows) || !reflect.DeepEqual(list, p.list.All) {
		t.Error("the page or the list has changed")
	}
	if o := On(p.set, p.set.Extent()+1, &p.list, p.setter); !o.Empty() {
		t.Error("a page outside the book has marks")
	}
}
