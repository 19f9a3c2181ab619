package pdf

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"headland/assets"
	"headland/pagemodel"
	"headland/typeset"
)

// boxes reads a sheet's boxes with pdfinfo: each as left, foot, right, head,
// in points to two decimals.
func boxes(t *testing.T, path string, sheet int) map[string]string {
	t.Helper()
	n := fmt.Sprint(sheet)
	found := map[string]string{}
	for _, m := range regexp.MustCompile(`(\w+)Box: +(.*)`).FindAllStringSubmatch(tool(t, "pdfinfo", "-box", "-f", n, "-l", n, path), -1) {
		found[m[1]] = strings.Join(strings.Fields(m[2]), " ")
	}
	return found
}

// The boxes of sheets are where the paper, the bleed and the trim are
// (pdfinfo). B-format is 129 by 198 mm, 365.67 by 561.27 pt as 1/64 pt; 3 mm
// is 8.5 pt.
func TestBoxes(t *testing.T) {
	for _, c := range []struct {
		name               string
		sheet              Sheet
		media, bleed, trim string
	}{
		{"plain", Sheet{}, "0.00 0.00 365.67 561.27", "0.00 0.00 365.67 561.27", "0.00 0.00 365.67 561.27"},
		{"bleed", Sheet{Bleed: pagemodel.MM(3)}, "0.00 0.00 382.67 578.27", "0.00 0.00 382.67 578.27", "8.50 8.50 374.17 569.77"},
		{"marks", Sheet{Marks: true}, "0.00 0.00 411.02 606.61", "22.67 22.67 388.34 583.94", "22.67 22.67 388.34 583.94"},
		{"both", Sheet{Bleed: pagemodel.MM(4), Marks: true}, "0.00 0.00 416.70 612.30", "14.17 14.17 402.53 598.12", "25.52 25.52 391.19 586.78"},
		{"spread with both", Sheet{Spreads: true, Bleed: pagemodel.MM(3), Marks: true}, "0.00 0.00 776.69 606.61", "14.17 14.17 762.52 592.44", "22.67 22.67 754.02 583.94"},
		{"spread", Sheet{Spreads: true}, "0.00 0.00 731.34 561.27", "0.00 0.00 731.34 561.27", "0.00 0.00 731.34 561.27"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := boxes(t, saved(t, Document{Pages: blankPages(3), Sheet: c.sheet}), 2)
			if got["Media"] != c.media || got["Bleed"] != c.bleed || got["Trim"] != c.trim {
				t.Errorf("got %v", got)
			}
		})
	}
}

// Crop marks lie outside the bleed, 3 mm or more from the trim, and on the paper.
func TestCropMarksStayOutsideTheBleed(t *testing.T) {
	for _, bleed := range []pagemodel.Length{0, pagemodel.MM(3), pagemodel.MM(4)} {
		s := Sheet{Bleed: bleed, Marks: true}.around(bFormat)
		if len(s.rules) != 8 {
			t.Fatalf("%d marks, want two at each corner", len(s.rules))
		}
		for _, m := range s.rules {
			clear := grown(s.trim, max(bleed, pagemodel.MM(3)))
			outX := m.X+m.W <= clear.X || m.X >= clear.X+clear.W
			outY := m.Y+m.H <= clear.Y || m.Y >= clear.Y+clear.H
			if !outX && !outY {
				t.Errorf("with %v of bleed, mark %v enters it", bleed, m)
			}
			if m.X < 0 || m.Y < 0 || m.X+m.W > s.paper.Width || m.Y+m.H > s.paper.Height {
				t.Errorf("mark %v leaves the paper", m)
			}
		}
	}
}

// In spreads the verso stands left of the recto facing it, and pages alone
// keep their half (pdftotext -bbox).
func TestSpreads(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.EBGaramond, false))
	pages := blankPages(4)
	for i, p := range pages {
		p.Rows = append(p.Rows, s.row(t, fmt.Sprint("page", i+1), 40, 60, 11))
	}
	path := saved(t, Document{Pages: pages, Sheet: Sheet{Spreads: true}})
	var got []string
	for _, m := range regexp.MustCompile(`(<page)|xMin="([0-9.]+)".*>(page\d)<`).FindAllStringSubmatch(tool(t, "pdftotext", "-bbox", path, "-"), -1) {
		got = append(got, m[3]+"@"+m[2])
	}
	right := fmt.Sprintf("%.6f", 40+bFormat.Width.Points())
	want := []string{"@", "page1@" + right, "@", "page2@40.000000", "page3@" + right, "@", "page4@40.000000"}
	if !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// All ink is black and black only (Ghostscript's inkcov: cyan, magenta, yellow
