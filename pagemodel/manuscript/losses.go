package manuscript

import (
	"fmt"

	"headland/pagemodel"
)

// losses counts what a manuscript being written can't keep.
type losses struct {
	styles   int // styled passages in plain text
	editions int // this edition's breaks
	controls int // texts with characters that are no text
	measures int // lines with white or indents beyond what can be read again
	long     int // lines longer than can be read again
}

// breaks counts this edition's breaks of a line, unless they are written.
func (l *losses) breaks(line pagemodel.Line, written bool) {
	if !written {
		l.editions += len(line.Breaks())
	}
}

func (l *losses) measure(lost bool) {
	if lost {
		l.measures++
	}
}

func (l *losses) length(line pagemodel.Line) {
	if len(line.Text()) > maxLine {
		l.long++
	}
}

// notices says what was lost.
func (l *losses) notices(leftOut int) []Notice {
	var list []Notice
	say := func(n int, noun, format string) {
		if n > 0 {
			list = append(list, Notice{Text: fmt.Sprintf(format, counted(n, noun))})
		}
	}
	say(l.styles, "styled passage", "%s can't be kept in plain text; write Markdown to keep them")
	say(l.editions, "break", "%s of this edition not written as line breaks: a poem keeps its long lines")
	say(l.controls, "text", "%s held ends of lines or control characters, which became spaces or were left out")
	say(l.measures, "line", "%s had an indent, a gap or a tab that is not from 0 to 60 ems, or white that is not from 0 to 60 lines, and was brought within")
	say(l.long, "line", "%s can't be read again: longer than 64 KB; break them first")
	say(leftOut, "poem", "%s left out of the book not written")
	return list
}
