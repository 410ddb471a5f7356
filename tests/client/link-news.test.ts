import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import { logOf, opened } from './fixtures.ts';
import { LinkRig } from './link-rig.ts';

describe('news of the job', () => {
  it.each([
    [
      'who is here',
      { t: 'presence', presence: { panel: 'online', emitter: 'away', watchers: 2 } },
      'presence',
      { panel: 'online', emitter: 'away', watchers: 2 },
    ],
    [
      'whether speech can be used',
      { t: 'speech', speech: { name: 'own', ready: false } },
      'speech',
      { name: 'own', ready: false },
    ],
    [
      'what is being heard',
      { t: 'hearing', seat: 'emitter', id: 'talk-0001', stage: 'working' },
      'hearing',
      { emitter: { id: 'talk-0001', stage: 'working' } },
    ],
  ] as const)('is kept: %s', (_, message, key, value) => {
    expect(new LinkRig().goLive().hear(message).link[key]).toEqual(value);
  });

  it('of one seat leaves the other’s alone, and what is being heard ends with the socket', () => {
    const rig = new LinkRig().goLive();
    rig.hear({ t: 'hearing', seat: 'emitter', id: 'talk-0001', stage: 'working' });
    rig.hear({ t: 'hearing', seat: 'panel', id: 'talk-0002', stage: 'listening' });
    expect(Object.keys(rig.link.hearing)).toEqual(['emitter', 'panel']);
    expect(rig.do({ on: 'closed', conn: 1 }).link.hearing).toEqual({});
  });

  it('an invitation is kept beside the other seat’s, and its letter let go of', () => {
    const invite = (seat: 'panel' | 'emitter') => ({
      seat,
      code: '7KQ2MX',
      path: '/join#7KQ2MX',
      expiresAt: 5,
    });
    const rig = new LinkRig()
      .goLive()
      .do({ on: 'post', letter: { t: 'invite', id: 'invite-01', seat: 'emitter' } });
    rig.hear({ t: 'invite', id: 'invite-01', invite: invite('emitter') });
    rig.hear({ t: 'invite', id: 'invite-02', invite: invite('panel') });
    expect(rig.link.invites).toEqual({ emitter: invite('emitter'), panel: invite('panel') });
    expect(rig.link.outbox).toEqual([]);
  });

  it.each([
    ['is let go of once a phone has taken that seat', {}, undefined],
    ['is kept when the phone stays and only its person changes', { handedOn: true }, 'emitter'],
  ] as const)('an invitation %s', (_, how, left) => {
    const invite = (seat: 'panel' | 'emitter') => ({
      seat,
      code: '7KQ2MX',
      path: '/join#7KQ2MX',
      expiresAt: 5,
    });
    const seated: Fact = { type: 'seated', seat: 'emitter', device: 'phone', takeover: false, ...how };
    const rig = new LinkRig().goLive();
    rig.hear({ t: 'invite', id: 'invite-01', invite: invite('emitter') });
    rig.hear({ t: 'invite', id: 'invite-02', invite: invite('panel') });
    rig.hear({ t: 'entries', entries: logOf([opened, { actor: 'emitter', fact: seated }]).slice(1) });
    expect(rig.link.invites.emitter?.seat).toBe(left);
    expect(rig.link.invites.panel).toEqual(invite('panel'));
  });
});
