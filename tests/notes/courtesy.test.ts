import { describe, expect, it } from 'vitest';
import { asksUndo, readCourtesy } from '../../src/notes/courtesy.ts';

describe('a message that is only polite', () => {
  it.each(['hi', 'Hello!', 'hey there 👋', 'good morning all', 'G’day'])('%j greets', (text) => {
    expect(readCourtesy(text)).toBe('greeting');
  });
  it.each(['thanks!', 'thank you so much', 'ta', 'Cheers mate', 'ok'])('%j thanks', (text) => {
    expect(readCourtesy(text)).toBe('thanks');
  });
  it.each([
    'hi, 3 figs on pot 3',
    'thanks to the rain alma dropped all',
    'morning: tipped the alma',
    'ok tip it',
    '',
  ])('%j is more than that', (text) => {
    expect(readCourtesy(text)).toBeNull();
  });
});

describe('a message that only takes back', () => {
  it.each([
    'undo',
    'Undo that!',
    'delete the last one',
    'scrap that please',
    'cancel my last note',
    'never mind',
    'nevermind that',
    'oops, ignore that last one',
    'forget it',
    'forget that note, sorry',
    "no i didn't",
    'actually i didnt',
    "that didn't happen",
    'false alarm',
    'strike that',
    "don't log that",
    'sorry wrong chat',
  ])('%j wants the last note undone', (text) => {
    expect(asksUndo(text)).toBe(true);
  });
  it.each([
    'how do i undo',
    'undo the netting on the alma',
    'removed it',
    "i didn't tip it",
    'forget the alma',
    'ignore the leaves on the alma',
    'removed the fruit',
    'deleted all my photos',
    'cancel the tip on the alma',
  ])('%j does not', (text) => {
    expect(asksUndo(text)).toBe(false);
  });
});
