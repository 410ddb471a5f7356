import type { Sentences } from '../translate.ts';

/** Who watches, and what they say. */
export const WATCHING: Sentences = {
  '{x} is watching and says: {x1}': '{x} sieht zu und sagt: {x1}',
  '{x} watching': '{x} sieht zu',
  '{x} and {n} more watching': '{x} und {n} weitere sehen zu',
  'Say something to the crew': 'Dem Team etwas sagen',
  'Both phones show it and say it. It stays in the record, under your name.':
    'Beide Telefone zeigen es und sagen es. Es bleibt im Protokoll, unter Ihrem Namen.',
  'Your remark': 'Ihre Bemerkung',
  'Send to the crew': 'An das Team senden',
  'One remark waits to be sent.': 'Eine Bemerkung wartet auf das Senden.',
  '{n} remarks wait to be sent.': '{n} Bemerkungen warten auf das Senden.',
  'The remark is in the record.': 'Die Bemerkung steht im Protokoll.',
};
