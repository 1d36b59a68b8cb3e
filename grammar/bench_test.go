package grammar

import (
	"fmt"
	"strings"
	"testing"
)

func BenchmarkReadWalls(b *testing.B) {
	for _, n := range []int{100, 1000, 10000} {
		text := "walls " + strings.TrimSuffix(strings.Repeat("E 1, N 1, ", n/2), ", ")
		b.Run(fmt.Sprintf("walls=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				Read(text, Context{})
			}
		})
	}
}
