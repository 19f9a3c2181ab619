package ui

import (
	"errors"
	"image"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"

	"headland/pagemodel"
	"headland/ui/session"
)

// drawHead draws the words at the head of the desk: the collection's title,
// and at the right the poet, or why nothing can be changed.
//
// It is the first picture to be drawn: a book that is still being opened is
// waited for here, when the toolkit has done all that it does before a window
// can be seen.
func (d *desk) drawHead(w, h int) image.Image {
	if lay := d.awaited; lay != nil {
		d.awaited, d.fresh = nil, true
		lay()
		d.fresh = false
	}
	colors := d.light.palette()
	img, band := d.pictures.headInk.next(w, h), d.plan.headBand()
	s := d.k.slateAt(img, band.Min, d.plan.density, colors.desk)
	if d.session == nil {
		return img
	}
	about := d.of.Collection().About()
	margin, base := d.plan.units(sideMargin), d.plan.headBase()
	end := s.write(d.k.words(about.Title, titleSize, false), margin, base, colors.words)
	right, italic := about.Poet, true
	if _, yes := d.session.ReadOnly(); yes {
		right, italic = "open elsewhere: here it can only be read", false
	}
	run := d.k.words(right, wordSize, italic)
	if x := band.Max.X - margin - s.px(run.Width); x > end+margin {
		s.write(run, x, base, colors.quiet)
	}
	return img
}

// footWords are the things that the foot of the desk says.
type footWords struct {
	left          []count
	middle, right string
}

func (d *desk) footWords() footWords {
	if d.session == nil {
		return footWords{middle: d.said}
	}
	if d.plan.size.X <= d.plan.units(narrowBelow) && d.readsAloud() {
		return footWords{middle: d.help()} // what can be done there has all the room
	}
	return footWords{d.counts(), d.help(), d.pageWords(d.spread)}
}

// readsAloud says that the running orders lie over the desk.
func (d *desk) readsAloud() bool {
	c := fyne.CurrentApp().Driver().CanvasForObject(d)
	return c != nil && slices.ContainsFunc(c.Overlays().List(), func(o fyne.CanvasObject) bool {
		_, aloud := o.(*aloudView)
		return aloud
	})
}

// drawFoot draws the words at the foot of the desk.
func (d *desk) drawFoot(w, h int) image.Image {
	d.follow()
	colors := d.light.palette()
	img, band := d.pictures.footInk.next(w, h), d.plan.footBand()
	s := d.k.slateAt(img, band.Min, d.plan.density, colors.desk)
	words := d.footWords()
	margin, base := d.plan.units(sideMargin), d.plan.footBase()
	leftEnd := margin
	for i, c := range words.left {
		if i > 0 {
			leftEnd += d.plan.units(countGap)
		}
		leftEnd = d.drawCount(s, c, leftEnd, base)
	}
	right := d.k.words(words.right, wordSize, false)
	rightFrom := band.Max.X - margin - s.px(right.Width)
	s.write(right, rightFrom, base, colors.quiet)
	gap := d.plan.units(28)
	d.drawMiddle(s, words.middle, leftEnd+gap, rightFrom-gap, base)
	return img
}

// drawCount draws words at the left, ruled beneath while the hand is over them:
// they can be pressed.
func (d *desk) drawCount(s *slate, c count, x, base int) int {
	colors := d.light.palette()
	end := s.write(d.k.words(c.words, wordSize, false), x, base, colors.words)
	if c.pressed != overNothing && d.over.kind == c.pressed {
		y := base + d.plan.units(5)
		s.fill(image.Rect(x, y, end, y+max(1, d.plan.units(1))), colors.words)
	}
	return end
}

// drawMiddle draws the words in the middle, centred on the desk where they fit.
func (d *desk) drawMiddle(s *slate, words string, from, to, base int) {
	fits := func(words string) bool { return s.px(d.k.words(words, wordSize, false).Width) <= to-from }
	lines := []string{words}
	if d.saysMuch() && !fits(words) {
		upper, lower := inTwo(words, fits)
		lines = []string{upper, lower}
		base -= d.plan.units(11)
	}
	for _, line := range lines {
		run := d.k.words(d.fitting(s, line, to-from), wordSize, false)
		wide := s.px(run.Width)
		x := max(from, min(to-wide, (d.plan.size.X-wide)/2))
		s.write(run, x, base, d.light.palette().words)
		base += d.plan.units(22)
	}
}

