import type { Intent } from '../../grammar/intent.ts';
import { gradedFilter } from '../../grammar/reporting.ts';
import { means, type Rules, said, say } from '../../grammar/rule.ts';
import { inEighths } from '../../grammar/turning.ts';
import { NO_SIGNAL, SATURATED } from '../../model/reading.ts';
import { FRAME } from '../frame.ts';

const intent = <K extends Intent['kind']>(kind: K): { kind: K } => ({ kind });

const UNITS = [
  'eins|ein|eine|einen|einer',
  'zwei|zwo',
  ...'drei vier fünf sechs sieben acht neun'.split(' '),
];
const TEENS = 'zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn'.split(' ');
const TENS = 'zwanzig dreißig vierzig fünfzig sechzig siebzig achtzig neunzig'.split(' ');
/** As they stand before "und": "einundzwanzig". */
const JOINED_UNITS = ['ein', 'zwei|zwo', ...'drei vier fünf sechs sieben acht neun'.split(' ')];
const HUNDREDS = ['[ein] hundert', ...UNITS.slice(1).map((unit) => `(${unit}) hundert`)];

const numbers = {
  zero: means('0', 'null'),
  unit: UNITS.flatMap((words, i) => means(String(i + 1), words)),
  teen: TEENS.flatMap((word, i) => means(10 + i, word)),
  tens: TENS.flatMap((word, i) => means(20 + 10 * i, word)),
  two: [
    say('<teen>', ({ teen }) => teen),
    say('<tens>', ({ tens }) => tens),
    // "Vierundzwanzig": one word, the figure of the units first. Some write it apart.
    ...TENS.flatMap((tens, ten) =>
      JOINED_UNITS.flatMap((units, unit) =>
        means(
          20 + 10 * ten + unit + 1,
          units
            .split('|')
            .map((each) => `${each}und${tens}|${each} und ${tens}`)
            .join('|'),
        ),
      ),
    ),
  ],
  hundreds: HUNDREDS.flatMap((words, i) => means(100 + 100 * i, words)),
  thousands: [
    ...means(1000, '[ein] tausend'),
    say('<small> tausend', ({ small }) => (small > 1 ? 1000 * small : undefined)),
  ],
  minus: means(true as const, 'minus'),
  point: means(true as const, 'komma|punkt'),
  andHalf: means(true as const, '[und] einhalb|und (ein halb|eine halbe)'),
  measure: [
    ...means('percent', 'prozent'),
    ...means('volts', 'volt'),
    ...means('counts', 'zähler|counts'),
    ...means('decibels', 'dezibel'),
    ...means('bars', 'balken'),
    ...means('steps', 'stufe|stufen|schritt|schritte'),
    ...means('segments', 'segment|segmente'),
    ...means('divisions', 'teilstrich|teilstriche|skalenteile'),
    ...means('own', 'units|einheiten'),
  ],
} satisfies Rules;

