package pagemodel

// HiddenBreaks is what is printed where a page end hides a stanza break.
type HiddenBreaks int

// Nothing is the usual; the screen and the manuscript say so all the same.
const (
	HiddenPlain HiddenBreaks = iota
	HiddenSign               // a small sign at the foot of the page
	HiddenWhite              // a line of white at the head of the next
)

var hiddenNames = [...]string{HiddenPlain: "nothing", HiddenSign: "a sign", HiddenWhite: "white"}

// String is what is printed, in words.
func (h HiddenBreaks) String() string { return nameOf(hiddenNames[:], int(h)) }

// ParseHiddenBreaks reads what is printed by its words.
func ParseHiddenBreaks(s string) (HiddenBreaks, error) {
	n, err := indexOf(hiddenNames[:], "way to show a hidden stanza break", s)
	return HiddenBreaks(n), err
}

// FolioPlace is where the folio stands.
type FolioPlace int

// The places of a folio, all at the foot.
const (
	FolioOuter FolioPlace = iota // at the outer edge of the text
	FolioCentre
	FolioNone
)

var folioNames = [...]string{FolioOuter: "outer", FolioCentre: "centred", FolioNone: "none"}

// String is the place in words.
func (f FolioPlace) String() string { return nameOf(folioNames[:], int(f)) }

// ParseFolioPlace reads a place by its words.
func ParseFolioPlace(s string) (FolioPlace, error) {
	n, err := indexOf(folioNames[:], "place of a folio", s)
	return FolioPlace(n), err
}

// RunningHeads is what stands at the head of verso and recto. They are off by
// default, and never stand over a page that begins a poem or a section.
type RunningHeads int

// The running heads.
const (
	HeadsOff       RunningHeads = iota
	PoetAndBook                 // the poet on the verso, the book on the recto
	BookAndSection              // the book on the verso, the section on the recto
	SectionAndPoem              // the section on the verso, the poem on the recto
)

var runningNames = [...]string{
	HeadsOff: "none", PoetAndBook: "poet and book", BookAndSection: "book and section", SectionAndPoem: "section and poem",
}

// String is what they show, in words.
func (r RunningHeads) String() string { return nameOf(runningNames[:], int(r)) }

// ParseRunningHeads reads what they show by its words.
func ParseRunningHeads(s string) (RunningHeads, error) {
	n, err := indexOf(runningNames[:], "kind of running head", s)
	return RunningHeads(n), err
}

// TitleStyle is the type of poems' titles.
type TitleStyle int

// The types of a title.
const (
	TitleRoman TitleStyle = iota
	TitleItalic
	TitleSmallCaps
)

var titleNames = [...]string{TitleRoman: "roman", TitleItalic: "italic", TitleSmallCaps: "small capitals"}

// String is the type in words.
func (t TitleStyle) String() string { return nameOf(titleNames[:], int(t)) }

// ParseTitleStyle reads a type by its words.
func ParseTitleStyle(s string) (TitleStyle, error) {
	n, err := indexOf(titleNames[:], "type of a title", s)
	return TitleStyle(n), err
}

// ProseStyle is how paragraphs of prose are set.
type ProseStyle int

// Ragged right is the usual; justified prose is hyphenated.
const (
	ProseRagged ProseStyle = iota
	ProseJustified
)

var proseNames = [...]string{ProseRagged: "ragged", ProseJustified: "justified"}

// String is the style in words.
func (p ProseStyle) String() string { return nameOf(proseNames[:], int(p)) }

// ParseProseStyle reads a style by its words.
func ParseProseStyle(s string) (ProseStyle, error) {
	n, err := indexOf(proseNames[:], "way to set prose", s)
	return ProseStyle(n), err
}

// Paper is what the leaves are made of. The zero Paper is a usual bulky book
// paper, 80 gsm of volume 18.
type Paper struct {
	GSM    int // grams a square metre
	Volume int // millimetres that 100 leaves of 100 gsm are thick
}

// Usual is the paper, or the usual one for a zero Paper.
func (p Paper) Usual() Paper {
	if p == (Paper{}) {
		return Paper{80, 18}
	}
	return p
}

// LeafThickness is the thickness of one leaf: gsm x volume / 10 micrometres
// (the UK paper trade's formula, from memory: pages x gsm x volume / 20000 mm).
func (p Paper) LeafThickness() Length {
	p = p.Usual()
	return MM(float64(p.GSM*p.Volume) / 10000)
}
