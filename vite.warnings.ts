import type { Rollup } from 'vite';

/** Notes to the bundler that stand where it cannot read them (zod), and an `eval` (onnxruntime-web). */
const OF_PACKAGES: (string | undefined)[] = ['INVALID_ANNOTATION', 'EVAL'];

/** Leaves out what the bundler says of packages as they came, where nobody here can mend it. */
export const onwarn: Rollup.WarningHandlerWithDefault = (warning, say) => {
  const inPackage = warning.id?.includes('/node_modules/');
  if (!(inPackage && OF_PACKAGES.includes(warning.code))) say(warning);
};
