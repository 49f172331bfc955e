import { splitClauses } from './clauses.ts';
import type { NoteReading, Setting } from './contract.ts';
import { doubtsCrop } from './crop-doubt.ts';
import { guardReading } from './doubt.ts';
import type { Draft } from './draft.ts';
import { askKindOfAll, isEmptyNote } from './empty-note.ts';
import { carryBack, carryKinds, dropEchoes, joinFragments } from './gapping.ts';
import { nameCrops, tellHarvests } from './harvest-told.ts';
import { inheritMoods } from './inherit-moods.ts';
import { type Item, readItems } from './items.ts';
import { nameFigsBehind } from './named-behind.ts';
import {
  answerForMine,
  answerOwnQuestion,
  eatWhatWasThere,
  markRiddles,
  notUntil,
  shareMoments,
  spreadHeadings,
} from './neighbours.ts';
import { answerNone, denyOtherNews, keepOldFigs, noneAnyMore } from './none-told.ts';
import { attachToOnlyTree } from './only-tree.ts';
import { readHits } from './read-hits.ts';
import { repeatDays } from './repeat-days.ts';
import { markChoices, ownMine } from './riddles.ts';
import { dropTastes, dropWhatWasThere, ripenWhatWasThere } from './ripe-told.ts';
import { cutRuns } from './runs.ts';
import { mendRepairs, readSaying } from './sayings.ts';
import { joinTelegram } from './set-apart.ts';
import { settleEvents } from './settle.ts';
import { spreadDates } from './spread-dates.ts';
import { type Subject, spreadSubjects } from './subjects.ts';
import { countOfEach, tellBehind } from './told-behind.ts';
import { tellWork } from './work-told.ts';

/**
 * Reads a note.
 *
 * `readNote('tipped the alma sunday', setting).logged //=> [{ tree: 3, kind: 'tipped', on: '2026-06-28' }]`
 */
export function readNote(text: string, setting: Setting): NoteReading {
  return readNoteItems(text, readItems(text, setting), setting);
}

/** The same for a message whose items were read before. */
export function readNoteItems(text: string, all: readonly Item[], setting: Setting): NoteReading {
  const items = joinTelegram(all);
  const clauses = cutRuns(joinFragments(splitClauses(items)));
  const sayings = mendRepairs(clauses.map((clause) => readSaying(clause, setting.today)));
  const draft: Draft = { logged: [], pending: [] };
  markRiddles(sayings);
  markChoices(sayings);
  ownMine(sayings);
  answerOwnQuestion(sayings);
  answerForMine(sayings);
  shareMoments(sayings);
  spreadHeadings(sayings);
  countOfEach(sayings);
  carryKinds(sayings);
  carryBack(sayings);
  dropEchoes(sayings);
  repeatDays(sayings);
  eatWhatWasThere(sayings);
  tellHarvests(sayings);
  nameCrops(sayings);
  nameFigsBehind(sayings);
  tellWork(sayings);
  tellBehind(sayings);
  answerNone(sayings);
  denyOtherNews(sayings);
  notUntil(sayings);
  keepOldFigs(sayings);
  noneAnyMore(sayings);
  ripenWhatWasThere(sayings);
  dropWhatWasThere(sayings);
  dropTastes(sayings);
  const moods = inheritMoods(sayings, setting.today);
  if (isEmptyNote(sayings)) return askKindOfAll(sayings, setting);
  const subjects = spreadSubjects(sayings, setting);
  const dates = spreadDates(sayings, setting.today);
  const doubt = doubtsCrop(sayings);
  sayings.forEach((saying, s) => {
    readHits(doubt, saying, moods[s], subjects[s] ?? NOBODY, dates[s] ?? null, sayings, s, setting, draft);
  });
  const attached = attachToOnlyTree(draft, items, subjects, setting.today);
  return guardReading(text, setting, settleEvents(attached, setting.today), items);
}

const NOBODY: Subject = { mentions: [], others: false, wide: false };
