import type { Day } from '../engine/day.ts';
import type { Setting } from './contract.ts';
import { FRUIT_KINDS, isBreba, isDoubt } from './crop-doubt.ts';
import { type Draft, pushPending, pushRemark } from './draft.ts';
import { eventOf } from './events.ts';
import type { Hit } from './hits.ts';
import type { Inherited } from './inherit-moods.ts';
import { isAnyOf } from './item.ts';
import { isPartial } from './partial-drop.ts';
import { pushEvents, type Scene } from './push-events.ts';
import type { Saying } from './sayings.ts';
import { asksWhatItIs, isBackground, stateOf } from './state.ts';
import type { Subject } from './subjects.ts';

/** Turns what a clause says into events, open events or remarks, as it is meant. */
export function readHits(
  doubt: boolean,
  saying: Saying,
  before: Inherited | undefined,
  subject: Subject,
  inherited: Day | null,
  all: readonly Saying[],
  s: number,
  setting: Setting,
  draft: Draft,
): void {
  const { mood } = saying;
  // "mums alma is ripe, mine is green": hers is worth keeping beside one's own.
  const beside = subject.others && !mood.asks && saying.mentions.length > 0 && all.slice(s + 1).some(isMine);
  const remark = (): void => pushRemark(subject, setting, draft, beside);
  if (saying.hits.length === 0) {
    if (saying.dropped || (doubt && saying.mentions.length === 0)) return;
    const next = all[s + 1];
    // "alma. pinched three shoots": a heading of what follows.
    if (
      (saying.bare || saying.empty) &&
      saying.mentions.length > 0 &&
      next &&
      next.hits.length > 0 &&
      next.mentions.length === 0
    )
      if (saying.items.length <= 2 && next.clause.sentence === saying.clause.sentence + 1) return;
    const lone =
      subject.fresh === true &&
      saying.mentions.length > 0 &&
      (saying.bare || saying.empty) &&
      !mood.asks &&
      !all.some(
        (each, k) =>
          k !== s &&
          each.clause.sentence === saying.clause.sentence &&
          !((each.bare || each.empty) && each.hits.length === 0),
      );
    if (lone && !subject.others) pushPending(subject, draft, { on: setting.today });
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
    if (
      mood.asks &&
      hit.kind !== 'trouble' &&
      (asksWhatItIs(saying) ||
        (hit.kind === 'ask-kind' &&
          (/^whats?$/.test(saying.items[0]?.text ?? '') || tellsWithMark(saying, hit))))
    ) {
      pushPending(subject, draft, { on: setting.today });
      return;
    }
    if (state === 'unreal' || mood.asks || subject.others) {
      remark();
      return;
    }
    if (hit.kind === 'ask-kind') {
      if (state === 'denied' && saying.items.some((item) => item.text === 'buds' || item.text === 'bud'))
        remark();
      else if (state === 'denied')
        pushEvents(eventOf('no-fruitlets', hit, saying, saying.breba), scene, null);
      else pushPending(subject, draft, { on: setting.today });
      return;
    }
    if (state === 'denied') {
      if (hit.kind === 'fruitlets')
        pushEvents(eventOf('no-fruitlets', hit, saying, isBreba(saying, all, s)), scene, null);
      else remark();
      return;
    }
    const origin = hit.at.length === 0 ? saidBefore(hit, all, s) : s;
    if (hit.kind === 'dropped' && isPartial(all[origin] ?? saying, all, origin)) {
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
      // "brebas softening, main crop pinheads"
      !saying.main &&
      saying.mentions.length === 0 &&
      all
        .slice(0, s)
        .some(
          (each) =>
            each.clause.sentence === saying.clause.sentence &&
            each.hits.some((other) => other.kind === 'ripening'),
        );
    // "dropped its brebas, had 12 on it": those it lost.
    const lost =
      hit.kind === 'fruitlets' &&
      saying.mentions.length === 0 &&
      saying.items.some((item) => item.text === 'had') &&
      all
        .slice(0, s)
        .some(
          (each) =>
            each.clause.sentence === saying.clause.sentence &&
            each.hits.some((other) => other.kind === 'dropped'),
        );
    if (raided || already || lost) {
      remark();
      return;
    }
    const told = all[origin] ?? saying;
    const breba = isBreba(saying, all, s) || (origin !== s && !saying.main && told.breba);
    pushEvents(eventOf(hit.kind, hit, saying, breba), scene, null);
  });
}

/** "ronde dropped its brebas, king too": the clause that said what this one takes over. */
function saidBefore({ kind }: Hit, all: readonly Saying[], s: number): number {
  for (let k = s - 1; k >= 0 && all[k]?.clause.sentence === all[s]?.clause.sentence; k--)
    if (all[k]?.hits.some((hit) => hit.kind === kind && hit.at.length > 0)) return k;
  return s;
}

/** "mission has bumps? lumps?": a statement with a question mark. */
function tellsWithMark({ items, mentions }: Saying, hit: Hit): boolean {
  if (mentions.length === 0) return hit.first === 0 && items.length <= 2;
  return (
    items[0]?.type === 'tree' &&
    items.length <= 4 &&
    items.every(
      (item) => item.type !== 'word' || isAnyOf(item, ['HAVE', 'BUMP', 'BUD', 'SIZE', 'DET', 'ADV']),
    )
  );
}

function isMine({ items }: Saying): boolean {
  return items.slice(0, 2).some(({ text }) => text === 'mine' || text === 'ours');
}
