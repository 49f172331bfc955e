import type { Day } from '../engine/day.ts';
import type { ObservationKind } from '../engine/observation.ts';
import { splitClauses } from './clauses.ts';
import type { Ask, NoteReading, OpenEvent, ReadEvent, Setting } from './contract.ts';
import { guardReading } from './doubt.ts';
import { eventOf, placeDate } from './events.ts';
import { cutRuns, type Hit } from './hits.ts';
import { readItems } from './items.ts';
import { mendRepairs, readSaying, type Saying } from './sayings.ts';
import { settleEvents } from './settle.ts';
import { type Subject, spreadSubjects } from './subjects.ts';

/** An event that lacks something, with what it lacks. */
export interface Pending {
  readonly what: Ask['what'];
  readonly trees: readonly number[];
  readonly kinds: readonly ObservationKind[];
  readonly phrase?: string;
  readonly open: OpenEvent;
}

/** Everything a message gave rise to, before it is settled. */
export interface Draft {
  readonly logged: (ReadEvent & { readonly assumed?: boolean })[];
  readonly pending: Pending[];
}

/**
 * Reads a note.
 *
 * `readNote('tipped the alma sunday', setting).logged //=> [{ tree: 3, kind: 'tipped', on: '2026-06-28' }]`
 */
export function readNote(text: string, setting: Setting): NoteReading {
  const items = readItems(text, setting);
  const clauses = cutRuns(splitClauses(items));
  const sayings = mendRepairs(clauses.map((clause) => readSaying(clause, setting.today)));
  const draft: Draft = { logged: [], pending: [] };
  markRiddles(sayings);
  spreadHeadings(sayings);
  eatWhatWasThere(sayings);
  inheritMoods(sayings, setting.today);
  if (isEmptyNote(sayings)) return askKindOfAll(sayings, setting);
  const subjects = spreadSubjects(sayings, setting);
  const dates = spreadDates(sayings, subjects, setting.today);
  const doubt = doubtsCrop(sayings);
  sayings.forEach((saying, s) => {
    readHits(doubt, saying, subjects[s] ?? NOBODY, dates[s] ?? null, sayings, s, setting, draft);
  });
  return guardReading(text, setting, settleEvents(draft, setting.today), items);
}

/** "harvest: ronde 11, alma 3": the heading says what was done with all that follows. */
function spreadHeadings(sayings: readonly Saying[]): void {
  sayings.forEach((heading, h) => {
    const next = sayings[h + 1];
    const hit = heading.hits[0];
    if (!hit || heading.mentions.length > 0 || next?.clause.join !== 'colon' || heading.items.length > 5)
      return;
    if (heading.items.some((item) => item.quantity)) return;
    let given = false;
    for (let k = h + 1; k < sayings.length; k++) {
      const saying = sayings[k];
      if (!saying || saying.clause.sentence !== heading.clause.sentence) break;
      if (saying.mentions.length === 0 || saying.hits.some((each) => each.kind !== 'fruitlets')) continue;
      const end = saying.items.length;
      saying.hits = [{ kind: hit.kind, at: [], first: end, last: end, core: end }];
      saying.count = saying.items.find((item) => item.quantity)?.quantity ?? null;
      given = true;
    }
    if (given) {
      heading.hits = [];
      heading.dropped = true;
    }
  });
}

/** "last year's wood gave 3 figs, eaten": what was told of before is what was eaten. */
function eatWhatWasThere(sayings: readonly Saying[]): void {
  sayings.forEach((saying, s) => {
    const eaten = saying.hits[0];
    if (eaten?.kind !== 'picked' || saying.hits.length !== 1 || saying.mentions.length > 0) return;
    if (
      saying.items.some((item) => item.quantity || item.classes.has('FRUIT')) &&
      !saying.items.some((item) => item.text === 'bites' || item.text === 'bite')
    )
      return;
    for (let k = s - 1; k >= 0; k--) {
      const before = sayings[k];
      if (!before || before.clause.sentence !== saying.clause.sentence) return;
      const shown = before.hits.find((hit) => hit.kind === 'fruitlets' || hit.kind === 'ripening');
      if (!shown) continue;
      before.hits = before.hits.map((hit) => (hit === shown ? { ...hit, kind: 'picked' as const } : hit));
      before.date ??= saying.date;
      saying.hits = [];
      saying.dropped = true;
      return;
    }
  });
}

