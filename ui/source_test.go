package ui

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"
)

// TestGoroutinesAreTheWorkers: goroutines begin in worker.go alone, and the
// toolkit's own way back is only ever handed in.
func TestGoroutinesAreTheWorkers(t *testing.T) {
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.GoStmt:
				if name != "worker.go" {
					t.Errorf("%s begins a goroutine", name)
				}
			case *ast.SelectorExpr:
				if x, ok := n.X.(*ast.Ident); ok && x.Name == "fyne" && strings.HasPrefix(n.Sel.Name, "Do") {
					t.Errorf("%s calls fyne.%s", name, n.Sel.Name)
				}
			}
			return true
		})
	}
}
