/** What a person reads who signs in with the account that their firm gives them. */

export const NO_SSO = 'This server has no such sign-in. Use a passkey, or ask whoever runs this server.';
export const SSO_BEGIN_AGAIN =
  'This sign-in was not begun on this device, took longer than five minutes, or was used before. Begin again.';

const FAILED: Record<'unreachable' | 'refused' | 'no-role' | 'no-name', (name: string) => string> = {
  unreachable: (name) =>
    `${name} does not answer now. Try again in a minute. If it goes on, tell whoever runs this server.`,
  refused: (name) =>
    `${name} did not sign you in. Begin again. If it goes on, tell whoever runs this server.`,
  'no-role': (name) =>
    `${name} knows you, but gives you no role here. Ask whoever looks after the accounts of your firm.`,
  'no-name': (name) =>
    `${name} does not say your name, and signatures need one. Ask whoever looks after the accounts of your firm.`,
};
export const ssoFailedText = (why: keyof typeof FAILED, name: string): string => FAILED[why](name);

export const signInWithText = (name: string): string => `Sign in with ${name}`;
