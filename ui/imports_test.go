package ui_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// A room is a package of the project and what its own code (not its tests) may
// import besides the standard library.
type room struct {
	rooms   []string // of the project, without "headland/"
	modules []string // of others
	never   []string // packages that it may not import although their module is allowed
	windows bool     // a toolkit may come with it, by way of others
}

const (
	project = "headland"
	fyne    = "fyne.io/fyne/v2"
)

// plan is every room of the house. Third-party modules enter by one room each.
var plan = map[string]room{
	"assets":               {},
	"pagemodel":            {},
	"pagemodel/difference": {rooms: []string{"pagemodel"}},
	"pagemodel/manuscript": {rooms: []string{"pagemodel"}},
	"pagemodel/document":   {rooms: []string{"pagemodel"}},
	"pagemodel/sqlite":     {rooms: []string{"pagemodel"}, modules: []string{"github.com/mattn/go-sqlite3", "golang.org/x/sys"}},
	"typeset":              {rooms: []string{"pagemodel", "assets"}, modules: []string{"github.com/go-text/typesetting", "golang.org/x/image"}},
	"typeset/raster":       {rooms: []string{"pagemodel", "typeset", "typeset/marks/overlay"}, modules: []string{"golang.org/x/image"}},
	"typeset/pdf":          {rooms: []string{"pagemodel", "typeset", "typeset/marks/overlay", "assets"}, modules: []string{"github.com/tetratelabs/wazero"}},
	"typeset/order":        {rooms: []string{"pagemodel", "typeset"}},
	"typeset/record":       {rooms: []string{"pagemodel", "typeset"}},
	"typeset/prosody":      {rooms: []string{"assets"}},
	"typeset/corrections":  {rooms: []string{"pagemodel", "pagemodel/difference", "pagemodel/document", "typeset"}},
	"typeset/marks": {rooms: []string{
		"pagemodel", "pagemodel/difference", "typeset", "typeset/corrections", "typeset/marks/overlay",
	}},
	"typeset/marks/overlay": {rooms: []string{"pagemodel", "typeset"}},
	"typeset/choices":       {rooms: []string{"pagemodel", "typeset", "typeset/prosody"}},
	"typeset/echoes":        {rooms: []string{"pagemodel", "typeset", "assets"}},
	"typeset/aloud":         {rooms: []string{"pagemodel", "typeset/prosody"}},
	"typeset/sheet":         {rooms: []string{"pagemodel", "typeset", "typeset/aloud"}},
	"ui/session": {rooms: []string{
		"assets", "pagemodel", "pagemodel/manuscript", "pagemodel/document", "pagemodel/difference", "pagemodel/sqlite", "typeset", "typeset/order", "typeset/raster", "typeset/pdf",
		"typeset/prosody", "typeset/choices", "typeset/corrections", "typeset/marks", "typeset/marks/overlay",
		"typeset/aloud", "typeset/echoes", "typeset/sheet",
	}},
	"ui/command": {rooms: []string{
		"assets", "pagemodel", "pagemodel/manuscript", "typeset", "typeset/prosody", "typeset/choices", "typeset/corrections",
		"typeset/aloud", "typeset/echoes", "typeset/order", "ui/session",
	}},
	"ui/locale": {},
	"ui": {
		rooms: []string{
			"assets", "pagemodel", "pagemodel/manuscript", "typeset", "typeset/raster", "typeset/prosody", "typeset/choices",
			"typeset/corrections", "typeset/marks", "typeset/order", "typeset/echoes", "typeset/aloud", "typeset/sheet", "ui/session",
		},
		modules: []string{fyne, "github.com/clipperhouse/uax29/v2"}, never: []string{fyne + "/app"}, windows: true,
	},
	"ui/onscreen":      {},
	"ui/onscreen/bare": {modules: []string{fyne}, windows: true},
	"":                 {rooms: []string{"ui", "ui/command", "ui/locale"}, modules: []string{fyne}, windows: true},
}

// A pkg is what go list says of a package.
type pkg struct {
	ImportPath string
	Standard   bool
	Imports    []string // by its own code
	Deps       []string // by way of others too
	Module     *struct{ Path string }
}

func (p *pkg) module() string {
	if p.Module == nil {
		return ""
	}
	return p.Module.Path
}

// roomOf is a package's place in the plan.
func roomOf(path string) string { return strings.Trim(strings.TrimPrefix(path, project), "/") }

// house is all packages by their import paths.
type house map[string]*pkg

// wrongArrows are the imports that the plan does not allow, in words.
func (h house) wrongArrows() []string {
	var wrong []string
	for path, p := range h {
		if p.module() != project {
			continue
		}
		r, ok := plan[roomOf(path)]
		if !ok {
			wrong = append(wrong, path+" is no room of the plan: say in the plan what it may import")
			continue
		}
		for _, to := range p.Imports {
			if !h.allows(r, to) {
				wrong = append(wrong, path+" may not import "+to)
			}
		}
		if !r.windows {
			wrong = append(wrong, h.toolkit(p)...)
		}
	}
	slices.Sort(wrong)
	return wrong
}

