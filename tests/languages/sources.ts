import { join, resolve } from 'node:path';
import ts from 'typescript';

/** The pages and the phrases, as the compiler reads them. */
export function sources(): { program: ts.Program; root: string } {
  const root = resolve(import.meta.dirname, '../..');
  const config = ts.readConfigFile(join(root, 'tsconfig.json'), ts.sys.readFile);
  const { fileNames, options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root);
  const wanted = fileNames.filter((file) => /\/(src\/phrases|client)\//.test(file));
  const { tsBuildInfoFile: _, ...rest } = options;
  return { program: ts.createProgram(wanted, { ...rest, incremental: false }), root };
}