/** "round thing at the node on the ronde, fig?": the fragment asks what the thing before it is. */
function markRiddles(sayings: readonly Saying[]): void {
  for (const saying of sayings) {
    if (!saying.clause.asked || saying.mentions.length > 0 || saying.items.length > 3) continue;
    if (saying.items.some((item) => ['how', 'many', 'when', 'why', 'no', 'any'].includes(item.text)))
      continue;
    if (!saying.items.some((item) => ['FRUIT', 'LEAF', 'BUD'].some((name) => item.classes.has(name))))
      continue;
    if (saying.items.some((item) => item.classes.has('RIPE') || item.classes.has('PICKED'))) continue;
    for (const other of sayings) {
      if (other.clause.sentence !== saying.clause.sentence || other === saying) continue;
      other.hits = other.hits.filter(
        (hit) => !['fruitlets', 'buds-single', 'buds-double', 'leafed-out', 'ask-kind'].includes(hit.kind),
      );
      other.hits.push({
        kind: 'ask-kind',
        at: [],
        first: other.items.length,
        last: other.items.length,
        core: other.items.length,
      });
    }
    saying.hits = [];
    saying.dropped = true;
  }
}

const NOBODY: Subject = { mentions: [], others: false, wide: false };

function isEmptyNote(sayings: readonly Saying[]): boolean {
  return sayings.every(
    (saying) =>
      saying.hits.length === 0 &&
      (saying.empty || saying.bare) &&
      !saying.items.some((item) => item.type === 'quantity'),
  );
}

function askKindOfAll(sayings: readonly Saying[], setting: Setting): NoteReading {
  const mention = sayings.flatMap((saying) => saying.mentions)[0];
  if (!mention) {
    const about = setting.about?.length === 1 ? setting.about[0] : undefined;
    return {
      logged: [],
      ask: {
        what: 'kind',
        trees: [],
        kinds: USUAL_KINDS,
        open: [{ ...(about === undefined ? {} : { tree: about }), on: setting.today }],
      },
    };
  }
  if (mention.ids.length !== 1) {
    return {
      logged: [],
      ask: { what: 'tree', trees: mention.ids.slice(0, 5), kinds: [], open: [{ on: setting.today }] },
    };
  }
  return {
    logged: [],
    ask: {
      what: 'kind',
      trees: [],
      kinds: USUAL_KINDS,
      open: [{ tree: mention.ids[0] ?? null, on: setting.today }],
    },
  };
}

const USUAL_KINDS: readonly ObservationKind[] = ['fruitlets', 'no-fruitlets', 'tipped', 'ripening', 'remark'];
const BUD_KINDS: readonly ObservationKind[] = [
  'fruitlets',
  'buds-single',
  'buds-double',
  'no-fruitlets',
  'remark',
];

interface Inherited {
  unreal: boolean;
  denied: boolean;
  past: boolean;
  hearsay: boolean;
}
const inheritedMoods = new WeakMap<Saying, Inherited>();

