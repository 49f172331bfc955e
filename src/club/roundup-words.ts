import type { Day } from '../engine/day.ts';
import { groupBy } from '../group-by.ts';
import type { DateOrder } from '../notes/contract.ts';
import type { LearnedFigures } from '../records/learning-figures.ts';
import type { Member, Tree } from '../records/schema.ts';
import { harvestWords } from './harvest-words.ts';
import { learnedData, learnedFields } from './learned-words.ts';
import type { Field } from './reply.ts';
import {
  type Ahead,
  type CultivarLine,
  linesByCultivar,
  type Roundup,
  type RoundupTree,
} from './roundup-data.ts';
import { countWords, dayWords, listWords, rangeWords, sentence } from './words.ts';

/** More of either would bury the rest of the message. */
const MOST_NAMES = 8;
const MOST_NAMES_EACH = 3;
const MOST_CULTIVARS = 15;

/** How the readers write dates and weigh figs. */
export interface Manner {
  readonly order: DateOrder;
  readonly units: 'F' | 'C';
}

interface Words {
  readonly title: string;
  readonly text: string;
  readonly fields: Field[];
}

/** The machine's view of a roundup. */
export function roundupFacts(
  roundup: Roundup,
  period: string,
  learned?: LearnedFigures,
): Record<string, unknown> {
  return {
    span: roundup.period.span,
    period,
    members: roundup.members.length,
    trees: roundup.trees.length,
    byCultivar: linesByCultivar(roundup.trees).map((line) => ({
      cultivar: line.cultivar,
      trees: line.trees,
      fruitlets: line.fruitlets,
      fruitletsFrom: line.fruitletsFrom,
      fruitletsTo: line.fruitletsTo,
      tipped: line.tipped,
      tipKnown: line.tipKnown,
      tipWorked: line.tipWorked,
      spans: line.spans,
      picked: line.picked,
      figs: line.main.figs,
      grams: Math.round(line.main.grams),
      brebas: line.breba.figs,
      brebaGrams: Math.round(line.breba.grams),
    })),
    ...(roundup.period.span === 'season'
      ? {}
      : { decisions: roundup.decisions.map(aheadData), frosts: roundup.frosts.map(aheadData) }),
    ...(learned === undefined ? {} : { learned: learnedData(learned) }),
  };
}

function aheadData({ member, tree, on }: Ahead) {
  return { member: member.name, tree: tree.name, on };
}

/** A week: what was first seen, done, picked, and what is ahead. No fields in a quiet one. */
export function weekWords(roundup: Roundup, { order, units }: Manner): Words {
  const { trees, period } = roundup;
  const alone = roundup.members.length === 1;
  const dated = (of: (tree: RoundupTree) => Day | null): string | null => {
    const found = trees.flatMap((tree) => {
      const on = of(tree);
      return on === null ? [] : [{ member: tree.member, tree: tree.tree, on }];
    });
    return datedNames(found, order, alone);
  };
  const worked = trees.filter(({ results }) => results.some(({ broughtFruitlets }) => broughtFruitlets));
  const failed = trees.filter(
    ({ results }) => results.length > 0 && !results.some(({ broughtFruitlets }) => broughtFruitlets),
  );
  const results = [
    ...(worked.length > 0 ? [`fruitlets on ${ownedNames(worked, alone)}`] : []),
    ...(failed.length > 0 ? [`none on ${ownedNames(failed, alone)}`] : []),
  ];
  const fields = fieldsOf([
    ['Leafed out', dated((tree) => tree.leafedOut)],
    ['First fruitlets', dated((tree) => tree.seen)],
    ['Tipped', dated((tree) => tree.tips[0] ?? null)],
    ['What tips brought', results.length > 0 ? results.join('; ') : null],
    ['Ripening', dated((tree) => tree.ripening)],
    ['First ripe figs', dated((tree) => tree.ripe)],
    ['Picked', harvestsWords(trees, units)],
    ['To decide by', datedNames(roundup.decisions, order, alone)],
    ['Frost ahead', frostWords(roundup.frosts, order, alone)],
  ]);
  const days = period.span === 'week' ? rangeWords(period.from, period.to, order) : '';
  return {
    title: `The club's week, ${days}`,
    text: [
      `${sentence(countWords(roundup.members.length, 'grower'))} with ${countWords(trees.length, 'tree')}.`,
      ...(fields.length === 0
        ? ['A quiet week: nothing new was noted, and no decision or frost is near.']
        : []),
      ...(roundup.decisions.length > 0
        ? ['A tree that shows no fruitlets by its date is worth a tip, if at all, on that day.']
        : []),
    ].join(' '),
    fields,
  };
}

/** A season: one line a cultivar, what came first and last, and what the club has learned so far. */
export function seasonWords(roundup: Roundup, label: string, learned: LearnedFigures, manner: Manner): Words {
  const { trees } = roundup;
  const lines = linesByCultivar(trees);
  const shown = lines.slice(0, MOST_CULTIVARS);
  const rest = lines.slice(MOST_CULTIVARS);
  const fields = [
    ...shown.map((line) => ({
      name: line.cultivar ?? 'Cultivar not known',
      value: cultivarWords(line, manner),
    })),
    ...(rest.length === 0
      ? []
      : [
          {
            name: 'And',
            value: listWords(rest.map(({ cultivar, trees: n }) => `${cultivar ?? 'not known'} (${n})`)),
          },
        ]),
    ...extremes(trees, manner.order, roundup.members.length === 1),
    ...learnedFields(learned, label),
  ];
  const tipped = trees.filter(({ tips }) => tips.length > 0).length;
  const ripe = trees.filter(({ ripe: on }) => on !== null).length;
  return {
    title: `The club's season ${label}`,
    text:
      trees.length === 0
        ? `No tree of the club was on record in the season ${label}.`
        : `${sentence(countWords(roundup.members.length, 'grower'))} with ${countWords(trees.length, 'tree')}: ${countWords(tipped, 'tree')} tipped, ripe main-crop figs on ${ripe}.`,
    fields,
  };
}

