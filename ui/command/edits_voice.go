package command

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// The edits of this file are about what the time of a reading is reckoned from.

// voiceFields are the constants of a voice.
var voiceFields = []string{"syllables", "line_end_s", "run_on_s", "stanza_s", "title_s", "words"}

// makeVoice changes those constants that are there, or goes back to the usual
// ones.
func makeVoice(f *fields, s *session.Session) pagemodel.Edit {
	usual := f.yes("usual")
	if f.err == nil && usual == f.hasAny(voiceFields) {
		f.err = fmt.Errorf(`"voice" needs either something to change, of %s, or "usual":true`, strings.Join(voiceFields, ", "))
	}
	if usual {
		return pagemodel.SetVoice{}
	}
	v := s.Collection().Voice()
	for name, value := range map[string]*float64{
		"syllables": &v.Syllables, "line_end_s": &v.LineEnd, "run_on_s": &v.RunOn, "stanza_s": &v.Stanza, "title_s": &v.Title, "words": &v.Words,
	} {
		f.take(name, value, "a number")
	}
	return pagemodel.SetVoice{Voice: v}
}

// makeFitVoice takes the voice that comes nearest to what was timed.
func makeFitVoice(f *fields, s *session.Session) pagemodel.Edit {
	v, fitness, err := s.FitVoice()
	switch {
	case err != nil:
		f.err = err
	case fitness.Timings == 0:
		f.err = fmt.Errorf("nothing was timed that still stands as it was read: run through a running order in the window first")
	}
	return pagemodel.SetVoice{Voice: v}
}
