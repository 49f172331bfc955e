import { SteppedClock } from '../../src/clock.ts';
import type { Context } from '../../src/club/context.ts';
import { openContext } from '../../src/club/open-context.ts';
import type { Services } from '../../src/club/services.ts';
import { type Day, day } from '../../src/engine/day.ts';
import type { Crop, ObservationKind, WeightUnit } from '../../src/engine/observation.ts';
import { updateMember } from '../../src/records/clubs.ts';
import type { Database } from '../../src/records/database.ts';
import { insertNote, insertObservations } from '../../src/records/notes.ts';
import type { Member, Tree } from '../../src/records/schema.ts';
import { insertTree } from '../../src/records/trees.ts';

/** Puts growers, trees and observations on record without a word of language. */
export class ClubRecords {
  readonly db: Database;
  readonly clock: SteppedClock;
  readonly #club: string;

  constructor(db: Database, today: string, club = 'terminal') {
    this.db = db;
    this.clock = new SteppedClock(day(today));
    this.#club = club;
  }

  context(name: string, managesClub = false): Promise<Context> {
    return openContext({
      db: this.db,
      clock: this.clock,
      services: {} as Services,
      platform: 'terminal',
      clubPlatformId: this.#club,
      clubName: `Club ${this.#club}`,
      userId: name.toLowerCase(),
      userName: name,
      managesClub,
    });
  }

  async grower(name: string, garden: Partial<Member> = {}): Promise<Member> {
    const { member } = await this.context(name);
    const season = { heatEnd: '09-20', firstFrost: '11-01', lastFrost: '04-10', seasonKnownOn: '2020-01-01' };
    return updateMember(this.db, member.id, { ...(season as Partial<Member>), ...garden });
  }

  async tree(member: Member, name: string, facts: Partial<Tree> = {}): Promise<Tree> {
    const row = await insertTree(this.db, {
      memberId: member.id,
      name,
      addedOn: '2020-01-01' as Day,
      createdAt: this.clock.now(),
      ...facts,
    });
    if (row === null) throw new Error(`${name} is taken`);
    return row;
  }

  /** One observation with its note. */
  async saw(member: Member, tree: Tree | null, kind: ObservationKind, on: string, more: More = {}) {
    const note = await insertNote(this.db, {
      memberId: member.id,
      text: more.text ?? `${kind} ${tree?.name ?? 'garden'}`,
      writtenOn: day(on),
      ask: null,
      now: this.clock.now(),
    });
    if (note === null) throw new Error('the note was taken before');
    const { count, unit, crop } = more;
    const event = {
      tree: tree?.id ?? null,
      kind,
      on: day(on),
      ...(count === undefined ? {} : { count }),
      ...(unit === undefined ? {} : { unit }),
      ...(crop === undefined ? {} : { crop }),
    };
    return insertObservations(this.db, note, [event], member.platformUserId, this.clock.now());
  }

  /** A whole season of one tree: first fruitlet and first ripe fig. */
  async record(member: Member, tree: Tree, seen: string, picked: string) {
    await this.saw(member, tree, 'fruitlets', seen, { crop: 'main' });
    await this.saw(member, tree, 'picked', picked, { crop: 'main', count: 4 });
  }
}

interface More {
  readonly count?: number;
  readonly unit?: WeightUnit;
  readonly crop?: Crop;
  readonly text?: string;
}
