import type { Sentences } from '../translate.ts';

export const CAUSES: Sentences = {
  'that each turn is the one asked for: adjuster, way and amount':
    'dass jede Drehung die verlangte ist: Schraube, Richtung und Maß',
  'that the card covers the whole direct line, metres out':
    'dass die Karte die ganze direkte Linie verdeckt, einige Meter entfernt',
  "the maker's instructions, for how the detector sets its gain, or how to set it by hand":
    'die Anleitung des Herstellers, wie der Melder seine Verstärkung einstellt oder wie sie von Hand gestellt wird',
  'power at both ends': 'die Stromversorgung an beiden Enden',
  'the path, for anything in it': 'den Weg, ob etwas darin ist',
  'that the receiver faces the emitter': 'dass der Empfänger zum Sender zeigt',
  'that this emitter belongs to this receiver': 'dass dieser Sender zu diesem Empfänger gehört',
  "the path length against the maker's range": 'die Weglänge gegen die Reichweite des Herstellers',
  'the units themselves': 'die Geräte selbst',
  'the mounts, for looseness': 'die Halterungen, ob sie locker sind',
  'the building, for movement': 'das Gebäude, ob es sich bewegt',
  'the receiver, for sun or lamps shining in': 'den Empfänger, ob Sonne oder Lampen hineinscheinen',
  'the path, for cranes, lifts or people passing': 'den Weg, ob Krane, Stapler oder Menschen durchgehen',
  'the air, for steam, dust or smoke': 'die Luft, ob Dampf, Staub oder Rauch darin ist',
  'the windows and lenses, for dirt': 'die Fenster und Linsen, ob sie schmutzig sind',
  'the edges of the path': 'die Ränder des Weges',
  'shiny surfaces beside the path': 'glänzende Flächen neben dem Weg',
  'that the path is not shorter than the maker allows':
    'dass der Weg nicht kürzer ist, als der Hersteller erlaubt',
  'for the short-range filter, if the maker asks for one':
    'ob der Nahbereichsfilter da ist, falls der Hersteller ihn verlangt',
  'for other light at the receiver': 'ob anderes Licht am Empfänger ist',
  'the gain: free it, or say stop and note it': 'die Verstärkung: lösen, oder „stopp“ sagen und notieren',
  'the horizontal adjuster: free it, or say stop and note it':
    'die Horizontalschraube: lösen, oder „stopp“ sagen und notieren',
  'the vertical adjuster: free it, or say stop and note it':
    'die Vertikalschraube: lösen, oder „stopp“ sagen und notieren',
  "the maker's instructions, for which of the two gain steps to use; then accept with a written reason":
    'die Anleitung des Herstellers, welche der beiden Verstärkungsstufen gilt; dann mit schriftlichem Grund annehmen',
  'for a stronger test filter': 'ob es einen stärkeren Prüffilter gibt',
  'for a weaker test filter that is still above the threshold':
    'ob es einen schwächeren Prüffilter gibt, der noch über der Schwelle liegt',
  'that the cover holds back enough light': 'dass die Abdeckung genug Licht zurückhält',
  'how fast it was covered: slowly for an alarm, at once for a fault':
    'wie schnell abgedeckt wurde: langsam für einen Alarm, auf einmal für eine Störung',
  'that "covered" is said at that moment, not later':
    'dass „verdeckt“ in dem Moment gesagt wird, nicht später',
  'that "covered" is said at that moment, not earlier':
    'dass „verdeckt“ in dem Moment gesagt wird, nicht früher',
  'the grade of the test filter against the plan': 'die Stufe des Prüffilters gegen den Plan',
  'the alarm threshold that is set': 'die eingestellte Alarmschwelle',
  'the delays that are set': 'die eingestellten Verzögerungen',
  'delays and verification at the panel': 'Verzögerungen und Verifizierung an der Zentrale',
  'that the zone is not disabled at the panel':
    'dass die Meldergruppe an der Zentrale nicht abgeschaltet ist',
  'that the panel was reset': 'dass die Zentrale zurückgesetzt wurde',
  'the labels and addresses in the panel': 'die Texte und Adressen in der Zentrale',
  'the wires from the detector to the panel': 'die Leitungen vom Melder zur Zentrale',
  'the end-of-line device': 'das Endglied',
};