function cultivarWords(line: CultivarLine, { order, units }: Manner): string {
  const parts = [countWords(line.trees, 'tree')];
  if (line.fruitletsFrom !== null && line.fruitletsTo !== null) {
    parts.push(
      `fruitlets on ${line.fruitlets}, first seen ${rangeWords(line.fruitletsFrom, line.fruitletsTo, order)}`,
    );
  }
  if (line.tipped > 0) parts.push(`${line.tipped} tipped, ${tipResultWords(line)}`);
  if (line.spans.length > 0) {
    const [low, high] = [line.spans[0], line.spans.at(-1)];
    const days = low === high ? `${low} days` : `${low}–${high} days`;
    parts.push(`${days} from fruitlet to ripe on ${countWords(line.spans.length, 'tree')}`);
  }
  const main = harvestWords(line.main, 'fig', units);
  const breba = harvestWords(line.breba, 'breba', units);
  if (main !== null) parts.push(`${main} picked`);
  if (breba !== null) parts.push(`${breba} before`);
  return parts.join('; ');
}

function tipResultWords({ tipKnown, tipWorked }: CultivarLine): string {
  if (tipKnown === 0) return 'results not noted';
  return `fruitlets came on ${tipWorked} of ${tipKnown}${tipKnown === 1 ? '' : ' that were looked at'}`;
}

function harvestsWords(trees: readonly RoundupTree[], units: 'F' | 'C'): string | null {
  const parts = (['breba', 'main'] as const).flatMap((crop) => {
    const picked = trees.filter(({ harvest }) => harvest[crop].picks > 0);
    if (picked.length === 0) return [];
    const figs = picked.reduce((sum, { harvest }) => sum + harvest[crop].figs, 0);
    const grams = picked.reduce((sum, { harvest }) => sum + harvest[crop].grams, 0);
    const what = harvestWords(
      { picks: 1, figs, grams, from: null, to: null },
      crop === 'main' ? 'fig' : 'breba',
      units,
    );
    return [`${what} from ${countWords(picked.length, 'tree')}`];
  });
  return parts.length === 0 ? null : parts.join('; ');
}

function frostWords(frosts: readonly Ahead[], order: DateOrder, alone: boolean): string | null {
  if (frosts.length === 0) return null;
  const days = [...groupBy(frosts, ({ on, member }) => `${on} ${member.id}`).values()].flatMap((group) => {
    const [first] = group;
    return first
      ? [
          `${alone ? '' : `${first.member.name} `}about ${dayWords(first.on, order)} (${countWords(group.length, 'tree')})`,
        ]
      : [];
  });
  return `${days.join(', ')}: fruit still green, or pots outside`;
}

function extremes(trees: readonly RoundupTree[], order: DateOrder, alone: boolean): Field[] {
  const pair = (name: string, of: (tree: RoundupTree) => Day | null): Field[] => {
    const dated = trees
      .flatMap((tree) => {
        const on = of(tree);
        return on === null ? [] : [{ tree, on }];
      })
      .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
    const [first, last] = [dated[0], dated.at(-1)];
    if (first === undefined || last === undefined) return [];
    const words = ({ tree, on }: typeof first) =>
      `${dayWords(on, order)}, ${ownedNames([tree], alone)} (${tree.cultivar ?? 'cultivar not known'})`;
    return [{ name, value: first === last ? words(first) : `first ${words(first)}; last ${words(last)}` }];
  };
  return [...pair('Fruitlets', (tree) => tree.seen), ...pair('Ripe figs', (tree) => tree.ripe)];
}

/** `7 July: Ana’s Alma and Gate, Bo’s Pot 3; 9 July: …`, oldest first. */
function datedNames(
  found: readonly { member: Member; tree: Tree; on: Day }[],
  order: DateOrder,
  alone: boolean,
): string | null {
  if (found.length === 0) return null;
  const byDay = [...groupBy(found, ({ on }) => on)].sort(([a], [b]) => (a < b ? -1 : 1));
  return byDay.map(([on, group]) => `${dayWords(on, order)}: ${ownedNames(group, alone)}`).join('; ');
}

/** Each grower's trees together; of many only how many there are. A club of one needs no owners. */
function ownedNames(trees: readonly { member: Member; tree: Tree }[], alone: boolean): string {
  if (alone) return capped(trees.map(({ tree }) => tree.name));
  const byMember = [...groupBy(trees, ({ member }) => member.name)];
  const each = byMember.map(([name, own]) =>
    own.length > MOST_NAMES_EACH || byMember.length > MOST_NAMES
      ? `${own.length} of ${name}’s`
      : `${name}’s ${listWords(own.map(({ tree }) => tree.name))}`,
  );
  return each.length > MOST_NAMES
    ? `${countWords(trees.length, 'tree')} of ${each.length} growers`
    : each.join(', ');
}

function capped(all: readonly string[]): string {
  const more = all.length - MOST_NAMES;
  return more > 0 ? `${all.slice(0, MOST_NAMES).join(', ')} and ${more} more` : listWords(all);
}

function fieldsOf(pairs: readonly (readonly [string, string | null])[]): Field[] {
  return pairs.flatMap(([name, value]) => (value === null ? [] : [{ name, value }]));
}
