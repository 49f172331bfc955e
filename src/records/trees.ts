import { and, asc, eq, isNull } from 'drizzle-orm';
import { oneRow } from './clubs.ts';
import type { Database } from './database.ts';
import { type Tree, trees } from './schema.ts';

/** A name as it is compared: "  POT  3 " and "Pot 3" are one name. */
export function nameKeyOf(name: string): string {
  return name.normalize('NFKC').toLowerCase().replaceAll(/\s+/gu, ' ').trim();
}

/** A member's trees by name; retired ones only when asked for. */
export async function treesOf(
  db: Database,
  memberId: number,
  options: { withRetired?: boolean } = {},
): Promise<Tree[]> {
  return db
    .select()
    .from(trees)
    .where(
      options.withRetired
        ? eq(trees.memberId, memberId)
        : and(eq(trees.memberId, memberId), isNull(trees.retiredOn)),
    )
    .orderBy(asc(trees.nameKey));
}

/** The member's own tree of that id; another member's is as good as none. */
export async function treeOf(db: Database, memberId: number, treeId: number): Promise<Tree | null> {
  const [tree] = await db
    .select()
    .from(trees)
    .where(and(eq(trees.id, treeId), eq(trees.memberId, memberId)));
  return tree ?? null;
}

export async function treeNamed(db: Database, memberId: number, name: string): Promise<Tree | null> {
  const [tree] = await db
    .select()
    .from(trees)
    .where(and(eq(trees.memberId, memberId), eq(trees.nameKey, nameKeyOf(name))));
  return tree ?? null;
}

/** Null when the member has a tree of that name already. */
export async function insertTree(
  db: Database,
  tree: Omit<typeof trees.$inferInsert, 'nameKey'>,
): Promise<Tree | null> {
  const [row] = await db
    .insert(trees)
    .values({ ...tree, nameKey: nameKeyOf(tree.name) })
    .onConflictDoNothing({ target: [trees.memberId, trees.nameKey] })
    .returning();
  return row ?? null;
}

export async function updateTree(
  db: Database,
  treeId: number,
  change: Partial<Omit<typeof trees.$inferInsert, 'nameKey'>>,
): Promise<Tree> {
  const named = change.name === undefined ? change : { ...change, nameKey: nameKeyOf(change.name) };
  const [row] = await db.update(trees).set(named).where(eq(trees.id, treeId)).returning();
  return oneRow(row);
}