/** "should have tipped and fed it": a clause without a subject of its own goes on in the mood before it. */
function inheritMoods(sayings: readonly Saying[], today: Day): void {
  let before: Saying | null = null;
  let state: Inherited = { unreal: false, denied: false, past: false, hearsay: false };
  for (const saying of sayings) {
    const joined = before !== null && before.clause.sentence === saying.clause.sentence;
    const { join } = saying.clause;
    const continues = joined && (join === 'and' || join === 'or') && !hasOwnSubject(saying);
    const whole =
      joined && before !== null && before.clause.sub === 'if' && (join === 'comma' || join === 'and');
    const colon = joined && join === 'colon' && before !== null && before.hits.length === 0;
    // "tomorrow: feed ronde"
    const plans =
      saying.hits.length === 0 &&
      saying.date?.date !== undefined &&
      saying.date.date.on > today &&
      !saying.date.date.problem;
    const next: Inherited = {
      unreal: ((continues || whole || colon) && state.unreal) || saying.mood.unrealFrom !== null || plans,
      denied: continues && join === 'or' && state.denied ? true : saying.mood.denials.length > 0,
      past: (joined && state.past && join !== 'but') || saying.mood.past,
      hearsay: (joined && state.hearsay && (join === 'sub' || continues)) || saying.mood.hearsay,
    };
    inheritedMoods.set(saying, {
      unreal: (continues || whole || colon) && state.unreal,
      denied: continues && join === 'or' && state.denied,
      past:
        joined &&
        state.past &&
        join !== 'but' &&
        !PRESENT.some((word) =>
          saying.items.some(
            (item) => item.text === word || (item.type === 'date' && item.typed.toLowerCase().includes(word)),
          ),
        ),
      hearsay: joined && state.hearsay && (join === 'sub' || continues),
    });
    state = next;
    before = saying;
  }
}

function hasOwnSubject(saying: Saying): boolean {
  const first = saying.items[0];
  const hit = saying.hits[0];
  if (!first) return false;
  if (['i', 'we', 'it', 'they', 'he', 'she', 'now', 'today', 'there'].includes(first.text)) return true;
  if (saying.mentionAt >= 0 && hit && saying.mentionAt < hit.first) return true;
  return false;
}

const PRESENT = ['now', 'today', 'currently', 'this'];

const BACKGROUND = new Set([
  'after',
  'since',
  'when',
  'once',
  'before',
  'until',
  'that',
  'whenever',
  'as',
  'where',
]);

/** A clause among the others, with what it is about and where its events go. */
interface Scene {
  readonly saying: Saying;
  readonly subject: Subject;
  readonly inherited: Day | null;
  readonly setting: Setting;
  readonly draft: Draft;
  readonly all: readonly Saying[];
  readonly hit: Hit | null;
}

