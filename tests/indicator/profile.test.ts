import { describe, expect, it } from 'vitest';
import { difference, type Shown, teach } from '../../src/indicator/profile.ts';
import { type Before, placeOf, sense } from '../../src/indicator/sense.ts';
import type { Profile } from '../../src/model/sensor.ts';

const at = (value: number, sd = 0.3) => ({ value, sd });

describe('what the person teaches', () => {
  it('a tone that grows louder follows by its level, one that grows higher by its pitch', () => {
    const louder = teach({}, { level: at(-40), pitch: at(60) }, { level: at(-10), pitch: at(60) });
    expect(louder).toMatchObject({ feature: 'level', some: -40, plenty: -10 });
    expect(louder).not.toHaveProperty('none');
    const higher = teach({}, { level: at(-20), pitch: at(60) }, { level: at(-19), pitch: at(72) });
    expect(higher).toMatchObject({ feature: 'pitch' });
  });

  it('a lamp that blinks faster follows by its rate, and one that turns from red to green by its hue', () => {
    const faster = teach({ level: at(-30), rate: at(0, 0.05) }, { rate: at(1, 0.05) }, { rate: at(5, 0.05) });
    expect(faster).toMatchObject({ feature: 'rate', none: 0 });
    expect(teach({}, { hue: at(350) }, { hue: at(110) })).toMatchObject({ feature: 'hue' });
  });

  it('one that grows darker with the light is understood too', () => {
    expect(teach({ level: at(0) }, { level: at(-10) }, { level: at(-30) })).toMatchObject({
      some: -10,
      plenty: -30,
    });
  });

  // Eight times the scatter, on both sides of it.
  it.each<[string, Shown, Shown, Shown, string | undefined]>([
    ['nothing was there', {}, {}, { level: at(-10) }, 'nothing-there'],
    ['some and plenty are alike', {}, { level: at(-20) }, { level: at(-17.7) }, 'alike'],
    ['some and plenty are just apart', {}, { level: at(-20) }, { level: at(-17.5) }, undefined],
    ['none is like some', { level: at(-22.3) }, { level: at(-20) }, { level: at(0) }, 'none-like-some'],
    ['none is just apart from some', { level: at(-22.5) }, { level: at(-20) }, { level: at(0) }, undefined],
    ['none lies between', { level: at(-10) }, { level: at(-20) }, { level: at(0) }, 'no-order'],
  ])('%s', (_, none, some, plenty, fault) => {
    const taught = teach(none, some, plenty);
    expect(typeof taught === 'string' ? taught : undefined).toBe(fault);
  });

  it('a hue goes the short way round', () => {
    expect(difference('hue', 350, 10)).toBe(20);
    expect(difference('hue', 10, 350)).toBe(-20);
    expect(difference('level', 350, 10)).toBe(-340);
  });
});

/** Level from -40 dB at none over -30 to -10 at plenty; single looks scatter by 0.2. */
const LEVEL: Profile = { feature: 'level', none: -40, some: -30, plenty: -10, sd: 0.2 };
const DARKER: Profile = { feature: 'level', none: -10, some: -30, plenty: -50, sd: 0.2 };
const word = (db: number, before?: Before, profile = LEVEL, sd = 0.2) =>
  sense(profile, { level: { value: db, sd } }, before)?.word;
const place = (db: number, profile = LEVEL) => placeOf(profile, db);

describe('what is said of the light', () => {
  // Three times the scatter is 0.6 dB, three hundredths of the way 0.6 dB as well.
  it.each([
    [-20, -20, 'steady'],
    [-19.45, -20, 'steady'],
    [-19.35, -20, 'rising'],
    [-20.55, -20, 'steady'],
    [-20.65, -20, 'falling'],
  ])('%d dB after %d: %s', (now, before, said) => {
    expect(word(now, place(before))).toBe(said);
  });

  it.each([
    [-50, 'falling', -20],
    [-20, 'steady', undefined],
  ])(
    '%d dB: %s is not said where there is nothing to hold it against, or nothing there',
    (db, not, before) => {
      const said = word(db, before === undefined ? undefined : place(before));
      if (db === -50) expect(said).not.toBe(not);
      else expect(said).toBe('steady');
    },
  );

  // Half way from none to some; and a twentieth of the way before plenty.
  it.each([
    [-35.1, 'nothing'],
    [-34.9, 'steady'],
    [-11.1, 'steady'],
    [-10.9, 'too-strong'],
    [0, 'too-strong'],
  ])('%d dB: %s', (db, said) => {
    expect(word(db)).toBe(said);
  });

  it('one that grows darker rises when it is darker', () => {
    expect(word(-41, place(-40, DARKER), DARKER)).toBe('rising');
    expect(word(-39, place(-40, DARKER), DARKER)).toBe('falling');
    expect(word(-15, undefined, DARKER)).toBe('nothing');
  });

  it('nothing is said of the feature where it is not there: it is nothing', () => {
    expect(sense({ ...LEVEL, none: undefined }, {}, 0.5)).toEqual({ word: 'nothing' });
  });

  it.each<[string, Profile, Shown]>([
    ['a lamp without a colour, where none had one', { ...LEVEL, feature: 'hue' }, { level: at(-20) }],
    ['a blinking too slow to be counted', { ...LEVEL, feature: 'rate', none: undefined }, { level: at(-20) }],
  ])('%s is not taken for nothing', (_, profile, shown) => {
    expect(sense(profile, shown, 0.5)).toBeUndefined();
  });

  it.each<[Before, string]>([
    ['nothing', 'rising'],
    ['too-strong', 'falling'],
  ])('after %s any light is %s', (before, said) => {
    expect(word(-20, before)).toBe(said);
  });

  // Four times what it scattered when it was taught.
  it.each([
    [0.79, 'steady'],
    [0.81, 'changing'],
  ])('while single looks scatter by %d dB: %s', (sd, said) => {
    expect(word(-20, place(-20), LEVEL, sd)).toBe(said);
  });
});
