package ui

import (
	"image"

	"fyne.io/fyne/v2"
)

// aloudGap is the white between words that can be pressed, in the toolkit's units.
const aloudGap = 26

// placeWords lays out the words that can be pressed: the name at the head with what
// is shown beside it, and at the foot what can be done.
func (a *aloudView) placeWords() {
	p := &a.place
	p.words = nil
	a.press(p.sheet.Min.X+p.margin, p.units(47), aloudPress{words: a.heading(), size: titleSize + 3, act: a.askWhich})
	a.pressFromRight(p.sheet.Max.X-p.margin, p.units(44), a.faceWords())
	if a.face != orderFace {
		return
	}
	a.press(p.sheet.Min.X+p.margin, p.units(75), aloudPress{words: a.occasionWords(), size: listSize, act: a.askAbout})
	a.placeActs()
}

// placeActs lays out what can be done.
func (a *aloudView) placeActs() {
	p := &a.place
	base := p.sheet.Max.Y - p.foot + p.units(64)
	for _, row := range a.actRows() {
		x := p.sheet.Min.X + p.margin
		for _, act := range row {
			x = a.press(x, base, act) + p.units(aloudGap)
		}
		base += p.units(aloudWord)
	}
}

// actRows is what can be done in as many rows as it needs on the sheet.
func (a *aloudView) actRows() (rows [][]aloudPress) {
	p := &a.place
	room, x := p.sheet.Dx()-2*p.margin, 0
	for _, act := range a.acts() {
		wide := a.px(a.w.desk.k.words(act.words, act.size, false).Width)
		if len(rows) == 0 || x+wide > room {
			rows, x = append(rows, nil), 0
		}
		rows[len(rows)-1] = append(rows[len(rows)-1], act)
		x += wide + p.units(aloudGap)
	}
	return rows
}

// heading is what the view is of: the running order, or the book.
func (a *aloudView) heading() string {
	switch {
	case a.face == linesFace:
		return bookTitle(a.w.session)
	case a.reading.Name == "":
		return "No running order yet"
	}
	return a.reading.Name
}

// faceWords are what the view can show.
func (a *aloudView) faceWords() []aloudPress {
	var words []aloudPress
	for f, w := range aloudFaceWords {
		words = append(words, aloudPress{words: w, size: listSize, in: aloudFace(f) == a.face, act: func() { a.turnTo(aloudFace(f)) }})
	}
	return words
}

// acts are what can be done with the running order, by the hand.
func (a *aloudView) acts() []aloudPress {
	all := []aloudPress{
		{words: "read it", act: func() { a.begin(0) }},
		{words: "on paper", act: a.askPaper},
		{words: "add a poem", act: func() { a.askItem("") }},
		{words: "from elsewhere", act: a.askElsewhere},
		{words: "unread longest", act: a.askUnread},
		{words: "the voice", act: a.askVoice},
		{words: "another running order", act: a.askNew},
	}
	for i := range all {
		all[i].size = underSize
	}
	return all
}

// press places words that begin there, and gives where they end.
func (a *aloudView) press(x, base int, w aloudPress) int {
	p := &a.place
	w.x, w.base = x, base
	end := x + a.px(a.w.desk.k.words(w.words, w.size, false).Width)
	half := p.units(aloudGap / 2)
	w.at = image.Rect(x-half, base-p.units(aloudWord-8), end+half, base+p.units(8))
	p.words = append(p.words, w)
	return end
}

// pressFromRight places words in a row that ends there.
func (a *aloudView) pressFromRight(right, base int, all []aloudPress) {
	for i := len(all) - 1; i >= 0; i-- {
		x := right - a.px(a.w.desk.k.words(all[i].words, all[i].size, false).Width)
		a.press(x, base, all[i])
		right = x - a.place.units(aloudGap)
	}
}

// wordsUnder are the words that can be pressed there, -1 for none.
func (p *aloudPlan) wordsUnder(at image.Point) int {
	for i := range p.words {
		if at.In(p.words[i].at) {
			return i
		}
	}
	return -1
}

// menuItems are menu items of words and what they do.
func menuItems(all []aloudPress) []*fyne.MenuItem {
	items := make([]*fyne.MenuItem, len(all))
	for i, one := range all {
		items[i] = fyne.NewMenuItem(one.words, one.act)
	}
	return items
}
