import { findCultivar } from '../engine/cultivars.ts';
import { addDays, type Day, day, daysBetween } from '../engine/day.ts';
import { groupOf } from '../engine/ripening.ts';
import type { DemoGrower, DemoTree } from './growers.ts';
import { between, oneOf, type Random, randomOf, spread } from './random.ts';

/** What a tree does this season, whether or not anybody looks. Invented. */
export interface Nature {
  readonly leafOut: Day;
  /** First main-crop fruitlet without a tip; null when none would come. */
  readonly setsBy: Day | null;
  readonly buds: 'double' | 'single';
  /** Whether a tip brings fruitlets, and after how many days. */
  readonly tipBrings: number | null;
  /** Days from a fruitlet to a ripe fig. */
  readonly span: number;
  readonly brebas: { readonly seen: Day; readonly ripe: Day; readonly figs: number } | null;
  /** Figs that one picking yields. */
  readonly perPick: number;
}

/** Leaves of an ordinary tree in the vale. Invented. */
const LEAVES = day('2026-04-24');

/** Days each group takes here: shorter than its planning span, so that the club has something to learn. */
const SPANS = { early: 67, mid: 79, late: 94, unknown: 84 } as const;

/** Days from leaves to fruitlets, 44–51 in Miyagi Prefecture 2017–2018, here in a somewhat slower spring. */
const SET_AFTER = 47;

export function natureOf(grower: DemoGrower, tree: DemoTree): Nature {
  const random = randomOf(`${grower.name} ${tree.name}`);
  const cultivar = findCultivar(tree.cultivar);
  const group = groupOf('unknown', cultivar);
  const covered = tree.options?.includes('kept:cover') ?? false;
  const leafOut = addDays(LEAVES, Math.round(3 * spread(random) - 2 * grower.warmer) - (covered ? 14 : 0));
  const setsBy = random() < 0.62 ? addDays(leafOut, SET_AFTER + Math.round(5 * spread(random))) : null;
  const buds = random() < 0.6 ? 'double' : 'single';
  const works = random() < (buds === 'double' ? 0.85 : 0.35);
  const bears = cultivar?.breba === 'good' || cultivar?.breba === 'heavy' || cultivar?.breba === 'fair';
  return {
    leafOut,
    setsBy: cultivar?.mainNeedsPollination ? null : setsBy,
    buds,
    tipBrings: works ? between(random, 7, 10) : null,
    span: SPANS[group] + Math.round(3.5 * spread(random)),
    brebas: bears && random() < 0.6 ? brebasOf(leafOut, random) : null,
    perPick: between(random, 2, 9),
  };
}

function brebasOf(leafOut: Day, random: Random) {
  const seen = addDays(leafOut, between(random, 4, 9));
  return { seen, ripe: addDays(seen, between(random, 66, 74)), figs: between(random, 3, 12) };
}

/** The days on which a tree's main crop is picked, until the frost. */
export function pickDays(ripe: Day, frost: Day, random: Random): Day[] {
  const days: Day[] = [];
  for (let on = ripe; on < frost && daysBetween(ripe, on) < 24; on = addDays(on, between(random, 4, 7)))
    days.push(on);
  return days;
}

/** How a grower may put things; each is read by the same language as anybody's notes. */
export const SAYINGS = {
  leafedOut: (random: Random, trees: string) =>
    oneOf(random, [`${trees} leafed out`, `leaves opening on ${trees}`]),
  brebas: (_: Random, tree: string) => `brebas on ${tree}`,
  pickedBrebas: (_: Random, tree: string, count: number) => `picked ${count} brebas from ${tree}`,
  buds: (_: Random, tree: string, kind: 'double' | 'single') => `${kind} buds on ${tree}`,
  fruitlets: (random: Random, tree: string) => {
    const count = between(random, 2, 7);
    return oneOf(random, [
      `${count} fruitlets on ${tree}`,
      `first fruitlets on ${tree}`,
      `saw ${count} figlets on ${tree} yesterday`,
    ]);
  },
  ripening: (random: Random, tree: string) =>
    oneOf(random, [`necks drooping on ${tree}`, `${tree} is colouring up`, `figs swelling on ${tree}`]),
  picked: (random: Random, tree: string, count: number) =>
    random() < 0.2
      ? `picked ${count * 45} g from ${tree}`
      : `picked ${count} ${count === 1 ? 'fig' : 'figs'} from ${tree}`,
  cuttings: (_: Random, tree: string, count: number) => `took ${count} cuttings from ${tree}`,
} as const;
