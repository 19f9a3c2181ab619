package pagemodel

import (
	"fmt"
	"strings"
)

// nameOf and indexOf serve every closed list of named values.
func nameOf(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return fmt.Sprintf("unknown (%d)", i)
	}
	return names[i]
}

func indexOf(names []string, what, s string) (int, error) {
	for i, name := range names {
		if strings.EqualFold(name, strings.TrimSpace(s)) {
			return i, nil
		}
	}
	return 0, fmt.Errorf("%q is no %s: write one of %s", s, what, strings.Join(names, ", "))
}
