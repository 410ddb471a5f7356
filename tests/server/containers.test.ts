import { readFileSync } from 'node:fs';
import { DCLinter } from 'dclint';
import { validate } from 'dockerfile-utils';
import { expect, it } from 'vitest';

// There is nothing here that could run them: what stands in them is held to the published schema of compose files
// (github.com/compose-spec, as dclint brings it) and to the instructions that Docker knows.

const COMPOSE = 'docs/deploy/compose.yaml';
const CONTAINERFILE = 'docs/deploy/Containerfile';

/** The order in which services and their keys stand is ours: what is needed first stands first. Quotes are as our formatter sets them. */
const OUR_STYLE: Record<string, 0 | [2, { quoteType: 'double' }]> = {
  'service-keys-order': 0,
  'services-alphabetical-order': 0,
  'top-level-properties-order': 0,
  'require-quotes-in-ports': [2, { quoteType: 'double' }],
};

const linter = () => new DCLinter({ quiet: false, debug: false, exclude: [], rules: OUR_STYLE });

it('the compose file is one, and its linter finds no fault in it', () => {
  const [result] = linter().lintFiles([COMPOSE], false);
  expect(result?.messages.map(({ rule, line, message }) => `${line}: ${rule}: ${message}`)).toEqual([]);
});

it('the Containerfile holds instructions that there are, as they are written', () => {
  const text = readFileSync(CONTAINERFILE, 'utf8');
  const found = validate(text).map(({ range, message }) => `${range.start.line + 1}: ${message}`);
  expect(found).toEqual([]);
  // The linter sees a fault where there is one.
  expect(validate(text.replace('WORKDIR', 'WORKDIRS')).length).toBeGreaterThan(0);
});
