import { findCultivar } from '../engine/cultivars.ts';
import { type LearnedSpan, learnSpan, type Share, shareOf } from '../engine/learning.ts';
import { groupOf, LEARNED_RECORDS_NEEDED } from '../engine/ripening.ts';
import { tipSuccess } from '../engine/tip-success.ts';
import type { BudSign } from '../engine/verdict.ts';
import { groupBy } from '../group-by.ts';
import { type LearningTree, spanRecordsOf } from './learning.ts';

/** What a club has learned; nothing in it rests on fewer than three records. */
export interface LearnedFigures {
  readonly spans: readonly { readonly cultivar: string; readonly learned: LearnedSpan }[];
  readonly tips: Partial<Record<BudSign, Share>>;
  readonly sides: readonly SideBySide[];
}

/** Trees of one cultivar in one season, tipped and untipped. Not a trial: who tips what is not drawn by lot. */
export interface SideBySide {
  readonly cultivar: string;
  readonly season: string;
  readonly tipped: Side;
  readonly untipped: Side;
}

export interface Side {
  readonly trees: number;
  readonly withFruitlets: Share;
  readonly picked: Share;
}

export function learnedFigures(learned: readonly LearningTree[]): LearnedFigures {
  const names = new Map(learned.map(({ key, cultivar }) => [key, cultivar]));
  const spans = [...spanRecordsOf(learned)].flatMap(([key, days]) => {
    const cultivar = names.get(key) ?? key;
    const known = learnSpan(days, groupOf('unknown', findCultivar(cultivar)));
    return known !== null && known.records >= LEARNED_RECORDS_NEEDED ? [{ cultivar, learned: known }] : [];
  });
  return {
    spans: spans.sort((a, b) => b.learned.records - a.learned.records || (a.cultivar < b.cultivar ? -1 : 1)),
    tips: tipSuccess(learned.flatMap(({ tips }) => tips)),
    sides: [...groupBy(learned, ({ key, season }) => `${season} ${key}`).values()].flatMap(sideBySide),
  };
}

function sideBySide(group: readonly LearningTree[]): SideBySide[] {
  const [first] = group;
  const tipped = group.filter((tree) => tree.tipped);
  const untipped = group.filter((tree) => !tree.tipped);
  if (first === undefined || Math.min(tipped.length, untipped.length) < LEARNED_RECORDS_NEEDED) return [];
  const { cultivar, season } = first;
  return [{ cultivar, season, tipped: sideOf(tipped), untipped: sideOf(untipped) }];
}

function sideOf(trees: readonly LearningTree[]): Side {
  return {
    trees: trees.length,
    withFruitlets: shareOf(trees.filter(({ hadFruitlets }) => hadFruitlets).length, trees.length),
    picked: shareOf(trees.filter(({ picked }) => picked).length, trees.length),
  };
}
