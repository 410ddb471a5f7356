/** What a package that the running program needs may be licensed under, by its SPDX name. */
const ALLOWED: readonly string[] = [
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
];

/** Packages looked at one by one, with what their package.json states. */
const LOOKED_AT: readonly { name: RegExp; states: string; because: string }[] = [
  {
    name: /^dejavu-fonts-ttf$/,
    states: 'SEE LICENSE IN README.md AND LICENSE',
    because: 'Bitstream Vera, Arev and public domain, all free to pass on: its LICENSE',
  },
  { name: /^flatbuffers$/, states: 'SEE LICENSE IN LICENSE.txt', because: 'Apache-2.0: its LICENSE.txt' },
  { name: /^png-js$/, states: '', because: 'MIT: its LICENSE' },
  {
    name: /^@img\/sharp-/,
    states: 'LGPL-3.0-or-later',
    because:
      'libvips, a library of its own beside sharp; @xenova/transformers installs it, and we never call it',
  },
];

/** Whether a package of this name may be needed, with the licence that its package.json states. */
export const isAllowed = (name: string, states: string): boolean =>
  meets(states) || LOOKED_AT.some((one) => one.name.test(name) && one.states === states);

/** An expression of SPDX names: any side of an OR will do, every side of an AND must. */
function meets(expression: string): boolean {
  const names = expression.replace(/[()]/g, '');
  return names.split(' OR ').some((side) => side.split(' AND ').every((one) => ALLOWED.includes(one)));
}