function readHits(
  doubt: boolean,
  saying: Saying,
  subject: Subject,
  inherited: Day | null,
  all: readonly Saying[],
  s: number,
  setting: Setting,
  draft: Draft,
): void {
  const { mood } = saying;
  const before = inheritedMoods.get(saying);
  const remark = (): void => pushRemark(subject, setting, draft, !isPlainChatter(saying));
  if (saying.hits.length === 0) {
    if (saying.dropped || (doubt && saying.mentions.length === 0)) return;
    const lone =
      subject.fresh === true &&
      saying.mentions.length > 0 &&
      (saying.bare || saying.empty) &&
      !mood.asks &&
      !all.some((each, k) => k !== s && each.clause.sentence === saying.clause.sentence && each !== saying);
    if (lone && !subject.others) pushPending('kind', subject, setting, draft, { on: setting.today });
    else if (saying.mentions.length > 0 || subject.fresh) remark();
    else if (!(saying.bare || saying.empty))
      draft.logged.push({ tree: null, kind: 'remark', on: setting.today });
    return;
  }
  saying.hits.forEach((hit, h) => {
    const scene: Scene = { saying, subject, inherited, setting, draft, all, hit };
    if (isBackground(saying, hit, h)) {
      if (saying.mentions.length > 0) remark();
      return;
    }
    if (doubt && FRUIT_KINDS.has(hit.kind) && !subject.others) {
      if (isDoubt(saying) && saying.mentions.length === 0) return;
      const kind = hit.kind === 'ask-kind' ? 'fruitlets' : hit.kind;
      pushEvents(eventOf(kind, hit, saying, false), scene, 'crop');
      return;
    }
    const state = stateOf(saying, hit, before);
    if (mood.asks && asksWhatItIs(saying)) {
      pushPending('kind', subject, setting, draft, { on: setting.today });
      return;
    }
    if (state === 'unreal' || mood.asks || subject.others) {
      remark();
      return;
    }
    if (hit.kind === 'ask-kind') {
      if (state === 'denied') pushEvents(eventOf('no-fruitlets', hit, saying, saying.breba), scene, null);
      else pushPending('kind', subject, setting, draft, { on: setting.today });
      return;
    }
    if (state === 'denied') {
      if (hit.kind === 'fruitlets')
        pushEvents(eventOf('no-fruitlets', hit, saying, isBreba(saying, all, s)), scene, null);
      else remark();
      return;
    }
    if (hit.kind === 'dropped' && isPartial(saying, all, s)) {
      if (subject.mentions.length === 0)
        draft.pending.push({
          what: 'tree',
          trees: [],
          kinds: [],
          open: { kind: 'remark', on: setting.today },
        });
      else remark();
      return;
    }
    const raided =
      hit.kind === 'fruitlets' &&
      saying.mentions.length === 0 &&
      all[s - 1]?.clause.sentence === saying.clause.sentence &&
      all[s - 1]?.items.some((item) => item.classes.has('THIEF')) === true;
    const already =
      hit.kind === 'fruitlets' &&
      saying.mentions.length === 0 &&
      all
        .slice(0, s)
        .some(
          (each) =>
            each.clause.sentence === saying.clause.sentence &&
            each.hits.some((other) => other.kind === 'ripening'),
        );
    if (raided || already) {
      remark();
      return;
    }
    pushEvents(eventOf(hit.kind, hit, saying, isBreba(saying, all, s)), scene, null);
  });
}

/** Kinds whose phrases may hold a word of denial of their own: "nothing but branches". */
const KEEPS_DENIAL: ReadonlySet<string> = new Set(['trouble', 'branched', 'buds-single', 'dropped']);

type State = 'real' | 'denied' | 'unreal';

function stateOf(saying: Saying, hit: Hit, before: Inherited | undefined): State {
  const { mood } = saying;
  const own = new Set(hit.at);
  if (mood.past || mood.hearsay || before?.past || before?.unreal || before?.hearsay) return 'unreal';
  if (mood.unrealFrom !== null && mood.unrealFrom <= hit.core) return 'unreal';
  if (mood.unrealFrom !== null && mood.unrealFrom <= hit.last && own.has(mood.unrealFrom)) return 'unreal';
  const within =
    hit.kind !== 'no-fruitlets' && !KEEPS_DENIAL.has(hit.kind) && mood.denials.some((i) => own.has(i));
  const outside =
    hit.kind !== 'no-fruitlets' &&
    (mood.denials.some((i) => !own.has(i) && (i < hit.core || hit.kind === 'trouble')) ||
      before?.denied === true);
  if (!within && !outside) return 'real';
  // "not till 4 May" says when it did happen.
  return saying.date && saying.items.some((item) => item.text === 'until') ? 'real' : 'denied';
}

/** An undated aside about what went before: "branched after I pinched it". */
function isBackground(saying: Saying, hit: Hit, h: number): boolean {
  const { sub } = saying.clause;
  if (sub === 'before' || sub === 'until') return true;
  if (sub !== null && BACKGROUND.has(sub) && h === 0) {
    if (saying.date && sub !== 'before' && sub !== 'until') return false;
    return true;
  }
  if (hit.kind === 'tipped' && saying.hits.length > h + 1) {
    const lead = saying.items[hit.first - 1]?.text ?? '';
    const next = saying.items[hit.first + 1];
    if (['the', 'those', 'these', 'my'].includes(lead) && !saying.date) return true;
    if (next?.classes.has('SHOOT') && hit.first === 0 && !saying.date) return true;
  }
  return false;
}

