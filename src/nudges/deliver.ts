import { setTimeout as wait } from 'node:timers/promises';
import { eq } from 'drizzle-orm';
import type { Clock } from '../clock.ts';
import type { Reply } from '../club/reply.ts';
import { groupBy } from '../group-by.ts';
import type { Database } from '../records/database.ts';
import { preparedRecord } from '../records/prepared.ts';
import { members, type Nudge, trees } from '../records/schema.ts';
import { standingsOf } from '../records/standing.ts';
import { type Claim, claimMorning, idsOf, LEASE_SECONDS, postponeClaim, settleClaim } from './claim.ts';
import { composeMorning, type MorningItem } from './compose.ts';
import { dueItems } from './due.ts';
import type { DeliveryOutcome, Messenger } from './messenger.ts';
import { dueInputOf, tipsOf } from './plan.ts';
import { shouldAskQuiet } from './quiet.ts';
import { CANCELLED } from './reasons.ts';
import { retryAfterSeconds } from './retry.ts';

export interface Delivery {
  readonly db: Database;
  readonly clock: Clock;
  readonly messenger: Messenger;
  readonly leaseSeconds?: number;
  /** See ClaimOptions. */
  readonly alone?: boolean;
  /** Waits for this process's turn among all who send; called once for every request. */
  readonly pace?: () => Promise<void>;
  /** Aborted when this process is to end. */
  readonly signal?: AbortSignal;
}

/** How long a message that was sent is kept in mind while the database is down. */
const KEEP_TRYING_MS = 10 * 60_000;
const TRY_EVERY_MS = 500;

/** What became of a member's morning. */
export type MorningOutcome =
  | { readonly kind: 'sent' }
  | { readonly kind: 'nothing' }
  | { readonly kind: 'retry'; readonly afterMs: number; readonly reason: string }
  | { readonly kind: 'dead'; readonly reason: string }
  | { readonly kind: 'stop'; readonly reason: string };

/**
 * Sends a member all that is due to them this morning in one message. Safe to call at any time, from any
 * number of processes, as often as one likes: claim, commit, check again that it is still true, send with the
 * morning's nonce, and complete only what is still held by our own token.
 */
export async function deliverMorning(delivery: Delivery, memberId: number): Promise<MorningOutcome> {
  const { db, clock, leaseSeconds, alone } = delivery;
  const claimed = await claimMorning(db, clock, memberId, { leaseSeconds, alone });
  if (claimed.kind === 'nothing') return { kind: 'nothing' };
  if (claimed.kind === 'busy') return { kind: 'retry', afterMs: claimed.forMs, reason: 'held by another' };
  const { claim } = claimed;
  const items = await stillTrue(db, claim);
  const trueIds = new Set(items.map(({ nudge }) => nudge.id));
  const stale = claim.rows.filter(({ id }) => !trueIds.has(id));
  await settleClaim(db, claim, idsOf(stale), { state: 'cancelled', error: CANCELLED.settled });
  if (items.length === 0) return { kind: 'nothing' };
  const asksQuiet = await shouldAskQuiet(db, claim.member, claim.today);
  const record = items.some(({ nudge }) => nudge.kind === 'decision')
    ? await preparedRecord(db, claim.member)
    : null;
  const outcome = await send(delivery, claim, composeMorning({ ...claim, items, record, asksQuiet }));
  return complete(delivery, claim, items, outcome, asksQuiet);
}

/** The claim's items that are true today, each with how its tree stands. */
async function stillTrue(db: Database, claim: Claim): Promise<MorningItem[]> {
  const { member, today } = claim;
  const own = await db.select().from(trees).where(eq(trees.memberId, member.id));
  const concerned = own.filter((tree) => claim.rows.some(({ treeId }) => treeId === tree.id));
  const standings = await standingsOf(db, member, concerned, today);
  const season = standings[0]?.season;
  if (season === undefined) return [];
  const tips = await tipsOf(db, member, concerned, season);
  const byTree = groupBy(claim.rows, (row) => row.treeId);
  return standings.flatMap((standing) => {
    if (standing.tree.retiredOn !== null) return [];
    const ofTree = tips.filter(({ treeId }) => treeId === standing.tree.id || treeId === null);
    const items = dueItems(dueInputOf(standing, member, ofTree));
    return (byTree.get(standing.tree.id) ?? [])
      .filter((nudge) => items.some((item) => item.holds && isAbout(nudge, item)))
      .map((nudge) => ({ nudge, standing }));
  });
}

