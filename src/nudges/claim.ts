import { randomUUID } from 'node:crypto';
import { and, asc, eq, inArray, sql } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import type { Day } from '../engine/day.ts';
import { oneRow } from '../records/clubs.ts';
import type { Database } from '../records/database.ts';
import { zoneOf } from '../records/garden.ts';
import { type Club, clubs, type Member, type Nudge, nudges } from '../records/schema.ts';
import { nonceOf } from './nonce.ts';
import { lockMember } from './plan.ts';
import { CANCELLED } from './reasons.ts';

/**
 * How long a worker holds a morning. Shorter than the time for which Discord remembers a nonce ("the past few
 * minutes"), so that whoever takes over after a crash still meets the message that was stored.
 */
export const LEASE_SECONDS = 60;

/** After this long without a holder no nonce protects the message any more, and it may as well be today's. Ours. */
const NONCE_FORGOTTEN_MS = 15 * 60_000;

/** What one worker took on itself to send: all that is due to a member on a morning. */
export interface Claim {
  readonly member: Member;
  readonly club: Club;
  readonly today: Day;
  readonly rows: readonly Nudge[];
  readonly token: string;
  readonly nonce: string;
  /** 1 for the first. */
  readonly attempt: number;
}

export type ClaimResult =
  | { readonly kind: 'claimed'; readonly claim: Claim }
  /** Nothing to send now. */
  | { readonly kind: 'nothing' }
  /** Another worker has it, or had it until a moment ago. */
  | { readonly kind: 'busy'; readonly forMs: number };

export interface ClaimOptions {
  readonly leaseSeconds?: number | undefined;
  /** No other process can be at work, so that whatever is leased was left behind by one that died. */
  readonly alone?: boolean | undefined;
}

/**
 * Takes what is due to a member this morning: marks the rows with a token of our own and a lease on the
 * database's clock. Short, and committed before anything is sent.
 */
export async function claimMorning(
  db: Database,
  clock: Clock,
  memberId: number,
  { leaseSeconds = LEASE_SECONDS, alone = false }: ClaimOptions = {},
): Promise<ClaimResult> {
  return db.transaction(async (tx) => {
    const member = await lockMember(tx, memberId);
    const club = oneRow((await tx.select().from(clubs).where(eq(clubs.id, member.clubId)))[0]);
    const zone = zoneOf(member, club);
    const today = clock.today(zone);
    const waiting = await waitingOf(tx, memberId, alone);

    const heldForMs = Math.max(0, ...waiting.map((one) => one.heldMs));
    if (heldForMs > 0) return { kind: 'busy', forMs: heldForMs };

    // A message that may have been stored already is sent again as it was, with nothing added to it.
    const unsure = waiting.filter(({ row, heldMs }) => row.nonce !== null && heldMs > -NONCE_FORGOTTEN_MS);
    const due = waiting.filter(({ row }) => clock.hasCome(row.due, member.nudgeHour, zone));
    const rows = (unsure.length > 0 ? unsure : due).map(({ row }) => row);
    const nonce = unsure[0]?.row.nonce ?? nonceOf(memberId, today);
    if (rows.length === 0 || (unsure.length === 0 && (await isSpent(tx, memberId, nonce)))) {
      return { kind: 'nothing' };
    }
    const silence = silenceOf(member, club);
    if (silence !== null) {
      await tx
        .update(nudges)
        .set({ state: 'cancelled', error: silence })
        .where(inArray(nudges.id, idsOf(rows)));
      return { kind: 'nothing' };
    }
    const token = randomUUID();
    const attempt = Math.max(...rows.map((row) => row.attempt)) + 1;
    await tx
      .update(nudges)
      .set({ state: 'leased', token, nonce, attempt, leasedUntil: secondsFromNow(leaseSeconds) })
      .where(inArray(nudges.id, idsOf(rows)));
    return { kind: 'claimed', claim: { member, club, today, rows, token, nonce, attempt } };
  });
}

interface Waiting {
  readonly row: Nudge;
  /** For how long yet somebody holds it; negative since when nobody does; 0 when nobody did. */
  readonly heldMs: number;
}

async function waitingOf(tx: Database, memberId: number, alone: boolean): Promise<Waiting[]> {
  const heldMs = sql<string | null>`extract(epoch from ${nudges.leasedUntil} - now()) * 1000`;
  const rows = await tx
    .select({ row: nudges, heldMs })
    .from(nudges)
    .where(and(eq(nudges.memberId, memberId), inArray(nudges.state, ['pending', 'leased'])))
    .orderBy(asc(nudges.due), asc(nudges.id));
  return rows.map(({ row, heldMs: held }) => ({
    row,
    heldMs: row.state === 'pending' || alone ? 0 : Number(held),
  }));
}

/** Whether the member's message of this morning has been sent: there is one a morning, never two. */
async function isSpent(tx: Database, memberId: number, nonce: string): Promise<boolean> {
  const sent = await tx
    .select({ id: nudges.id })
    .from(nudges)
    .where(and(eq(nudges.memberId, memberId), eq(nudges.state, 'sent'), eq(nudges.nonce, nonce)))
    .limit(1);
  return sent.length > 0;
}

function silenceOf(member: Member, club: Club): string | null {
  if (club.leftAt !== null) return CANCELLED.clubLeft;
  if (member.nudgeWay === 'off') return CANCELLED.off;
  const { quietAskedOn, lastSeenOn } = member;
  const stillQuiet = quietAskedOn !== null && (lastSeenOn === null || lastSeenOn < quietAskedOn);
  return stillQuiet ? CANCELLED.quiet : null;
}

/** Marks the claim's rows (or some of them) as what became of them; false when the claim was lost meanwhile. */
export async function settleClaim(
  db: Database,
  claim: Pick<Claim, 'token'>,
  ids: readonly number[],
  change: Partial<typeof nudges.$inferInsert>,
): Promise<boolean> {
  if (ids.length === 0) return true;
  const rows = await db
    .update(nudges)
    .set({ token: null, leasedUntil: null, ...change })
    .where(and(inArray(nudges.id, [...ids]), eq(nudges.token, claim.token), eq(nudges.state, 'leased')))
    .returning({ id: nudges.id });
  return rows.length === ids.length;
}

/** Keeps the claim's rows together for another attempt at the very same message, not before `seconds`. */
export async function postponeClaim(
  db: Database,
  claim: Claim,
  seconds: number,
  error: string,
): Promise<void> {
  await db
    .update(nudges)
    .set({ leasedUntil: secondsFromNow(seconds), error })
    .where(and(inArray(nudges.id, idsOf(claim.rows)), eq(nudges.token, claim.token)));
}

export function idsOf(rows: readonly { readonly id: number }[]): number[] {
  return rows.map(({ id }) => id);
}

function secondsFromNow(seconds: number) {
  return sql`now() + ${seconds} * interval '1 second'`;
}