// and black cover of a page).
func TestInkIsBlackOnly(t *testing.T) {
	eachFamily(t, func(t *testing.T, s *setter) {
		page := pageOf(s.row(t, "final affinities office", 40, 60, 11))
		path := saved(t, Document{Pages: []*typeset.Page{page}, Sheet: Sheet{Marks: true}})
		out := tool(t, "gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=inkcov", "-sOutputFile=-", path)
		if !regexp.MustCompile(`^ *0\.00000 +0\.00000 +0\.00000 +0\.0[0-9]*[1-9]`).MatchString(out) {
			t.Errorf("ink: %s", out)
		}
	})
}

// readBack is what qpdf says of labels and outline.
type readBack struct {
	Pages []struct {
		Label struct {
			Style  string `json:"/S"`
			Start  int    `json:"/St"`
			Prefix string `json:"/P"`
		}
	}
	Outlines []entry
}

type entry struct {
	Title string
	Page  int `json:"destpageposfrom1"`
	Kids  []entry
}

func qpdfJSON(t *testing.T, path string) readBack {
	t.Helper()
	var r readBack
	out := tool(t, "qpdf", "--json=2", "--json-key=pages", "--json-key=outlines", path)
	if err := json.Unmarshal([]byte(out), &r); err != nil {
		t.Fatal(err)
	}
	return r
}

// labels are each page's style, first number and prefix.
func labels(r readBack) string {
	var all []string
	for _, p := range r.Pages {
		all = append(all, fmt.Sprint(p.Label.Style, p.Label.Start, strings.TrimPrefix(p.Label.Prefix, "u:")))
	}
	return strings.Join(all, " ")
}

