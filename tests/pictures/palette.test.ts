import { describe, expect, it } from 'vitest';
import { DASH, LINE_INKS, PALETTE, TEXT_INKS } from '../../src/pictures/palette.ts';
import { rgb } from './raster.ts';

/**
 * W3C, Web Content Accessibility Guidelines 2.2, "relative luminance" and "contrast ratio":
 * https://www.w3.org/TR/WCAG22/#dfn-relative-luminance, #dfn-contrast-ratio.
 */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = rgb(hex)
    .map((channel) => channel / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low = 0, high = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (high + 0.05) / (low + 0.05);
}

describe('The colours of the pictures', () => {
  it('are measured by the formula of the W3C', () => {
    // The two ends of its scale, and #767676, published as the lightest grey with 4.5 : 1 on white.
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
    expect(contrast('#ffffff', '#ffffff')).toBe(1);
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5);
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5);
  });

  it.each(TEXT_INKS)('write %s text at 4.5 : 1 or more on the panel (WCAG 2.2, 1.4.3)', (ink) => {
    expect(contrast(PALETTE[ink], PALETTE.panel)).toBeGreaterThanOrEqual(4.5);
  });

  it.each(LINE_INKS)('draw %s lines at 3 : 1 or more on the panel (WCAG 2.2, 1.4.11)', (ink) => {
    expect(contrast(PALETTE[ink], PALETTE.panel)).toBeGreaterThanOrEqual(3);
  });

  it('keep what is drawn over a band or a shade at 3 : 1 or more on it', () => {
    for (const ink of ['fig', 'heat', 'frost', 'ink'] as const) {
      for (const fill of ['outerBand', 'innerBand', 'frostFill', 'leafFill'] as const) {
        expect(contrast(PALETTE[ink], PALETTE[fill]), `${ink} on ${fill}`).toBeGreaterThanOrEqual(3);
      }
    }
    for (const band of ['outerBand', 'innerBand'] as const) {
      expect(contrast(PALETTE.median, PALETTE[band]), `median on ${band}`).toBeGreaterThanOrEqual(3);
    }
  });

  it('write numbers on filled discs at 4.5 : 1 or more', () => {
    expect(contrast(PALETTE.panel, PALETTE.fig)).toBeGreaterThanOrEqual(4.5);
  });

  it('never are the only thing that tells two lines apart', () => {
    const patterns = Object.values(DASH).map((dash) => (dash ?? ['solid']).join());
    expect(new Set(patterns).size).toBe(patterns.length);
  });
});