/** A second look is about one tip; all else, reminders included, about the season's one date. */
function isAbout(nudge: Nudge, item: { kind: string; season: string; occurrence: number }): boolean {
  if (nudge.kind !== item.kind || nudge.season !== item.season) return false;
  return nudge.kind !== 'second-look' || nudge.occurrence === item.occurrence;
}

async function send(
  { messenger, pace, leaseSeconds = LEASE_SECONDS }: Delivery,
  { member, club, nonce }: Claim,
  reply: Reply,
): Promise<DeliveryOutcome> {
  const message = {
    member,
    club,
    nonce,
    way: member.nudgeWay === 'direct' ? 'direct' : 'channel',
    reply,
  } as const;
  // A direct message takes two requests: its channel has to be opened. The last thing before the request, so
  // that it goes when its turn is.
  for (let request = 0; request < (message.way === 'direct' ? 2 : 1); request++) await pace?.();
  // Nothing may be begun that could outlast the lease; what is cut off here may have been stored all the same.
  const deadlineMs = leaseSeconds * 750;
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<DeliveryOutcome>((resolve) => {
    timer = setTimeout(() => resolve({ kind: 'retry', reason: 'no answer in time' }), deadlineMs);
  });
  try {
    return await Promise.race([messenger.send(message), late]);
  } catch (error) {
    return { kind: 'retry', reason: error instanceof Error ? error.message : String(error) };
  } finally {
    clearTimeout(timer);
  }
}

async function complete(
  delivery: Delivery,
  claim: Claim,
  items: readonly MorningItem[],
  outcome: DeliveryOutcome,
  asksQuiet: boolean,
): Promise<MorningOutcome> {
  const { db, clock } = delivery;
  const ids = items.map(({ nudge }) => nudge.id);
  switch (outcome.kind) {
    case 'sent': {
      const { channelId, messageId } = outcome;
      const sentAt = clock.now();
      await keepTrying(delivery.signal, () =>
        db.transaction(async (tx) => {
          await settleClaim(tx, claim, ids, { state: 'sent', channelId, messageId, sentAt, error: null });
          if (asksQuiet) {
            await tx
              .update(members)
              .set({ quietAskedOn: claim.today })
              .where(eq(members.id, claim.member.id));
          }
        }),
      );
      return { kind: 'sent' };
    }
    case 'retry': {
      const seconds = retryAfterSeconds(claim.attempt, outcome.afterMs);
      await postponeClaim(db, claim, seconds, outcome.reason);
      return { kind: 'retry', afterMs: seconds * 1000, reason: outcome.reason };
    }
    case 'dead':
      await settleClaim(db, claim, ids, { state: 'dead', error: outcome.reason });
      return outcome;
    case 'stop':
      // Refused before anything was stored: it waits as if nobody had tried.
      await settleClaim(db, claim, ids, { state: 'pending', nonce: null, error: outcome.reason });
      return outcome;
  }
}

/**
 * A message that stands in the channel must not be forgotten because the database is down just now: whoever
 * would send it again after the outage may come too late for its nonce.
 */
async function keepTrying(signal: AbortSignal | undefined, work: () => Promise<void>): Promise<void> {
  for (let waited = 0; ; waited += TRY_EVERY_MS) {
    try {
      await work();
      return;
    } catch (error) {
      if (signal?.aborted || waited >= KEEP_TRYING_MS) throw error;
      await wait(TRY_EVERY_MS);
    }
  }
}
