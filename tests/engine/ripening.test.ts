import { describe, expect, it } from 'vitest';
import { findCultivar } from '../../src/engine/cultivars.ts';
import type { LearnedSpan } from '../../src/engine/learning.ts';
import { GROUPS, groupOf, RESPONSE_DAYS, RIPENING_GROUPS, spanOf } from '../../src/engine/ripening.ts';

const learned = (records: number): LearnedSpan => ({
  mean: 80,
  meanFrom: 78,
  meanTo: 82,
  from: 73,
  to: 87,
  planning: 85,
  records,
});

describe('ripening groups', () => {
  it('count back 70–80 days for early kinds and about 100 for long ones (common practice, no source)', () => {
    const back = RIPENING_GROUPS.map((group) => GROUPS[group].planningSpan + RESPONSE_DAYS);
    expect(back).toEqual([80, 90, 100, 100]);
  });

  it('give the member’s word precedence over the catalogue', () => {
    const celeste = findCultivar('Celeste');
    expect(groupOf('unknown', celeste)).toBe('early');
    expect(groupOf('late', celeste)).toBe('late');
    expect(groupOf('unknown', null)).toBe('unknown');
  });
});

describe('the span of a tree', () => {
  it('comes from its group where nothing better is known', () => {
    expect(spanOf({ group: 'late' })).toEqual({
      from: 90,
      to: 100,
      planning: 90,
      basis: 'group',
      group: 'late',
    });
    expect(spanOf({ group: 'unknown', cultivar: findCultivar('Black Madeira') }).planning).toBe(90);
  });

  it('is the published one rather than the group’s, planned at its upper end', () => {
    // Brunswick 75–80 days: Miyagi Prefecture, Watari Extension fig bulletins 2017–2018.
    const span = spanOf({ group: 'late', cultivar: findCultivar('Brunswick') });
    expect(span).toMatchObject({ from: 75, to: 80, planning: 80, basis: 'published' });
    expect(span.source).toContain('Miyagi');
    // Houraishi 80–89 days: Yahata & Nogata 2000, J. Jpn. Soc. Hort. Sci.
    expect(spanOf({ group: 'unknown', cultivar: findCultivar('Houraishi') })).toMatchObject({
      from: 80,
      to: 89,
    });
  });

  it('is learned from three records on, and not before', () => {
    const cultivar = findCultivar('Brunswick');
    expect(spanOf({ group: 'mid', cultivar, learned: learned(2) }).basis).toBe('published');
    expect(spanOf({ group: 'mid', cultivar, learned: learned(3) })).toEqual({
      from: 73,
      to: 87,
      planning: 85,
      basis: 'learned',
      records: 3,
    });
  });

  it('is the tree’s own before all', () => {
    const own = { from: 70, to: 85 };
    expect(spanOf({ own, group: 'mid', cultivar: findCultivar('Brunswick'), learned: learned(9) })).toEqual({
      ...own,
      planning: 85,
      basis: 'own',
    });
  });
});
