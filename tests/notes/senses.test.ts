import { describe, expect, it } from 'vitest';
import { said } from './setting.ts';

const NOT_EVENTS: readonly (readonly [why: string, text: string])[] = [
  ['a denial', "haven't tipped the alma"],
  ['a denial', 'no figs dropped on the alma'],
  ['a plan', 'going to pinch the alma tomorrow'],
  ['a wish', 'wish i had tipped the alma'],
  ['a regret', 'should have pinched the alma weeks ago'],
  ['a condition', 'if the alma drops its figs i give up'],
  ['a near miss', 'almost tipped the alma'],
  ['an expectation', 'expecting figs on the alma by august'],
  ['another season', 'last year the alma had 40 figs'],
  ['a habit', 'alma always drops its figs'],
  ['hearsay', 'my wife says the alma has figs'],
  ['a question', 'should i pinch the alma?'],
  ['a question without a mark', 'is it too late to tip the alma'],
  ['another sense of tipped', 'tipped the watering can over the alma'],
  ['another sense of nipped', 'nipped out to the shop, alma can wait'],
  ['another sense of stopped', 'stopped watering the alma'],
  ['a part of the fruit', 'alma dropped 2 of 7 figs'],
];

describe('what is no event', () => {
  it.each(NOT_EVENTS)('%s logs nothing decisive: "%s"', (_, text) => {
    expect(said(text)).not.toMatch(/tipped|dropped|picked|fruitlets/);
  });

  it("is a remark without a tree when it is somebody else's", () => {
    expect(said("next door's alma is covered in figs")).toBe('garden remark');
    expect(said('my neighbour has a king with 50 brebas')).toBe('garden remark');
  });
});

describe('what is asked back', () => {
  it('asks which tree when two fit, none is named, or it is not on the list', () => {
    expect(said('tipped the kadota')).toBe('ask tree');
    expect(said('tipped it this morning')).toBe('ask tree');
    expect(said('6 off the lsu gold')).toBe('ask tree');
  });

  it('asks for the day when it is to come, does not exist or is too vague', () => {
    expect(said('tipped the alma on july 20')).toBe('ask date');
    expect(said('tipped the alma on june 31')).toBe('ask date');
    expect(said('tipped the alma ages ago')).toBe('ask date');
  });

  it('asks what a bump is, and which crop when the writer does not know', () => {
    expect(said('bumps on the alma')).toBe('ask kind');
    expect(said('celeste update!!')).toBe('ask kind');
    expect(said("3 figs on the king, can't tell if breba or main")).toBe('ask crop');
  });
});

describe('how clauses hang together', () => {
  it('carries the tree on to a pronoun, and a past state to the day of the deed', () => {
    expect(said('tipped the alma sunday, it already had two bumps')).toBe(
      'Alma buds-double 2026-06-28; Alma tipped 2026-06-28',
    );
  });

  it('reads several trees, numbers and days in one message', () => {
    expect(said('tipped two side shoots on the adriatic sunday & picked a doz off the shed celeste 🎉')).toBe(
      'Patio Adriatic tipped 2026-06-28 2; Shed Celeste picked 12',
    );
  });

  it('lets a repair take the place of what it mends', () => {
    expect(said('3 figs on pot 3, wait, 4')).toBe('Pot 3 fruitlets 4');
  });
});