// Page labels read back (qpdf): roman prelims, then arabic; on spreads both
// pages' numbers.
func TestPageLabels(t *testing.T) {
	prelims := []Numbering{{Style: Roman}, {From: 3, Style: Unnumbered}, {From: 4}, {From: 6, First: 40}}
	for _, c := range []struct {
		name    string
		spreads bool
		number  []Numbering
		want    string
	}{
		{"none", false, nil, "/D1 /D2 /D3 /D4 /D5 /D6 /D7"},
		{"prelims", false, prelims, "/r1 /r2 /r3 1 /D1 /D2 /D40"},
		{"spreads", true, prelims, "1i 1ii–iii 11 12–40"},
	} {
		path := saved(t, Document{Pages: blankPages(7), Numbering: c.number, Sheet: Sheet{Spreads: c.spreads}})
		if got := labels(qpdfJSON(t, path)); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// The outline reads back (qpdf): titles, pages, what is under what.
func TestOutline(t *testing.T) {
	d := Document{Pages: blankPages(5), Outline: []Bookmark{
		{Title: "I", Page: 0, Under: []Bookmark{{Title: "Żuraw (1)", Page: 1}, {Title: "Crème", Page: 2}}},
		{Title: "II", Page: 4},
	}}
	for _, c := range []struct {
		spreads bool
		want    string
	}{
		{false, "[{I 1 [{Żuraw (1) 2 []} {Crème 3 []}]} {II 5 []}]"},
		{true, "[{I 1 [{Żuraw (1) 2 []} {Crème 2 []}]} {II 3 []}]"},
	} {
		d.Sheet.Spreads = c.spreads
		if got := fmt.Sprint(qpdfJSON(t, saved(t, d)).Outlines); got != c.want {
			t.Errorf("spreads %v: %s, want %s", c.spreads, got, c.want)
		}
	}
}

var described = Document{
	Title: "Żuraw & other <poems>", Author: "Zoë A. Poet", Lang: "en-GB",
	Created: time.Date(2024, 2, 29, 13, 45, 6, 0, time.FixedZone("", 3600)),
}

// Title, author and date read back from the information dictionary and from
// the XMP packet (pdfinfo, which also checks that the packet is XML).
func TestInformation(t *testing.T) {
	d := described
	d.Pages = blankPages(2)
	path := saved(t, d)
	info := tool(t, "pdfinfo", "-isodates", path)
	for _, want := range []string{"Żuraw & other <poems>", "Zoë A. Poet", "2024-02-29T12:45:06Z"} {
		if !strings.Contains(info, want) {
			t.Errorf("pdfinfo has no %q:\n%s", want, info)
		}
	}
	meta := tool(t, "pdfinfo", "-meta", path)
	for _, want := range []string{"Żuraw &amp; other &lt;poems&gt;", "Zoë A. Poet", "en-GB", "2024-02-29T12:45:06Z"} {
		if !strings.Contains(meta, want) {
			t.Errorf("the XMP packet has no %q:\n%s", want, meta)
		}
	}
}

// The catalogue has language and layout (qpdf).
func TestCatalogue(t *testing.T) {
	d := described
	for _, c := range []struct {
		pages   []*typeset.Page
		spreads bool
		want    string
	}{
		{blankPages(3), false, "/TwoPageRight"},
		{blankPages(3)[1:], false, "/TwoPageLeft"},
		{blankPages(3), true, "/SinglePage"},
	} {
		d.Pages, d.Sheet.Spreads = c.pages, c.spreads
		out := tool(t, "qpdf", "--show-object=1", saved(t, d))
		for _, want := range []string{"/PageLayout " + c.want, "/Lang (en-GB)", "/DisplayDocTitle true"} {
			if !strings.Contains(out, want) {
				t.Errorf("no %s in %s", want, out)
			}
		}
	}
}

// The same document gives the same bytes; another gives another identifier.
func TestReproducible(t *testing.T) {
	s := newSetter(t, faceNamed(t, assets.GentiumBookPlus, false))
	d := described
	d.Pages = []*typeset.Page{pageOf(s.row(t, "office", 40, 60, 11))}
	first, second := written(t, d), written(t, d)
	if !bytes.Equal(first, second) {
		t.Error("two files of one document differ")
	}
	d.Title += "!"
	identifier := regexp.MustCompile(`/ID \[<([0-9A-F]{32})> <([0-9A-F]{32})>\]`)
	a, b := identifier.FindSubmatch(first), identifier.FindSubmatch(written(t, d))
	if a == nil || b == nil || bytes.Equal(a[1], b[1]) {
		t.Errorf("identifiers %q and %q, want two", a, b)
	}
}

// What can't be written is refused in words, before a byte is written.
func TestRefusals(t *testing.T) {
	pages := blankPages(2)
	odd := blankPages(2)
	odd[1].Trim.Width++
	for _, c := range []struct {
		d    Document
		want string
	}{
		{Document{}, "set the collection first"},
		{Document{Pages: []*typeset.Page{{}}}, "give them a trim"},
		{Document{Pages: odd}, "give all pages one trim"},
		{Document{Pages: pages, Numbering: []Numbering{{From: 1}}}, "must start at page 1"},
		{Document{Pages: pages, Numbering: []Numbering{{}, {From: 0}}}, "each after the one before"},
		{Document{Pages: pages, Numbering: []Numbering{{}, {From: 2}}}, "starts at page 3 of 2"},
		{Document{Pages: pages, Sides: []Side{{Pages: []Placed{{Page: 2, Percent: 100}}}}}, "page 3 of 2"},
		{Document{Pages: pages, Sides: []Side{{Pages: []Placed{{Page: 0}}}}}, "at 0 per cent"},
		{Document{Pages: pages, Sides: []Side{{Pages: []Placed{{Page: 1, Percent: 9}, {Page: 1, Percent: 9}}}}}, "each page on one side"},
		{Document{Pages: pages, Sides: []Side{{Pages: []Placed{{Page: 1, Percent: 9}}}}}, "page 1 of 2 is on no side"},
		{Document{Pages: pages, Outline: []Bookmark{{Title: "End", Page: 2}}}, `"End" to page 3 of 2`},
		{Document{Pages: pages, Outline: []Bookmark{{Under: []Bookmark{{Page: -1}}}}}, "set the pages again"},
	} {
		var b bytes.Buffer
		err := Write(&b, c.d)
		if err == nil || !strings.Contains(err.Error(), c.want) || b.Len() > 0 {
			t.Errorf("error %v and %d bytes, want %q and none", err, b.Len(), c.want)
		}
	}
}

// A writer's own error comes through.
func TestWritersError(t *testing.T) {
	full := fullDisk{}
	if err := Write(full, Document{Pages: blankPages(1)}); !errors.Is(err, os.ErrPermission) {
		t.Errorf("error %v", err)
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, os.ErrPermission }
