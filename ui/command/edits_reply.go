package command

import (
	"fmt"
	"strings"

	"headland/pagemodel"
	"headland/ui/session"
)

// makeReply changes what is noted about a correction.
func makeReply(f *fields, s *session.Session) pagemodel.Edit {
	f.need("number")
	if !f.hasAny(replyFields) && f.err == nil {
		f.err = fmt.Errorf(`"reply" needs something to note: one of %s`, strings.Join(replyFields, ", "))
	}
	round, key := f.correction(s)
	if f.err != nil {
		return nil
	}
	r := s.Collection().Reply(round, key)
	if f.has("state") {
		parsed(f, "state", &r.State, pagemodel.ParseReplyState)
	}
	if f.has("whose") {
		parsed(f, "whose", &r.Whose, pagemodel.ParseWhose)
	}
	for name, words := range map[string]*string{"reason": &r.Reason, "question": &r.Question, "answer": &r.Answer} {
		f.take(name, words, "words in quotation marks")
	}
	f.take("shown", &r.Shown, "true or false")
	f.shows(r.Reason, r.Shown && f.has("shown"))
	r.Shown = r.Shown && r.Reason != ""
	return pagemodel.SetReply{Reply: r}
}

// replyFields are what can be noted about a correction.
var replyFields = []string{"state", "whose", "reason", "shown", "question", "answer"}

// correction is the round and the lasting name of the correction that the number
// means: of the last round, or of the one that is named.
func (f *fields) correction(s *session.Session) (pagemodel.RoundID, string) {
	number, name := f.integer("number"), f.text("round")
	if f.err != nil {
		return 0, ""
	}
	round, err := s.Collection().RoundCalled(name)
	if err != nil {
		f.err = err
		return 0, ""
	}
	list, err := s.Corrections(round.ID)
	if err != nil {
		f.err = err
		return 0, ""
	}
	for _, c := range list.All {
		if c.Number == number {
			return round.ID, c.Change.Key
		}
	}
	f.err = fmt.Errorf("there is no correction %d of %s: it has %s, which headland corrections lists", number, round.Name, counted(len(list.All), "correction"))
	return 0, ""
}