const turning = {
  axis: [
    ...means(
      'horizontal' as const,
      '[an] [der|die] (horizontal|horizontale|waagerecht|waagrecht|waagerechte) [schraube]|[an] [der|die] horizontalschraube',
    ),
    ...means(
      'vertical' as const,
      '[an] [der|die] (vertikal|vertikale|senkrecht|senkrechte) [schraube]|[an] [der|die] vertikalschraube',
    ),
  ],
  sense: [
    ...means(
      'clockwise' as const,
      '[im] uhrzeigersinn|mit dem (uhrzeigersinn|uhrzeiger)|rechtsherum|rechts (herum|rum)|rechtsrum',
    ),
    ...means(
      'anticlockwise' as const,
      '(gegen den|entgegen dem) (uhrzeigersinn|uhrzeiger)|[im] gegenuhrzeigersinn|linksherum|links (herum|rum)|linksrum',
    ),
    ...means(
      'back' as const,
      'zurück|rückwärts|[in] [die|der] (andere|anderen|entgegengesetzte) richtung|andersherum|anders (herum|rum)',
    ),
    ...means(
      'on' as const,
      'noch weiter|mehr|vorwärts|[in] [die] (gleiche|dieselbe) richtung|in (der gleichen|derselben) richtung',
    ),
  ],
  way: [
    say('<sense>', ({ sense }) => sense),
    // Alone it tells the other to go on.
    ...means('on' as const, 'weiter'),
    ...means('left' as const, '[nach] links'),
    ...means('right' as const, '[nach] rechts'),
    ...means('up' as const, '[nach] oben|hinauf|rauf|hoch'),
    ...means('down' as const, '[nach] unten|hinunter|runter'),
    ...means('in' as const, 'nach innen|hinein|rein|einwärts'),
    ...means('out' as const, 'nach außen|hinaus|heraus|raus|auswärts'),
  ],
  part: [
    ...means(1, '[ein] achtel'),
    ...means(2, '[ein] viertel|zwei achtel'),
    ...means(3, 'drei achtel'),
    ...means(4, '[eine] halbe|[ein] halb|ein halbes|vier achtel|zwei viertel'),
    ...means(5, 'fünf achtel'),
    ...means(6, 'drei viertel|dreiviertel|sechs achtel'),
    ...means(7, 'sieben achtel'),
  ],
  turns: [
    say('[eine] <part> (drehung|umdrehung)', ({ part }) => part),
    ...means(1, '[eine] (achteldrehung|achtelumdrehung|achtel umdrehung)'),
    ...means(2, '[eine] (vierteldrehung|viertelumdrehung)'),
    ...means(6, '[eine] (dreivierteldrehung|dreiviertelumdrehung)'),
    ...means(
      8,
      '(eine|ganze|volle|eine ganze|eine volle) (drehung|umdrehung)|eine (ganze|volle)|einmal (herum|rum)',
    ),
    say('eine (drehung|umdrehung) und <part>', ({ part }) => 8 + part),
    ...means(12, '(anderthalb|ein einhalb|eine einhalb) [drehungen|umdrehungen]'),
    ...means(16, 'zwei [ganze|volle] (drehungen|umdrehungen)'),
    say('zwei (drehungen|umdrehungen) und <part>', ({ part }) => 16 + part),
    ...means(20, 'zwei einhalb (drehungen|umdrehungen)'),
    ...means(24, 'drei [ganze|volle] (drehungen|umdrehungen)'),
    say('<numeral> (drehung|drehungen|umdrehung|umdrehungen)', ({ numeral }) => inEighths(numeral)),
    say('<fraction> [drehung|umdrehung|drehungen|umdrehungen]', ({ fraction }) => inEighths(fraction)),
  ],
  toVerb: means(true as const, '[ich|wir] (habe|hab|haben)|gedreht|nur'),
  // The verb stands at the end: "ich habe horizontal ein Viertel gedreht".
  moved: [
    ...FRAME.moved,
    say('<toVerb?> <turned> (gedreht|bewegt|verstellt)', ({ turned }) => ({
      kind: 'moved' as const,
      ...turned,
    })),
    say('<toVerb?> <way> (gedreht|bewegt)', ({ way }) => ({ kind: 'moved' as const, way })),
    say('<toVerb?> <at> (gedreht|bewegt)', ({ at }) => ({ kind: 'moved' as const, axis: at })),
  ],
} satisfies Rules;

