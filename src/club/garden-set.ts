import { isZone } from '../clock.ts';
import { type Day, type MonthDay, monthDayOf, monthOf } from '../engine/day.ts';
import { FEW_SEASONS, type HeatMark, toCelsius, toFahrenheit } from '../engine/record-summary.ts';
import type { Hemisphere } from '../engine/season.ts';
import { UserError } from '../errors.ts';
import { markOf } from '../records/garden.ts';
import type { Member } from '../records/schema.ts';
import { hemisphereOfZone } from '../weather/places.ts';
import type { Context } from './context.ts';
import { dateOrderOf, readSeasonOption, takenWords, todayOf, type Understood } from './date-option.ts';
import type { Feature, Input } from './feature.ts';
import { placeFromInput } from './garden-place.ts';
import { saveGarden } from './garden-save.ts';
import { gardenTrees } from './garden-trees.ts';
import { gardenData, gardenFields, gardenStory } from './garden-words.ts';
import { choiceOption } from './option-kinds.ts';
import { reply } from './reply.ts';
import { monthDayWords } from './words.ts';

/** Heat marks outside these say nothing about figs, °C. Ours. */
const LEAST_MARK_C = 15;
const MOST_MARK_C = 45;

/** What moves the dates of trees, so that the reply must say how they stand now. */
const MOVES_DATES: readonly (keyof Member)[] = [
  'heatEnd',
  'firstFrost',
  'heatMark',
  'units',
  'seriesId',
  'hemisphere',
  'cautionDays',
  'rule',
];

/** What one call of /garden set changes, and what is to be said about it. */
interface Change {
  set: Partial<Member>;
  understood: Understood[];
  remarks: string[];
}

export const gardenSet: Feature = {
  command: {
    name: 'garden set',
    description: 'Say where you garden and when your season ends',
    visibility: 'everyone',
    options: [
      { name: 'place', type: 'text', complete: 'place', maxLength: 100, description: 'the nearest town' },
      { name: 'lat', type: 'number', min: -90, max: 90, description: 'latitude in degrees, south negative' },
      {
        name: 'lon',
        type: 'number',
        min: -180,
        max: 180,
        description: 'longitude in degrees, west negative',
      },
      { name: 'zone', type: 'text', maxLength: 60, description: 'time zone, such as Europe/London' },
      choiceOption('units', 'degrees you think in', { F: '°F', C: '°C' }),
      choiceOption('dates', 'how you write 7/8', { 'month first': 'month first', 'day first': 'day first' }),
      {
        name: 'heat_mark',
        type: 'number',
        description: 'daily high that counts as heat (usually 80 °F or 27 °C)',
      },
      {
        name: 'heat_end',
        type: 'text',
        maxLength: 100,
        description: 'last day of reliable heat, or "record" to follow the weather record',
      },
      { name: 'last_frost', type: 'text', maxLength: 100, description: 'last frost of spring, or "record"' },
      { name: 'first_frost', type: 'text', maxLength: 100, description: 'first frost of fall, or "record"' },
      {
        name: 'caution',
        type: 'integer',
        min: 0,
        max: 21,
        description: 'days you want to be early, 0 to 21',
      },
      {
        name: 'nudge_hour',
        type: 'integer',
        min: 0,
        max: 23,
        description: 'hour of the morning for nudges, 0 to 23',
      },
      choiceOption('nudges', 'where nudges go', { channel: 'channel', direct: 'direct', off: 'off' }),
      choiceOption('rule', 'what nudges follow: days counted back, or how past seasons ended', {
        days: 'days',
        outlook: 'outlook',
      }),
    ],
  },

  async handle(context, input) {
    if (Object.keys(input).length === 0) {
      throw new UserError(
        'nothing-to-set',
        'Nothing to set: type what you know, for example /garden set heat_end:October 15, or /garden set place: with your town.',
      );
    }
    const change = await readChange(context, input);
    const order = dateOrderOf({ ...context, member: { ...context.member, ...change.set } });
    const summarise = ['heatMark', 'units', 'hemisphere', 'seriesId'].some((column) => column in change.set);
    const member = await context.db.transaction((tx) =>
      saveGarden(tx, context, { set: change.set, summarise }),
    );
    const today = todayOf({ ...context, member });
    const moves = MOVES_DATES.some((column) => column in change.set);
    const trees = moves ? await gardenTrees(context.db, member, today, order) : null;
    return reply({
      title: 'Your garden',
      text: [...change.remarks, gardenStory(member, today, order)].join('\n\n'),
      fields: [...gardenFields(member, context.club, order), ...(trees?.fields ?? [])],
      // Whoever says where they garden is a press away from their season.
      buttons:
        member.lat !== null && member.seriesId === null
          ? [{ label: 'Look up its weather', action: 'look-up' }]
          : [],
      data: {
        ...gardenData(member, context.club),
        ...(trees === null ? {} : { trees: trees.items }),
        understood: change.understood,
      },
    });
  },
};

async function readChange(context: Context, input: Input): Promise<Change> {
  const change: Change = { set: {}, understood: [], remarks: [] };
  await readPlace(context, input, change);
  readHabits(context, input, change);
  readMark(context, input, change);
  readDays(context, input, change);
  return change;
}

async function readPlace(context: Context, input: Input, change: Change) {
  const found = await placeFromInput(context, input);
  if (found !== null) {
    Object.assign(change.set, found.set);
    change.remarks.push(...found.remarks);
    if (found.set.seriesId === null && context.member.seriesId !== null) {
      change.remarks.push('The record looked up for your former place no longer counts.');
    }
  }
  const { zone } = input;
  if (typeof zone !== 'string') return;
  if (!isZone(zone)) {
    throw new UserError(
      'no-such-zone',
      `"${zone}" is not a time zone; type one such as America/New_York or Europe/London. Nothing was changed.`,
    );
  }
  change.set.zone = new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone;
  const hemisphere = hemisphereOfZone(change.set.zone);
  const placed = change.set.lat ?? context.member.lat;
  if (placed === null && hemisphere !== null) change.set.hemisphere = hemisphere;
}

