import { readFile } from 'node:fs/promises';
import type { Font } from 'fontkitten';
import { EMOJI_FAMILY, FAMILY, FONT_FILES, WIDE_FAMILY } from './fonts.ts';

/** Widths of text in the pictures' fonts, and text made to fit. */
export interface Measure {
  /** Pixels. */
  width(text: string, size: number, bold?: boolean): number;
  /** `text` cut into pieces of one font each, with the font's family. */
  runs(text: string): readonly Run[];
  /** `text` with what no font can draw replaced by an empty box, and emoji sequences by their first sign. */
  drawable(text: string): string;
  /** `text`, drawable, shortened with "…" to at most `room` pixels. */
  fit(text: string, room: number, size: number, bold?: boolean): string;
  /** `text`, drawable, on at most `lines` lines of at most `room` pixels; the last may end in "…". */
  wrap(text: string, room: number, lines: number, size: number, bold?: boolean): readonly string[];
}

/** A piece of a line set in one font. */
export interface Run {
  readonly text: string;
  readonly family: string;
}

const BOX = '\u25af';
const FAMILIES = [FAMILY, WIDE_FAMILY, EMOJI_FAMILY] as const;
const EMOJI = 2;
const RIGHT_TO_LEFT = /[\u0590-\u08ff]/;
/** Letters and digits; all else takes the font of the letters around it. */
const WORD = /[\p{L}\p{M}\p{N}]/u;
const PLAIN = /^[\u0020-\u007e\u00a0-\u024f\u2013\u2026]*$/;
/** Zero width joiner, variation selectors, skin tones, tags: they only modify the sign before them. */
const MODIFIER = /[\u200d\ufe0e\ufe0f\u{1f3fb}-\u{1f3ff}\u{e0020}-\u{e007f}]/u;

let loading: Promise<Measure> | null = null;

/** The measure of the pictures' fonts, read once. */
export function loadMeasure(): Promise<Measure> {
  loading ??= load();
  return loading;
}

async function load(): Promise<Measure> {
  const { create } = await import('fontkitten');
  const open = async (file: string) => create(await readFile(file)) as Font;
  const [regular, bold, wide, wideBold, emoji] = await Promise.all([
    open(FONT_FILES.regular),
    open(FONT_FILES.bold),
    open(FONT_FILES.wide),
    open(FONT_FILES.wideBold),
    open(FONT_FILES.emoji),
  ]);
  return measureOf([regular, wide, emoji], [bold, wideBold, emoji]);
}

interface FontRun {
  readonly text: string;
  /** Index in `FAMILIES`. */
  readonly font: number;
}

function measureOf(regular: readonly Font[], bold: readonly Font[]): Measure {
  const fonts = new Map<number, number>();
  const ems = new Map<number, number>();
  const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

  /** Index of the first font that has the sign; 0 when none has. */
  const fontOf = (sign: string): number => {
    const codePoint = sign.codePointAt(0) ?? 0;
    let font = fonts.get(codePoint);
    if (font === undefined) {
      font = Math.max(
        0,
        regular.findIndex((candidate) => candidate.hasGlyphForCodePoint(codePoint)),
      );
      fonts.set(codePoint, font);
    }
    return font;
  };

  const emOf = (sign: string, font: number, isBold: boolean): number => {
    const codePoint = sign.codePointAt(0) ?? 0;
    const key = codePoint * 8 + font * 2 + (isBold ? 1 : 0);
    let em = ems.get(key);
    if (em === undefined) {
      const face = (isBold ? bold : regular)[font];
      em = face ? face.glyphForCodePoint(codePoint).advanceWidth / face.unitsPerEm : 1;
      ems.set(key, em);
    }
    return em;
  };

  const runsOf = (text: string): readonly FontRun[] => {
    if (PLAIN.test(text)) return [{ text, font: 0 }];
    const done: { text: string; font: number }[] = [];
    // Spaces and punctuation wait for the next letter: between two words of one font they stay with them,
    // so that words written from right to left keep their order, and so does a sign at their end.
    let waiting = '';
    const close = () => {
      const last = done.at(-1);
      if (waiting === '') return;
      if (last && (last.font === 0 || (last.font === 1 && RIGHT_TO_LEFT.test(last.text))))
        last.text += waiting;
      else done.push({ text: waiting, font: 0 });
      waiting = '';
    };
    for (const sign of text) {
      const font = fontOf(sign);
      const last = done.at(-1);
      if (font === 0 && !WORD.test(sign)) {
        waiting += sign;
      } else if (last?.font === font && (font !== EMOJI || waiting === '')) {
        last.text += waiting + sign;
        waiting = '';
      } else {
        close();
        const now = done.at(-1);
        if (now?.font === font) now.text += sign;
        else done.push({ text: sign, font });
      }
    }
    close();
    return done;
  };

  const hasGlyph = (sign: string) =>
    [...sign].every((c) => regular.some((font) => font.hasGlyphForCodePoint(c.codePointAt(0) ?? 0)));

  const width = (text: string, size: number, isBold = false): number => {
    let ems = 0;
    for (const run of runsOf(text)) {
      for (const sign of run.text) ems += emOf(sign, run.font, isBold);
    }
    return ems * size;
  };

  const drawable = (text: string): string => {
    if (PLAIN.test(text)) return text;
    return [...graphemes.segment(text)]
      .map(({ segment }) => {
        if (!MODIFIER.test(segment) && hasGlyph(segment)) return segment;
        const [first = BOX] = segment;
        return hasGlyph(first) ? first : BOX;
      })
      .join('');
  };

  const cut = (text: string, room: number, size: number, isBold: boolean): string => {
    if (width(text, size, isBold) <= room) return text;
    const signs = [...graphemes.segment(text)].map(({ segment }) => segment);
    const kept = (count: number) => `${signs.slice(0, count).join('').trimEnd()}…`;
    let low = 0;
    let high = signs.length;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (width(kept(middle), size, isBold) <= room) low = middle;
      else high = middle - 1;
    }
    return kept(low);
  };

  const wrap = (text: string, room: number, lines: number, size: number, isBold = false) => {
    const done: string[] = [];
    let rest = drawable(text).split(' ');
    while (rest.length > 0 && done.length < lines) {
      let taken = 1;
      while (taken < rest.length && width(rest.slice(0, taken + 1).join(' '), size, isBold) <= room) taken++;
      const isLast = done.length === lines - 1;
      done.push(cut((isLast ? rest : rest.slice(0, taken)).join(' '), room, size, isBold));
      rest = isLast ? [] : rest.slice(taken);
    }
    return done;
  };

  return {
    width,
    runs: (text) => runsOf(text).map((run) => ({ text: run.text, family: FAMILIES[run.font] ?? FAMILY })),
    drawable,
    fit: (text, room, size, isBold = false) => cut(drawable(text), room, size, isBold),
    wrap,
  };
}
