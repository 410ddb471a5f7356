import { describe, expect, it } from 'vitest';
import { type Cue, cueLength } from '../../client/speak/cues.ts';
import {
  type Announcement,
  type By,
  isHeard,
  newSpeaker,
  type SpeakerEvent,
} from '../../client/speak/speaker.ts';
import { SpeakerRig } from './speaker-rig.ts';

const rigOf = (by: By): SpeakerRig => {
  const rig = new SpeakerRig();
  rig.speaker = { ...rig.speaker, by };
  return rig;
};
const TEN_LETTERS = 'Vertical: ';

describe('a voice that was asked has so long to begin, ms', () => {
  it.each<[By, number]>([
    ['phone', 2_000],
    ['server', 6_000],
  ])('of the %s: %d', (by, within) => {
    const rig = rigOf(by).say(5, 'instruction', 'Turn.');
    expect(rig.effects).toEqual([{ do: 'speak', text: 'Turn.', by }]);
    expect(rig.pass(within - 1).effects).toEqual([]);
    expect(rig.pass(1).effects).toEqual([{ do: 'cut' }]);
  });
});

describe('a voice that began is taken for done, should it not say so, a second and 150 ms a letter after its last moment to begin', () => {
  it.each<[By, string, number]>([
    ['phone', TEN_LETTERS, 4_500],
    ['phone', '', 3_000],
    ['server', TEN_LETTERS, 8_500],
  ])('the voice of the %s saying "%s": after %d ms', (by, text, after) => {
    const rig = rigOf(by).say(4, 'readback', text).say(5, 'instruction', 'Turn.');
    rig.do({ on: 'began' });
    expect(rig.pass(after - 1).effects).toEqual([]);
    expect(rig.pass(1).spoke).toEqual(['Turn.']);
  });
});

it('a voice that was cut rests for 200 ms', () => {
  const rig = new SpeakerRig().say(5, 'instruction', 'Old.').say(6, 'instruction', 'New.');
  expect(rig.pass(199).spoke).toEqual([]);
  expect(rig.pass(1).spoke).toEqual(['New.']);
});

describe('words that wait', () => {
  it.each<[string, number, string[]]>([
    ['are said a moment before their end', 999, ['Turn.']],
    ['are not said at their end', 1_000, []],
  ])('%s', (_, at, said) => {
    const rig = new SpeakerRig()
      .say(4, 'readback', 'Heard.')
      .say(5, 'instruction', 'Turn.', { until: 1_000 });
    rig.now = at;
    expect(rig.do({ on: 'ended' }).spoke).toEqual(said);
  });

  it('go in the order of the log, whatever order they came in', () => {
    const rig = new SpeakerRig().do({ on: 'microphone', open: true });
    rig.say(7, 'readback', 'Third.').say(5, 'notice', 'First.').say(6, 'query', 'Second.');
    const said = [rig.do({ on: 'microphone', open: false }).spoke];
    for (let i = 0; i < 3; i++) said.push(rig.do({ on: 'ended' }).spoke);
    expect(said).toEqual([['First.'], ['Second.'], ['Third.'], []]);
  });

  it.each<[Announcement['kind'], string[]]>([
    ['instruction', ['New.']],
    ['readback', ['New.']],
    ['query', ['New.']],
    ['notice', ['Old.', 'New.']],
  ])('give way to newer ones of their kind, but for notices: %s', (kind, left) => {
    const rig = new SpeakerRig().do({ on: 'microphone', open: true });
    rig.say(5, kind, 'Old.').say(6, kind, 'New.');
    expect(rig.speaker.waiting.map(({ text }) => text)).toEqual(left);
  });

  it('are left alone when another instruction is withdrawn, and left out when theirs is', () => {
    const rig = new SpeakerRig().do({ on: 'microphone', open: true });
    rig.say(5, 'instruction', 'Turn.').say(6, 'query', 'Which?');
    expect(rig.do({ on: 'withdraw', seq: 4 }).speaker.waiting).toHaveLength(2);
    expect(rig.do({ on: 'withdraw', seq: 5 }).speaker.waiting.map(({ text }) => text)).toEqual(['Which?']);
  });

  it('are left alone by newer ones of another kind', () => {
    const rig = new SpeakerRig().do({ on: 'microphone', open: true });
    rig.say(5, 'instruction', 'Turn.').say(6, 'query', 'Which?').say(7, 'readback', 'Heard.');
    expect(rig.speaker.waiting.map(({ text }) => text)).toEqual(['Turn.', 'Which?', 'Heard.']);
  });
});

