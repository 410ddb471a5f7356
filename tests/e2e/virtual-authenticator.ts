import type { Page } from 'playwright-core';

/** A passkey device in the browser of a page (Chrome DevTools Protocol, domain WebAuthn): its person always agrees. */
export interface VirtualAuthenticator {
  /** How many passkeys it holds. */
  count(): Promise<number>;
  /** From now on its person does not prove who they are, or does again. */
  verifies(does: boolean): Promise<void>;
  /** The device is lost. */
  remove(): Promise<void>;
}

export async function addAuthenticator(page: Page): Promise<VirtualAuthenticator> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('WebAuthn.enable');
  const { authenticatorId } = await cdp.send('WebAuthn.addVirtualAuthenticator', {
    options: {
      protocol: 'ctap2',
      transport: 'internal',
      hasResidentKey: true,
      hasUserVerification: true,
      isUserVerified: true,
      automaticPresenceSimulation: true,
    },
  });
  return {
    async count() {
      return (await cdp.send('WebAuthn.getCredentials', { authenticatorId })).credentials.length;
    },
    async verifies(isUserVerified) {
      await cdp.send('WebAuthn.setUserVerified', { authenticatorId, isUserVerified });
    },
    async remove() {
      await cdp.send('WebAuthn.removeVirtualAuthenticator', { authenticatorId });
    },
  };
}
