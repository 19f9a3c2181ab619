package command

import (
	"flag"
	"os"

	"headland/ui/session"
)

const exportMore = `Just one of these:

  --pdf OUT          the pages as a PDF for a printer, one to a sheet
  --png DIR          a picture of every page, in the folder DIR
  --manuscript OUT   the text, by what OUT ends in: .md is Markdown, .docx and .odt
                     are for word processors, all else is plain text

and with them:

  --spreads          facing pages on one sheet, or in one picture
  --marks            crop marks at the corners of the PDF's pages; where something
                     runs over the trim there is a bleed of 3 mm in any case
  --dummy            a PDF to print at home on both sides, fold and hold: two pages
                     to a side, in the right order; it says how to print and fold it
  --paper A4         the paper of a dummy: A4 or Letter
  --section 16       the pages of a dummy that are folded together: 4, 8, 16 or 32;
                     0 folds all of them in one, to be stapled
  --dpi N            pixels an inch of the pictures, 150 if not said
  --edition          the text with this edition's breaks in it

What is at OUT is replaced once the new file is whole.
`

type exportOptions struct {
	pdf, png, manuscript string
	spreads, edition     bool
	marks, dummy         bool
	paper                string
	section              int
	dpi                  float64
	set                  *flag.FlagSet
}

func exportFlags(set *flag.FlagSet) any {
	o := &exportOptions{set: set}
	set.StringVar(&o.pdf, "pdf", "", "")
	set.StringVar(&o.png, "png", "", "")
	set.StringVar(&o.manuscript, "manuscript", "", "")
	set.BoolVar(&o.spreads, "spreads", false, "")
	set.BoolVar(&o.edition, "edition", false, "")
	set.BoolVar(&o.marks, "marks", false, "")
	set.BoolVar(&o.dummy, "dummy", false, "")
	set.StringVar(&o.paper, "paper", "A4", "")
	set.IntVar(&o.section, "section", usualSection, "")
	set.Float64Var(&o.dpi, "dpi", usualDPI, "")
	return o
}

// usualDPI shows a page of B-format about 760 pixels wide: easily read, and
// small enough to send.
const usualDPI = 150

const pointsPerInch = 72

// usualSection is how many pages of a dummy are folded together: four sheets,
// which fold well by hand.
const usualSection = 16

// check says what does not go together.
func (o *exportOptions) check() error {
	kinds := 0
	for _, out := range []string{o.pdf, o.png, o.manuscript} {
		if out != "" {
			kinds++
		}
	}
	switch {
	case kinds == 0:
		return misuse("export: say what to write, and where: --pdf OUT, --png DIR or --manuscript OUT")
	case kinds > 1:
		return misuse("export: it writes one thing at a time: choose one of --pdf, --png and --manuscript")
	case o.edition && o.manuscript == "":
		return misuse("export: --edition is for --manuscript: pages have this edition's breaks in any case")
	case o.spreads && o.manuscript != "":
		return misuse("export: --spreads is for --pdf and --png: a manuscript has no pages")
	case (o.marks || o.dummy) && o.pdf == "":
		return misuse("export: --marks and --dummy are for --pdf: the others are not printed")
	case o.dummy && (o.spreads || o.marks):
		return misuse("export: --dummy lays the pages out itself: leave out --spreads and --marks")
	case o.marks && o.spreads:
		return misuse("export: --marks is for single pages: spreads are for reading")
	case (o.given("paper") || o.given("section")) && !o.dummy:
		return misuse("export: --paper and --section are for --dummy")
	case o.given("dpi") && o.png == "":
		return misuse("export: --dpi is for --png: the others have no pixels")
	}
	return nil
}

func (o *exportOptions) given(name string) bool { return given(o.set, name) }

func runExport(c *call, options any, words []string) (err error) {
	o := options.(*exportOptions)
	s, err := openOne("export", words, o.check)
	if err != nil {
		return err
	}
	defer closing(s, &err)
	switch {
	case o.dummy:
		return c.exportDummy(s, o)
	case o.pdf != "":
		return c.exportPDF(s, o)
	case o.png != "":
		return c.exportPNG(s, o.png, o.dpi, o.spreads)
	}
	return c.exportManuscript(s, o)
}

func (c *call) exportPDF(s *session.Session, o *exportOptions) error {
	if err := s.ExportPDF(o.pdf, session.PDFOptions{Spreads: o.spreads, Marks: o.marks}, nil); err != nil {
		return err
	}
	c.out.printf("%s: %s%s\n", o.pdf, counted(s.Committed().Extent(), "page"), asSpreads(o.spreads))
	return nil
}

func (c *call) exportDummy(s *session.Session, o *exportOptions) error {
	d, err := s.Dummy(session.DummyOptions{Paper: o.paper, Section: o.section})
	if err != nil {
		return err
	}
	if err := d.Write(o.pdf, nil); err != nil {
		return err
	}
	c.out.printf("%s: %s\n", o.pdf, d.Instructions())
	return nil
}

func (c *call) exportPNG(s *session.Session, dir string, dpi float64, spreads bool) error {
	made := 0
	count := func(done, _ int) bool { made = done; return true }
	if err := s.ExportPNG(dir, dpi/pointsPerInch, spreads, count); err != nil {
		return err
	}
	c.out.printf("%s%c: %s of %s%s\n", dir, os.PathSeparator, counted(made, "picture"), counted(s.Committed().Extent(), "page"), asSpreads(spreads))
	return nil
}

func asSpreads(spreads bool) string {
	if spreads {
		return ", as spreads"
	}
	return ""
}

func (c *call) exportManuscript(s *session.Session, o *exportOptions) error {
	notices, err := s.ExportManuscript(o.manuscript, o.edition)
	c.say(notices)
	if err != nil {
		return err
	}
	poems, lines := countText(s.Collection())
	c.out.printf("%s: %s of %s\n", o.manuscript, counted(poems, "poem"), counted(lines, "line"))
	return nil
}