describe('what is being said', () => {
  const turn = () => new SpeakerRig().say(5, 'instruction', 'Turn.').do({ on: 'began' });
  const heard = () => new SpeakerRig().say(5, 'readback', 'Heard.').do({ on: 'began' });
  const newer = (kind: Announcement['kind']): SpeakerEvent => ({
    on: 'say',
    announcement: { seq: 6, kind, text: 'New.', until: 60_000 },
  });

  it.each<[string, () => SpeakerRig, SpeakerEvent, boolean]>([
    ['an instruction is cut by a newer one', turn, newer('instruction'), true],
    ['an instruction is not cut by a read-back', turn, newer('readback'), false],
    ['a read-back is not cut by an instruction', heard, newer('instruction'), false],
    ['a read-back is not cut by a newer one', heard, newer('readback'), false],
    ['an instruction is cut when it is withdrawn', turn, { on: 'withdraw', seq: 5 }, true],
    ['an instruction is not cut when another is withdrawn', turn, { on: 'withdraw', seq: 4 }, false],
    ['anything is cut when the link is lost', heard, { on: 'forget' }, true],
    ['anything is cut by the open microphone', heard, { on: 'microphone', open: true }, true],
    ['anything is cut when the phone is muted', heard, { on: 'mute', muted: true }, true],
    ['nothing is cut by a first touch', turn, { on: 'unlock' }, false],
    ['nothing is cut by a signal', turn, { on: 'cue', cue: 'stop' }, false],
  ])('%s', (_, saying, event, isCut) => {
    expect(
      saying()
        .do(event)
        .effects.some((effect) => effect.do === 'cut'),
    ).toBe(isCut);
  });

  it.each<SpeakerEvent>([
    { on: 'forget' },
    { on: 'withdraw', seq: 5 },
    { on: 'microphone', open: true },
    { on: 'mute', muted: true },
    { on: 'began' },
    { on: 'ended' },
  ])('nothing is cut where nothing is said: $on', (event) => {
    const rig = new SpeakerRig();
    expect(rig.do(event).effects).toEqual([]);
    expect(rig.pass(0).say(6, 'instruction', 'Turn.').speaker.saying?.text).toBe(
      event.on === 'microphone' || event.on === 'mute' ? undefined : 'Turn.',
    );
  });

  it('counts as said only when it came to its end', () => {
    expect(newSpeaker(false).said).toBe(-1);
    expect(turn().speaker.said).toBe(-1);
    expect(turn().do({ on: 'ended' }).speaker.said).toBe(5);
    expect(turn().do({ on: 'withdraw', seq: 5 }).speaker.said).toBe(-1);
    expect(turn().do({ on: 'forget' }).speaker.said).toBe(-1);
    expect(turn().pass(60_000).speaker.said).toBe(-1);
    expect(heard().do({ on: 'ended' }).speaker.said).toBe(-1);
    expect(new SpeakerRig().do({ on: 'ended' }).speaker.said).toBe(-1);
  });
});

describe('after the open microphone', () => {
  it('what it cut off comes first, whole and with all that belongs to it', () => {
    const rig = new SpeakerRig()
      .say(5, 'instruction', 'Turn.', { cue: 'act', until: 9_000 })
      .say(6, 'query', 'Which?')
      .do({ on: 'microphone', open: true });
    expect(rig.speaker.waiting[0]).toEqual({
      seq: 5,
      kind: 'instruction',
      text: 'Turn.',
      cue: 'act',
      until: 9_000,
    });
    expect(rig.speaker.waiting.map(({ text }) => text)).toEqual(['Turn.', 'Which?']);
    const other = new SpeakerRig().say(5, 'notice', 'Not yet.').do({ on: 'microphone', open: true });
    expect(other.speaker.waiting).toEqual([{ seq: 5, kind: 'notice', text: 'Not yet.', until: 60_000 }]);
  });

  it('what it cut off is left out where something newer waits already', () => {
    const rig = new SpeakerRig().say(5, 'readback', 'Heard 14.').say(6, 'readback', 'Heard 142.');
    rig.do({ on: 'microphone', open: true });
    expect(rig.speaker.waiting.map(({ text }) => text)).toEqual(['Heard 142.']);
  });

  it('what it cut off is kept where something of another kind waits', () => {
    const rig = new SpeakerRig().say(5, 'readback', 'Heard 14.').say(6, 'query', 'Which?');
    rig.do({ on: 'microphone', open: true });
    expect(rig.speaker.waiting.map(({ text }) => text)).toEqual(['Heard 14.', 'Which?']);
  });
});

