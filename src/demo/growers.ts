/** A tree of the demo's club: its name, cultivar, and the rest of its /tree add line. */
export interface DemoTree {
  readonly name: string;
  readonly cultivar: string;
  readonly options?: string;
}

/** A grower of the demo's club. People and place are invented. */
export interface DemoGrower {
  readonly name: string;
  /** What the garden has over the vale, °C; a grower with a record hands it in, the others state their dates. */
  readonly warmer: number;
  readonly record: boolean;
  /** How eagerly the grower tips when the date comes, 0–1. */
  readonly tips: number;
  readonly trees: readonly DemoTree[];
}

const inPot = 'kept:pot';
const forBoth = 'for:both';

export const GROWERS: readonly DemoGrower[] = [
  {
    name: 'Ilva',
    warmer: 0,
    record: true,
    tips: 0.9,
    trees: [
      { name: 'Porch', cultivar: 'Brunswick', options: forBoth },
      { name: 'Gate', cultivar: 'Brunswick' },
      { name: 'Barrel', cultivar: 'Celeste', options: inPot },
      { name: 'Cistern', cultivar: 'Brown Turkey', options: 'for:both spare:yes' },
      { name: 'Old Wall', cultivar: 'Chicago Hardy' },
      { name: 'Kiln', cultivar: 'Violette de Bordeaux', options: inPot },
      { name: 'Lantern', cultivar: 'Kadota' },
      { name: 'Washhouse', cultivar: 'King' },
      { name: 'Anvil', cultivar: 'Alma', options: inPot },
    ],
  },
  {
    name: 'Tomek',
    warmer: 0.6,
    record: true,
    tips: 0.7,
    trees: [
      { name: 'Stable', cultivar: 'Brunswick', options: 'for:both spare:yes' },
      { name: 'Well', cultivar: 'Celeste' },
      { name: 'Bench', cultivar: 'Celeste', options: inPot },
      { name: 'Hearth', cultivar: 'Brown Turkey' },
      { name: 'Cart', cultivar: 'Chicago Hardy', options: inPot },
      { name: 'Ladder', cultivar: 'Ronde de Bordeaux', options: inPot },
      { name: 'Trellis', cultivar: 'Adriatic' },
      { name: 'Millstone', cultivar: 'Black Mission' },
    ],
  },
  {
    name: 'Sunniva',
    warmer: -0.5,
    record: true,
    tips: 1,
    trees: [
      { name: 'Glass 1', cultivar: 'Kadota', options: 'kept:cover cover_days:12' },
      { name: 'Glass 2', cultivar: 'Alma', options: 'kept:cover cover_days:12' },
      { name: 'Glass 3', cultivar: 'Violette de Bordeaux', options: 'kept:cover cover_days:12' },
      { name: 'Kettle', cultivar: 'Celeste', options: inPot },
      { name: 'Pail', cultivar: 'Ronde de Bordeaux', options: inPot },
      { name: 'Stove', cultivar: 'Chicago Hardy', options: inPot },
      { name: 'Churn', cultivar: 'Brunswick', options: inPot },
      { name: 'Basket', cultivar: 'Brown Turkey', options: inPot },
    ],
  },
  {
    name: 'Orsolya',
    warmer: 0.2,
    record: false,
    tips: 0.8,
    trees: [
      { name: 'Terrace 1', cultivar: 'Brunswick' },
      { name: 'Terrace 2', cultivar: 'Celeste' },
      { name: 'Terrace 3', cultivar: 'Celeste', options: forBoth },
      { name: 'Terrace 4', cultivar: 'Brown Turkey' },
      { name: 'Terrace 5', cultivar: 'Black Mission' },
      { name: 'Cellar', cultivar: 'Violette de Bordeaux', options: inPot },
      { name: 'Oven', cultivar: 'Chicago Hardy', options: inPot },
    ],
  },
  {
    name: 'Bastian',
    warmer: 0,
    record: false,
    tips: 0.4,
    trees: [
      { name: 'Sluice', cultivar: 'Brunswick' },
      { name: 'Ferry', cultivar: 'Brown Turkey' },
      { name: 'Weir', cultivar: 'Celeste' },
      { name: 'Towpath', cultivar: 'Chicago Hardy', options: 'for:wood spare:yes' },
      { name: 'Lock', cultivar: 'Adriatic' },
      { name: 'Barge', cultivar: 'Kadota', options: inPot },
      { name: 'Anchor', cultivar: 'Sierra', options: inPot },
    ],
  },
  {
    name: 'Neela',
    warmer: 0.9,
    record: true,
    tips: 0.6,
    trees: [
      { name: 'Courtyard', cultivar: 'Black Mission' },
      { name: 'Sundial', cultivar: 'Kadota' },
      { name: 'Archway', cultivar: 'Brown Turkey' },
      { name: 'Fountain', cultivar: 'Brunswick', options: forBoth },
      { name: 'Steps', cultivar: 'Celeste', options: inPot },
      { name: 'Niche', cultivar: 'Ronde de Bordeaux', options: inPot },
      { name: 'Balcony', cultivar: 'Violette de Bordeaux', options: inPot },
    ],
  },
  {
    name: 'Casimir',
    warmer: -0.2,
    record: false,
    tips: 0.9,
    trees: [
      { name: 'Row 1', cultivar: 'Chicago Hardy' },
      { name: 'Row 2', cultivar: 'Chicago Hardy' },
      { name: 'Row 3', cultivar: 'Brunswick' },
      { name: 'Row 4', cultivar: 'Celeste' },
      { name: 'Row 5', cultivar: 'Alma' },
      { name: 'Row 6', cultivar: 'Brown Turkey', options: forBoth },
      { name: 'Row 7', cultivar: 'Adriatic' },
    ],
  },
  {
    name: 'Wendeline',
    warmer: 0.3,
    record: false,
    tips: 0.75,
    trees: [
      { name: 'Pot 1', cultivar: 'Celeste', options: inPot },
      { name: 'Pot 2', cultivar: 'Brunswick', options: inPot },
      { name: 'Pot 3', cultivar: 'Violette de Bordeaux', options: inPot },
      { name: 'Pot 4', cultivar: 'Ronde de Bordeaux', options: inPot },
      { name: 'Pot 5', cultivar: 'Chicago Hardy', options: inPot },
      { name: 'Pot 6', cultivar: 'Brown Turkey', options: inPot },
      { name: 'Pot 7', cultivar: 'Alma', options: inPot },
    ],
  },
];
