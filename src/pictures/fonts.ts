import { createRequire } from 'node:module';

const find = createRequire(import.meta.url).resolve;

/**
 * Letters of the pictures: SIL Open Font License 1.1. Its zero has no stroke, which when small would make it
 * an 8. The other two stand in for what it does not have.
 */
export const FAMILY = 'Figtree';
export const WIDE_FAMILY = 'DejaVu Sans';
export const EMOJI_FAMILY = 'Noto Emoji';

/** Files of the fonts that packages bring along; the system's own fonts are never used. */
export const FONT_FILES = {
  regular: find('@expo-google-fonts/figtree/400Regular/Figtree_400Regular.ttf'),
  bold: find('@expo-google-fonts/figtree/700Bold/Figtree_700Bold.ttf'),
  /** Greek, Cyrillic, Hebrew, Arabic, symbols: Bitstream Vera licence, changes in the public domain. */
  wide: find('dejavu-fonts-ttf/ttf/DejaVuSans.ttf'),
  wideBold: find('dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'),
  /** One-coloured emoji: SIL Open Font License 1.1. */
  emoji: find('@expo-google-fonts/noto-emoji/400Regular/NotoEmoji_400Regular.ttf'),
} as const;