const reporting = {
  state: [
    ...means(
      NO_SIGNAL,
      '(kein|ohne) (signal|licht|wert|messwert)|nichts|[das] signal [ist] (weg|verloren)|keine anzeige',
    ),
    ...means(
      SATURATED,
      '[es ist|ist] (übersteuert|gesättigt|überlastet)|zu viel (signal|licht)|zu (stark|hell)|vollausschlag|außerhalb der skala',
    ),
  ],
  lead: means(
    true as const,
    '[jetzt] (zeigt|steht (auf|bei)|lese|ich lese|sehe|ich sehe|habe|ich habe|ist|sind|liegt bei)|es (zeigt|sind|ist)',
    '[das] (messgerät|gerät) zeigt|[die] anzeige [zeigt|steht auf]|[der] (messwert|wert) [ist|liegt bei|beträgt]|[das] signal (ist|beträgt)|genau',
  ),
  near: means(true as const, 'etwa|ungefähr|circa|ca|rund|fast|knapp|so um|um die'),
  trend: [
    ...means(
      'rising' as const,
      '[es|er|der wert|wert] (steigt|steigend)|[es] wird (besser|höher|mehr)|besser|höher|heller|lauter|nimmt zu|geht (hoch|rauf|nach oben)|gestiegen',
    ),
    ...means(
      'falling' as const,
      '[es|er|der wert|wert] (fällt|fallend|sinkt)|[es] wird (schlechter|weniger|niedriger)|schlechter|niedriger|dunkler|schwächer|leiser|nimmt ab|geht (runter|nach unten)|gefallen|gesunken',
    ),
    ...means(
      'steady' as const,
      '[es|er] [bleibt|ist|steht] (stabil|ruhig|konstant|gleich|unverändert|still)|ändert sich nicht|keine änderung',
    ),
    ...means(
      'wandering' as const,
      '[es|er] (schwankt|springt|wackelt|pendelt)|unruhig|ändert sich [ständig|dauernd]|geht (rauf und runter|hin und her)',
    ),
  ],
  gain: [
    say(
      '[die] (verstärkung|empfindlichkeit) (gesenkt|verringert|reduziert|runter|niedriger) <aim?>',
      ({ aim }) => said({ kind: 'gain' as const, change: 'lowered' as const, to: aim }),
    ),
    say('[habe] [die] (verstärkung|empfindlichkeit) <aim> (gesenkt|verringert|reduziert)', ({ aim }) => ({
      kind: 'gain' as const,
      change: 'lowered' as const,
      to: aim,
    })),
    say('[die] (verstärkung|empfindlichkeit) (erhöht|rauf|höher|hochgedreht) <aim?>', ({ aim }) =>
      said({ kind: 'gain' as const, change: 'raised' as const, to: aim }),
    ),
    say('[habe] [die] (verstärkung|empfindlichkeit) <aim> erhöht', ({ aim }) => ({
      kind: 'gain' as const,
      change: 'raised' as const,
      to: aim,
    })),
    say(
      '[die] verstärkung [ist|steht] auf [stufe] <number> <measure?> [gestellt|eingestellt]',
      ({ number }) => ({
        kind: 'gain' as const,
        change: 'set' as const,
        to: number,
      }),
    ),
    ...means(
      { kind: 'gain' as const, change: 'full' as const },
      '[die] verstärkung [ist|steht] [auf] (maximum|voll|maximal)|(volle|maximale) verstärkung',
    ),
  ],
  graded: [
    say('[der] (filter|prüffilter) [mit|von] <grade> [prozent] [ist] (davor|drauf|eingesetzt)', ({ grade }) =>
      gradedFilter(grade),
    ),
    say('<grade> prozent (filter|prüffilter) [ist] (davor|drauf|eingesetzt)', ({ grade }) =>
      gradedFilter(grade),
    ),
  ],
  path: [
    ...means(
      { kind: 'path' as const, state: 'blocked' as const },
      '[der] [strahl|weg|strahlweg|empfänger] [ist] [jetzt|ganz|komplett] (verdeckt|abgedeckt|zugedeckt|blockiert)|es ist [ganz] (verdeckt|abgedeckt)|(karton|deckel|abdeckung) (davor|drauf)|[es ist] (etwas|jemand) im weg',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const },
      '[der] [strahl|weg|strahlweg|empfänger] [ist] (teilweise|zum teil) (verdeckt|abgedeckt)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'half' as const },
      '[der] [strahl|empfänger] [ist] (halb|zur hälfte) (verdeckt|abgedeckt)|[die] hälfte [ist] (verdeckt|abgedeckt)',
    ),
    ...means(
      { kind: 'path' as const, state: 'partial' as const, by: 'filter' as const },
      '[der] (filter|prüffilter) [ist] (davor|drauf|eingesetzt)',
    ),
    ...means(
      { kind: 'path' as const, state: 'clear' as const },
      '[der] [strahl|weg|strahlweg|empfänger] [ist] [wieder|jetzt] (frei|freigegeben|offen|aufgedeckt)|es ist [wieder] frei|[der] (filter|karton|deckel) [ist] (weg|ab|entfernt)|nichts im weg|nicht (verdeckt|abgedeckt)',
    ),
  ],
  panel: [
    ...means(
      { kind: 'panel' as const, shows: 'alarm' as const },
      '[die] [zentrale] [zeigt|meldet|hat] (alarm|feueralarm|brandalarm)',
    ),
    ...means(
      { kind: 'panel' as const, shows: 'fault' as const },
      '[die] [zentrale] [zeigt|meldet|hat] [eine] (störung|fehler)',
    ),
    ...means(
      { kind: 'panel' as const, shows: 'normal' as const },
      '[die] [zentrale] [zeigt|ist|steht auf] [alles|wieder] (normal|normalzustand|ruhe|ruhezustand)|keine störung|kein (alarm|fehler)|zurückgesetzt',
    ),
  ],
  whom: [
    ...means('the control room', '[die|der] (leitstelle|leitwarte)'),
    ...means('security', '[den|der|die] (sicherheitsdienst|wachdienst|werkschutz|security|wache)'),
    ...means('reception', '[den|der|die] (empfang|rezeption|pforte)'),
    ...means('the fire brigade', '[die|der] feuerwehr'),
    ...means('everyone', '[es sind] alle'),
  ],
  informed: [
    say('(informiert|verständigt|benachrichtigt) <whom>', ({ whom }) => ({
      kind: 'told' as const,
      who: whom,
    })),
    say(
      '[ich|wir] [habe|haben] <whom> [ist|sind|wurde|wurden] (informiert|verständigt|benachrichtigt)',
      ({ whom }) => ({
        kind: 'told' as const,
        who: whom,
      }),
    ),
  ],
  done: means<Intent>(
    { kind: 'done' },
    '[ich bin|bin|ist|alles|schon] (fertig|erledigt|gemacht)|[ist|ich habe|habe] gedreht|[ist] (gestellt|eingestellt|ausgerichtet)|[alles] geprüft',
  ),
} satisfies Rules;

