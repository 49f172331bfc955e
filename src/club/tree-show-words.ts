import { daysBetween } from '../engine/day.ts';
import type { DateOrder } from '../notes/contract.ts';
import { eventOf } from '../records/notes.ts';
import type { Standing } from '../records/standing.ts';
import type { Lineage, SeasonStory } from '../records/stories.ts';
import { whatHappened } from './event-words.ts';
import { harvestOfStanding, harvestWords } from './harvest-words.ts';
import type { Field } from './reply.ts';
import { verdictWords } from './verdict-words.ts';
import { countWords, dayWords, listWords } from './words.ts';

/** Older notes of a busy season are only counted. */
const MOST_NOTES = 12;

/** Figs of one tree follow each other by days; after this long without a pick its crop is over. Ours. */
const CROP_OVER_DAYS = 21;

/** How the tree stands, in one sentence. */
export function stateWords(standing: Standing, order: DateOrder): string {
  const { result, input } = standing;
  const { pickedOn } = result.fruit;
  const last = harvestOfStanding(standing).main.to;
  if (pickedOn === null || last === null) return `${verdictWords(standing, order).title}.`;
  return daysBetween(last, input.today) <= CROP_OVER_DAYS
    ? `It is being picked since ${dayWords(pickedOn, order)}; its figs follow each other up the shoots, a day or two apart.`
    : `Its figs are picked, from ${dayWords(pickedOn, order)} to ${dayWords(last, order)}.`;
}

/** This season's notes, a day a line, oldest first. */
export function timeLine({ observations }: Standing, order: DateOrder): Field[] {
  const told = observations.filter(({ kind }) => kind !== 'remark');
  const shown = told.slice(-MOST_NOTES);
  const byDay = new Map<string, string[]>();
  for (const row of shown) {
    const day = dayWords(row.day, order);
    byDay.set(day, [...(byDay.get(day) ?? []), whatHappened(eventOf(row))]);
  }
  const earlier = told.length - shown.length;
  return [
    ...(earlier > 0 ? [{ name: 'Before', value: countWords(earlier, 'earlier note') }] : []),
    ...[...byDay].map(([name, events]) => ({ name, value: listWords(events) })),
  ];
}

/** A past season in a line: leafed out, fruitlets, tipped, first ripe, picked, cuttings. */
export function pastField(story: SeasonStory, order: DateOrder, units: 'F' | 'C'): Field {
  const { main, breba } = harvestOfStanding(story.standing);
  const figs = harvestWords(main, 'fig', units);
  const brebas = harvestWords(breba, 'breba', units);
  const parts = [
    ...(story.leafedOut === null ? [] : [`leafed out ${dayWords(story.leafedOut, order)}`]),
    ...(story.seen === null ? [] : [`fruitlets ${dayWords(story.seen, order)}`]),
    ...(story.tipped === null ? [] : [`tipped ${dayWords(story.tipped, order)}`]),
    ...(story.ripe === null ? [] : [`first ripe ${dayWords(story.ripe, order)}`]),
    ...(figs === null ? [] : [`picked ${figs}`]),
    ...(brebas === null ? [] : [`${brebas} before`]),
    ...(story.cuttings === 0 ? [] : [countWords(story.cuttings, 'cutting')]),
  ];
  return { name: `Season ${story.season}`, value: parts.length === 0 ? 'only remarks' : parts.join(', ') };
}

/** `a cutting of Old Brunswick, which came from Lena; cuttings of it: Pot 4 and Pot 5`; null when nothing is known. */
export function lineageWords({ parents, origin, children }: Lineage): string | null {
  const [parent, ...older] = parents;
  const line =
    parent === undefined ? [] : [`from ${[parent, ...older].map(({ name }) => name).join(', itself from ')}`];
  const from = origin === null ? [] : [parent === undefined ? `from ${origin}` : `which came from ${origin}`];
  const struck =
    children.length === 0 ? [] : [`taken from it: ${listWords(children.map(({ name }) => name))}`];
  const parts = [[...line, ...from].join(', '), ...struck].filter((part) => part !== '');
  return parts.length === 0 ? null : parts.join('; ');
}
