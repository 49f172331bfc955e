/** What can be seen of, or done to, a tree or a garden. The order is that of a tree's year. */
export const OBSERVATION_KINDS = [
  'leafed-out',
  'buds-single',
  'buds-double',
  'fruitlets',
  'no-fruitlets',
  'tipped',
  'branched',
  'dropped',
  'ripening',
  'picked',
  'frost',
  'trouble',
  'care',
  'pruned',
  'cuttings',
  'rooted',
  'dormant',
  'remark',
] as const;

export type ObservationKind = (typeof OBSERVATION_KINDS)[number];

/** Main crop: on this year's wood. Breba: on last year's. */
export type Crop = 'main' | 'breba';

export type WeightUnit = 'lb' | 'kg' | 'oz' | 'g';