const commanding = {
  and: means(true as const, 'und|und jetzt|jetzt'),
  to: means(true as const, 'auf|bis|bis auf'),
  not: means(true as const, '[und] nicht'),
  assent: means<Intent>({ kind: 'yes' }, 'ja'),
  pause: means<Intent>({ kind: 'wait' }, '[und] (warte|warten|moment)'),
  correcting: means(
    true as const,
    'nein|[nein] korrektur|[nein] falsch|[nein] entschuldigung|[nein] ich (meine|meinte)|[nein] sondern|[nein] doch',
  ),
  yes: means(
    intent('yes'),
    'ja|jawohl|[ja] genau|[ja] (richtig|stimmt|korrekt)|[ja] das (stimmt|ist richtig)|bestätigt|in ordnung|okay|einverstanden|verstanden|klar',
  ),
  command: [
    ...means(
      intent('no'),
      'nein|nee|negativ|korrektur|[nein] falsch|[nein] [das] stimmt nicht|nicht richtig|keines [davon]|keins|keiner|noch niemand|niemand',
    ),
    ...means(
      intent('undo'),
      'zurücknehmen|[das|letztes|das letzte] (zurücknehmen|streichen|löschen)|nimm [das|es] zurück|streich das|rückgängig [machen]|vergiss (das|es)',
    ),
    ...means(
      intent('repeat'),
      '[bitte] noch (einmal|mal)|nochmal|nochmals|wiederholen|wiederhole [das]|wie bitte|[sag|sagen sie] [das] noch (einmal|mal)|[ich habe] [das] nicht (verstanden|gehört)',
    ),
    ...means(
      intent('wait'),
      '(warte|warten|wart) [kurz|mal|bitte]|[einen] (moment|augenblick)|[eine] (sekunde|minute)|noch nicht|pause|nicht bereit|ich (komme|muss) runter',
    ),
    ...means(
      intent('resume'),
      'weiter|weitermachen|mach weiter|fortfahren|[ich bin|wir sind] [wieder] (bereit|soweit)|[es] kann weitergehen|wieder (da|oben)',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'stuck' as const },
      '[die schraube|sie|es] (klemmt|ist fest|sitzt fest|ist festgefressen|dreht sich nicht|bewegt sich nicht)|[die schraube|sie] lässt sich nicht (drehen|bewegen)|festgefressen',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'end-of-travel' as const },
      '[ist|bin|sie ist|die schraube ist] am (anschlag|ende)|anschlag|geht nicht weiter',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'out-of-reach' as const },
      '[ist] nicht erreichbar|[ich] komme nicht (hin|ran|dran)|außer reichweite|zu weit weg',
    ),
    ...means(
      { kind: 'cannot' as const, why: 'unsaid' as const },
      '[das|es] geht nicht|[ich] kann [das|es] nicht|unmöglich|nicht möglich',
    ),
    ...means({ kind: 'swap' as const }, '[die] andere schraube|[schraube] wechseln'),
    say('(wechseln|wechsel|weiter|jetzt) (zu|zur|mit|mit der|auf) <axis>', ({ axis }) => ({
      kind: 'swap' as const,
      axis,
    })),
    ...means(
      intent('ask-reading'),
      'was zeigt (es|das messgerät|die anzeige)|was (steht da|siehst du|hast du|lesen sie)|wie viel|wieviel|[den] (messwert|wert) bitte|messwert ablesen',
    ),
    ...means(
      intent('accept'),
      '[ausrichtung|die ausrichtung] (annehmen|angenommen|akzeptieren|akzeptiert)|[ich|wir] (nehme|nehmen) [es|die ausrichtung] an',
    ),
    ...means(intent('stop'), 'stopp|stop|halt|anhalten|aufhören|abbrechen|abbruch'),
    ...means(
      intent('start'),
      'start|starten|(neu|wieder) (anfangen|beginnen|starten)|anfangen|beginnen|fortsetzen',
    ),
    ...means(
      intent('unsure'),
      '[ich bin|bin] [mir] nicht sicher|[ich] weiß [es|ich] nicht|keine ahnung|unklar|überspringen|auslassen',
    ),
    ...means(intent('why'), 'warum|wieso|weshalb|wozu'),
  ],
  sorry: means(true as const, 'entschuldigung|sorry|tut mir leid'),
  slip: [
    ...means(
      intent('knocked'),
      '(jemand|einer) hat [ihn|es|den sender] (angestoßen|gestoßen|bewegt)|[ich habe] [ihn|es|den sender] angestoßen|[der|den] (sender|halter) angestoßen|verrutscht|[es gab] [einen] stoß',
    ),
    ...means(intent('not-turned'), '[ich habe|habe] [noch|gar] (nicht|nichts) (gedreht|bewegt|verstellt)'),
    ...means(
      intent('miscounted'),
      '[ich habe mich|habe mich|mich] verzählt|zu weit [gedreht]|zu viel [gedreht]|[ich] weiß nicht wie weit',
    ),
    ...means(
      intent('wrong-way'),
      '[in] [die] falsche richtung [gedreht]|(falsch|verkehrt) (herum|rum) [gedreht]',
    ),
    ...means(
      intent('wrong-screw'),
      '[die|an der] (falsche|falschen) schraube [gedreht]|[ich habe] [die] andere schraube gedreht|schraube verwechselt',
    ),
  ],
} satisfies Rules;

/** German. A native's check is still owed. */
export const RULES = { ...numbers, ...turning, ...reporting, ...commanding } satisfies Rules;

export const FILLERS = 'äh ähm hm mm bitte jetzt also na gut dann danke'.split(' ');

export const REMARK =
  /^\W*(?:notiz|notiere|notieren|anmerkung|bemerkung|vermerk|f(?:ü|ue)rs? (?:das )?protokoll)(?=\W)[\s:,.;-]*(?:dass\s+)?(.*)$/isu;
export const TOLD =
  /^\W*(?:ja\W+)?(?:(?:ich|wir)\s+haben?\s+)?(?:informiert|verst(?:ä|ae)ndigt|benachrichtigt)[\s:]+(\S.*)$/isu;
