import { describe, expect, it } from 'vitest';
import { passkeyTrouble } from '../../client/account/trouble.ts';

describe('a passkey', () => {
  // WebAuthn Level 2, 5.1.3, step 7: the effective domain must be a valid domain; an address is none. From memory.
  it.each([
    ['ladder.firm.example', true, true, undefined],
    ['localhost', true, true, undefined],
    ['server.local', true, true, undefined],
    ['192.168.1.20', true, true, 'address'],
    ['192.168.1.20', false, false, 'address'],
    ['127.0.0.1', true, true, 'address'],
    ['[fd00::1]', true, true, 'address'],
    ['hall3.local', false, true, 'insecure'],
    ['hall-3', false, false, 'insecure'],
    ['hall-3', true, false, 'unable'],
  ] as const)('on %s, secure %j, able %j: %j', (hostname, isSecure, hasPasskeys, trouble) => {
    expect(passkeyTrouble({ hostname, isSecure, hasPasskeys })).toBe(trouble);
  });
});
