import type { Standing } from '../records/standing.ts';

/** The machine's view of a verdict on one tree. */
export function verdictData(standing: Standing): Record<string, unknown> {
  const { tree, result } = standing;
  return {
    tree: tree.name,
    verdict: result.verdict,
    ...(result.timing === undefined ? {} : { timing: result.timing }),
    ...(result.shoots === undefined ? {} : { shoots: result.shoots }),
    // Of a tree that bears no figs a date to decide on would only mislead.
    decisionDate: result.verdict === 'not-for-fruit' ? null : result.decisionDate,
    heatEnd: result.heatEnd,
    ripeFrom: result.ripeFrom,
    ripeTo: result.ripeTo,
    ...(result.seen === null ? {} : { seen: result.seen }),
  };
}
