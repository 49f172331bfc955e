import { describe, expect, it } from 'vitest';
import { readDates } from '../../../src/notes/dates/index.ts';
import { contextOf, labelledPhrases } from './support.ts';

// Labelled by tests/notes/corpus/RULES.md §8.
describe.each(['dates-public.jsonl', 'dates-own.jsonl'])('%s', (file) => {
  it.each(labelledPhrases(file).map((phrase) => [`${phrase.id} ${phrase.text}`, phrase] as const))(
    'reads %s as labelled',
    (_, phrase) => {
      const reading = readDates(phrase.text, contextOf(phrase));
      expect({ from: reading?.from ?? null, to: reading?.to ?? null }).toEqual({
        from: phrase.from,
        to: phrase.to,
      });
    },
  );
});