function asksWhatItIs(saying: Saying): boolean {
  const has = (name: string): boolean => saying.items.some((item) => item.classes.has(name));
  if (!(has('FRUIT') || has('BUMP') || has('BUD') || has('LEAF'))) return false;
  if (saying.items.length === 1 && has('FRUIT')) return true;
  const first = saying.items[0]?.text ?? '';
  if (
    [
      'is',
      'are',
      'what',
      'whats',
      'which',
      'could',
      'would',
      'was',
      'were',
      'fig',
      'figs',
      'leaf',
      'fruit',
      'does',
      'do',
    ].includes(first) ||
    has('BUMP')
  ) {
    const words = saying.items.map((item) => item.text);
    return (
      words.includes('or') ||
      words.includes('what') ||
      (['is', 'are', 'could', 'would', 'was', 'were', 'what'].includes(first) &&
        words.some((word) => ['this', 'these', 'that', 'those', 'it', 'they'].includes(word)) &&
        !has('RIPE'))
    );
  }
  return false;
}

/** Kinds that belong to one crop or the other. */
const FRUIT_KINDS: ReadonlySet<string> = new Set(['fruitlets', 'ripening', 'picked', 'dropped', 'ask-kind']);
const UNSURE = new Set([
  'know',
  'tell',
  'sure',
  'clue',
  'idea',
  'unsure',
  'whichever',
  'ask',
  'dunno',
  'work',
  'wondering',
  'wonder',
  'decide',
  'figure',
  'figures',
  'if',
  'whether',
  'guess',
  'certain',
  'remember',
  'which',
  'beats',
  'or',
  'anyone',
]);

/** A clause about the crop itself: breba, main, which crop. */
function isDoubt(saying: Saying): boolean {
  return (
    saying.breba || saying.main || saying.items.some((item) => item.text === 'crop' || item.text === 'main')
  );
}

/** The writer says they do not know which crop it is. */
function doubtsCrop(all: readonly Saying[]): boolean {
  const either =
    all.some((each) => each.breba) &&
    all.some((each) => each.items.some((item) => item.text === 'main' || item.text === 'maincrop'));
  const which = all.some(
    (each) =>
      each.items.some((item) => item.text === 'crop') &&
      (each.clause.sub === 'which' ||
        each.clause.sub === 'whether' ||
        each.items.some((item) => item.text === 'which')),
  );
  if (!either && !which) return false;
  return all.some(
    (each) =>
      (isDoubt(each) &&
        (each.mood.asks ||
          each.clause.join === 'or' ||
          each.clause.sub === 'if' ||
          each.clause.sub === 'whether')) ||
      each.items.some(
        (item, i) =>
          UNSURE.has(item.text) &&
          (each.mood.denials.length > 0 ||
            each.items[i - 1]?.text === 'not' ||
            item.text === 'unsure' ||
            item.text === 'wondering'),
      ),
  );
}

function isBreba(saying: Saying, all: readonly Saying[], s: number): boolean {
  if (saying.breba) return !(saying.main && !saying.items.some((item) => item.text === 'oldwood'));
  if (saying.main) return false;
  for (let k = s - 1; k >= 0; k--) {
    const before = all[k];
    if (!before || before.clause.sentence !== saying.clause.sentence) break;
    if (before.main) return false;
    if (before.breba) return saying.mentions.length === 0 && before.mood.denials.length === 0;
  }
  const next = all[s + 1];
  return (
    next !== undefined &&
    next.clause.sentence === saying.clause.sentence &&
    next.hits.length === 0 &&
    next.breba &&
    next.mentions.length === 0
  );
}

const PARTS = new Set([
  'some',
  'few',
  'couple',
  'handful',
  'most',
  'half',
  'several',
  'lots',
  'many',
  'another',
  'one',
  'bunch',
  'more',
  'loads',
  'third',
  'quarter',
  'majority',
  'odd',
]);