// allows says whether a room may import a package.
func (h house) allows(r room, path string) bool {
	to := h[path]
	switch {
	case path == "C" || path == "unsafe":
		return true
	case to == nil || slices.Contains(r.never, path):
		return false
	case to.Standard:
		return true
	case to.module() == project:
		return slices.Contains(r.rooms, roomOf(path))
	}
	return slices.Contains(r.modules, to.module())
}

// toolkit is by way of whom a package that shows nothing comes to need Fyne.
func (h house) toolkit(p *pkg) []string {
	for _, dep := range p.Deps {
		if to := h[dep]; to != nil && to.module() == fyne {
			return []string{p.ImportPath + " comes to need " + dep}
		}
	}
	return nil
}

// list asks go list for the project's packages and all that they need.
func list(t *testing.T) house {
	t.Helper()
	command := exec.Command("go", "list", "-deps", "-json=ImportPath,Standard,Imports,Deps,Module", project+"/...")
	var said bytes.Buffer
	command.Stderr = &said
	out, err := command.Output()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, said.Bytes())
	}
	h := house{}
	for decoder := json.NewDecoder(bytes.NewReader(out)); ; {
		p := &pkg{}
		if err := decoder.Decode(p); errors.Is(err, io.EOF) {
			return h
		} else if err != nil {
			t.Fatal(err)
		}
		h[p.ImportPath] = p
	}
}

// TestImportsRunOneWay sees that no arrow between the rooms runs the wrong way,
// and that every module of others comes in by its own room only.
func TestImportsRunOneWay(t *testing.T) {
	h := list(t)
	for _, wrong := range h.wrongArrows() {
		t.Error(wrong)
	}
	for _, name := range []string{"pagemodel", "typeset", "ui/session", "ui/command"} {
		if h[project+"/"+name] == nil {
			t.Errorf("go list does not know %s/%s: is the test asking for the right packages?", project, name)
		}
	}
}

// TestWrongArrowsAreFound sees that the test above would fail.
func TestWrongArrowsAreFound(t *testing.T) {
	module := func(path string) *struct{ Path string } { return &struct{ Path string }{path} }
	others := []*pkg{
		{ImportPath: "fmt", Standard: true},
		{ImportPath: fyne, Module: module(fyne)},
		{ImportPath: fyne + "/app", Module: module(fyne)},
		{ImportPath: "github.com/mattn/go-sqlite3", Module: module("github.com/mattn/go-sqlite3")},
	}
	ours := func(path string, imports ...string) *pkg {
		return &pkg{ImportPath: path, Module: module(project), Imports: imports}
	}
	tests := []struct {
		name string
		pkg  *pkg
		want string
	}{
		{"back", ours("headland/pagemodel", "fmt", "headland/typeset"), "headland/pagemodel may not import headland/typeset"},
		{"past a door", ours("headland/ui/command", "headland/pagemodel/sqlite"), "headland/ui/command may not import headland/pagemodel/sqlite"},
		{"a module by another room", ours("headland/ui", "github.com/mattn/go-sqlite3"), "headland/ui may not import github.com/mattn/go-sqlite3"},
		{"a driver", ours("headland/ui", fyne, fyne+"/app"), "headland/ui may not import fyne.io/fyne/v2/app"},
		{"a toolkit in the session", &pkg{ImportPath: "headland/ui/session", Module: module(project), Deps: []string{"fmt", fyne}}, "headland/ui/session comes to need fyne.io/fyne/v2"},
		{"a new room", ours("headland/attic"), "headland/attic is no room of the plan: say in the plan what it may import"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			h := house{test.pkg.ImportPath: test.pkg}
			for _, p := range append(others, ours("headland/typeset"), ours("headland/pagemodel/sqlite")) {
				if h[p.ImportPath] == nil {
					h[p.ImportPath] = p
				}
			}
			if got := h.wrongArrows(); !slices.Equal(got, []string{test.want}) {
				t.Errorf("found %q, want %q", got, test.want)
			}
		})
	}
}

// top is all that may lie at the top of the house.
var top = []string{
	"main.go", "ui", "pagemodel", "typeset", "assets", "go.mod", "go.sum", "README.md", "DEVELOPERS.md",
	"FyneApp.toml", "LICENSE", "NOTICE", "Makefile", ".ci", ".gitignore",
}

// TestTopLevel sees that what git keeps lies in the rooms of the plan.
func TestTopLevel(t *testing.T) {
	command := exec.Command("git", "ls-files", "-z")
	command.Dir = ".."
	out, err := command.Output()
	if err != nil {
		t.Fatalf("git ls-files: %v", err)
	}
	for _, file := range strings.Split(strings.TrimRight(string(out), "\x00"), "\x00") {
		name, _, _ := strings.Cut(file, "/")
		if !slices.Contains(top, name) {
			t.Errorf("%s lies at the top of the house, where only %s may", file, strings.Join(top, ", "))
		}
	}
}
