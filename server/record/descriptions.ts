import { lineSchema } from '../../src/log/schema.ts';
import { asyncApi } from '../../src/protocol/asyncapi.ts';
import { openApi } from '../../src/protocol/openapi.ts';
import { ROUTES, type Route } from '../../src/protocol/routes.ts';
import { csvMetadata } from '../../src/record/csv-file.ts';

interface Description {
  readonly route: Route;
  /** `version`: of the program. */
  readonly make: (version: string) => object;
}

/** Made when it is first asked for: most servers are never asked. */
function once(make: Description['make']): Description['make'] {
  let made: object | undefined;
  return (version) => {
    made ??= make(version);
    return made;
  };
}

/** Describe the wire and the exported files, for people who write other programs. Not secret, so open to all. */
export const DESCRIPTIONS: readonly Description[] = [
  { route: ROUTES.lineSchema, make: once(lineSchema) },
  { route: ROUTES.csvMetadata, make: once(csvMetadata) },
  { route: ROUTES.openApi, make: once(openApi) },
  { route: ROUTES.asyncApi, make: once(asyncApi) },
];
