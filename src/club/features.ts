import { answerVerb, undoVerb } from './answer.ts';
import { clubFeature } from './club-settings.ts';
import { dueFeature, dueTreeVerb } from './due.ts';
import type { ButtonVerb, Feature } from './feature.ts';
import { lookUpVerb } from './garden-lookup.ts';
import { gardenSet } from './garden-set.ts';
import { gardenShow } from './garden-show.ts';
import { gardenWeather, weatherPlaceVerb } from './garden-weather.ts';
import { helpFeature } from './help.ts';
import { cropVerb, logVerb } from './log-verbs.ts';
import { mydataErase, mydataExport, mydataLearning } from './mydata.ts';
import { noteFeature } from './note.ts';
import { nudgeVerbs } from './nudge-answers.ts';
import { ripeVerb } from './ripe-when.ts';
import { roundupFeature } from './roundup.ts';
import { tipFeature, tipVerb } from './tip.ts';
import { treeAdd } from './tree-add.ts';
import { treeExport, treeImport } from './tree-csv.ts';
import { ripeningVerb, treeEdit } from './tree-edit.ts';
import { treeList } from './tree-list.ts';
import { restoreVerb, retireVerb, treeRetire } from './tree-retire.ts';
import { showVerb, treeShow } from './tree-show.ts';
import { treeSpare } from './tree-spare.ts';

/** Everything a member can ask, in the order that help and channels show it. */
export const features: readonly Feature[] = [
  helpFeature,
  gardenSet,
  gardenWeather,
  gardenShow,
  treeAdd,
  treeEdit,
  treeList,
  treeShow,
  treeRetire,
  treeSpare,
  treeImport,
  treeExport,
  noteFeature,
  tipFeature,
  dueFeature,
  roundupFeature,
  clubFeature,
  mydataExport,
  mydataErase,
  mydataLearning,
];

/** What buttons do. */
export const verbs: readonly ButtonVerb[] = [
  answerVerb,
  undoVerb,
  tipVerb,
  ripeVerb,
  dueTreeVerb,
  logVerb,
  cropVerb,
  ripeningVerb,
  lookUpVerb,
  weatherPlaceVerb,
  showVerb,
  retireVerb,
  restoreVerb,
  ...nudgeVerbs,
];