/** Only part of the fruit came down; all has to be said. */
function isPartial(saying: Saying, all: readonly Saying[], s: number): boolean {
  const { items } = saying;
  const quantity = items.find((item) => item.quantity);
  const later = all.slice(s + 1).filter((each) => each.clause.sentence <= saying.clause.sentence + 1);
  if (
    later.some(
      (each) =>
        each.items.some((item) => ['rest', 'others', 'remaining', 'left', 'still'].includes(item.text)) &&
        !each.items.some((item) => item.text === 'none' || item.text === 'nothing'),
    )
  )
    return true;
  if (
    items.length <= 2 &&
    !items.some((item) => item.classes.has('FRUIT')) &&
    !all.some(
      (each) =>
        each.clause.sentence === saying.clause.sentence &&
        each.items.some((item) => item.classes.has('FRUIT')),
    )
  )
    return true;
  if (quantity?.quantity?.ofMore) return true;
  if (quantity && items[items.indexOf(quantity) + 1]?.text === 'of') return true;
  if (
    saying.total ||
    later.some((each) => each.total && each.hits.length === 0 && each.mentions.length === 0)
  ) {
    return items.some((item) => item.text === 'almost' || item.text === 'nearly' || item.text === 'half');
  }
  if (
    items.some(
      (item, i) =>
        PARTS.has(item.text) &&
        !(item.text === 'one' && ['only', 'lone', 'single'].includes(items[i - 1]?.text ?? '')),
    )
  )
    return true;
  const definite = items.some(
    (item) =>
      ['its', 'the', 'her', 'his', 'their', 'only', 'lone', 'single', 'entire', 'last', 'remaining'].includes(
        item.text,
      ) && true,
  );
  const own = items.some(
    (item, i) =>
      (['its', 'her', 'his', 'their', 'only', 'lone', 'single', 'last'].includes(item.text) ||
        item.text === "'s") &&
      i < items.length - 1,
  );
  if (quantity) return !own;
  if (items.some((item) => item.classes.has('DROPPING') || item.classes.has('DROP'))) return true;
  return !(
    definite ||
    saying.breba ||
    (items.some(
      (item) =>
        item.text === 'fruit' ||
        item.text === 'crop' ||
        item.text === 'figlets' ||
        item.text === 'figs' ||
        item.text === 'fruitlets',
    ) &&
      items.some((item) =>
        ['fell', 'fallen', 'gone', 'ground', 'floor', 'aborted', 'dropped', 'shed'].includes(item.text),
      ))
  );
}

function isPlainChatter(saying: Saying): boolean {
  return saying.bare || saying.empty;
}

function pushRemark(subject: Subject, setting: Setting, draft: Draft, _worth: boolean): void {
  const { today } = setting;
  if (subject.others || (subject.mentions.length === 0 && !subject.unknown)) {
    draft.logged.push({ tree: null, kind: 'remark', on: today });
    return;
  }
  for (const mention of subject.mentions) {
    if (mention.ids.length === 1 || mention.all) {
      for (const tree of mention.ids) draft.logged.push({ tree, kind: 'remark', on: today });
    } else if (mention.ids.length === 0) {
      draft.logged.push({ tree: null, kind: 'remark', on: today });
    } else {
      draft.pending.push({
        what: 'tree',
        trees: mention.ids,
        kinds: [],
        open: { kind: 'remark', on: today },
      });
    }
  }
}

function pushPending(what: 'kind', subject: Subject, _setting: Setting, draft: Draft, open: OpenEvent): void {
  if (subject.others) return;
  if (subject.mentions.length === 0) {
    draft.pending.push({ what: 'tree', trees: [], kinds: BUD_KINDS, open });
    return;
  }
  for (const mention of subject.mentions) {
    if (mention.ids.length === 1 || mention.all) {
      for (const tree of mention.ids)
        draft.pending.push({ what, trees: [], kinds: BUD_KINDS, open: { ...open, tree } });
    } else draft.pending.push({ what: 'tree', trees: mention.ids, kinds: BUD_KINDS, open });
  }
}

