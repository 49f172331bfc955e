/**
 * `npm run corpus -- FILE…`: reads files of the corpus's form and prints every miss, a table of what was taken
 * for what, and the accuracy. Exit status 1 when any decisive record is false.
 */
import { basename } from 'node:path';
import type { LabelEvent, NoteLabel } from './corpus.ts';
import { readCorpus } from './corpus.ts';
import { type NoteScore, scoreDate, scoreNote, scoreQuestion } from './score.ts';

const files = process.argv.slice(2);
let falseRecords = 0;
if (files.length === 0) {
  console.error('Name at least one corpus file: npm run corpus -- tests/notes/corpus/notes-public.jsonl');
  process.exitCode = 2;
}
for (const file of files) {
  if (basename(file).startsWith('notes-alternatives')) continue;
  evaluate(file);
}
if (falseRecords > 0) process.exitCode = 1;

function evaluate(file: string): void {
  const corpus = readCorpus(file);
  console.log(`\n== ${basename(file)}`);
  switch (corpus.sort) {
    case 'notes': {
      const scores = corpus.items.map((item) => scoreNote(item, corpus.setting));
      for (const score of scores) if (!score.right || score.falseDecisive.length > 0) printNote(score);
      const bad = scores.reduce((sum, score) => sum + score.falseDecisive.length, 0);
      falseRecords += bad;
      printTable(scores.flatMap(confusions));
      summary(
        scores.map(({ right }) => right),
        `, ${bad} false decisive records`,
      );
      return;
    }
    case 'questions': {
      const scores = corpus.items.map((item) => scoreQuestion(item, corpus.setting));
      for (const { item, got, right } of scores) {
        if (right) continue;
        console.log(`${item.id} ${JSON.stringify(item.text)}`);
        console.log(
          `   want ${item.intent} ${item.tree} ask=${item.ask}   got ${got.intent} ${got.tree} ask=${got.ask}`,
        );
      }
      printTable(scores.map(({ item, got }) => [item.intent, got.intent]));
      summary(scores.map(({ right }) => right));
      return;
    }
    case 'dates': {
      const scores = corpus.items.map(scoreDate);
      for (const { item, got, right } of scores) {
        if (right) continue;
        console.log(
          `${item.id} ${JSON.stringify(item.text)} want ${item.from}..${item.to} got ${got.from}..${got.to}`,
        );
      }
      printTable(
        scores.map(({ item, got, right }) => [
          item.from ? 'date' : 'none',
          got.from === null ? 'none' : right ? 'date' : 'other',
        ]),
      );
      summary(scores.map(({ right }) => right));
    }
  }
}

function printNote({ item, got, falseDecisive }: NoteScore): void {
  console.log(`${item.id} ${JSON.stringify(item.text)}  [${item.tags.join(' ')}]`);
  console.log(`   want ${show(item)}`);
  console.log(`   got  ${show(got)}${falseDecisive.length > 0 ? '   !! FALSE DECISIVE' : ''}`);
}

function show({ logged, ask }: NoteLabel): string {
  return `${logged.map(showEvent).join('; ') || '-'}${ask ? `  ask=${ask}` : ''}`;
}

function showEvent({ tree, kind, on, count, unit, crop }: LabelEvent): string {
  return [tree, kind, on.slice(5), count, unit, crop].filter((part) => part !== undefined).join(' ');
}

/** Pairs of what was meant and what was read, event by event; the crop and the day left aside. */
function confusions({ item, got }: NoteScore): [string, string][] {
  const wanted = item.logged.map(({ kind }) => kind);
  const had = got.logged.map(({ kind }) => kind);
  const pairs: [string, string][] = [];
  for (const kind of [...wanted]) {
    const at = had.indexOf(kind as LabelEvent['kind']);
    if (at < 0) continue;
    pairs.push([kind, kind]);
    had.splice(at, 1);
    wanted.splice(wanted.indexOf(kind), 1);
  }
  const missed = [...wanted, ...(item.ask && item.ask !== got.ask ? [`ask ${item.ask}`] : [])];
  const extra = [...had, ...(got.ask && item.ask !== got.ask ? [`ask ${got.ask}`] : [])];
  if (item.ask && item.ask === got.ask) pairs.push([`ask ${item.ask}`, `ask ${item.ask}`]);
  for (let i = 0; i < Math.max(missed.length, extra.length); i++)
    pairs.push([missed[i] ?? '—', extra[i] ?? '—']);
  return pairs;
}

function printTable(pairs: readonly (readonly string[])[]): void {
  const rows = new Map<string, Map<string, number>>();
  for (const [want = '', got = ''] of pairs) {
    const row = rows.get(want) ?? new Map<string, number>();
    row.set(got, (row.get(got) ?? 0) + 1);
    rows.set(want, row);
  }
  console.log('\nmeant          read as');
  for (const [want, row] of [...rows].sort((a, b) => (a[0] < b[0] ? -1 : 1))) {
    const cells = [...row].sort((a, b) => b[1] - a[1]).map(([got, n]) => `${got === want ? '=' : got} ${n}`);
    console.log(`${want.padEnd(14)} ${cells.join(', ')}`);
  }
}

function summary(rights: readonly boolean[], more = ''): void {
  const right = rights.filter(Boolean).length;
  console.log(
    `\n${right} of ${rights.length} right (${((100 * right) / rights.length).toFixed(1)} %)${more}`,
  );
}
