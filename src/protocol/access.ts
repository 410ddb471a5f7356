import * as z from 'zod/mini';
import { Seat } from '../model/facts.ts';
import { Person, PhoneId } from '../model/person.ts';
import { CODE_ALPHABET, CODE_LENGTH } from './join-code.ts';

/** A join code as it was typed. */
export const JoinCode = z.pipe(
  z.pipe(
    z.string(),
    z.transform((s) => s.toUpperCase().replace(/[\s-]/g, '')),
  ),
  z.string().check(z.regex(new RegExp(`^[${CODE_ALPHABET}]{${CODE_LENGTH}}$`))),
);

/** A role in the protocol: one of the two seats, or a watcher who can only read. */
export const Role = z.enum(['panel', 'emitter', 'watcher']);
export type Role = z.infer<typeof Role>;

/** 128 bits, base64url. */
export const Token = z.string().check(z.regex(/^[A-Za-z0-9_-]{22}$/));

export const Invite = z.object({
  seat: Seat,
  code: z.string(),
  /** Path and fragment of the join page; the phone puts its own origin before it. */
  path: z.string(),
  expiresAt: z.number(),
});
export type Invite = z.infer<typeof Invite>;

/** Who takes a seat: the kind of phone, its id, and its person; all but the kind only if they were given. */
export const Sitter = z.object({
  device: z._default(z.string().check(z.maxLength(80)), ''),
  phone: z.optional(PhoneId),
  person: z.optional(Person),
});
export type Sitter = z.infer<typeof Sitter>;
