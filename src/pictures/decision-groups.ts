import { type Day, daysBetween } from '../engine/day.ts';
import type { TreeDate } from './season-input.ts';

/** Trees to be decided on one day, or within a few when there are too many days to tell apart. */
export interface DecisionGroup {
  readonly from: Day;
  readonly to: Day;
  readonly trees: readonly TreeDate[];
}

/** More groups than this are not told apart on a phone. */
const MOST_GROUPS = 8;

const WIDTHS_DAYS = [1, 7, 14, 28, 61, 122] as const;

/** Trees by decision date, earliest first; those without one are left out. */
export function groupDecisions(trees: readonly TreeDate[]): readonly DecisionGroup[] {
  const dated = trees
    .flatMap((tree) => (tree.decisionDate ? [{ tree, on: tree.decisionDate }] : []))
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  for (const width of WIDTHS_DAYS) {
    const groups = grouped(dated, width);
    if (groups.length <= MOST_GROUPS) return groups;
  }
  return grouped(dated, Number.POSITIVE_INFINITY);
}

function grouped(dated: readonly { tree: TreeDate; on: Day }[], widthDays: number): DecisionGroup[] {
  const groups: { from: Day; to: Day; trees: TreeDate[] }[] = [];
  for (const { tree, on } of dated) {
    const group = groups.at(-1);
    if (group && daysBetween(group.from, on) < widthDays) {
      group.to = on;
      group.trees.push(tree);
    } else groups.push({ from: on, to: on, trees: [tree] });
  }
  return groups;
}
