import type { Day } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import type { OpenEvent, Setting } from './contract.ts';
import { complete, type Draft, leaveOpen, pushRemark } from './draft.ts';
import { placeDate } from './events.ts';
import type { Hit } from './hits.ts';
import { wordSet } from './lexicon/word-set.ts';
import type { Saying } from './sayings.ts';
import { ACTIONS, WERE } from './spread-dates.ts';
import type { Subject } from './subjects.ts';

/** A clause among the others, with what it is about and where its events go. */
export interface Scene {
  readonly saying: Saying;
  readonly subject: Subject;
  readonly inherited: Day | null;
  readonly setting: Setting;
  readonly draft: Draft;
  readonly all: readonly Saying[];
  readonly hit: Hit | null;
}

/** One event for each tree of the clause, on its day; open where the tree, the day or the crop is missing. */
export function pushEvents(event: OpenEvent, scene: Scene, ask: 'crop' | null): void {
  const { saying, subject, inherited, setting, draft } = scene;
  const kind = leafFall(event.kind ?? 'remark', saying, inherited, setting);
  const placed = isSeenNow(scene) ? { on: setting.today } : placeDate(kind, saying, inherited, setting);
  if ('ask' in placed && saying.date?.date && saying.date.date.on > setting.today && !isFinished(saying)) {
    pushRemark(subject, setting, draft);
    return;
  }
  if ('past' in placed || 'plan' in placed) {
    pushRemark(subject, setting, draft);
    return;
  }
  const open = (tree?: number | null): OpenEvent =>
    leaveOpen(event, kind, 'on' in placed ? placed.on : undefined, tree);
  const add = (tree: number | null): void => {
    if ('ask' in placed)
      draft.pending.push({
        what: 'date',
        trees: [],
        kinds: [],
        phrase: placed.ask,
        open: open(tree),
      });
    else if (ask) draft.pending.push({ what: ask, trees: [], kinds: [], open: open(tree) });
    else
      draft.logged.push(complete(event, tree, kind, placed.on, saying.date === null && inherited === null));
  };
  if (
    kind === 'frost' &&
    saying.mentions.length === 0 &&
    !saying.pronoun &&
    !subject.direct &&
    !isFrosted(scene)
  ) {
    add(null);
    return;
  }
  if (subject.mentions.length === 0) {
    if (GARDEN_KINDS.has(kind) && (subject.wide || kind === 'frost' || isOfAllFigs(saying, kind))) {
      add(null);
      return;
    }
    draft.pending.push({ what: 'tree', trees: [], kinds: [], open: open() });
    return;
  }
  for (const mention of subject.mentions) {
    if (mention.ids.length === 1 || mention.all) for (const tree of mention.ids) add(tree);
    else draft.pending.push({ what: 'tree', trees: mention.ids, kinds: [], open: open() });
  }
}

/** Kinds that may be said of a garden as a whole. */
const GARDEN_KINDS: ReadonlySet<ObservationKind> = new Set([
  'frost',
  'trouble',
  'care',
  'remark',
  'leafed-out',
  'dormant',
  'pruned',
]);

const OF_WHOLE_TREES: ReadonlySet<ObservationKind> = new Set(['care', 'leafed-out', 'dormant', 'pruned']);

/** "watered all the figs": figs that are trees. */
function isOfAllFigs({ items }: Saying, kind: ObservationKind): boolean {
  return (
    OF_WHOLE_TREES.has(kind) &&
    items.some((item) => item.text === 'all' || item.text === 'every') &&
    items.some((item) => item.text === 'figs' || item.text === 'fig')
  );
}

/** "in leaf apr 1, frosted apr 3": what was frosted is the tree told of before. */
function isFrosted({ saying, subject, hit }: Scene): boolean {
  const verb = saying.items[hit?.first ?? 0]?.text ?? '';
  return subject.mentions.length > 0 && hit?.first === 0 && (verb === 'frosted' || verb === 'frostbitten');
}

/** It is told as done, so a day to come must be a slip. */
function isFinished(saying: Saying): boolean {
  return saying.items.some(
    (item) => item.type === 'word' && (FINISHED.has(item.text) || /[^e]ed$/.test(item.text)),
  );
}

const FINISHED = wordSet(`
  ate took cut had got fed gave lost fell broke froze shed set put did brought eaten taken done was
  were off
`);

/** "pinched on the 18th has 2 figlets": done on that day, seen today. */
function isSeenNow({ saying, hit }: Scene): boolean {
  if (!saying.date || hit === null || ACTIONS.has(hit.kind)) return false;
  const at = saying.items.indexOf(saying.date);
  return (
    hit.first > at &&
    saying.hits.some((other) => ACTIONS.has(other.kind) && other.first < at) &&
    !saying.items.some((item) => WERE.has(item.text))
  );
}

/** Leaves lost in late autumn are the tree going dormant, in summer they are trouble. */
function leafFall(
  kind: ObservationKind,
  saying: Saying,
  inherited: Day | null,
  setting: Setting,
): ObservationKind {
  const { items } = saying;
  if (!items.some((item) => item.classes.has('LEAF'))) return kind;
  const on = saying.date?.date?.on ?? inherited ?? setting.today;
  const month = (Number(on.slice(5, 7)) + (setting.hemisphere === 'N' ? 0 : 6)) % 12;
  const autumn = month >= 10 || month <= 1;
  const lost = items.some((item) => item.classes.has('DROPPED') || item.text === 'lost');
  if (kind === 'trouble' && lost) return autumn ? 'dormant' : kind;
  // "dropped half its leaves" in summer
  if (kind === 'dormant' && !autumn && items.some((item) => PARTLY.has(item.text) || GOING_ON.has(item.text)))
    return 'trouble';
  // "leaves off the king by nov 18"
  if (kind === 'care' && autumn && items[0]?.text === 'leaves' && items[1]?.text === 'off') return 'dormant';
  return kind;
}

const GOING_ON = wordSet('dropping falling losing shedding');
const PARTLY = wordSet('half some few lot lots many third couple bunch quarter');
