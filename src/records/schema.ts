import { sql } from 'drizzle-orm';
import {
  boolean,
  customType,
  date,
  doublePrecision,
  index,
  integer,
  jsonb,
  pgTable,
  primaryKey,
  smallint,
  text,
  timestamp,
  uniqueIndex,
} from 'drizzle-orm/pg-core';
import type { Day, MonthDay } from '../engine/day.ts';
import type { Crop, ObservationKind, WeightUnit } from '../engine/observation.ts';
import type { RecordSummary } from '../engine/record-summary.ts';
import type { RipeningGroup } from '../engine/ripening.ts';
import type { Hemisphere } from '../engine/season.ts';
import type { Ask } from '../notes/contract.ts';

/** Bytes. PGlite gives a Uint8Array, postgres.js a Buffer; both read the same. */
const bytes = customType<{ data: Uint8Array }>({ dataType: () => 'bytea' });

const id = () => integer('id').primaryKey().generatedAlwaysAsIdentity();
const instant = (name: string) => timestamp(name, { withTimezone: true, mode: 'date' });
const calendarDay = (name: string) => date(name, { mode: 'string' }).$type<Day>();

/** What every page of a long reply is cut from; see club/reply.ts. */
export interface LongReply {
  readonly ok: boolean;
  readonly title: string;
  readonly text: string;
  readonly fields: readonly { readonly name: string; readonly value: string }[];
  readonly buttons: readonly { readonly label: string; readonly action: string }[];
}

export type Platform = 'discord' | 'terminal';
export type NudgeWay = 'channel' | 'direct' | 'off';
export type Kept = 'ground' | 'pot' | 'cover';
export type Purpose = 'fruit' | 'wood' | 'both';
export type NudgeKind = 'heads-up' | 'decision' | 'second-look' | 'ripe-watch' | 'frost' | 'dormant';
export type NudgeState = 'pending' | 'leased' | 'sent' | 'dead' | 'cancelled';

