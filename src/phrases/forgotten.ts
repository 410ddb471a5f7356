import type { FactOf } from '../model/facts.ts';

export const namesForgottenLine = ({ entries, why }: FactOf<'names-forgotten'>): string =>
  entries.length === 1
    ? `The name in entry ${entries[0]} was forgotten: ${why}`
    : `The names in ${entries.length} entries were forgotten: ${why}`;

export const namesKeptLongEnoughText = (days: number): string =>
  `Names are kept for ${days === 1 ? 'a day' : `${days} days`} on this server`;
