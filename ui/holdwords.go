package ui

import (
	"strings"

	"headland/pagemodel"
)

// say tells in words what letting go of the rule would do.
func (h *hold) say() string {
	s := h.stops[h.now]
	shed := strings.TrimSpace(h.line.Text()[min(len(h.line.Text()), s.at):])
	kept := h.line.Text()[:s.at]
	switch {
	case s.home() && h.below == nil:
		return "Left sheds words · Esc puts it back"
	case s.home():
		return "Left sheds words, right draws them up from the line below · Esc puts it back"
	case s.words < 0:
		return h.sayGathered(-s.words)
	case h.turn:
		return "Let the line turn at " + quoted(firstWords(shed, 3)) + ": still one line · Esc puts it back"
	case h.edition:
		return "Part " + parted(kept, shed) + " in this edition; the poem keeps its line · Esc puts it back"
	case h.lands == joinsNext:
		return quoted(firstWords(shed, 4)) + lightVerb(shed, " joins", " join") + " the line below · higher: a line of " + lightVerb(shed, "its", "their") + " own · Esc puts it back"
	}
	return "Part " + parted(kept, shed) + " in the poem · Shift: in this edition only" + h.sayTurn() + " · Esc puts it back"
}

func (h *hold) sayTurn() string {
	if h.overlong && !h.stops[h.now].inside {
		return " · Ctrl: turn here"
	}
	return ""
}

func (h *hold) sayGathered(count int) string {
	words := pagemodel.Words(h.below.line.Text())
	if count == len(words) {
		return "Join " + quoted(firstWords(h.below.line.Text(), 4)) + " to this line · Esc puts it back"
	}
	up := h.below.line.Text()[:words[count-1].End]
	return "Draw up " + quoted(firstWords(up, 4)) + " from the line below · Esc puts it back"
}

func lightVerb(words, one, many string) string {
	if strings.ContainsAny(words, " \t") {
		return many
	}
	return one
}

// quoted is words in quotation marks.
func quoted(words string) string { return "“" + words + "”" }

// parted shows two lines as prose quotes verse: with a stroke between.
func parted(upper, lower string) string {
	return quoted(lastWords(upper, 2) + " / " + firstWords(lower, 2))
}

// firstWords is a text cut after n words.
func firstWords(text string, n int) string {
	words := pagemodel.Words(text)
	if len(words) <= n {
		return strings.TrimSpace(text)
	}
	return text[words[0].Start:words[n-1].End] + " …"
}

// lastWords is the last n words of a text.
func lastWords(text string, n int) string {
	words := pagemodel.Words(text)
	if len(words) <= n {
		return strings.TrimSpace(text)
	}
	return "… " + text[words[len(words)-n].Start:words[len(words)-1].End]
}
