import type { Cultivar, Mark } from './cultivar-types.ts';

// Sources, by the name they are quoted under below.
const CONDIT = 'Condit 1955, Fig Varieties: A Monograph, Hilgardia 23(11)';
const ACES = 'Auburn/Alabama ACES ANR-1145, Fig Production Guide';
const CRFG = 'California Rare Fruit Growers, Fig Fruit Facts';
const TEXAS = 'Texas A&M fig leaflet (reprint)';
const LSU = 'LSU AgCenter, 1 June 2015';
const UGA = 'University of Georgia C945';
const OHIO = 'Ohio State HYG-1439, 2020';
const UNH = 'UNH Extension research report 2021';
const SARE_NJ = 'SARE FNE11-727, New Jersey';
const SARE_ME = 'SARE FNE14-797, Maine';
const VIENNA = 'Jank 2022, JOJ Hortic Arboric 3(3):555615, Vienna';
const MIYAGI = 'Miyagi Prefecture, Watari Extension fig bulletins 2017–2018';
const FUKUOKA = 'Yahata & Nogata 2000, J. Jpn. Soc. Hort. Sci., Fukuoka';
const BURSA = 'Çelikel et al. 1997, Acta Hort. 441:145–151';
const HATAY = 'Çalışkan et al. 2024, Ege Ziraat Derg. 61:321–334, Hatay';
const UC_HANDOUT = 'UC Fruit & Nut Information Center, fig handout';
const REPRINTS = 'figs4fun information pages (reprints of numbered sources)';
const MARCOTULI = 'Marcotuli et al. 2020, Front. Plant Sci. 11:1208';
const PUGET = 'Puget Sound fig variety test';
const FERRAZ = 'Ferraz et al. 2020, Pesq. Agropec. Bras. 55, Brazil';
const GERMANY = 'German amateur table';
const PRACTICE = 'growers’ common practice, no source';

type Entry = Partial<Cultivar> & Pick<Cultivar, 'name' | 'source'>;

const published: Mark = 'published';
const quoted: Mark = 'quoted';

function common(entry: Entry): Cultivar {
  return { ...blank, type: 'common', ...entry };
}

function dropsUnpollinated(type: 'smyrna' | 'san-pedro', entry: Entry): Cultivar {
  return { ...blank, type, mainNeedsPollination: true, ...entry };
}

const blank = {
  synonyms: [],
  mainNeedsPollination: false,
  breba: null,
  group: 'unknown',
  mark: published,
} as const;

/**
 * Every cultivar a published page was found for, and the kinds growers name by habit. A group stands only
 * where a page or common practice calls the cultivar early, mid-season or late; a span only where one was
 * measured.
 */
