/** A chart as a file, with the same facts in words. */
export interface Picture {
  /** ASCII file name ending in `.png`. */
  readonly name: string;
  /** PNG, 8 bits a channel. */
  readonly bytes: Uint8Array;
  /** Everything the picture shows, in sentences, the most important first. */
  readonly alt: string;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
}

export type Units = 'F' | 'C';

/** Month first ("Jul 7") or day first ("7 Jul"). */
export type DateOrder = 'MDY' | 'DMY';

/** All pictures are this wide, px: a phone shows them at about 390 px, so 28 px text stays near 10 px. */
export const WIDTH = 1080;

/** Space kept free at the left and right edge, px. */
export const MARGIN = 40;

/** Text sizes, px. None is smaller than `text`. */
export const SIZE = { title: 46, subtitle: 32, text: 28 } as const;