export const clubs = pgTable(
  'club',
  {
    id: id(),
    platform: text('platform').$type<Platform>().notNull(),
    /** Discord's guild id; "terminal" in the terminal. */
    platformId: text('platform_id').notNull(),
    name: text('name').notNull(),
    /** Where nudges and roundups go. */
    channelId: text('channel_id'),
    /** A channel whose every message is read as a note, where the operator allows it. */
    logChannelId: text('log_channel_id'),
    zone: text('zone').notNull().default('UTC'),
    /** 0 Sunday to 6 Saturday; null turns the weekly roundup off. */
    roundupDay: smallint('roundup_day').default(0),
    roundupHour: smallint('roundup_hour').notNull().default(9),
    /** What last kept a message from the club's channel; shown in /club. */
    trouble: text('trouble'),
    greetedAt: instant('greeted_at'),
    leftAt: instant('left_at'),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [uniqueIndex('club_platform').on(t.platform, t.platformId)],
);

export const members = pgTable(
  'member',
  {
    id: id(),
    clubId: integer('club_id')
      .notNull()
      .references(() => clubs.id, { onDelete: 'cascade' }),
    platformUserId: text('platform_user_id').notNull(),
    name: text('name').notNull(),
    place: text('place'),
    /** Degrees, rounded to 0.01. */
    lat: doublePrecision('lat'),
    lon: doublePrecision('lon'),
    zone: text('zone'),
    hemisphere: text('hemisphere').$type<Hemisphere>(),
    units: text('units').$type<'F' | 'C'>().notNull().default('F'),
    dates: text('dates').$type<'MDY' | 'DMY'>(),
    /** In `units`; null is the usual mark, 80 °F or 27 °C. */
    heatMark: doublePrecision('heat_mark'),
    /** Stated by the member; null follows the record. */
    heatEnd: text('heat_end').$type<MonthDay>(),
    lastFrost: text('last_frost').$type<MonthDay>(),
    firstFrost: text('first_frost').$type<MonthDay>(),
    cautionDays: smallint('caution_days').notNull().default(0),
    nudgeHour: smallint('nudge_hour').notNull().default(8),
    nudgeWay: text('nudge_way').$type<NudgeWay>().notNull().default('channel'),
    rule: text('rule').$type<'days' | 'outlook'>().notNull().default('days'),
    /** The station or grid series shared with other members. */
    seriesId: integer('series_id').references(() => weatherSeries.id, { onDelete: 'set null' }),
    /** The member's own readings; they win over the shared series. */
    ownSeriesId: integer('own_series_id').references(() => weatherSeries.id, { onDelete: 'set null' }),
    /** What the record says, worked out whenever the record, the mark or the hemisphere changes. */
    summary: jsonb('summary').$type<RecordSummary>(),
    /** The day the garden's season first became known; nothing due before it is nudged. */
    seasonKnownOn: calendarDay('season_known_on'),
    /** Kept out of what the club learns. */
    keepsOut: boolean('keeps_out').notNull().default(false),
    lastSeenOn: calendarDay('last_seen_on'),
    /** The day a member who had answered nothing for a season was asked whether nudges should stop. */
    quietAskedOn: calendarDay('quiet_asked_on'),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [uniqueIndex('member_user').on(t.clubId, t.platformUserId), index('member_series').on(t.seriesId)],
);

export const weatherSeries = pgTable(
  'weather_series',
  {
    id: id(),
    source: text('source').$type<'noaa' | 'power' | 'file'>().notNull(),
    /** The service's station or grid id; for a file, the member it belongs to. */
    stationId: text('station_id').notNull(),
    name: text('name').notNull(),
    lat: doublePrecision('lat'),
    lon: doublePrecision('lon'),
    elevationM: doublePrecision('elevation_m'),
    /** Changes with every change of its years, so that what is kept in memory can tell it is stale. */
    revision: text('revision').notNull().default(sql`gen_random_uuid()::text`),
    fetchedAt: instant('fetched_at'),
    /** Last attempt at topping it up, whether or not it worked. */
    triedAt: instant('tried_at'),
  },
  (t) => [uniqueIndex('weather_series_station').on(t.source, t.stationId)],
);

export const weatherYears = pgTable(
  'weather_year',
  {
    seriesId: integer('series_id')
      .notNull()
      .references(() => weatherSeries.id, { onDelete: 'cascade' }),
    year: smallint('year').notNull(),
    /** 366 little-endian int16, tenths of °C, see engine/climate.ts. */
    tmax: bytes('tmax').notNull(),
    tmin: bytes('tmin').notNull(),
  },
  (t) => [primaryKey({ columns: [t.seriesId, t.year] })],
);

export const trees = pgTable(
  'tree',
  {
    id: id(),
    memberId: integer('member_id')
      .notNull()
      .references(() => members.id, { onDelete: 'cascade' }),
    name: text('name').notNull(),
    /** `name` as compared: NFKC, lower case, single spaces. */
    nameKey: text('name_key').notNull(),
    cultivar: text('cultivar'),
    ripening: text('ripening').$type<RipeningGroup>(),
    spanFrom: smallint('span_from'),
    spanTo: smallint('span_to'),
    startedOn: calendarDay('started_on'),
    kept: text('kept').$type<Kept>().notNull().default('ground'),
    /** Days that cover adds to the heat end. */
    coverDays: smallint('cover_days').notNull().default(0),
    purpose: text('purpose').$type<Purpose>().notNull().default('fruit'),
    pollinated: boolean('pollinated').notNull().default(false),
    parentTreeId: integer('parent_tree_id'),
    origin: text('origin'),
    /** The member has wood of it to spare. */
    spareWood: boolean('spare_wood').notNull().default(false),
    /** Label of the season the member chose to leave this tree alone in. */
    leftAloneIn: text('left_alone_in'),
    retiredOn: calendarDay('retired_on'),
    /** Next day on which anything is due; null when nothing is. */
    lookOn: calendarDay('look_on'),
    /** The decision date as last planned, so that a change that moves it into the past is known as one. */
    decisionOn: calendarDay('decision_on'),
    addedOn: calendarDay('added_on').notNull(),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [
    uniqueIndex('tree_name').on(t.memberId, t.nameKey),
    // The sweep reads only what is due, however many trees there are.
    index('tree_look_on').on(t.lookOn).where(sql`look_on is not null`),
  ],
);

export const notes = pgTable(
  'note',
  {
    id: id(),
    memberId: integer('member_id')
      .notNull()
      .references(() => members.id, { onDelete: 'cascade' }),
    text: text('text').notNull(),
    /** The platform's id of the message; the same message is taken once. */
    messageId: text('message_id'),
    /** The assistant's answer, so that a reply to it can be understood. */
    replyMessageId: text('reply_message_id'),
    /** The question that is open; null when none is, or when it has been answered. */
    ask: jsonb('ask').$type<Ask>(),
    /** The day the note was written on, for the question's answer. */
    writtenOn: calendarDay('written_on').notNull(),
    /** The note that this one puts right; taking this one back brings that one back. */
    corrects: integer('corrects'),
    undoneAt: instant('undone_at'),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [
    uniqueIndex('note_message').on(t.memberId, t.messageId).where(sql`message_id is not null`),
    index('note_reply').on(t.memberId, t.replyMessageId),
  ],
);

export const observations = pgTable(
  'observation',
  {
    id: id(),
    memberId: integer('member_id')
      .notNull()
      .references(() => members.id, { onDelete: 'cascade' }),
    /** Null: of the whole garden. */
    treeId: integer('tree_id').references(() => trees.id, { onDelete: 'cascade' }),
    noteId: integer('note_id').references(() => notes.id, { onDelete: 'cascade' }),
    kind: text('kind').$type<ObservationKind>().notNull(),
    day: calendarDay('day').notNull(),
    /** Figs, or a weight in `unit`; for cuttings and roots, cuttings. */
    count: doublePrecision('count'),
    unit: text('unit').$type<WeightUnit>(),
    crop: text('crop').$type<Crop>(),
    /** How many shoots were tipped. */
    shoots: smallint('shoots'),
    text: text('text').notNull(),
    by: text('by').notNull(),
    messageId: text('message_id'),
    undoneAt: instant('undone_at'),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [
    index('observation_tree').on(t.treeId, t.day),
    index('observation_member').on(t.memberId, t.day),
    index('observation_note').on(t.noteId),
  ],
);

export const nudges = pgTable(
  'nudge',
  {
    id: id(),
    memberId: integer('member_id')
      .notNull()
      .references(() => members.id, { onDelete: 'cascade' }),
    treeId: integer('tree_id')
      .notNull()
      .references(() => trees.id, { onDelete: 'cascade' }),
    season: text('season').notNull(),
    kind: text('kind').$type<NudgeKind>().notNull(),
    /** 0 for the first; a "remind me" makes the next one; a second tip its own second look. */
    occurrence: smallint('occurrence').notNull().default(0),
    due: calendarDay('due').notNull(),
    state: text('state').$type<NudgeState>().notNull().default('pending'),
    attempt: smallint('attempt').notNull().default(0),
    /** Fencing token of the worker that holds it. */
    token: text('token'),
    leasedUntil: instant('leased_until'),
    /** The message's nonce; items of one morning share it. */
    nonce: text('nonce'),
    channelId: text('channel_id'),
    messageId: text('message_id'),
    error: text('error'),
    sentAt: instant('sent_at'),
    answer: text('answer'),
    answeredAt: instant('answered_at'),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [
    uniqueIndex('nudge_once').on(t.treeId, t.season, t.kind, t.occurrence),
    index('nudge_member_state').on(t.memberId, t.state),
    index('nudge_message').on(t.messageId).where(sql`message_id is not null`),
    index('nudge_waiting').on(t.due).where(sql`state in ('pending', 'leased')`),
  ],
);

/** Weekly and season roundups that were posted, so that each is posted once. */
export const roundups = pgTable(
  'roundup',
  {
    id: id(),
    clubId: integer('club_id')
      .notNull()
      .references(() => clubs.id, { onDelete: 'cascade' }),
    /** "week:2026-07-05" or "season:2026". */
    period: text('period').notNull(),
    state: text('state').$type<NudgeState>().notNull().default('pending'),
    token: text('token'),
    leasedUntil: instant('leased_until'),
    nonce: text('nonce'),
    messageId: text('message_id'),
    error: text('error'),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [uniqueIndex('roundup_once').on(t.clubId, t.period)],
);

/** Replies too long for one message, kept so that their buttons can turn the pages. */
export const longReplies = pgTable(
  'long_reply',
  {
    id: id(),
    clubId: integer('club_id')
      .notNull()
      .references(() => clubs.id, { onDelete: 'cascade' }),
    /** Whose it is; null for the club's own. */
    memberId: integer('member_id').references(() => members.id, { onDelete: 'cascade' }),
    reply: jsonb('reply').$type<LongReply>().notNull(),
    createdAt: instant('created_at').notNull(),
  },
  (t) => [index('long_reply_created').on(t.createdAt)],
);

/** Interactions and messages already taken, so that a duplicate delivery changes nothing. */
export const handled = pgTable(
  'handled',
  {
    id: text('id').primaryKey(),
    at: instant('at').notNull(),
  },
  (t) => [index('handled_at').on(t.at)],
);

/** Until when a budget of requests is spoken for; every worker reserves its share here. */
export const paces = pgTable('pace', {
  name: text('name').primaryKey(),
  freeAt: instant('free_at').notNull(),
});

export type Club = typeof clubs.$inferSelect;
export type Member = typeof members.$inferSelect;
export type Tree = typeof trees.$inferSelect;
export type Note = typeof notes.$inferSelect;
export type Observation = typeof observations.$inferSelect;
export type Nudge = typeof nudges.$inferSelect;
export type WeatherSeries = typeof weatherSeries.$inferSelect;
