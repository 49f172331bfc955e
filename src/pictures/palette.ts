/**
 * Colours of all pictures. They stand on their own solid panel, so that a light or dark surrounding does not
 * matter. Text has a contrast of at least 4.5 : 1 and every line or marker at least 3 : 1 with the panel
 * (W3C, WCAG 2.2, success criteria 1.4.3 and 1.4.11); fills only back up what lines and words already say.
 */
export const PALETTE = {
  panel: '#f8f4ea',
  ink: '#2a2333',
  quiet: '#5f5568',
  grid: '#ded6c6',
  outerBand: '#e3dac6',
  innerBand: '#cdbf9f',
  median: '#75664a',
  fig: '#6d2a5f',
  leaf: '#2f6a3b',
  leafFill: '#c9dcc0',
  heat: '#ad3f17',
  frost: '#24598c',
  frostFill: '#dbe5ee',
} as const;

/** Colours that write text. */
export const TEXT_INKS = ['ink', 'quiet', 'fig', 'leaf', 'heat', 'frost'] as const;

/** Colours that draw lines and markers. */
export const LINE_INKS = ['ink', 'quiet', 'median', 'fig', 'leaf', 'heat', 'frost'] as const;

/** Dash patterns, px: each kind of line has its own, so that none rests on colour alone. */
export const DASH = {
  heatMark: [18, 8],
  heatEnd: null,
  frost: [3, 7],
  decision: [22, 6, 4, 6],
  today: [8, 6],
  median: [10, 6],
} as const;
