import { describe, expect, it } from 'vitest';
import { type Day, day } from '../../src/engine/day.ts';
import { mainCropFromDay, mainCropOf, type SeasonObservation } from '../../src/engine/fruit.ts';
import { seasonStarting } from '../../src/engine/season.ts';
import { note } from './season-case.ts';

const read = (observations: readonly SeasonObservation[], bearsBrebas?: boolean) =>
  mainCropOf({
    observations,
    mainCropFrom: '2026-05-10' as Day,
    spanFrom: 90,
    ...(bearsBrebas === undefined ? {} : { bearsBrebas }),
  });

describe('the main crop', () => {
  it('is seen from its earliest fruitlets, in whatever order the notes came', () => {
    const crop = read([note('fruitlets', '2026-06-20', { count: 5 }), note('fruitlets', '2026-06-08')]);
    expect(crop).toMatchObject({ present: true, seen: '2026-06-08', count: 5 });
  });

  it('is never made of brebas', () => {
    expect(read([note('fruitlets', '2026-06-20', { crop: 'breba' })])).toMatchObject({
      present: false,
      maybeBrebasOn: null,
    });
    expect(read([note('ripening', '2026-07-01', { crop: 'breba' })]).present).toBe(false);
    expect(read([note('picked', '2026-07-01', { crop: 'breba' })]).present).toBe(false);
  });

  it('is asked about when an unnamed crop shows before main crop can', () => {
    expect(read([note('fruitlets', '2026-05-09')])).toMatchObject({
      present: false,
      maybeBrebasOn: '2026-05-09',
    });
    expect(read([note('fruitlets', '2026-05-10')])).toMatchObject({ present: true, maybeBrebasOn: null });
    expect(read([note('fruitlets', '2026-05-09', { crop: 'main' })])).toMatchObject({ present: true });
    // A cultivar that bears no brebas leaves nothing to ask.
    expect(read([note('fruitlets', '2026-05-09')], false)).toMatchObject({ present: true });
    expect(read([note('fruitlets', '2026-05-09')], true)).toMatchObject({ present: false });
  });

  it('stops the question once main-crop fruit is known', () => {
    const early = note('fruitlets', '2026-05-01');
    expect(read([early, note('fruitlets', '2026-06-08')]).maybeBrebasOn).toBeNull();
    const main = note('fruitlets', '2026-04-30', { crop: 'main' });
    expect(read([main, early]).maybeBrebasOn).toBeNull();
  });

  it('is gone when all of it dropped, and counted anew after that', () => {
    const seen = note('fruitlets', '2026-06-08');
    expect(read([seen, note('dropped', '2026-06-20')])).toMatchObject({ present: false, seen: null });
    expect(read([seen, note('dropped', '2026-06-20', { crop: 'main' })]).present).toBe(false);
    expect(read([seen, note('dropped', '2026-06-20', { crop: 'breba' })]).present).toBe(true);
    const again = [seen, note('dropped', '2026-06-20'), note('fruitlets', '2026-07-01')];
    expect(read(again)).toMatchObject({ present: true, seen: '2026-07-01' });
  });

  it('takes two notes of one day in the order of their entry', () => {
    const first = note('fruitlets', '2026-06-08');
    const second = note('dropped', '2026-06-08');
    const third = note('fruitlets', '2026-06-08');
    expect(read([second, first]).present).toBe(false);
    expect(read([third, second]).present).toBe(true);
  });

  it('is not undone by a later "none", which is kept for a question', () => {
    const seen = note('fruitlets', '2026-06-08');
    const none = note('no-fruitlets', '2026-06-20');
    expect(read([seen, none])).toMatchObject({ present: true, contradictedOn: '2026-06-20' });
    expect(read([seen, note('no-fruitlets', '2026-06-20', { crop: 'breba' })]).contradictedOn).toBeNull();
    expect(read([seen, none, note('fruitlets', '2026-06-25')]).contradictedOn).toBeNull();
    expect(read([none]).contradictedOn).toBeNull();
  });

  it('is there when it ripens or is picked, even without a note of its fruitlets', () => {
    // An unnamed crop counts only where a main-crop fruitlet had its 90 days from 10 May.
    expect(read([note('ripening', '2026-08-07')])).toMatchObject({ present: false });
    expect(read([note('ripening', '2026-08-08')])).toMatchObject({ present: true, ripeningOn: '2026-08-08' });
    expect(read([note('picked', '2026-08-07')])).toMatchObject({ present: false });
    expect(read([note('picked', '2026-08-08')])).toMatchObject({ present: true, pickedOn: '2026-08-08' });
    expect(read([note('picked', '2026-07-01', { crop: 'main' })])).toMatchObject({
      present: true,
      seen: null,
    });
  });

  it('keeps its first sign of ripening and its first pick', () => {
    const crop = read([
      note('fruitlets', '2026-06-08'),
      note('ripening', '2026-07-30'),
      note('ripening', '2026-08-02'),
      note('picked', '2026-08-03'),
      note('picked', '2026-08-09'),
      note('care', '2026-08-10'),
    ]);
    expect(crop).toMatchObject({ ripeningOn: '2026-07-30', pickedOn: '2026-08-03' });
  });
});

describe('the first day on which an unnamed fig can be main crop', () => {
  const season = seasonStarting(2026, 'N');

  it('is 30 days after leafing out, else after the last frost', () => {
    const leaves = [note('leafed-out', '2026-04-20'), note('leafed-out', '2026-04-25')];
    expect(mainCropFromDay(leaves, day('2026-04-01'), season)).toBe('2026-05-20');
    expect(mainCropFromDay([], day('2026-04-01'), season)).toBe('2026-05-01');
  });

  it('is 15 May, or 15 November in the south, when neither is known', () => {
    expect(mainCropFromDay([], null, season)).toBe('2026-05-15');
    expect(mainCropFromDay([], null, seasonStarting(2026, 'S'))).toBe('2026-11-15');
  });
});
