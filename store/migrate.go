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

// migrate brings an older database forward, all steps in one transaction, and refuses one from a newer program. It looks
// at the version inside it, for another process may be migrating the same file.
func (s *Store) migrate(ctx context.Context) error {
	steps, err := schema.ReadDir("schema")
	if err != nil {
		return err
	}
	return s.within(ctx, func(tx *sql.Tx) error {
		var version int
		if err := tx.QueryRowContext(ctx, "pragma user_version").Scan(&version); err != nil {
			return err
		}
		if version > len(steps) {
			return fmt.Errorf("the database is of version %d, from a newer program; this one knows %d", version, len(steps))
		}
		for _, step := range steps[version:] {
			if err := apply(ctx, tx, "schema/"+step.Name()); err != nil {
				return fmt.Errorf("%s: %w", step.Name(), err)
			}
		}
		_, err := tx.ExecContext(ctx, fmt.Sprintf("pragma user_version = %d", len(steps)))
		return err
	})
}

func apply(ctx context.Context, tx *sql.Tx, file string) error {
	text, err := schema.ReadFile(file)
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, string(text))
	return err
}
