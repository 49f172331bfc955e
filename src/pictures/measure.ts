import { readFile } from 'node:fs/promises';
import type { Font } from 'fontkitten';
import { EMOJI_FAMILY, FAMILY, FONT_FILES, WIDE_FAMILY } from './fonts.ts';

/** Widths of text in the pictures' fonts, and text made to fit. */
export interface Measure {
  /** Pixels. */
  width(text: string, size: number, bold?: boolean): number;
  /** `text` cut into pieces of one font each, with the font's family. */
  runs(text: string, bold?: boolean): readonly Run[];
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

interface Glyph {
  /** Index of the font that has it. */
  readonly font: number;
  /** Advance in ems. */
  readonly em: number;
}

function measureOf(regular: readonly Font[], bold: readonly Font[]): Measure {
  const known = [new Map<number, Glyph>(), new Map<number, Glyph>()] as const;
  const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

  const glyphOf = (sign: string, isBold: boolean): Glyph => {
    const codePoint = sign.codePointAt(0) ?? 0;
    const glyphs = known[isBold ? 1 : 0];
    let glyph = glyphs.get(codePoint);
    if (glyph === undefined) {
      const fonts = isBold ? bold : regular;
      const index = Math.max(
        0,
        fonts.findIndex((font) => font.hasGlyphForCodePoint(codePoint)),
      );
      const font = fonts[index];
      glyph = {
        font: index,
        em: font ? font.glyphForCodePoint(codePoint).advanceWidth / font.unitsPerEm : 1,
      };
      glyphs.set(codePoint, glyph);
    }
    return glyph;
  };

  const hasGlyph = (sign: string) =>
    [...sign].every((c) => regular.some((font) => font.hasGlyphForCodePoint(c.codePointAt(0) ?? 0)));

  const width = (text: string, size: number, isBold = false): number => {
    let sum = 0;
    for (const sign of text) sum += glyphOf(sign, isBold).em;
    return sum * size;
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

  const runs = (text: string, isBold = false): readonly Run[] => {
    if (PLAIN.test(text)) return [{ text, family: FAMILY }];
    const done: { text: string; font: number }[] = [];
    // Spaces and punctuation wait for the next letter: between two words of one font they stay with them,
    // so that words written from right to left keep their order.
    let waiting = '';
    for (const sign of text) {
      const { font } = glyphOf(sign, isBold);
      const last = done.at(-1);
      if (font === 0 && !WORD.test(sign)) waiting += sign;
      else if (last?.font === font) {
        last.text += waiting + sign;
        waiting = '';
      } else {
        if (last && last.font === 0) last.text += waiting;
        else if (waiting !== '') done.push({ text: waiting, font: 0 });
        waiting = '';
        const now = done.at(-1);
        if (now?.font === font) now.text += sign;
        else done.push({ text: sign, font });
      }
    }
    if (waiting !== '') done.push({ text: waiting, font: 0 });
    return done.map((run) => ({ text: run.text, family: FAMILIES[run.font] ?? FAMILY }));
  };

  const cut = (text: string, room: number, size: number, isBold: boolean): string => {
    if (width(text, size, isBold) <= room) return text;
    let kept = '';
    let used = width('…', size, isBold);
    for (const { segment } of graphemes.segment(text)) {
      used += width(segment, size, isBold);
      if (used > room) break;
      kept += segment;
    }
    return `${kept.trimEnd()}…`;
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
    runs,
    drawable,
    fit: (text, room, size, isBold = false) => cut(drawable(text), room, size, isBold),
    wrap,
  };
}
