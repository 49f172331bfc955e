import type { Clock } from '../../src/clock.ts';
import type { Context } from '../../src/club/context.ts';
import { type Day, day, monthDay } from '../../src/engine/day.ts';
import type { ObservationKind } from '../../src/engine/observation.ts';
import type { DeliveryOutcome, Messenger, Outgoing } from '../../src/nudges/messenger.ts';
import { replanMember, replanTree } from '../../src/nudges/plan.ts';
import { memberById, oneRow, openClub, openMember, updateMember } from '../../src/records/clubs.ts';
import type { Database } from '../../src/records/database.ts';
import { zoneOf } from '../../src/records/garden.ts';
import { insertNote, insertObservations, undoNote } from '../../src/records/notes.ts';
import type { Club, Member, members, Note, Tree, trees } from '../../src/records/schema.ts';
import { insertTree, treeOf, updateTree } from '../../src/records/trees.ts';

type GardenChange = Partial<typeof members.$inferInsert>;

let serial = 0;

/** A member with a garden, who does through the records what the club's handlers do for people. */
export class Grower {
  readonly db: Database;
  readonly clock: Clock;
  readonly club: Club;
  readonly memberId: number;

  private constructor(db: Database, clock: Clock, club: Club, memberId: number) {
    this.db = db;
    this.clock = clock;
    this.club = club;
    this.memberId = memberId;
  }

  /** Heat to 15 October: decision date 7 July for a late tree, 27 July for an early one. */
  static async join(db: Database, clock: Clock, garden: GardenChange = {}, club?: Club): Promise<Grower> {
    serial += 1;
    const key = { platform: 'terminal' as const, platformId: `club-${serial}` };
    const ofClub = club ?? (await openClub(db, key, 'Fig club', clock.now()));
    const member = await openMember(db, ofClub.id, `user-${serial}`, `Grower ${serial}`, clock.now());
    const grower = new Grower(db, clock, ofClub, member.id);
    await grower.change({ heatEnd: monthDay('10-15'), zone: 'America/New_York', dates: 'DMY', ...garden });
    return grower;
  }

  async member(): Promise<Member> {
    return oneRow((await memberById(this.db, this.memberId)) ?? undefined);
  }

  async today(): Promise<Day> {
    return this.clock.today(zoneOf(await this.member(), this.club));
  }

  /** `/garden set`. */
  async change(change: GardenChange): Promise<void> {
    const known = (await this.member()).seasonKnownOn !== null || change.heatEnd == null;
    const first = known ? {} : { seasonKnownOn: this.clock.today(change.zone ?? 'UTC') };
    await this.db.transaction(async (tx) => {
      await updateMember(tx, this.memberId, { ...change, ...first });
      await replanMember(tx, this.memberId, this.clock);
    });
  }

  async add(name: string, tree: Partial<typeof trees.$inferInsert> = {}): Promise<Tree> {
    const addedOn = await this.today();
    return this.db.transaction(async (tx) => {
      const row = await insertTree(tx, {
        ripening: 'late',
        ...tree,
        name,
        memberId: this.memberId,
        addedOn,
        createdAt: this.clock.now(),
      });
      const added = oneRow(row ?? undefined);
      await replanTree(tx, added.id, this.clock);
      return added;
    });
  }

  async edit(tree: Tree, change: Partial<typeof trees.$inferInsert>): Promise<void> {
    await this.db.transaction(async (tx) => {
      await updateTree(tx, tree.id, change);
      await replanTree(tx, tree.id, this.clock);
    });
  }

  async note(tree: Tree, kind: ObservationKind, on?: string): Promise<Note> {
    const today = await this.today();
    const now = this.clock.now();
    return this.db.transaction(async (tx) => {
      const note = await insertNote(tx, {
        memberId: this.memberId,
        text: kind,
        writtenOn: today,
        ask: null,
        now,
      });
      const written = oneRow(note ?? undefined);
      const event = { tree: tree.id, kind, on: on === undefined ? today : day(on) };
      await insertObservations(tx, written, [event], 'test', now);
      await replanTree(tx, tree.id, this.clock);
      return written;
    });
  }

  async undo(note: Note): Promise<void> {
    await this.db.transaction(async (tx) => {
      await undoNote(tx, note, this.clock.now());
      await replanMember(tx, this.memberId, this.clock);
    });
  }

  async lookOn(tree: Tree): Promise<Day | null> {
    return (await treeOf(this.db, this.memberId, tree.id))?.lookOn ?? null;
  }

  async context(): Promise<Context> {
    const member = await this.member();
    const { db, clock, club } = this;
    return { db, clock, club, member, managesClub: false, services: {} as never, progress: () => {} };
  }
}

/** What the items of a message are, as `tree kind due` and `late` where it is. */
export function itemsOf(message: Outgoing): string[] {
  const items = message.reply.data.items as { tree: string; kind: string; due: string; late: boolean }[];
  return items.map(({ tree, kind, due, late }) => `${tree} ${kind} ${due}${late ? ' late' : ''}`);
}

/** Keeps what it is given, and answers each attempt with `next`. */
export class KeepingMessenger implements Messenger {
  readonly stored: Outgoing[] = [];
  attempts = 0;
  next: (message: Outgoing) => DeliveryOutcome | Promise<DeliveryOutcome> = () => ({
    kind: 'sent',
    channelId: '1',
    messageId: String(this.stored.length),
  });

  async send(message: Outgoing): Promise<DeliveryOutcome> {
    this.attempts += 1;
    const outcome = await this.next(message);
    if (outcome.kind === 'sent') this.stored.push(message);
    return outcome;
  }

  take(): string[][] {
    return this.stored.splice(0).map(itemsOf);
  }
}
