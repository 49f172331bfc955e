import type { Day } from '../engine/day.ts';
import type { Crop, ObservationKind } from '../engine/observation.ts';
import type { Ink, MarkerShape } from './marks.ts';
import type { DateOrder } from './picture.ts';
import type { RipeWindow, TreeNote } from './tree-input.ts';
import { shortDate, shortDates } from './words.ts';

/** Notes of one kind on one line, or the ripe window. */
export interface TreeRow {
  readonly words: string;
  readonly detail: string;
  /** Days with a note, ascending. */
  readonly days: readonly Day[];
  readonly shape: MarkerShape;
  readonly ink: Ink;
  readonly isFilled: boolean;
  /** Drawn as a bar from the first day to the last. */
  readonly isWindow: boolean;
}

interface KindStyle {
  readonly words: string;
  readonly shape: MarkerShape;
  readonly ink: Ink;
  readonly isFilled: boolean;
  /** What is counted is the kind itself: "5 fruitlets". */
  readonly isThing?: boolean;
}

const KINDS: Readonly<Record<ObservationKind, KindStyle>> = {
  'leafed-out': { words: 'leafed out', shape: 'up', ink: 'leaf', isFilled: true },
  'buds-single': { words: 'single buds', isThing: true, shape: 'circle', ink: 'quiet', isFilled: false },
  'buds-double': { words: 'double buds', isThing: true, shape: 'circle', ink: 'quiet', isFilled: true },
  fruitlets: { words: 'fruitlets', isThing: true, shape: 'circle', ink: 'leaf', isFilled: true },
  'no-fruitlets': { words: 'no fruitlets', shape: 'circle', ink: 'leaf', isFilled: false },
  tipped: { words: 'tipped', shape: 'down', ink: 'fig', isFilled: true },
  branched: { words: 'branched', shape: 'down', ink: 'fig', isFilled: false },
  dropped: { words: 'dropped', shape: 'cross', ink: 'fig', isFilled: false },
  ripening: { words: 'ripening', shape: 'diamond', ink: 'fig', isFilled: false },
  picked: { words: 'picked', shape: 'diamond', ink: 'fig', isFilled: true },
  frost: { words: 'frost', shape: 'cross', ink: 'frost', isFilled: false },
  trouble: { words: 'trouble', shape: 'cross', ink: 'heat', isFilled: false },
  care: { words: 'care', shape: 'square', ink: 'quiet', isFilled: false },
  pruned: { words: 'pruned', shape: 'square', ink: 'quiet', isFilled: true },
  cuttings: { words: 'cuttings', isThing: true, shape: 'square', ink: 'ink', isFilled: true },
  rooted: { words: 'rooted', shape: 'square', ink: 'ink', isFilled: false },
  dormant: { words: 'dormant', shape: 'diamond', ink: 'frost', isFilled: true },
  remark: { words: 'remarks', shape: 'square', ink: 'quiet', isFilled: false },
};

const WINDOW_WORDS: Readonly<Record<RipeWindow['basis'], string>> = {
  fruitlets: 'ripe window',
  tipped: 'ripe, if the tip takes',
  'tip-today': 'ripe, if tipped today',
};

/** Rows in the order of their first day. */
export function treeRows(
  notes: readonly TreeNote[],
  ripe: RipeWindow | null,
  dates: DateOrder,
): readonly TreeRow[] {
  const byKind = new Map<string, TreeNote[]>();
  for (const note of notes) {
    const key = `${note.kind} ${note.crop === 'breba' ? 'breba' : ''}`;
    byKind.set(key, [...(byKind.get(key) ?? []), note]);
  }
  const rows = [...byKind.values()].map((group) => rowOf(group, dates));
  if (ripe) {
    rows.push({
      words: WINDOW_WORDS[ripe.basis],
      detail: shortDates(ripe.from, ripe.to, dates),
      days: [ripe.from, ripe.to],
      shape: 'bar',
      ink: 'leaf',
      isFilled: true,
      isWindow: true,
    });
  }
  return rows.sort((a, b) => ((a.days[0] ?? '') < (b.days[0] ?? '') ? -1 : 1));
}

function rowOf(notes: readonly TreeNote[], dates: DateOrder): TreeRow {
  const kind = notes[0]?.kind ?? 'remark';
  const crop: Crop | null = notes[0]?.crop === 'breba' ? 'breba' : null;
  const style = KINDS[kind];
  const days = notes.map(({ on }) => on).sort();
  const [first] = days;
  const last = days.at(-1);
  const times = days.length === 1 || !first ? '' : `${days.length} × `;
  const when = first && last ? `${times}${shortDates(first, last, dates)}` : '';
  const amounts = amountsOf(notes, style.isThing ?? false);
  const amount = amounts.join(', ');
  const thing = amount === '1' ? style.words.replace(/s$/, '') : style.words;
  const name = style.isThing && amounts.length === 1 ? `${amount} ${thing}` : `${style.words} ${amount}`;
  return {
    ...style,
    words: `${name.trim()}${crop ? ', breba' : ''}`,
    detail: when,
    days,
    isWindow: false,
  };
}

/** Counts and weights added up by unit: "41 figs", "1.2 kg". The unit of a thing is the thing itself. */
function amountsOf(notes: readonly TreeNote[], isThing: boolean): readonly string[] {
  // Figs before weights, whatever was noted first.
  const sums = new Map<string, number>(isThing ? [['', 0]] : [['figs', 0]]);
  for (const { count, unit, kind } of notes) {
    if (count == null) continue;
    const of = unit ?? (isThing || (kind !== 'picked' && kind !== 'dropped') ? '' : 'figs');
    sums.set(of, (sums.get(of) ?? 0) + count);
  }
  const counted = [...sums].filter(([, sum]) => sum > 0);
  return counted.map(([unit, sum]) =>
    `${Math.round(sum * 100) / 100} ${unit === 'figs' && sum === 1 ? 'fig' : unit}`.trim(),
  );
}

/** All days of a row in words, for the text alternative. */
export function daysInWords(row: TreeRow, dates: DateOrder): string {
  return row.days.map((on) => shortDate(on, dates)).join(', ');
}
