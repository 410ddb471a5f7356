import * as z from 'zod/mini';
import { describeFact } from '../log/schema.ts';
import { SignedHead } from '../log/signed-head.ts';
import { Advice } from '../model/advice.ts';
import { Entry } from '../model/entry.ts';
import { Fact } from '../model/facts.ts';
import { Guidance } from '../model/guidance.ts';
import { Head } from '../model/ids.ts';
import { PairPlan } from '../model/pair-plan.ts';
import { Person } from '../model/person.ts';
import { AdjusterProfile, MeterProfile } from '../model/profile.ts';
import { WrittenSetup } from '../model/written.ts';
import { Invite } from './access.ts';

/** Parts that many answers share, by the name that they get in a description. */
const SHARED = {
  Entry,
  Fact,
  Advice,
  Head,
  SignedHead,
  Person,
  Invite,
  MeterProfile,
  AdjusterProfile,
  PairPlan,
  WrittenSetup,
  Guidance,
};

export type JsonSchema = z.core.JSONSchema.BaseSchema;

interface Options {
  /** What is before a name in a reference to it. */
  readonly at: string;
  readonly target: 'draft-2020-12' | 'draft-7';
}

/**
 * The schemas of what a server sends, each with the parts it shares under their own names. A client must ignore fields
 * that it does not know, so none is ruled out.
 */
export function schemasSent(
  named: Record<string, z.ZodMiniType>,
  options: Options,
): Record<string, JsonSchema> {
  return schemasOf({ ...SHARED, ...named }, 'output', options, ({ additionalProperties, ...schema }) => ({
    ...schema,
    // A record says of what its values are.
    ...(additionalProperties !== false && additionalProperties !== undefined && { additionalProperties }),
  }));
}

/** The schemas of what a client sends, as it writes it. `strict`: a field that is not named is refused. */
export function schemasTaken(
  named: Record<string, z.ZodMiniType>,
  strict: boolean,
  options: Options,
): Record<string, JsonSchema> {
  return schemasOf(named, 'input', options, (schema) =>
    strict && schema.properties ? { ...schema, additionalProperties: false } : schema,
  );
}

function schemasOf(
  named: Record<string, z.ZodMiniType>,
  io: 'input' | 'output',
  { at, target }: Options,
  change: (schema: JsonSchema) => JsonSchema,
): Record<string, JsonSchema> {
  const registry = z.registry<{ id: string }>();
  for (const [id, schema] of Object.entries(named)) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, {
    io,
    target,
    uri: (id) => at + id,
    // What a form cannot say (which of two figures is the larger) is in words in docs/protocol.md.
    unrepresentable: 'any',
    override({ jsonSchema }) {
      describeFact(jsonSchema);
      const changed = change({ ...jsonSchema });
      for (const key of Object.keys(jsonSchema)) delete jsonSchema[key];
      Object.assign(jsonSchema, changed);
    },
  });
  return Object.fromEntries(
    Object.entries(schemas).map(([id, { $id: _, $schema: __, ...schema }]) => [id, schema]),
  );
}
