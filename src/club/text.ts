import { UserError } from '../errors.ts';

export const MAX_NAME_CHARACTERS = 100;
export const MAX_NOTE_CHARACTERS = 2000;

// Control characters, and halves of surrogate pairs, which no database keeps. Emoji joiners are let through.
const UNKEEPABLE = /[\p{Cc}\p{Cs}]/u;
const ALL_UNKEEPABLE = /[\p{Cc}\p{Cs}]/gu;
// Marks that turn the reading direction could make a name look like another.
const DIRECTION_MARKS = /[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/u;

/** A tree's or other name as typed, single-spaced. Throws UserError on one that cannot be taken literally. */
export function readName(text: string, what: string): string {
  const name = text.replaceAll(/\s+/gu, ' ').trim();
  if (name === '') throw new UserError('name-empty', `${what} needs at least one letter or sign.`);
  if ([...name].length > MAX_NAME_CHARACTERS) {
    throw new UserError(
      'name-too-long',
      `${what} has ${[...name].length} characters; at most ${MAX_NAME_CHARACTERS} fit. Please shorten it.`,
    );
  }
  if (UNKEEPABLE.test(name) || DIRECTION_MARKS.test(name)) {
    throw new UserError(
      'name-unprintable',
      `${what} holds characters that cannot be printed; type it without them.`,
    );
  }
  return name;
}

/** A note's text as it can be kept. Throws UserError when it is empty or too long. */
export function readNoteText(text: string): string {
  const kept = text
    .replaceAll(/\r\n?/g, '\n')
    .replaceAll(ALL_UNKEEPABLE, (c) => (c === '\n' ? c : ' '))
    .trim();
  if (kept === '') {
    throw new UserError(
      'note-empty',
      'There is nothing in this note; type what you saw, for example: 3 fruitlets on the alma.',
    );
  }
  if ([...kept].length > MAX_NOTE_CHARACTERS) {
    throw new UserError(
      'note-too-long',
      `This note has ${[...kept].length} characters; at most ${MAX_NOTE_CHARACTERS} fit. Please send it in parts.`,
    );
  }
  return kept;
}