describe('a phone that must be quiet', () => {
  it('keeps nothing that came while it was muted, and forgets what waited', () => {
    const rig = new SpeakerRig().say(4, 'readback', 'Heard.').say(5, 'instruction', 'Turn.');
    rig.do({ on: 'mute', muted: true });
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    rig.say(6, 'instruction', 'Hold.');
    expect(rig.speaker.waiting).toEqual([]);
    expect(rig.do({ on: 'mute', muted: false }).effects).toEqual([]);
    expect(rig.pass(1_000).say(7, 'instruction', 'Read.').spoke).toEqual(['Read.']);
  });

  it('begins so when it was so before, and unmuted otherwise', () => {
    expect(newSpeaker(true).muted).toBe(true);
    expect(newSpeaker(true, 'server')).toEqual({
      waiting: [],
      by: 'server',
      restUntil: 0,
      soundingUntil: 0,
      microphoneOpen: false,
      muted: true,
      unlocked: false,
      silent: false,
      said: -1,
    });
    expect(newSpeaker(false)).toMatchObject({ by: 'phone', muted: false });
  });

  it('gives no signal before the first touch, nor into the open microphone', () => {
    const rig = new SpeakerRig();
    expect(rig.do({ on: 'cue', cue: 'stop' }).effects).toEqual([{ do: 'cue', cue: 'stop' }]);
    rig.do({ on: 'microphone', open: true });
    expect(rig.do({ on: 'cue', cue: 'stop' }).effects).toEqual([]);
    rig.speaker = newSpeaker(false);
    expect(rig.do({ on: 'cue', cue: 'stop' }).effects).toEqual([]);
  });
});

describe('a signal is to be heard for so long, ms', () => {
  it.each<[Cue, number]>([
    ['act', 280],
    ['hold', 620],
    ['stop', 480],
    ['ok', 490],
  ])('"%s": %d', (cue, length) => {
    expect(cueLength(cue)).toBe(length);
    const rig = new SpeakerRig();
    rig.now = 10_000;
    expect(isHeard(rig.speaker)).toBe(false);
    expect(isHeard(rig.do({ on: 'cue', cue }).speaker)).toBe(true);
    expect(isHeard(rig.pass(length - 1).speaker)).toBe(true);
    expect(isHeard(rig.pass(1).speaker)).toBe(false);
  });

  it('and a shorter one within it does not end it', () => {
    const rig = new SpeakerRig().do({ on: 'cue', cue: 'hold' }).pass(100).do({ on: 'cue', cue: 'act' });
    expect(isHeard(rig.pass(519).speaker)).toBe(true);
    expect(isHeard(rig.pass(1).speaker)).toBe(false);
  });

  it('and no shorter with words behind it', () => {
    const rig = new SpeakerRig().say(5, 'instruction', 'Turn.', { cue: 'act' });
    expect(rig.effects.map((effect) => effect.do)).toEqual(['cue', 'speak']);
    expect(isHeard(rig.pass(279).speaker)).toBe(true);
    expect(isHeard(rig.pass(1).speaker)).toBe(false);
  });

  it('and words from their first sound to their last', () => {
    const rig = new SpeakerRig().say(5, 'instruction', 'Turn.');
    expect(isHeard(rig.speaker)).toBe(false);
    expect(isHeard(rig.do({ on: 'began' }).speaker)).toBe(true);
    expect(isHeard(rig.do({ on: 'ended' }).speaker)).toBe(false);
  });
});