function readHabits(context: Context, input: Input, change: Change) {
  const { set } = change;
  if (input.dates !== undefined) set.dates = input.dates === 'day first' ? 'DMY' : 'MDY';
  if (typeof input.caution === 'number') set.cautionDays = input.caution;
  if (typeof input.nudge_hour === 'number') set.nudgeHour = input.nudge_hour;
  if (typeof input.nudges === 'string') set.nudgeWay = input.nudges as Member['nudgeWay'];
  if (typeof input.rule === 'string') {
    set.rule = input.rule as Member['rule'];
    change.remarks.push(ruleWords(set.rule, context.member));
  }
  if (typeof input.units === 'string' && input.units !== context.member.units) {
    set.units = input.units as Member['units'];
    const mark = context.member.heatMark;
    if (mark !== null) set.heatMark = inUnit({ value: mark, unit: context.member.units }, set.units);
  }
}

function ruleWords(rule: Member['rule'], { summary }: Member): string {
  switch (rule) {
    case 'days':
      return 'Decision dates and nudges go by days counted back from your heat end.';
    case 'outlook':
      return summary === null || summary.seasons < FEW_SEASONS
        ? `Decision dates and nudges will go by the outlook once ${FEW_SEASONS} seasons are on record; until then by days. /garden weather gets a record.`
        : 'Decision dates and nudges go by the outlook: the last day of tipping from which four of five past seasons would have ripened the figs before frost. /tip tells each tree’s.';
  }
}

function readMark(context: Context, input: Input, change: Change) {
  const value = input.heat_mark;
  if (typeof value !== 'number') return;
  const unit = change.set.units ?? context.member.units;
  const celsius = toCelsius(value, unit);
  if (celsius < LEAST_MARK_C || celsius > MOST_MARK_C) {
    const usual = markOf({ units: unit, heatMark: null });
    throw new UserError(
      'mark-out-of-range',
      `A heat mark of ${value} °${unit} is out of range for figs; it is ${usual.value} °${unit} for most. Nothing was changed.`,
    );
  }
  change.set.heatMark = value;
}

function readDays(context: Context, input: Input, change: Change) {
  const { set } = change;
  // The words are read in the order and hemisphere that this very command may have set.
  const reader = () => ({ ...context, member: { ...context.member, ...set } });
  const order = dateOrderOf(reader());
  const read = (
    option: 'heat_end' | 'last_frost' | 'first_frost',
    take: 'from' | 'to',
  ): MonthDay | null | undefined => {
    const text = input[option];
    if (typeof text !== 'string') return undefined;
    if (/^(record|none|clear)$/i.test(text)) return null;
    const { member } = reader();
    const hemisphereAt = (from: Day): Hemisphere =>
      option === 'heat_end' && !isPlaced(member) ? toldBy(monthOf(from)) : (member.hemisphere ?? 'N');
    const understood = readSeasonOption(reader(), option, text, hemisphereAt);
    change.understood.push(understood);
    const taken = takenWords(understood, understood[take], order);
    if (taken !== null) change.remarks.push(taken);
    return monthDayOf(understood[take]);
  };
  // A deadline is careful when early; a last frost when late.
  const heatEnd = read('heat_end', 'from');
  if (heatEnd !== undefined) set.heatEnd = heatEnd;
  const { member } = reader();
  if (member.heatEnd !== null) checkHalfOfYear(member.heatEnd, member, change, order);
  const lastFrost = read('last_frost', 'to');
  const firstFrost = read('first_frost', 'from');
  if (lastFrost !== undefined) set.lastFrost = lastFrost;
  if (firstFrost !== undefined) set.firstFrost = firstFrost;
}

/** Whether the garden's hemisphere is known from where it is, and not only from when its heat ends. */
function isPlaced({ lat, zone }: Member): boolean {
  return lat !== null || (zone !== null && hemisphereOfZone(zone) !== null);
}

/** Heat ends between July and December in the north and between January and June in the south. */
function toldBy(month: number): Hemisphere {
  return month >= 7 ? 'N' : 'S';
}

/** Where the place does not tell the hemisphere the date does; where it does, a date of the other is a slip. */
function checkHalfOfYear(heatEnd: MonthDay, member: Member, change: Change, order: 'MDY' | 'DMY') {
  const told = toldBy(Number(heatEnd.slice(0, 2)));
  if (member.hemisphere === told) return;
  if (!isPlaced(member)) {
    change.set.hemisphere = told;
    if (told === 'S' || member.hemisphere !== null) {
      const [side, runs] =
        told === 'S' ? ['south', 'from July to June'] : ['north', 'with the calendar year'];
      change.remarks.push(
        `Heat that ends on ${monthDayWords(heatEnd, order)} means a garden ${side} of the equator, so your season runs ${runs}.`,
      );
    }
  } else {
    const where = member.hemisphere === 'N' ? 'north' : 'south';
    throw new UserError(
      'heat-end-in-winter',
      `Heat does not end on ${monthDayWords(heatEnd, order)} ${where} of the equator, where your garden is; check heat_end and place; they can be set together. Nothing was changed.`,
    );
  }
}

function inUnit(mark: HeatMark, unit: 'F' | 'C'): number {
  if (mark.unit === unit) return mark.value;
  const celsius = toCelsius(mark.value, mark.unit);
  return Math.round((unit === 'C' ? celsius : toFahrenheit(celsius)) * 10) / 10;
}
