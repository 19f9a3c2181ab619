package command

import (
	"flag"
	"math"

	"headland/pagemodel"
	"headland/typeset"
	"headland/ui/session"
)

const reportMore = `The lines that the measure turns over come first, then how many were decided about,
and which of them are unsettled again, and why; then faults, each with what would
mend it and what that would cost; then stanza breaks that a page end hides, forms
that the shape of a poem suggests, rounds, variants, poems left out, kept orders and
running orders, the extent and the contents.
The spine is reckoned from the bound pages, blanks counted, by the UK paper trade's
pages x gsm x volume / 20000 and by US printers' pages / pages per inch, for the
design's paper; a stapled book has the creep of its innermost leaf, a perfect-bound
one the spine with its glue. None of it changes a page.

  --json     one JSON object, to read on, with the reason for every page end and
             every decision
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
	s, err := openOne("report", words)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	c.found = o.strict && (s.Committed().Unsettled() > 0 || len(s.Committed().Faults()) > 0)
	r := reportOf(s)
	if !o.json {
		c.prose(r)
		return nil
	}
	return c.json(r)
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
	Designs   []string        `json:"designs"` // the names of those that are kept
	Turnovers []turnover      `json:"turnovers"`
	Faults    []fault         `json:"faults"`
	PageEnds  []pageEnd       `json:"page_ends"`
	Forms     []proposal      `json:"proposed_forms"`
	Contents  []contentsEntry `json:"contents"`
	Decisions []decision      `json:"decisions"`
	Rounds    []sentRound     `json:"rounds"`
	Variants  []variant       `json:"variants"`
	LeftOut   []leftOut       `json:"left_out"`
	Orders    []orderName     `json:"orders"`
	Readings  []readingName   `json:"readings"`

	poet string
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
	Kind     string   `json:"kind"`
	Poem     string   `json:"poem"` // "" where it is of the whole book
	Page     string   `json:"page"` // likewise
	Row      int      `json:"row"`
	Text     string   `json:"text"`
	Remedies []remedy `json:"remedies"`
}

// remedy is what would mend a fault, and what it would cost, in words.
type remedy struct {
	Text string `json:"text"`
}

type contentsEntry struct {
	Title string `json:"title"`
	Page  string `json:"page"`

	section bool
}

// reportOf gathers what is to be said of a book.
func reportOf(book *session.Session) report {
	s, c := book.Committed(), book.Collection()
	r := report{Title: c.About().Title, poet: c.About().Poet, Pages: s.Extent(), Design: designOf(c.Design())}
	r.Poems, r.Lines = countText(c)
	r.Extent = extentOf(s.Extent(), c.Design())
	r.Designs, r.Turnovers, r.Contents = []string{}, []turnover{}, []contentsEntry{}
	names := poemNames(c)
	for _, kept := range c.Designs() {
		r.Designs = append(r.Designs, kept.Name)
	}
	for _, t := range s.Turnovers() {
		r.Turnovers = append(r.Turnovers, turnover{
			Poem: names[t.Poem], Number: t.Number, Stanza: t.Stanza, Line: t.Line, Page: folio(s, t.Page), Row: t.Row,
			Text: t.Text, Parts: t.Parts, Overrun: points(t.Overrun), State: t.State.String(),
		})
	}
	r.Faults, r.PageEnds, r.Forms = faults(s, names), pageEnds(s, names), proposals(c)
	r.Decisions, r.Rounds, r.Variants = decisions(s, names), sentRounds(c), variants(c)
	r.LeftOut, r.Orders, r.Readings = leftOuts(c), orderNames(c), readingNames(book)
	for _, e := range s.Contents() {
		r.Contents = append(r.Contents, contentsEntry{e.Title, folio(s, e.Page), e.Section})
	}
	return r
}

// faults are all faults, each with its remedies.
func faults(s *typeset.Setting, names map[pagemodel.PoemID]string) []fault {
	all := []fault{}
	for _, f := range s.Faults() {
		remedies := []remedy{}
		for _, r := range s.Remedies(f) {
			remedies = append(remedies, remedy{r.Text})
		}
		all = append(all, fault{string(f.Kind), names[f.Poem], folio(s, f.Page), f.Row, told(s, f), remedies})
	}
	return all
}

// told is a fault in words, and why the page ends there where that is its cause.
func told(s *typeset.Setting, f typeset.Fault) string {
	if why := s.Why(f); why != "" {
		return f.Text + ": " + why
	}
	return f.Text
}

// folio is a page's number as it is printed, or as it would be on a page whose
// folio is blind; "" for no page.
func folio(s *typeset.Setting, page int) string {
	if page == 0 {
		return ""
	}
	return s.FolioOf(page)
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

func rounded(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Round(v*scale) / scale
}
