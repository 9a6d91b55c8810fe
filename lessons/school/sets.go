package school

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"scratchpass/lessons/postgres"
)

// Sets are the blueprints that the instructors of a group keep, for rooms to come.
type Sets struct {
	DB    *postgres.DB
	Clock func() time.Time
}

// Kept is a blueprint that is kept.
type Kept struct {
	Name      string // of the set
	Blueprint string
	By        string // name of who kept it last
	At        time.Time
}

// mostSets is how many a group can keep: a list that nobody can look through helps nobody.
const mostSets = 200

// ErrNoSet says that a group keeps no set of a name.
var ErrNoSet = errors.New("the group keeps no such set")

// ErrManySets says that a group keeps as many sets as it can.
var ErrManySets = fmt.Errorf("the group keeps %d sets already: delete some first", mostSets)

// Keep keeps a blueprint of a group under the name of its set, in place of the one that was kept under
// it; ErrManySets where there is no room for another.
func (s Sets) Keep(ctx context.Context, group string, k Kept, by Person) error {
	done, err := s.DB.ExecContext(ctx, `INSERT INTO sets (of_group, name, blueprint, by_name, at_ms)
		SELECT $1, $2, $3, $4, CAST($5 AS bigint) WHERE (SELECT count(*) FROM sets WHERE of_group = $1 AND name <> $2) < CAST($6 AS bigint)
		ON CONFLICT (of_group, name) DO UPDATE SET blueprint = excluded.blueprint, by_name = excluded.by_name, at_ms = excluded.at_ms`,
		group, k.Name, k.Blueprint, by.Name, s.Clock().UnixMilli(), mostSets)
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); n > 0 || err != nil {
		return err
	}
	return ErrManySets
}

// Of are those of a group, by name, without the blueprints.
func (s Sets) Of(ctx context.Context, group string) (all []Kept, err error) {
	rows, err := s.DB.QueryContext(ctx, "SELECT name, by_name, at_ms FROM sets WHERE of_group = $1 ORDER BY name", group)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		var k Kept
		var at int64
		if err := rows.Scan(&k.Name, &k.By, &at); err != nil {
			return nil, err
		}
		k.At = time.UnixMilli(at)
		all = append(all, k)
	}
	return all, rows.Err()
}

// Blueprint is that of one set; ErrNoSet where there is none of the name.
func (s Sets) Blueprint(ctx context.Context, group, name string) (text string, err error) {
	err = s.DB.QueryRowContext(ctx, "SELECT blueprint FROM sets WHERE of_group = $1 AND name = $2", group, name).Scan(&text)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrNoSet
	}
	return text, err
}

// Delete deletes one; ErrNoSet where there is none of the name.
func (s Sets) Delete(ctx context.Context, group, name string) error {
	done, err := s.DB.ExecContext(ctx, "DELETE FROM sets WHERE of_group = $1 AND name = $2", group, name)
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); n > 0 || err != nil {
		return err
	}
	return ErrNoSet
}