// dot stands between things that are said one after another.
const dot = " · "

// inTwo parts words in two lines that fit, at a dot where one stands in the right
// place. What the poet is told is never shortened while two lines can hold it;
// where they can't, what stands before the last dot is given up, one whole thing
// after another.
func inTwo(words string, fits func(string) bool) (upper, lower string) {
	said := strings.Split(words, dot)
	if a, b, ok := inTwoAtDots(said, fits); ok {
		return a, b
	}
	if a, b := halves(words); fits(a) && fits(b) {
		return a, b
	}
	for len(said) > 2 {
		said = append(said[:len(said)-2:len(said)-2], said[len(said)-1])
		if a, b, ok := inTwoAtDots(said, fits); ok {
			return a, b
		}
	}
	if len(said) == 1 {
		return halves(words)
	}
	return said[0], said[1]
}

// inTwoAtDots parts things that are said in two lines of about one length; false
// where no such two fit.
func inTwoAtDots(said []string, fits func(string) bool) (upper, lower string, ok bool) {
	best := 0
	for i := 1; i < len(said); i++ {
		a, b := strings.Join(said[:i], dot), strings.Join(said[i:], dot)
		if off := abs(len(a) - len(b)); fits(a) && fits(b) && (!ok || off < best) {
			upper, lower, ok, best = a, b, true, off
		}
	}
	return upper, lower, ok
}

// saysMuch says that the words in the middle may take two lines: what the poet
// was told, what is faulty, and what was decided.
func (d *desk) saysMuch() bool {
	if d.said != "" || d.session == nil || d.over.kind == overFault || d.over.kind == overStroke {
		return true
	}
	if d.over.kind != overNothing || d.hand.grip != nil || d.typing != nil {
		return false
	}
	if _, faulty := d.faultAtHand(); faulty {
		return true
	}
	line, ok := d.lineAtHand()
	return ok && (line.State() != pagemodel.Unsettled || line.Reason() != "")
}

// halves parts words in two lines of about one length, arrows not from what they
// stand behind.
func halves(words string) (upper, lower string) {
	best := -1
	for i, r := range words {
		next, _ := utf8.DecodeRuneInString(words[i+utf8.RuneLen(r):])
		if r == ' ' && !strings.ContainsRune("←→↑↓", next) && (best < 0 || abs(2*i-len(words)) < abs(2*best-len(words))) {
			best = i
		}
	}
	if best < 0 {
		return words, ""
	}
	return words[:best], words[best+1:]
}

// fitting is the words, less what stands between their first and last dots,
// and at last less all but the first, where there is too little room.
func (d *desk) fitting(s *slate, words string, room int) string {
	said := strings.Split(words, dot)
	for len(said) > 1 && s.px(d.k.words(strings.Join(said, dot), wordSize, false).Width) > room {
		drop := max(1, len(said)-2)
		said = append(said[:drop:drop], said[drop+1:]...)
	}
	short := strings.Join(said, dot)
	left := short
	for s.px(d.k.words(short, wordSize, false).Width) > room && strings.Contains(left, " ") {
		left = strings.TrimRight(left[:strings.LastIndex(left, " ")], " ,:;·")
		short = left + " …"
	}
	return short
}

// readOnlyWords are said where a change is refused because the book is not
// ours to change.
const readOnlyWords = "It is open elsewhere, so here it can only be read: close it there and open it again, or save a copy and work on that"

// errorWords are an error's words for the foot of the desk.
func errorWords(err error) string {
	var refused *session.ReadOnlyError
	if errors.As(err, &refused) {
		return readOnlyWords
	}
	return sentence(err.Error())
}

// sentence is an error's words as one says them to a person.
func sentence(words string) string {
	r, n := utf8.DecodeRuneInString(words)
	if n == 0 {
		return ""
	}
	return string(unicode.ToUpper(r)) + words[n:]
}
