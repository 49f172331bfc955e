import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FAMILY, FONT_FILES } from '../../src/pictures/fonts.ts';
import { loadMeasure } from '../../src/pictures/measure.ts';

/** Width of painted text by the renderer itself. */
function paintedWidth(text: string, size: number, weight: number, family = FAMILY): number {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="3000" height="100"><text x="10" y="60" font-family="${family}" font-size="${size}" font-weight="${weight}">${text}</text></svg>`;
  const box = new Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES) },
  }).innerBBox();
  return box?.width ?? 0;
}

describe('Measured text', () => {
  it('is as wide as resvg paints it', async () => {
    const measure = await loadMeasure();
    for (const words of [
      'heat end 10 Sep',
      'Brunswick by the wall, Pot 3',
      'Pastilière 2026/27',
      'WWW iii 111',
    ]) {
      for (const [weight, bold] of [
        [400, false],
        [700, true],
      ] as const) {
        const painted = paintedWidth(words, 28, weight);
        const measured = measure.width(words, 28, bold);
        // Side bearings are counted and kerning is not.
        expect(Math.abs(measured - painted), words).toBeLessThan(Math.max(6, painted * 0.04));
      }
    }
  });

  it('is cut with an ellipsis to the room there is', async () => {
    const measure = await loadMeasure();
    fc.assert(
      fc.property(
        fc.string({ unit: 'grapheme', maxLength: 120 }),
        fc.integer({ min: 60, max: 500 }),
        (words, room) => {
          const cut = measure.fit(words, room, 28);
          expect(measure.width(cut, 28)).toBeLessThanOrEqual(room);
          if (measure.width(measure.drawable(words), 28) <= room) expect(cut).toBe(measure.drawable(words));
          else expect(cut.endsWith('…')).toBe(true);
        },
      ),
    );
  });

  it('is wrapped into lines that fit, losing no word while there are lines', async () => {
    const measure = await loadMeasure();
    const words = 'Alma, Pot 3, Brunswick by the wall, Ronde, Greenhouse and 4 more';
    const lines = measure.wrap(words, 300, 9, 28);
    expect(lines.join(' ')).toBe(words);
    for (const line of lines) expect(measure.width(line, 28)).toBeLessThanOrEqual(300);
  });

  it('shows a box for what no font has, and one sign for a joined emoji', async () => {
    const measure = await loadMeasure();
    expect(measure.drawable('中')).toBe('▯');
    expect(measure.drawable('👩🏽‍🌾 Pot')).toBe('👩 Pot');
    expect(measure.drawable('Ž, Ω, Ж, ש, ع, ✓')).toBe('Ž, Ω, Ж, ש, ع, ✓');
  });

  it('keeps words from right to left in one piece', async () => {
    const measure = await loadMeasure();
    const pieces = measure.runs('✓ שלום עולם, Alma 🌳');
    expect(pieces.map(({ text }) => text)).toEqual(['✓ שלום עולם, ', 'Alma ', '🌳']);
    expect(pieces.map(({ text }) => text).join('')).toBe('✓ שלום עולם, Alma 🌳');
  });
});
