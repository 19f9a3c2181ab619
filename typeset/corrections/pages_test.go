package corrections

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

func pagesOf(t testing.TB, l *List) []*typeset.Page {
	t.Helper()
	pages, err := l.Pages(typeset.NewSetter(typeset.Bundled()), assets.EBGaramond)
	if err != nil {
		t.Fatal(err)
	}
	return pages
}

// rowsOf are the texts of a page's rows.
func rowsOf(p *typeset.Page) []string {
	var rows []string
	for i := range p.Rows {
		var b strings.Builder
		for _, run := range p.Rows[i].Runs {
			b.WriteString(run.Text)
		}
		rows = append(rows, b.String())
	}
	return rows
}

// TestPages: the list stands on A4 with a folio on each page, its words in order,
// and no correction is parted by a page end.
func TestPages(t *testing.T) {
	l := sample()
	for n := 4; n <= 60; n++ {
		c := l.All[n%3]
		c.Number = n
		l.All = append(l.All, c)
	}
	pages := pagesOf(t, l)
	var all strings.Builder
	a4 := pagemodel.Trim{Width: pagemodel.MM(210), Height: pagemodel.MM(297)}
	for n, p := range pages {
		if p.Trim != a4 || p.Folio == "" {
			t.Errorf("page %d is %v, its folio %q", n+1, p.Trim, p.Folio)
		}
		rows := rowsOf(p)
		first := p.Rows[slices.IndexFunc(p.Rows, func(r typeset.Row) bool { return r.Line != 0 })]
		if text := first.Runs[0].Text; n > 0 && (text[0] < '0' || text[0] > '9') {
			t.Errorf("page %d begins with %q, not with a number", n+1, rows[0])
		}
		all.WriteString(strings.Join(rows[:len(rows)-1], "\n")) // without the folio
	}
	text, from := closed(all.String()), 0
	for i := range l.All {
		c := &l.All[i]
		for _, s := range append([]said{{"", c.where()}, {"", c.onPage()}, {"", string(c.Change.Kind)}, {"", c.whose()}}, c.says()...) {
			at := strings.Index(text[from:], closed(s.label+s.text))
			if at < 0 {
				t.Fatalf("correction %d: %q is not where it should be", c.Number, s.text)
			}
			from += at
		}
	}
	if !strings.Contains(text, closed(ruleHeading+l.Rule)) {
		t.Error("the counting rule is not on the pages")
	}
}

// TestWordsHang: what is turned over stands under the words that it goes on from.
func TestWordsHang(t *testing.T) {
	l := sample()
	l.All[0].Change.Was = "“" + strings.Repeat("bread and ", 30) + "butter”"
	turned := 0
	for _, p := range pagesOf(t, l) {
		for i, r := range p.Rows {
			if r.Turn != typeset.Turnover {
				continue
			}
			turned++
			above := p.Rows[i-1]
			words := above.X
			if above.Turn != typeset.Turnover {
				words = above.XAt(strings.Index(above.Runs[0].Text, "was") + len("was "))
			}
			if off := r.X - words; off > pagemodel.Point || off < -pagemodel.Point {
				t.Errorf("%q stands %v from the words above it", r.Runs[0].Text, off)
			}
		}
	}
	if turned < 2 {
		t.Fatalf("%d rows are turned over: the test needs two", turned)
	}
}

// TestPagesOfAnything: any list can be set, an empty one too.
func TestPagesOfAnything(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 30 {
		if pages := pagesOf(t, randomList(r)); len(pages) == 0 || len(pages[0].Rows) == 0 {
			t.Fatal("a list without pages")
		}
	}
	l := sample()
	l.All = nil
	if rows := strings.Join(rowsOf(pagesOf(t, l)[0]), "\n"); !strings.Contains(rows, "no correction") {
		t.Errorf("an empty list is\n%s", rows)
	}
}
