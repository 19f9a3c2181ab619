package command

import (
	"fmt"
	"slices"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// designFields are the design values of a report.
var designFields = []string{
	"trim_mm", "margins_mm", "measure_pt", "face", "size_pt", "leading_pt", "binding", "turnovers",
	"stanza_gap", "title_row", "poem_row", "run_out_pt", "hang_quotes", "tighten_percent", "edge",
	"titles", "title_size_pt", "title_centred", "folios", "running_heads", "prose", "hidden_breaks",
	"sections_open", "signature", "paper",
}

// designRules fill some of those values in: a trim by its name in the trade, and
// margins by a rule.
var designRules = []string{"trim", "margins"}

// makeDesign changes those values of the design that are there.
func makeDesign(f *fields, s *session.Session) pagemodel.Edit {
	d := s.Collection().Design()
	f.page(&d, s)
	f.typeIn(&d, s)
	f.lines(&d)
	f.styles(&d)
	f.making(&d)
	return pagemodel.SetDesign{Design: d}
}

// page takes trim, binding and margins: what fills some in first, so that the
// values said one by one are the last word. A measure is had by way of the outer
// margin, so it can't be asked for together with that.
func (f *fields) page(d *pagemodel.Design, s *session.Session) {
	if f.has("trim") {
		parsed(f, "trim", &d.Trim, trimCalled)
	}
	if trim := []float64(nil); f.has("trim_mm") {
		f.take("trim_mm", &trim, "width and height, as in [129,198]")
		if len(trim) != 2 && f.err == nil {
			f.err = fmt.Errorf(`"trim_mm" must be width and height, as in [129,198]`)
		}
		if f.err == nil {
			d.Trim = pagemodel.Trim{Width: f.millimetres("trim_mm", trim[0]), Height: f.millimetres("trim_mm", trim[1])}
		}
	}
	if f.has("binding") {
		parsed(f, "binding", &d.Binding, pagemodel.ParseBinding)
	}
	if f.has("margins") {
		parsed(f, "margins", &d.Margins, func(rule string) (pagemodel.Margins, error) {
			return marginsBy(rule, *d, s.Committed().Extent())
		})
	}
	margins := f.margins(d)
	if f.has("measure_pt") {
		if margins["outer"] && f.err == nil {
			f.err = fmt.Errorf(`"measure_pt" is had by way of the outer margin: leave out one of the two`)
		}
		d.Margins.Outer = d.Trim.Width - d.Margins.Inner - pagemodel.Pt(f.number("measure_pt"))
	}
}

// trimCalled is the trim that the trade calls so.
func trimCalled(name string) (pagemodel.Trim, error) {
	if trim, ok := pagemodel.TrimNamed(name); ok {
		return trim, nil
	}
	var names []string
	for _, t := range pagemodel.TrimPresets {
		names = append(names, t.Name)
	}
	return pagemodel.Trim{}, fmt.Errorf("there is no trim called %q: it is one of %s; or give trim_mm", name, strings.Join(names, ", "))
}

// marginsBy are a design's margins by a rule: "canon" is the canon of page
// construction; "binding" leaves all but the inner one, which the binding and
// the book's extent ask for.
func marginsBy(rule string, d pagemodel.Design, extent int) (pagemodel.Margins, error) {
	switch rule {
	case "canon":
		return pagemodel.Canon(d.Trim), nil
	case "binding":
		d.Margins.Inner = pagemodel.DefaultInner(d.Binding, extent)
		return d.Margins, nil
	}
	return pagemodel.Margins{}, fmt.Errorf("there is no rule for margins called %q: it is canon or binding; or give margins_mm", rule)
}

// margins takes those margins that are there, and says which.
func (f *fields) margins(d *pagemodel.Design) map[string]bool {
	var given map[string]float64
	f.take("margins_mm", &given, `an object of millimetres, as in {"inner":16}`)
	taken := map[string]bool{}
	for name, mm := range given {
		margin := map[string]*pagemodel.Length{
			"inner": &d.Margins.Inner, "outer": &d.Margins.Outer, "head": &d.Margins.Head, "foot": &d.Margins.Foot,
		}[name]
		if margin == nil {
			f.err = fmt.Errorf(`"margins_mm" takes no field %q: it takes inner, outer, head, foot`, name)
			return nil
		}
		*margin, taken[name] = f.millimetres(name, mm), true
	}
	return taken
}

// millimetres is a length of a size that a page can have.
func (f *fields) millimetres(name string, mm float64) pagemodel.Length {
	const most = 10000
	if (mm < 0 || mm > most) && f.err == nil {
		f.err = fmt.Errorf("%q is %g mm, which is no length on a page: choose from 0 to %d", name, mm, most)
		return 0
	}
	return pagemodel.MM(mm)
}

// typeIn takes the face and its sizes.
func (f *fields) typeIn(d *pagemodel.Design, s *session.Session) {
	if f.has("face") {
		d.Face = f.text("face")
		if families := s.Families(); !slices.Contains(families, d.Face) && f.err == nil {
			f.err = fmt.Errorf("there is no face %q here: it is one of %s", d.Face, strings.Join(families, ", "))
		}
	}
	if f.has("size_pt") {
		d.Size = pagemodel.Pt(f.number("size_pt"))
	}
	if f.has("leading_pt") {
		d.Leading = pagemodel.Pt(f.number("leading_pt"))
	}
}

// lines takes how lines and stanzas stand.
func (f *fields) lines(d *pagemodel.Design) {
	if f.has("turnovers") {
		parsed(f, "turnovers", &d.Turnovers, pagemodel.ParseTurnoverStyle)
	}
	if f.has("run_out_pt") {
		d.RunOut = pagemodel.Pt(f.number("run_out_pt"))
	}
	f.count("stanza_gap", &d.StanzaGap)
	f.count("title_row", &d.TitleRow)
	f.count("poem_row", &d.PoemRow)
	f.take("hang_quotes", &d.HangQuotes, "true or false")
	f.count("tighten_percent", &d.Tighten)
}

// count takes a whole number of something that a page or a book has.
func (f *fields) count(name string, value *int) {
	const most = 1000
	f.take(name, value, "a whole number")
	if f.has(name) && f.err == nil && (*value < 0 || *value > most) {
		f.err = fmt.Errorf("%q is %d: choose from 0 to %d", name, *value, most)
	}
}

// parsed takes a value that is written as one of a few words.
func parsed[T any](f *fields, name string, value *T, parse func(string) (T, error)) {
	words := f.text(name)
	if f.err != nil {
		return
	}
	v, err := parse(words)
	if err != nil {
		f.err = err
		return
	}
	*value = v
}
