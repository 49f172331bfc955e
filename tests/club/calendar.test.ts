import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { type CalendarItem, calendarFile } from '../../src/club/calendar.ts';
import { day } from '../../src/engine/day.ts';

const items: readonly CalendarItem[] = [
  { treeId: 1, tree: 'Pot 3', kind: 'decision', season: '2026', on: day('2026-07-07') },
  { treeId: 1, tree: 'Pot 3', kind: 'frost', season: '2026', on: day('2026-10-25') },
  {
    treeId: 2,
    tree: 'A; "odd", name\\ with 🌳 and more signs than a line of the file may hold, folded',
    member: 'Bo',
    kind: 'ripe-watch',
    season: '2026/27',
    on: day('2027-02-28'),
  },
];

/** The file read by another library than the one that wrote it. */
function readBack(bytes: Uint8Array) {
  const calendar = new ICAL.Component(ICAL.parse(new TextDecoder().decode(bytes)));
  return calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component);
    return {
      uid: event.uid,
      summary: event.summary,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      allDay: event.startDate.isDate && event.endDate.isDate,
      zone: component.getFirstProperty('dtstart')?.getParameter('tzid'),
    };
  });
}

describe('the calendar file', () => {
  it('has every date as an all-day event on its day, without a zone', () => {
    const { bytes, name } = calendarFile(items, 'Fig dates', new Date('2026-06-01T10:00:00Z'));
    expect(name).toMatch(/\.ics$/);
    const events = readBack(bytes);
    expect(events.map(({ start, end, allDay, zone }) => [start, end, allDay, zone])).toEqual([
      ['2026-07-07', '2026-07-08', true, undefined],
      ['2026-10-25', '2026-10-26', true, undefined],
      ['2027-02-28', '2027-03-01', true, undefined],
    ]);
    expect(events[0]?.summary).toContain('Pot 3');
    expect(events[2]?.summary).toContain(items[2]?.tree);
    expect(events[2]?.summary).toContain('Bo’s');
  });

  it('keeps a date’s UID when the date moves, so that a later file moves it', () => {
    const later = items.map((item) => ({ ...item, on: day('2026-07-20') }));
    const uids = (list: readonly CalendarItem[]) =>
      readBack(calendarFile(list, 'Fig dates', new Date(0)).bytes).map(({ uid }) => uid);
    expect(uids(later)).toEqual(uids(items));
    expect(new Set(uids(items)).size).toBe(items.length);
  });

  // RFC 5545, 3.1: lines are ended by CRLF and folded at 75 octets.
  it('ends lines and folds them as the standard says', () => {
    const text = new TextDecoder().decode(calendarFile(items, 'Fig dates', new Date(0)).bytes);
    const lines = text.split('\r\n');
    expect(text.replaceAll('\r\n', '')).not.toContain('\n');
    for (const line of lines) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  });

  it.each(['America/Los_Angeles', 'Pacific/Kiritimati', 'Australia/Lord_Howe'])(
    'names the same days on a host in %s',
    (zone) => {
      const script = fileURLToPath(new URL('calendar-host.ts', import.meta.url));
      const text = execFileSync(process.execPath, ['--import', 'tsx', script], {
        env: { ...process.env, TZ: zone },
        encoding: 'utf8',
      });
      expect(text.match(/DTSTART;VALUE=DATE:(\d+)/)?.[1]).toBe('20260707');
      expect(text.match(/DTEND;VALUE=DATE:(\d+)/)?.[1]).toBe('20260708');
    },
  );
});
