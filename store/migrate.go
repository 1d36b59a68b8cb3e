package store

import (
	"context"
	"database/sql"
	"embed"
	"fmt"
)

// Each file takes the schema one version forward, in order of name. A file that has shipped is never changed.
//
//go:embed schema/*.sql
var schema embed.FS

// migrate brings an older database forward, a transaction a step, and refuses one from a newer program.
func (s *Store) migrate(ctx context.Context) error {
	steps, err := schema.ReadDir("schema")
	if err != nil {
		return err
	}
	var version int
	if err := s.db.QueryRowContext(ctx, "pragma user_version").Scan(&version); err != nil {
		return err
	}
	if version > len(steps) {
		return fmt.Errorf("the database is of version %d, from a newer program; this one knows %d", version, len(steps))
	}
	for i, step := range steps[version:] {
		text, err := schema.ReadFile("schema/" + step.Name())
		if err != nil {
			return err
		}
		if err := s.step(ctx, string(text), version+i+1); err != nil {
			return fmt.Errorf("schema %s: %w", step.Name(), err)
		}
	}
	return nil
}

func (s *Store) step(ctx context.Context, text string, version int) error {
	return s.within(ctx, func(tx *sql.Tx) error {
		if _, err := tx.ExecContext(ctx, text); err != nil {
			return err
		}
		_, err := tx.ExecContext(ctx, fmt.Sprintf("pragma user_version = %d", version))
		return err
	})
}
