import { describe, expect, it } from 'vitest';
import { CUES } from '../../client/speak/cues.ts';
import { lineFor } from '../../client/speak/script.ts';
import {
  isHeard,
  newSpeaker,
  REST_AFTER_CUT_MS,
  SERVER_START_WITHIN_MS,
  START_WITHIN_MS,
} from '../../client/speak/speaker.ts';
import { spoken } from '../../src/grammar/speak.ts';
import { instruction, logOf, QUARTER_TURN } from './fixtures.ts';
import { SpeakerRig } from './speaker-rig.ts';

describe('the voice of a phone', () => {
  it('says a read-back before the instruction that came with it, and never both at once', () => {
    const rig = new SpeakerRig().say(4, 'readback', 'Heard one four two.');
    expect(rig.spoke).toEqual(['Heard one four two.']);
    rig.say(5, 'instruction', 'A quarter turn.');
    expect(rig.spoke).toEqual([]);
    rig.do({ on: 'began' }).do({ on: 'ended' });
    expect(rig.spoke).toEqual(['A quarter turn.']);
  });

  it('leaves out an instruction that was superseded before it was said', () => {
    const rig = new SpeakerRig()
      .say(4, 'readback', 'Heard.')
      .say(5, 'instruction', 'Old.')
      .say(6, 'instruction', 'New.');
    rig.do({ on: 'began' }).do({ on: 'ended' });
    expect(rig.spoke).toEqual(['New.']);
    rig.do({ on: 'began' }).do({ on: 'ended' });
    expect(rig.spoke).toEqual([]);
  });

  it('cuts an instruction short when a newer one comes, and rests before it goes on', () => {
    const rig = new SpeakerRig()
      .say(5, 'instruction', 'Old.')
      .do({ on: 'began' })
      .say(6, 'instruction', 'New.');
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    rig.pass(REST_AFTER_CUT_MS - 1);
    expect(rig.spoke).toEqual([]);
    rig.pass(1);
    expect(rig.spoke).toEqual(['New.']);
  });

  it('falls silent at once when an instruction is withdrawn', () => {
    const rig = new SpeakerRig()
      .say(5, 'instruction', 'Turn.')
      .do({ on: 'began' })
      .do({ on: 'withdraw', seq: 5 });
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    expect(rig.pass(10_000).spoke).toEqual([]);
  });

  it('never says an instruction that expired while it waited', () => {
    const rig = new SpeakerRig()
      .say(4, 'readback', 'Heard.')
      .say(5, 'instruction', 'Turn.', { until: 1_000 });
    rig.now = 1_500;
    rig.do({ on: 'began' }).do({ on: 'ended' });
    expect(rig.spoke).toEqual([]);
  });

  it('says nothing into the open microphone, and afterwards what is still worth saying', () => {
    const rig = new SpeakerRig()
      .say(5, 'instruction', 'Turn.')
      .do({ on: 'began' })
      .do({ on: 'microphone', open: true });
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    rig.say(6, 'readback', 'Heard.', { cue: 'act' });
    expect(rig.effects).toEqual([]);
    rig.pass(1_000).do({ on: 'microphone', open: false });
    expect(rig.spoke).toEqual(['Turn.']);
  });

  it('keeps quiet until the first touch, then says what is current', () => {
    const rig = new SpeakerRig();
    rig.speaker = newSpeaker(false);
    expect(rig.say(5, 'instruction', 'Turn.').spoke).toEqual([]);
    expect(rig.do({ on: 'unlock' }).spoke).toEqual(['Turn.']);
  });

  it('tries once more when the voice was swallowed, then tells the person to read', () => {
    const rig = new SpeakerRig().say(5, 'instruction', 'Turn.').pass(START_WITHIN_MS);
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    expect(rig.pass(REST_AFTER_CUT_MS).spoke).toEqual(['Turn.']);
    expect(rig.speaker.silent).toBe(false);
    rig.pass(START_WITHIN_MS);
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    expect(rig.pass(REST_AFTER_CUT_MS).effects).toEqual([{ do: 'speak', text: 'Turn.', by: 'server' }]);
    expect(rig.speaker.silent).toBe(false);
    rig.pass(SERVER_START_WITHIN_MS);
    expect(rig.speaker.silent).toBe(true);
    // The link may be down only now: the phone's own voice is asked again.
    rig.pass(REST_AFTER_CUT_MS).say(6, 'instruction', 'Hold.');
    expect(rig.effects).toEqual([{ do: 'speak', text: 'Hold.', by: 'phone' }]);
    expect(rig.do({ on: 'began' }).speaker.silent).toBe(false);
  });

  it('tells the person to read as soon as the server, too, says that it has no voice', () => {
    const rig = new SpeakerRig().say(5, 'instruction', 'Turn.').do({ on: 'failed' }).pass(REST_AFTER_CUT_MS);
    expect(rig.spoke).toEqual(['Turn.']);
    rig.do({ on: 'failed' }).pass(REST_AFTER_CUT_MS);
    expect(rig.effects).toEqual([{ do: 'speak', text: 'Turn.', by: 'server' }]);
    expect(rig.speaker.silent).toBe(false);
    expect(rig.do({ on: 'failed' }).speaker.silent).toBe(true);
  });

  it('takes no failure for the one that is already being heard', () => {
    const rig = new SpeakerRig().say(5, 'instruction', 'Turn.').do({ on: 'began' }).do({ on: 'failed' });
    expect(rig.effects).toEqual([]);
    expect(rig.do({ on: 'ended' }).speaker).toMatchObject({ silent: false, said: 5 });
  });

  it('goes on with the voice of the server once the phone’s own has failed, under the same rules', () => {
    const rig = new SpeakerRig().say(5, 'instruction', 'Turn.').pass(START_WITHIN_MS).pass(REST_AFTER_CUT_MS);
    rig.pass(START_WITHIN_MS).say(6, 'instruction', 'Hold.').pass(REST_AFTER_CUT_MS);
    expect(rig.effects).toEqual([{ do: 'speak', text: 'Hold.', by: 'server' }]);
    rig.do({ on: 'began' }).say(7, 'instruction', 'Wait.');
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    expect(rig.pass(REST_AFTER_CUT_MS).effects).toEqual([{ do: 'speak', text: 'Wait.', by: 'server' }]);
  });

  it('goes on after a voice that never reports its end', () => {
    const rig = new SpeakerRig()
      .say(5, 'readback', 'Heard.')
      .do({ on: 'began' })
      .say(6, 'instruction', 'Turn.');
    expect(rig.pass(60_000 - 1).spoke).toEqual(['Turn.']);
  });

  it('when muted gives the signal but no words', () => {
    const rig = new SpeakerRig()
      .do({ on: 'mute', muted: true })
      .say(5, 'instruction', 'Turn.', { cue: 'act' });
    expect(rig.effects).toEqual([{ do: 'cue', cue: 'act' }]);
    expect(rig.do({ on: 'mute', muted: false }).spoke).toEqual([]);
  });

  it('counts its signals, too, as its own sound, so that the open ear does not take them for the crew', () => {
    const rig = new SpeakerRig().do({ on: 'mute', muted: true });
    expect(isHeard(rig.speaker)).toBe(false);
    rig.do({ on: 'cue', cue: 'hold' });
    expect(isHeard(rig.speaker)).toBe(true);
    expect(isHeard(rig.pass(600).speaker)).toBe(true);
    expect(isHeard(rig.pass(100).speaker)).toBe(false);
  });

  it('forgets what waits when the link is lost', () => {
    const rig = new SpeakerRig()
      .say(4, 'readback', 'Heard.')
      .say(5, 'instruction', 'Turn.')
      .do({ on: 'forget' });
    expect(rig.effects).toEqual([{ do: 'cut' }]);
    expect(rig.pass(1_000).spoke).toEqual([]);
  });
});

