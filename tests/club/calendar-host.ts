import { calendarFile } from '../../src/club/calendar.ts';
import { day } from '../../src/engine/day.ts';

/** Run by calendar.test.ts in other host zones. */
const item = { treeId: 1, tree: 'Pot 3', kind: 'decision', season: '2026', on: day('2026-07-07') } as const;
process.stdout.write(new TextDecoder().decode(calendarFile([item], 'Fig dates', new Date(0)).bytes));
