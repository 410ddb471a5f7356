import type { FactOf } from '../model/facts.ts';

/** About the keys of a job or a site: who has one, and that one was taken away. */

export const KEY_TAKEN =
  'The key of this phone was taken away by the panel or the desk. What the server had acknowledged is in the record; what still waits here was not sent.';
export const ONLY_PANEL_OR_DESK = 'Only the panel phone and the desk see and change who has a key.';
export const NO_SUCH_KEY = 'There is no such key, or it was taken away before.';
export const OWN_KEY = 'A phone cannot take its own key away. Leave the job instead.';
export const DESK_NEEDS_NEXT = 'The link of the desk is only exchanged for another one: give "next".';
export const SEATS_HAVE_CODES = 'Only links are exchanged. Whoever is to have a seat joins with a code.';

const ROLE_NAMES: Record<FactOf<'key-withdrawn'>['role'], string> = {
  panel: 'Panel phone',
  emitter: 'Emitter phone',
  watcher: 'Link to watch',
  desk: 'Link of the desk',
};

export const keyRoleText = (role: FactOf<'key-withdrawn'>['role']): string => ROLE_NAMES[role];

export const keyWithdrawnText = ({ role }: Pick<FactOf<'key-withdrawn'>, 'role'>): string =>
  `${ROLE_NAMES[role]}: its key was taken away`;
