import { addDays, type Day } from '../engine/day.ts';
import { parseSeason, type Season, seasonOf, seasonStarting } from '../engine/season.ts';
import { UserError } from '../errors.ts';
import { hemisphereOf } from '../records/garden.ts';
import { learningTrees } from '../records/learning.ts';
import { learnedFigures } from '../records/learning-figures.ts';
import type { Member } from '../records/schema.ts';
import type { Context } from './context.ts';
import { dateOrderOf, todayOf } from './date-option.ts';
import type { Feature } from './feature.ts';
import { choiceOption } from './option-kinds.ts';
import { type Reply, reply } from './reply.ts';
import { type RoundupPeriod, readRoundup } from './roundup-data.ts';
import { drawnRoundup } from './roundup-picture.ts';
import { roundupFacts, seasonWords, weekWords } from './roundup-words.ts';

export const roundupFeature: Feature = {
  command: {
    name: 'roundup',
    description: 'How the club is doing: the last seven days, or a whole season',
    visibility: 'everyone',
    options: [
      choiceOption('span', 'the week, or a season', { week: 'week', season: 'season' }),
      { name: 'season', type: 'text', maxLength: 10, description: 'which season, such as 2026 or 2026/27' },
    ],
  },
  handle: (context, input) =>
    roundupReply(context, {
      ...(input.span === 'week' || input.span === 'season' ? { span: input.span } : {}),
      ...(typeof input.season === 'string' ? { season: input.season } : {}),
    }),
};

export interface RoundupRequest {
  /** A week, unless a season is named. */
  readonly span?: 'week' | 'season';
  /** A season's label; the present one when left out. */
  readonly season?: string;
}

/** The club's last seven days, or one of its seasons. */
export async function roundupReply(context: Context, request: RoundupRequest): Promise<Reply> {
  const { db, club } = context;
  const today = todayOf(context);
  const manner = { order: dateOrderOf(context), units: context.member.units };
  if (request.season === undefined && request.span !== 'season') {
    const period = { span: 'week', from: addDays(today, -6), to: today } as const;
    const roundup = await readRoundup(db, club, period, today);
    const season = await readRoundup(db, club, currentSeasons(today), today);
    return reply({
      ...weekWords(roundup, manner),
      files: await drawnRoundup(club.name, roundup, season, manner, today),
      data: roundupFacts(roundup, `${period.from}/${period.to}`),
    });
  }
  if (request.span === 'week') {
    throw new UserError(
      'week-of-season',
      `A week's roundup is of the last seven days; for the season ${request.season} type /roundup span:season season:${request.season}.`,
    );
  }
  const season = readSeason(context, request.season);
  const period = { span: 'season', seasonOf: sameSeason(season) } as const;
  const roundup = await readRoundup(db, club, period, today);
  const learned = learnedFigures(await learningTrees(db, club.id, { until: today }));
  return reply({
    ...seasonWords(roundup, season.label, learned, manner),
    files: await drawnRoundup(club.name, roundup, roundup, manner, today),
    data: roundupFacts(roundup, season.label, learned),
  });
}

/** The season each member's garden is in. */
export function currentSeasons(today: Day): RoundupPeriod {
  return { span: 'season', seasonOf: (member) => seasonOf(today, hemisphereOf(member)) };
}

/** The season a label means; in a club across the equator the same start year for everyone. */
export function sameSeason(season: Season): (member: Member) => Season {
  return (member) => seasonStarting(season.startYear, hemisphereOf(member));
}

function readSeason(context: Context, label: string | undefined): Season {
  const hemisphere = hemisphereOf(context.member);
  const current = seasonOf(todayOf(context), hemisphere);
  if (label === undefined) return current;
  const season = parseSeason(label, hemisphere);
  if (season === null) {
    throw new UserError(
      'no-such-season',
      `"${label}" is not a season; type it like ${current.label}, the one running now.`,
    );
  }
  if (season.from > current.to) {
    throw new UserError(
      'season-to-come',
      `The season ${season.label} is still to come; ${current.label} is running now.`,
    );
  }
  return season;
}
