package command

import (
	"encoding/json"
	"flag"
	"math"
	"strconv"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

const reportMore = `The lines that the measure turns over come first, then faults, the extent and the
contents. Signatures are of 16 pages. The spine is reckoned from the bound pages,
blanks counted, by the paper trade's pages x gsm x vol / 20000, for 80 gsm paper
of volume 18.

  --json     one JSON object, to read on
  --strict   exit status 1 if a line is unsettled or anything is faulty
`

type reportOptions struct{ json, strict bool }

func reportFlags(set *flag.FlagSet) any {
	o := &reportOptions{}
	set.BoolVar(&o.json, "json", false, "")
	set.BoolVar(&o.strict, "strict", false, "")
	return o
}

func runReport(c *call, options any, words []string) (err error) {
	o := options.(*reportOptions)
	file, err := oneFile("report", words)
	if err != nil {
		return err
	}
	s, err := session.Open(file)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	c.found = o.strict && (s.Committed().Unsettled() > 0 || len(s.Committed().Faults()) > 0)
	r := reportOf(s.Committed())
	if !o.json {
		c.prose(r)
		return nil
	}
	encoder := json.NewEncoder(c.out)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", "  ")
	return encoder.Encode(r)
}

// report is what is said of a book. Its JSON is read by other programs: names
// are added, never changed.
type report struct {
	Title     string          `json:"title"`
	Poems     int             `json:"poems"`
	Lines     int             `json:"lines"` // the poet's
	Pages     int             `json:"pages"`
	Extent    extentReport    `json:"extent"`
	Design    designReport    `json:"design"`
	Turnovers []turnover      `json:"turnovers"`
	Faults    []fault         `json:"faults"`
	Contents  []contentsEntry `json:"contents"`

	poet string
}

// extentReport is what the book takes: Pages and Blanks fill Signatures.
type extentReport struct {
	Pages      int     `json:"pages"`
	Signatures int     `json:"signatures"`
	Blanks     int     `json:"blanks"`
	SpineMM    float64 `json:"spine_mm"`
}

type turnover struct {
	Poem    string  `json:"poem"` // its title, or its first line
	Number  int     `json:"number"`
	Stanza  int     `json:"stanza"`
	Line    int     `json:"line"`
	Page    string  `json:"page"`
	Row     int     `json:"row"`
	Text    string  `json:"text"`
	Parts   int     `json:"parts"`
	Overrun float64 `json:"overrun_pt"`
	State   string  `json:"state"`
}

type fault struct {
	Kind string `json:"kind"`
	Poem string `json:"poem"` // "" where it is of the whole book
	Page string `json:"page"` // likewise
	Row  int    `json:"row"`
	Text string `json:"text"`
}

type contentsEntry struct {
	Title string `json:"title"`
	Page  string `json:"page"`

	section bool
}

// reportOf gathers what is to be said of a set book.
func reportOf(s *typeset.Setting) report {
	c := s.Collection()
	r := report{Title: c.About().Title, poet: c.About().Poet, Pages: s.Extent(), Design: designOf(c.Design())}
	r.Poems, r.Lines = countText(c)
	r.Extent = extentOf(s.Extent())
	r.Turnovers, r.Faults, r.Contents = []turnover{}, []fault{}, []contentsEntry{}
	names := poemNames(c)
	for _, t := range s.Turnovers() {
		r.Turnovers = append(r.Turnovers, turnover{
			Poem: names[t.Poem], Number: t.Number, Stanza: t.Stanza, Line: t.Line, Page: folio(s, t.Page), Row: t.Row,
			Text: t.Text, Parts: t.Parts, Overrun: points(t.Overrun), State: t.State.String(),
		})
	}
	for _, f := range s.Faults() {
		r.Faults = append(r.Faults, fault{string(f.Kind), names[f.Poem], folio(s, f.Page), f.Row, f.Text})
	}
	for _, e := range s.Contents() {
		r.Contents = append(r.Contents, contentsEntry{e.Title, folio(s, e.Page), e.Section})
	}
	return r
}

// countText is how many poems are in the book, and how many of the poet's lines.
func countText(c *pagemodel.Collection) (poems, lines int) {
	for _, p := range c.Poems() {
		poems++
		lines += p.LineCount()
	}
	return poems, lines
}

func poemNames(c *pagemodel.Collection) map[pagemodel.PoemID]string {
	names := map[pagemodel.PoemID]string{}
	for _, p := range c.Poems() {
		names[p.ID()] = p.Name()
	}
	return names
}

// folio is a page's number as it is printed, or as it would be on a page whose
// folio is blind; "" for no page.
func folio(s *typeset.Setting, page int) string {
	if page == 0 {
		return ""
	}
	if printed := s.Page(page).Folio; printed != "" {
		return printed
	}
	return strconv.Itoa(page)
}

// signature is how many pages are folded from one sheet, the usual number for a
// book of verse.
const signature = 16

// The paper that the spine is reckoned for, and said to be: a usual bulky book
// paper. The volume is the thickness in millimetres of 100 sheets at 100 gsm.
const (
	paperGSM    = 80
	paperVolume = 18
)

// extentOf is what a book of that many pages takes. The spine is the UK paper
// trade's formula: pages x gsm x volume / 20000, in millimetres; all pages that
// are bound are in it, blanks too.
func extentOf(pages int) extentReport {
	blanks := pagemodel.Blanks(pages, signature)
	bound := pages + blanks
	return extentReport{
		Pages: pages, Blanks: blanks, Signatures: bound / signature,
		SpineMM: rounded(float64(bound)*paperGSM*paperVolume/20000, 3),
	}
}

func rounded(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(v*scale) / scale
}
