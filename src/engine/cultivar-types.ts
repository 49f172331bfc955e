import type { RipeningGroup } from './ripening.ts';

/** Which crops set without pollination: Auburn/Alabama ACES ANR-1145 (common, Smyrna, San Pedro). */
export type FigType = 'common' | 'smyrna' | 'san-pedro' | 'caprifig';

/** How well it bears figs on last year's wood. `null` on a cultivar: nothing published was found. */
export type BrebaCrop = 'none' | 'light' | 'fair' | 'good' | 'heavy';

/** How far a statement can be trusted: read at a source, quoted by another, or growers' practice. */
export type Mark = 'published' | 'quoted' | 'common practice';

export interface Cultivar {
  readonly name: string;
  readonly synonyms: readonly string[];
  /** `null` where no published type was found. */
  readonly type: FigType | null;
  /** True when the main crop drops unless pollinated. */
  readonly mainNeedsPollination: boolean;
  readonly breba: BrebaCrop | null;
  readonly group: RipeningGroup;
  readonly groupMark?: Mark;
  /** Days from a visible fruitlet to a ripe fig, where published. */
  readonly span?: { readonly from: number; readonly to: number; readonly source: string };
  /** What is published of its main crop's season, always with its place. */
  readonly season?: string;
  readonly hardiness?: string;
  readonly note?: string;
  readonly source: string;
  readonly mark: Mark;
}
