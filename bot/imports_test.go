package bot

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// order lists the packages so that each imports only ones above it.
var order = []string{
	"calc/length", "calc/measure", "calc/term", "calc/geom", "calc/limit", "calc/corner", "calc/plank", "calc/room", "calc/cut", "calc/layout",
	"calc/height", "calc/subfloor", "calc/material", "calc", "calc/caution", "grammar/words", "grammar/likely", "grammar", "store",
	"bot/job", "bot/answer", "bot/list", "bot/draw/sheet", "bot/draw", "bot", "bot/discord", "bot/terminal", "cmd/lastrow",
}

// outside are packages that nothing under calc or grammar may import: clocks, chance, input and output, goroutines.
var outside = []string{"time", "os", "log", "log/slog", "net", "net/http", "math/rand", "math/rand/v2", "crypto/rand", "sync", "context", "database/sql", "testing"}

func TestImports(t *testing.T) {
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		pkg := filepath.ToSlash(filepath.Dir(strings.TrimPrefix(path, ".."+string(filepath.Separator))))
		for _, spec := range f.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			mayImport(t, path, pkg, name)
		}
		return nil
	})
	require.NoError(t, err)
}

func mayImport(t *testing.T, path, pkg, name string) {
	place := slices.Index(order, pkg)
	require.GreaterOrEqual(t, place, 0, "%s: package %q has no place in the order", path, pkg)
	if ours, ok := strings.CutPrefix(name, "lastrow/"); ok {
		require.Contains(t, order[:place], ours, "%s imports %s", path, name)
		return
	}
	if strings.HasPrefix(pkg, "calc") || strings.HasPrefix(pkg, "grammar") {
		require.NotContains(t, outside, name, "%s is to be pure", path)
	}
}
