import type { Sentences } from '../translate.ts';

export const CHECKLIST: Sentences = {
  'Panel: are the alarm outputs isolated? Say yes or no.':
    'Zentrale: Sind die Alarmausgänge abgeschaltet? Sagen Sie „ja“ oder „nein“.',
  'Alarm outputs isolated?': 'Alarmausgänge abgeschaltet?',
  'alarm outputs isolated': 'Alarmausgänge abgeschaltet',
  'alarm outputs not isolated': 'Alarmausgänge nicht abgeschaltet',
  'Panel: who was told that the alarm is out of service? For example, say: told the control room.':
    'Zentrale: Wer wurde informiert, dass der Alarm außer Betrieb ist? Sagen Sie zum Beispiel: „Leitstelle informiert“.',
  'Who was told?': 'Wer wurde informiert?',
  told: 'informiert',
  'told: {x}': 'informiert: {x}',
  'nobody told yet': 'noch niemand informiert',
  'Is the ladder or platform inspected, and safe to climb? Say yes or no.':
    'Ist die Leiter oder Bühne geprüft und sicher zu besteigen? Sagen Sie „ja“ oder „nein“.',
  'Access equipment inspected?': 'Zugang geprüft?',
  'access equipment inspected': 'Zugang geprüft',
  'access equipment not inspected': 'Zugang nicht geprüft',
  'Nobody may look into an aiming laser, here or below. Agreed? Say yes or no.':
    'Niemand darf in einen Ziellaser blicken, weder hier noch unten. Einverstanden? Sagen Sie „ja“ oder „nein“.',
  'Nobody looks into a laser: agreed?': 'Niemand blickt in den Laser: einverstanden?',
  'laser caution agreed': 'Laserwarnung bestätigt',
  'laser caution not agreed': 'Laserwarnung nicht bestätigt',
  'Is the beam path clear from end to end? Say yes or no.':
    'Ist der Strahlweg von einem Ende zum anderen frei? Sagen Sie „ja“ oder „nein“.',
  'Beam path clear?': 'Strahlweg frei?',
  'path clear from end to end': 'Weg von einem Ende zum anderen frei',
  'path not clear': 'Weg nicht frei',
  'Clean the windows of both units as the maker says. Were they cleaned? Say yes or no.':
    'Die Fenster beider Geräte nach Herstellerangabe reinigen. Wurden sie gereinigt? Sagen Sie „ja“ oder „nein“.',
  'Windows of both units cleaned?': 'Fenster beider Geräte gereinigt?',
  'windows cleaned': 'Fenster gereinigt',
  'windows not cleaned': 'Fenster nicht gereinigt',
  'Panel: does the alarm show this pair, in its zone, and no other? Say yes or no.':
    'Zentrale: Zeigt der Alarm dieses Paar in seiner Meldergruppe und kein anderes? Sagen Sie „ja“ oder „nein“.',
  'Right pair and zone on the panel?': 'Richtiges Paar, richtige Gruppe an der Zentrale?',
  'panel shows the right pair and zone': 'Zentrale zeigt das richtige Paar und die richtige Gruppe',
  'panel does not show the right pair and zone':
    'Zentrale zeigt nicht das richtige Paar und die richtige Gruppe',
  'Wiring test: open the line to the panel at the detector, then close it. Did a fault show, and then clear? Say yes or no.':
    'Leitungsprüfung: die Leitung zur Zentrale am Melder öffnen, dann schließen. Kam eine Störung, und ging sie wieder? Sagen Sie „ja“ oder „nein“.',
  'Wiring test: open line gives fault?': 'Leitungsprüfung: offene Leitung gibt Störung?',
  'open line gave a fault, and it cleared': 'offene Leitung gab eine Störung, und sie ging wieder',
  'wiring test failed': 'Leitungsprüfung nicht bestanden',
  'Panel: are the alarm outputs restored, and was everybody told? Say yes or no.':
    'Zentrale: Sind die Alarmausgänge wieder eingeschaltet, und wurden alle informiert? Sagen Sie „ja“ oder „nein“.',
  'Alarm outputs restored?': 'Alarmausgänge wieder eingeschaltet?',
  'alarm outputs restored': 'Alarmausgänge wieder eingeschaltet',
  'alarm outputs still isolated': 'Alarmausgänge noch abgeschaltet',
  'Are the covers on, and is the path clear? Say yes or no.':
    'Sind die Deckel aufgesetzt, und ist der Weg frei? Sagen Sie „ja“ oder „nein“.',
  'Covers on?': 'Deckel aufgesetzt?',
  'covers on': 'Deckel aufgesetzt',
  'covers not on yet': 'Deckel noch nicht aufgesetzt',
  'Panel: is it back to normal, without fault or alarm? Say yes or no.':
    'Zentrale: Ist sie wieder normal, ohne Störung oder Alarm? Sagen Sie „ja“ oder „nein“.',
  'Panel normal?': 'Zentrale normal?',
  'panel normal': 'Zentrale normal',
  'panel not normal': 'Zentrale nicht normal',
};