const FINISHED = new Set([
  'ate',
  'took',
  'cut',
  'had',
  'got',
  'fed',
  'gave',
  'lost',
  'fell',
  'broke',
  'froze',
  'shed',
  'set',
  'put',
  'did',
  'brought',
  'eaten',
  'taken',
  'done',
  'was',
  'were',
  'off',
]);

/** It is told as done, so a day to come must be a slip. */
function isFinished(saying: Saying): boolean {
  return saying.items.some(
    (item) => item.type === 'word' && (FINISHED.has(item.text) || /[^e]ed$/.test(item.text)),
  );
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

function pushEvents(event: OpenEvent, scene: Scene, ask: 'crop' | null): void {
  const { saying, subject, inherited, setting, draft, all } = scene;
  const kind = leafFall(event.kind ?? 'remark', saying, inherited, setting);
  const placed = isSeenNow(scene) ? { on: setting.today } : placeDate(kind, saying, inherited, setting);
  if ('ask' in placed && saying.date?.date && saying.date.date.on > setting.today && !isFinished(saying)) {
    pushRemark(subject, setting, draft, true);
    return;
  }
  if ('past' in placed || 'plan' in placed) {
    pushRemark(subject, setting, draft, true);
    return;
  }
  const open: OpenEvent = 'on' in placed ? { ...event, kind, on: placed.on } : { ...event, kind };
  const add = (tree: number | null): void => {
    if ('ask' in placed)
      draft.pending.push({ what: 'date', trees: [], kinds: [], phrase: placed.ask, open: { ...open, tree } });
    else if (ask) draft.pending.push({ what: ask, trees: [], kinds: [], open: { ...open, tree } });
    else
      draft.logged.push({
        ...open,
        tree,
        kind,
        on: placed.on,
        ...(saying.date === null && inherited === null ? { assumed: true } : {}),
      });
  };
  if (kind === 'frost' && saying.mentions.length === 0 && !saying.pronoun && !subject.direct) {
    const hit = hitByFrost(all, saying);
    if (hit === null) add(null);
    else for (const tree of hit) add(tree);
    return;
  }
  if (subject.mentions.length === 0) {
    if (GARDEN_KINDS.has(kind) && (subject.wide || kind === 'frost')) {
      add(null);
      return;
    }
    draft.pending.push({ what: 'tree', trees: [], kinds: [], open });
    return;
  }
  for (const mention of subject.mentions) {
    if (mention.ids.length === 1 || mention.all) for (const tree of mention.ids) add(tree);
    else draft.pending.push({ what: 'tree', trees: mention.ids, kinds: [], open });
  }
}

const SUFFERED = new Set([
  'copped',
  'caught',
  'hit',
  'got',
  'cooked',
  'suffered',
  'singed',
  'burnt',
  'burned',
  'browned',
  'blackened',
  'zapped',
  'fried',
  'worst',
  'brunt',
  'hammered',
  'nipped',
  'toasted',
  'scorched',
  'damage',
  'damaged',
  'took',
]);

/** "a late frost and the alma copped it": the trees of the clause after that says who was hit; null when none does. */
function hitByFrost(all: readonly Saying[], saying: Saying): readonly number[] | null {
  const next = all[all.indexOf(saying) + 1];
  if (!next || next.clause.sentence !== saying.clause.sentence || next.mentions.length === 0) return null;
  if (next.mood.denials.length > 0 || !next.items.some((item) => SUFFERED.has(item.text))) return null;
  const ids = next.mentions.flatMap((mention) =>
    mention.ids.length === 1 || mention.all ? mention.ids : [],
  );
  return ids.length > 0 ? ids : null;
}

/** Leaves lost in late autumn are the tree going dormant, in summer they are trouble. */
function leafFall(
  kind: ObservationKind,
  saying: Saying,
  inherited: Day | null,
  setting: Setting,
): ObservationKind {
  if (
    kind !== 'trouble' ||
    !saying.items.some((item) => item.classes.has('LEAF')) ||
    !saying.items.some((item) => item.classes.has('DROPPED') || item.text === 'lost')
  )
    return kind;
  const on = saying.date?.date?.on ?? inherited ?? setting.today;
  const month = (Number(on.slice(5, 7)) + (setting.hemisphere === 'N' ? 0 : 6)) % 12;
  return month >= 10 || month <= 1 ? 'dormant' : kind;
}

/** Actions that go on in the same breath share their date; what is seen is seen today. */
const ACTIONS: ReadonlySet<string> = new Set(['tipped', 'care', 'pruned', 'cuttings', 'picked']);
const WERE = new Set(['had', 'was', 'were', 'already']);

/** The day each clause without a date of its own takes over from its neighbours, or null. */
function spreadDates(sayings: readonly Saying[], subjects: readonly Subject[], today: Day): (Day | null)[] {
  const out: (Day | null)[] = sayings.map(() => null);
  let leading: Day | null = null;
  let sentence = -1;
  let last: Day | null = null;
  sayings.forEach((saying, s) => {
    if (saying.clause.sentence !== sentence) {
      sentence = saying.clause.sentence;
      leading = null;
      if (!saying.items.some((item) => WERE.has(item.text))) last = null;
    }
    const bare = saying.vague !== null && isOnlyATime(saying) && s > 0;
    const ahead = sayings[s - 1];
    if (bare && ahead && ahead.hits.length > 0 && !ahead.date) ahead.vague ??= saying.vague;
    const own = saying.date?.date;
    const first = saying.hits[0];
    if (own) {
      const on = own.problem || own.on > today ? null : own.on;
      last = on;
      const at = saying.items.indexOf(saying.date as never);
      if (!first) {
        // "monday: …", "late may, …": for what follows; after an event without a date, for that one.
        const previous = sayings[s - 1];
        if (
          previous &&
          previous.clause.sentence === sentence &&
          previous.hits.length > 0 &&
          !previous.date &&
          saying.clause.join !== 'start'
        ) {
          previous.date = saying.date;
          backfill(sayings, s - 1, out, on);
        } else {
          leading = on;
          const next = sayings[s + 1];
          if (next && !next.date && next.clause.sentence === sentence) next.date = saying.date;
        }
      } else if (at < first.first && (saying.mentionAt < 0 || at < saying.mentionAt)) leading = on;
      else if (at > first.last) backfill(sayings, s, out, on);
      return;
    }
    if (saying.items.some((item) => item.text === 'now' || item.text === 'currently')) return;
    if (leading !== null) {
      out[s] = leading;
      return;
    }
    if (last !== null) {
      const action = first !== undefined && ACTIONS.has(first.kind);
      const stated = saying.items.some((item) => WERE.has(item.text));
      const shares =
        action &&
        saying.mentions.length === 0 &&
        saying.clause.join !== 'stop' &&
        saying.clause.join !== 'but';
      if (shares || (stated && first !== undefined)) out[s] = last;
    }
  });
  void subjects;
  return out;
}

function isOnlyATime(saying: Saying): boolean {
  return saying.hits.length === 0 && saying.mentions.length === 0 && saying.items.length === 1;
}

/** "tipped the alma and fed the ronde yesterday": the closing date holds for what is joined by "and". */
function backfill(sayings: readonly Saying[], s: number, out: (Day | null)[], on: Day | null): void {
  for (let k = s; k > 0; k--) {
    const here = sayings[k];
    const before = sayings[k - 1];
    if (
      !here ||
      !before ||
      here.clause.join !== 'and' ||
      before.clause.sentence !== here.clause.sentence ||
      before.date
    )
      return;
    const first = before.hits[0];
    if (first && !ACTIONS.has(first.kind) && first.kind !== 'trouble' && first.kind !== 'dormant') return;
    out[k - 1] = on;
  }
}
