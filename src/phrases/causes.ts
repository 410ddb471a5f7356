import type { Cause } from '../engine/rules.ts';
import type { ProvingCause } from '../visit/rules.ts';

/** Things to check, as they are said. Common practice, no source. */
const CAUSES: Record<Cause | ProvingCause, string> = {
  'power-off': 'power at both ends',
  'path-obstructed': 'the path, for anything in it',
  'receiver-facing-away': 'that the receiver faces the emitter',
  'wrong-pair': 'that this emitter belongs to this receiver',
  'beyond-range': "the path length against the maker's range",
  'faulty-unit': 'the units themselves',
  'miscounted-turns': 'that each turn is the one asked for: adjuster, way and amount',
  'card-beside-line': 'that the card covers the whole direct line, metres out',
  'loose-mount': 'the mounts, for looseness',
  'moving-building': 'the building, for movement',
  'sun-on-receiver': 'the receiver, for sun or lamps shining in',
  'traffic-in-beam': 'the path, for cranes, lifts or people passing',
  'steam-or-dust': 'the air, for steam, dust or smoke',
  'dirty-optics': 'the windows and lenses, for dirt',
  'path-partly-obstructed': 'the edges of the path',
  'reflected-light': 'shiny surfaces beside the path',
  'below-range': 'that the path is not shorter than the maker allows',
  'attenuator-missing': 'for the short-range filter, if the maker asks for one',
  'stray-light': 'for other light at the receiver',
  'horizontal-stuck': 'the horizontal adjuster: free it, or say stop and note it',
  'vertical-stuck': 'the vertical adjuster: free it, or say stop and note it',
  'gain-stuck': 'the gain: free it, or say stop and note it',
  'gain-step':
    "the maker's instructions, for which of the two gain steps to use; then accept with a written reason",
  'own-gain': "the maker's instructions, for how the detector sets its gain, or how to set it by hand",
  'stronger-filter': 'for a stronger test filter',
  'weaker-filter': 'for a weaker test filter that is still above the threshold',
  'cover-too-small': 'that the cover holds back enough light',
  'cover-speed': 'how fast it was covered: slowly for an alarm, at once for a fault',
  'covered-said-late': 'that "covered" is said at that moment, not later',
  'covered-said-early': 'that "covered" is said at that moment, not earlier',
  'filter-grade': 'the grade of the test filter against the plan',
  'set-threshold': 'the alarm threshold that is set',
  'set-delay': 'the delays that are set',
  'panel-delay': 'delays and verification at the panel',
  'panel-zone-disabled': 'that the zone is not disabled at the panel',
  'panel-latched': 'that the panel was reset',
  'panel-labels': 'the labels and addresses in the panel',
  'signal-wiring': 'the wires from the detector to the panel',
  'end-of-line': 'the end-of-line device',
};

/** A cause from a newer log that this version does not know is shown as its id. */
export const causeText = (cause: string): string => CAUSES[cause as Cause | ProvingCause] ?? cause;
