package order

import (
	"fmt"
	"strings"

	"headland/pagemodel"
)

// A Paper is a size of paper that a printer at home takes.
type Paper struct {
	Name        string
	Short, Long pagemodel.Length // its edges
}

// Papers are the papers that a dummy can be printed on. A4 is 210 by 297 mm (ISO
// 216:2007); Letter is 8½ by 11 inches (ANSI/ASME Y14.1, from memory).
var Papers = []Paper{
	{"A4", pagemodel.MM(210), pagemodel.MM(297)},
	{"Letter", pagemodel.Pt(612), pagemodel.Pt(792)},
}

// PaperNamed finds a paper by its name, in small letters or capitals. The error
// says which papers there are.
func PaperNamed(name string) (Paper, error) {
	var names []string
	for _, p := range Papers {
		if strings.EqualFold(p.Name, name) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return Paper{}, fmt.Errorf("there is no paper %q: choose %s", name, strings.Join(names, " or "))
}