describe('what an entry gives a phone to say', () => {
  const CLOCK = { now: 50_000, offset: 2_000 };
  const [turn] = logOf([instruction(QUARTER_TURN, 'Horizontal: a quarter turn, clockwise.', 100_000)]);

  it('gives both phones the words, but the signal only to the one who is to act', () => {
    const [atEmitter] = lineFor(turn as never, 'emitter', CLOCK);
    const [atPanel] = lineFor(turn as never, 'panel', CLOCK);
    expect(atEmitter).toMatchObject({ on: 'say', announcement: { kind: 'instruction', cue: 'act' } });
    expect(atPanel).toMatchObject({
      on: 'say',
      announcement: { text: 'Horizontal: a quarter turn, clockwise.' },
    });
    expect(atPanel).not.toHaveProperty('announcement.cue');
  });

  it("reckons an instruction's end by the server's clock", () => {
    expect(lineFor(turn as never, 'emitter', CLOCK)[0]).toMatchObject({ announcement: { until: 98_000 } });
  });

  it('says numbers digit by digit', () => {
    expect(spoken('Heard 142.')).toBe('Heard one four two.');
    expect(spoken('Heard -3.5.')).toBe('Heard minus three decimal five.');
    expect(spoken('Lower the gain until the reading is about 0.05.')).toMatch(
      /about zero decimal zero five\.$/,
    );
  });

  it('has signals that differ in rhythm', () => {
    const rhythms = Object.values(CUES).map(({ beeps }) => beeps.map((b) => [b.at, b.for]).join());
    expect(new Set(rhythms).size).toBe(rhythms.length);
    const buzzes = Object.values(CUES).map(({ buzz }) => buzz.join());
    expect(new Set(buzzes).size).toBe(buzzes.length);
    // Only settling, which asks for nothing new, does not shake a phone.
    expect(CUES.settling.buzz).toEqual([]);
  });
});
