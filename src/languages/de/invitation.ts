import type { Sentences } from '../translate.ts';

export const INVITATION: Sentences = {
  'Code for the emitter phone': 'Code für das Telefon am Sender',
  'Code for the panel phone': 'Code für das Telefon der Zentrale',
  'A code for the emitter phone': 'Ein Code für das Telefon am Sender',
  'A code for the panel phone': 'Ein Code für das Telefon der Zentrale',
  'Link to join': 'Link zum Beitreten',
  Share: 'Teilen',
  Copied: 'Kopiert',
  'Asking for a code.': 'Code wird angefragt.',
  'It comes when there is a link.': 'Er kommt, sobald es eine Verbindung gibt.',
  'Ask again': 'Noch einmal anfragen',
  'For one phone, once. Valid for {n} more minutes.': 'Für ein Telefon, einmal. Noch {n} Minuten gültig.',
  'For one phone, once. Valid for one more minute.': 'Für ein Telefon, einmal. Noch eine Minute gültig.',
  'By name, where a device finds it:': 'Mit Namen, wo ein Gerät ihn findet:',
  'This page was opened as {x}, which only this device can reach. Open it at the network address that the server prints. Then the other phone can join.':
    'Diese Seite wurde als {x} geöffnet, was nur dieses Gerät erreicht. Öffnen Sie sie unter der Netzadresse, die der Server ausgibt. Dann kann das andere Telefon beitreten.',
};
