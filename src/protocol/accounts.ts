import * as z from 'zod/mini';
import { AccountId, AccountName, AccountRole } from '../model/account.ts';
import { Token } from './access.ts';

/** Who may open sites and jobs: anybody, who shows a passphrase, or who has an account. The owner chooses. */
export const AccessKind = z.enum(['open', 'passphrase', 'accounts']);
export type AccessKind = z.infer<typeof AccessKind>;

/** Who an account belongs to. */
export const Holder = z.object({ name: AccountName, role: AccountRole });
export type Holder = z.infer<typeof Holder>;

/** GET /api/access: who may open sites and jobs here, and what the cookie of the caller shows. */
export const Access = z.object({
  kind: AccessKind,
  /** The caller has shown the passphrase, or is signed in. */
  isIn: z.boolean(),
  /** Whose account, where the caller is signed in. */
  holder: z.optional(Holder),
  /** Where people of the firm sign in with the account that it gives them: its name. */
  sso: z.optional(z.string()),
});
export type Access = z.infer<typeof Access>;

/** POST /api/leave: the session of the caller ends. `everywhere`: so do all others of the same account. */
export const Leave = z.object({ everywhere: z._default(z.boolean(), false) });

/** Bytes of an authenticator, base64url without `=`; long enough for an RSA key with its statement. */
const bytes = (most: number) =>
  z.string().check(z.regex(/^[A-Za-z0-9_-]+$/), z.minLength(1), z.maxLength(most));

/** WebAuthn Level 2, 4: a credential ID has at most 1,023 bytes. */
export const CredentialId = bytes(1_364);
const Device = z._default(z.string().check(z.maxLength(80)), '');

/** What a browser needs to make a passkey (WebAuthn, `PublicKeyCredentialCreationOptions`). */
export const NewPasskey = z.object({
  /** 256 random bits. Good once, for five minutes. */
  challenge: z.string(),
  /** The name under which this server was reached. A passkey is good under this name alone. */
  rpId: z.string(),
  user: z.extend(Holder, { id: AccountId }),
  /** Passkeys that the account has: an authenticator that holds one of them makes no other. */
  has: z.array(CredentialId),
});
export type NewPasskey = z.infer<typeof NewPasskey>;

/** What an authenticator answers when it has made a passkey. */
export const MadePasskey = z.object({
  id: CredentialId,
  clientDataJSON: bytes(2_000),
  attestationObject: bytes(6_000),
  transports: z.optional(z.array(z.string().check(z.maxLength(20))).check(z.maxLength(10))),
});
export type MadePasskey = z.infer<typeof MadePasskey>;

/** POST /api/account/challenge: what a browser needs to use a passkey, whoever's. */
export const SignInChallenge = z.object({ challenge: z.string(), rpId: z.string() });

/** POST /api/account/sign-in. `device`: the kind of phone, for the list of sessions. */
export const SignIn = z.object({
  id: CredentialId,
  clientDataJSON: bytes(2_000),
  authenticatorData: bytes(2_000),
  signature: bytes(2_000),
  userHandle: AccountId,
  device: Device,
});

/** The caller is signed in from now on, and has a cookie. */
export const SignedIn = z.object({ holder: Holder });

/** POST /api/account/invited: what is needed to make the passkey that an invitation is for. */
export const Invited = z.object({ invitation: Token });

/** POST /api/account/accept: uses the invitation up. `account`: as `user.id` was given. */
export const Accept = z.object({
  invitation: Token,
  account: AccountId,
  passkey: MadePasskey,
  device: Device,
});

/** POST /api/account/passkey: one more, for another device. */
export const AddPasskey = z.object({ passkey: MadePasskey });

/** POST /api/account/passkey/remove */
export const RemovePasskey = z.object({ passkey: CredentialId });

/** The beginning of the SHA-256 of what the cookie holds: names a session, and opens nothing. */
export const SessionId = z.string().check(z.regex(/^[0-9a-f]{12}$/));

/** POST /api/account/session/end */
export const EndSession = z.object({ session: SessionId });

/** GET /api/account: the account of the caller. Times: ms. */
export const OwnAccount = z.object({
  holder: Holder,
  /** It is the firm's: there are no passkeys to it here. */
  sso: z.optional(z.literal(true)),
  passkeys: z.array(
    z.object({ id: CredentialId, madeAt: z.number(), usedAt: z.optional(z.number()), rpId: z.string() }),
  ),
  sessions: z.array(
    z.object({ id: SessionId, device: z.string(), since: z.number(), seen: z.number(), own: z.boolean() }),
  ),
});
export type OwnAccount = z.infer<typeof OwnAccount>;

/** Names an invitation, and opens nothing. */
export const InvitationId = z.string().check(z.regex(/^[0-9a-f]{12}$/));

/** GET /api/accounts: everybody who has an account or an invitation. */
export const Accounts = z.object({
  accounts: z.array(
    z.extend(Holder, {
      id: AccountId,
      madeAt: z.number(),
      /** When one of the passkeys was last used. */
      usedAt: z.optional(z.number()),
      passkeys: z.int(),
      /** How many devices are signed in now. */
      sessions: z.int(),
      own: z.boolean(),
    }),
  ),
  invitations: z.array(z.extend(Holder, { id: InvitationId, until: z.number() })),
});
export type Accounts = z.infer<typeof Accounts>;

/** Path and fragment of the page that makes the passkey, with the secret of an invitation. */
export const invitationPath = (secret: string): string => `/invited#${secret}`;

/** POST /api/accounts/invite */
export const InviteHolder = Holder;

/** `path`: of the page that makes the passkey, with the secret after its #; good once, until `until`. */
export const InvitedHolder = z.object({ path: z.string(), until: z.number() });

/** POST /api/accounts/withdraw: an account or an invitation is gone from now on. */
export const WithdrawHolder = z.union([
  z.object({ account: AccountId }),
  z.object({ invitation: InvitationId }),
]);