export const CULTIVARS: readonly Cultivar[] = [
  common({
    name: 'Celeste',
    synonyms: ['Malta', 'Blue Celeste', 'Celestial', 'Honey', 'Sugar', 'Violette'],
    breba: 'light',
    group: 'early',
    groupMark: 'common practice',
    season: 'mid-June in Texas, from early July in Louisiana',
    hardiness: 'hardiest of the Texas list; ranked with Brunswick and Brown Turkey in Georgia',
    note: 'Brebas usually none. Dropped most figlets under half an inch in a 1924 Mississippi report.',
    source: `${TEXAS}; ${CONDIT}; ${LSU}`,
    mark: quoted,
  }),
  common({
    name: 'Brown Turkey',
    synonyms: ['Eastern Brown Turkey', 'Lee’s Perpetual'],
    breba: 'light',
    season: 'early October in the open in Ohio, mid to late September there in a tunnel',
    hardiness: 'hardy; regrows and can fruit after being killed to the ground (Georgia)',
    source: `${CONDIT}; ${OHIO}; ${UGA}`,
    mark: quoted,
  }),
  common({
    name: 'Texas Everbearing',
    breba: 'good',
    season: 'late June into August in Texas',
    note: 'Brebas in May, very large. Often equated with Brown Turkey.',
    source: TEXAS,
    mark: quoted,
  }),
  common({
    name: 'San Piero',
    synonyms: ['California Brown Turkey', 'Aubique Noire', 'Negro Largo'],
    breba: 'fair',
    season: 'July to September in California; keeps setting while shoots extend',
    hardiness: 'not hardy in the South, loses hardiness early in spring',
    source: `${CONDIT}; ${REPRINTS}`,
  }),
  common({
    name: 'Masui Dauphine',
    breba: 'fair',
    hardiness: 'weak to cold and wet (nursery text)',
    note: 'Given as a synonym of San Piero by Japanese authors. Ripe after day 70 from set; exact days not shown.',
    source: 'Yahata & Nogata 1999, J. Jpn. Soc. Hort. Sci. 68:987–992; Hirai et al. 1966, ibid. 35:354–360',
  }),
  common({
    name: 'Brunswick',
    synonyms: ['Magnolia', 'Madonna', 'Bayswater', 'Hanover', 'Clare'],
    breba: 'light',
    span: { from: 75, to: 80, source: MIYAGI },
    season: 'Miyagi, Japan: first figlets 5–22 June, first pick 29 August to 10 September',
    hardiness: 'regarded as very hardy',
    note: 'Sours and splits in rain; fruits on sucker wood after a freeze.',
    source: `${MIYAGI}; ${CONDIT}; ${TEXAS}`,
  }),
  common({
    name: 'Alma',
    synonyms: ['Fall Gold'],
    breba: 'light',
    group: 'late',
    groupMark: quoted,
    season: 'mid-July till frost in Texas',
    hardiness: 'very frost sensitive when young',
    note: 'Sources disagree on brebas: none to light.',
    source: TEXAS,
    mark: quoted,
  }),
  common({
    name: 'Black Mission',
    synonyms: ['Mission', 'Franciscana'],
    breba: 'heavy',
    season: 'brebas late June, main crop August to September in California',
    hardiness: 'not hardy',
    source: `${UC_HANDOUT}; ${CRFG}`,
  }),
  dropsUnpollinated('smyrna', {
    name: 'Calimyrna',
    synonyms: ['Sari Lop', 'Sarılop'],
    breba: 'none',
    group: 'late',
    groupMark: published,
    source: `${ACES}; ${CRFG}`,
  }),
  common({
    name: 'Kadota',
    synonyms: ['Dottato', 'White Kadota'],
    breba: 'fair',
    season: 'variable, early to late',
    source: `${CONDIT}; ${MARCOTULI}`,
  }),
  common({
    name: 'Adriatic',
    synonyms: ['Verdone', 'White Adriatic', 'Nebian', 'Grosse Verte', 'Strawberry', 'Fragola'],
    breba: 'light',
    hardiness: 'leafs out early, so late frost hurts it; disappointing in the South for that reason',
    source: `${CONDIT}; ${CRFG}`,
  }),
  common({
    name: 'Conadria',
    breba: 'good',
    hardiness: 'hardy, rebounds from freezes',
    source: REPRINTS,
    mark: quoted,
  }),
  dropsUnpollinated('san-pedro', {
    name: 'King',
    synonyms: ['Desert King', 'White King'],
    breba: 'heavy',
    season: 'brebas June to August by place, August at Puget Sound',
    hardiness: 'hardy, coastal British Columbia southward',
    note: 'Inland nearly all main-crop figs shrivel and drop; in cool coastal places a fair share matures.',
    source: `${CONDIT}; ${PUGET}`,
  }),
  dropsUnpollinated('san-pedro', { name: 'Gentile', breba: 'good', source: CONDIT }),
  dropsUnpollinated('san-pedro', { name: 'Lampeira', breba: 'good', source: ACES }),
  dropsUnpollinated('san-pedro', {
    name: 'San Pedro',
    synonyms: ['White San Pedro', 'San Pedro White'],
    breba: 'good',
    source: ACES,
  }),
  {
    ...blank,
    name: 'Petrelli',
    type: null,
    mainNeedsPollination: true,
    breba: 'heavy',
    note: 'Many brebas; its main crop needs pollination.',
    source: MARCOTULI,
  },
  dropsUnpollinated('smyrna', { name: 'Marabout', breba: 'none', source: ACES }),
  dropsUnpollinated('smyrna', { name: 'Zidi', breba: 'none', source: ACES }),
  dropsUnpollinated('smyrna', { name: 'Kassaba', group: 'late', groupMark: published, source: CONDIT }),
  dropsUnpollinated('smyrna', {
    name: 'Taurisano',
    synonyms: ['Lecce'],
    breba: 'light',
    season: 'second week of August',
    note: 'Brebas only in good seasons.',
    source: CONDIT,
  }),
  {
    ...blank,
    name: 'Croisic',
    synonyms: ['Cordelia', 'Gillette'],
    type: 'caprifig',
    breba: 'good',
    note: 'The edible, persistent exception among caprifigs: bears reliably every year at Puget Sound.',
    source: `${REPRINTS}; ${PUGET}`,
  },
  common({
    name: 'Violette de Bordeaux',
    synonyms: ['Bordeaux', 'Negronne', 'VdB'],
    breba: 'fair',
    season: 'two crops at Portland, Oregon',
    hardiness: 'medium to poor in New Jersey reports (common practice)',
    source: CONDIT,
  }),
  common({ name: 'Ischia Black', synonyms: ['Black Ischia'], source: CONDIT }),
  common({
    name: 'Blanche',
    synonyms: ['Lattarula', 'Italian Honey', 'White Marseille', 'White Marseilles', 'Lemon'],
    breba: 'light',
    season: 'suited to short, cool seasons',
    hardiness: 'hardy',
    source: CRFG,
    mark: quoted,
  }),
  common({
    name: 'Ronde de Bordeaux',
    synonyms: ['RdB'],
    breba: null,
    group: 'early',
    groupMark: published,
    season: 'earliest and most fruitful of the New Hampshire set; ripe to the end of October in Vienna',
    hardiness: 'survived covered in New Hampshire, zone 5b',
    note: 'Brebas none, by common practice.',
    source: `${UNH}; ${VIENNA}`,
  }),
  common({
    name: 'Pastiliere',
    synonyms: ['Hirta', 'Rouge de Bordeaux'],
    group: 'early',
    groupMark: quoted,
    season: 'early August in France; to the end of October in Vienna',
    note: 'Brebas none, by common practice. Lacks vigour; prone to Botrytis.',
    source: `${REPRINTS}; ${VIENNA}`,
    mark: quoted,
  }),
  common({
    name: 'Dalmatie',
    breba: 'fair',
    season: 'good to the end of October in Vienna',
    hardiness: `listed as hardy (${GERMANY})`,
    source: VIENNA,
  }),
  common({
    name: 'Longue d’Août',
    breba: 'fair',
    season: 'heaviest main crop of the Vienna trial, but quality insufficient',
    source: VIENNA,
  }),
  common({ name: 'Bornholmfigen', synonyms: ['Bornholm'], breba: 'heavy', source: VIENNA }),
  common({
    name: 'Madeleine des Deux Saisons',
    breba: 'fair',
    hardiness: `listed as hardy (${GERMANY})`,
    source: VIENNA,
  }),
  common({
    name: 'Hardy Chicago',
    synonyms: ['Chicago Hardy', 'Bensonhurst Purple', 'Chicago'],
    breba: 'light',
    group: 'early',
    groupMark: 'common practice',
    hardiness: 'recommended for the Georgia mountains in shelter',
    note: 'One of two cultivars Ohio State suggests. A Mount Etna kind.',
    source: `${OHIO}; ${UGA}`,
    mark: quoted,
  }),
  common({
    name: 'Marseilles Black VS',
    synonyms: ['Marseilles VS', 'Marseilles vs Black', 'MBVS'],
    season: 'New Hampshire and Maine tunnel trials',
    hardiness: 'survived covered in zone 5b',
    source: `${UNH}; ${SARE_ME}`,
  }),
  common({
    name: 'J.H. Adriatic',
    synonyms: ['JH Adriatic'],
    season: 'never ripened outdoors in New Hampshire',
    hardiness: 'survived covered in zone 5b',
    source: UNH,
  }),
  common({
    name: 'Takoma Violet',
    season: 'New Hampshire trial entry',
    hardiness: 'no winter damage at 10 °F in one New Jersey report (common practice)',
    source: UNH,
  }),
  common({ name: 'Maltese Beauty', season: 'never ripened outdoors in New Hampshire', source: UNH }),
  common({
    name: 'Sal’s GS',
    synonyms: ['Sal’s', 'Sal’s Gene Strain'],
    season: 'Maine tunnel trial entry',
    source: SARE_ME,
  }),
  common({ name: 'Gino’s Black', synonyms: ['Gino’s'], season: 'Maine tunnel trial entry', source: SARE_ME }),
  common({
    name: 'LSU Purple',
    breba: 'light',
    season: 'early July, then later crops (nursery text)',
    hardiness: 'tender, rebounds',
    source: `${REPRINTS}; ${LSU}`,
    mark: quoted,
  }),
  common({
    name: 'LSU Gold',
    season: 'July to August in Louisiana',
    hardiness: 'hardier than LSU Purple (popular summary)',
    source: LSU,
    mark: quoted,
  }),
  common({
    name: 'O’Rourke',
    synonyms: ['LSU O’Rourke'],
    breba: 'light',
    note: 'A larger near-copy of Celeste; often confused with Improved Celeste.',
    source: LSU,
    mark: quoted,
  }),
  common({
    name: 'Champagne',
    synonyms: ['LSU Champagne'],
    note: 'Makes a big tree.',
    source: LSU,
    mark: quoted,
  }),
  common({ name: 'Tiger', synonyms: ['LSU Tiger'], source: LSU, mark: quoted }),
  common({ name: 'Peter’s Honey', season: 'figs in its first year in New Jersey', source: SARE_NJ }),
  common({
    name: 'Green Ischia',
    synonyms: ['Verte', 'Ischia Green'],
    season: 'nothing ripe before the end of its first season in New Jersey',
    source: SARE_NJ,
  }),
  common({
    name: 'Goliath',
    season: 'nothing ripe before the end of its first season in New Jersey',
    source: SARE_NJ,
  }),
  common({
    name: 'Sierra',
    breba: 'light',
    season: 'large main crop into fall in California',
    source: `${REPRINTS}; ${UC_HANDOUT}`,
  }),
  common({
    name: 'Sequoia',
    breba: 'fair',
    season: 'large main crop into fall in California',
    source: `${REPRINTS}; ${UC_HANDOUT}`,
  }),
  common({
    name: 'Tena',
    breba: 'fair',
    group: 'mid',
    groupMark: quoted,
    season: 'mid-season in Australia',
    source: REPRINTS,
    mark: quoted,
  }),
  common({ name: 'Excel', source: REPRINTS, mark: quoted }),
  common({ name: 'Flanders', source: REPRINTS, mark: quoted }),
  common({
    name: 'Barnissotte',
    synonyms: ['Brogiotto Nero', 'Barnisotte'],
    breba: 'light',
    group: 'late',
    groupMark: quoted,
    note: 'Late by nursery text.',
    source: UC_HANDOUT,
  }),
  common({
    name: 'Houraishi',
    synonyms: ['Horaishi'],
    span: { from: 80, to: 89, source: FUKUOKA },
    season: 'Fukuoka, Japan: 80–89 days from fruit bud to harvest, about 2,100 °C·days',
    source: FUKUOKA,
  }),
  {
    ...blank,
    name: 'Bursa Siyahi',
    synonyms: ['Bursa Siyahı', 'Bursa Black', 'Black Bursa'],
    type: null,
    mainNeedsPollination: true,
    span: { from: 92, to: 92, source: BURSA },
    season: '92 days from 11 mm wide to ripe (44 + 35 + 13); a tunnel gains 10–13 days',
    note: 'Needs caprification in practice. Its days count from 11 mm, so allow a few more from first sight.',
    source: `${BURSA}; ${HATAY}`,
  },
  { ...blank, name: 'Nazareth', type: null, season: 'a tunnel gains 10 days in Hatay', source: HATAY },
  common({ name: 'Roxo de Valinhos', source: FERRAZ }),
  common({ name: 'White Genova', synonyms: ['Genova', 'White Genoa'], source: FERRAZ }),
  common({
    name: 'Troyano',
    group: 'late',
    groupMark: published,
    season: 'the latest of a set in southeast Brazil, 4,577 °C·days a cycle',
    source: FERRAZ,
  }),
  {
    ...blank,
    name: 'Rubado Negro',
    type: null,
    group: 'late',
    groupMark: published,
    season: 'October to November in the south of France and the north of Italy',
    source: CONDIT,
  },
  { ...blank, name: 'Figue Fleur', type: null, group: 'early', groupMark: published, source: CONDIT },
  common({
    name: 'Mount Etna',
    synonyms: ['Mt Etna', 'Etna', 'Mount Etna kind', 'Mt. Etna type'],
    group: 'early',
    groupMark: 'common practice',
    note: 'A family of kinds, Hardy Chicago among them; about 72 days from first sight by one claim.',
    source: PRACTICE,
    mark: 'common practice',
  }),
  common({
    name: 'Black Madeira',
    synonyms: ['Madeira Black'],
    group: 'late',
    groupMark: 'common practice',
    source: PRACTICE,
    mark: 'common practice',
  }),
  common({
    name: 'Col de Dame',
    synonyms: [
      'Coll de Dama',
      'Col de Dame Blanc',
      'Col de Dame Noir',
      'Col de Dame Gris',
      'Col de Dame Rimada',
      'Coll de Dama Negre',
      'Coll de Dama Blanca',
      'Coll de Dama Gris',
      'CdD',
    ],
    group: 'late',
    groupMark: 'common practice',
    source: PRACTICE,
    mark: 'common practice',
  }),
];
