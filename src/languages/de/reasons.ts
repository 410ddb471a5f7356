import type { Sentences } from '../translate.ts';

export const REASONS: Sentences = {
  'Once the alignment is accepted, nothing more is turned.':
    'Sobald die Ausrichtung angenommen ist, wird nichts mehr gedreht.',
  'Nothing is judged while the path is covered: uncover it, unless it is covered for the blocking check.':
    'Solange der Weg verdeckt ist, wird nichts beurteilt: freigeben, außer für die Abdeckprobe.',
  'After hands off, wait until the reading has settled or two readings agree; only then judge.':
    'nach dem Loslassen warten, bis der Messwert ruhig ist oder zwei übereinstimmen; erst dann urteilen.',
  'Every turn and every gain change is judged by a reading taken after it.':
    'Jede Drehung und jede Änderung der Verstärkung wird an einem späteren Messwert beurteilt.',
  'A reading that keeps changing is no evidence: find what moves first.':
    'Ein Messwert, der sich ständig ändert, ist kein Nachweis: erst finden, was sich bewegt.',
  'A reading that does not fit the earlier ones is read again before it counts.':
    'Ein Messwert, der nicht zu den früheren passt, wird noch einmal abgelesen, bevor er zählt.',
  'If the reading is confirmed, the crew is asked about the turn before it: wrong way, wrong adjuster, half or double. Where light does not come back, about each turn since.':
    'Wird der Messwert bestätigt, wird nach der Drehung davor gefragt: falsche Richtung, falsche Schraube, halb oder doppelt. Kommt Licht nicht wieder, nach jeder Drehung seitdem.',
  'A low reading that nothing before it predicts may later prove a side of the peak, so it is read twice; in a plain search every reading is.':
    'Ein niedriger Messwert, den nichts ankündigte, kann später eine Seite des Maximums belegen und wird darum zweimal abgelesen; bei der einfachen Suche jeder.',
  'If the reading stays when the direct path is blocked, the light comes from a reflection: aim again.':
    'Bleibt der Messwert bei verdecktem direktem Weg, kommt das Licht von einer Spiegelung: neu ausrichten.',
  'With no signal, search at full gain.': 'Ohne Signal mit maximaler Verstärkung suchen.',
  'Read what is there; then, before anything is turned, aim at the receiver by eye, within {near}, or by the laser if there is one: light by way of a wall looks like the beam.':
    'Ablesen, was da ist; dann, bevor etwas gedreht wird, nach Augenmaß auf den Empfänger ausrichten, auf {near} genau, oder mit dem Laser, wenn es einen gibt: Licht über eine Wand sieht aus wie der Strahl.',
  'With no signal at full gain, bring the emitter by eye to within {near} of the receiver.':
    'Ohne Signal bei maximaler Verstärkung den Sender nach Augenmaß auf {near} genau auf den Empfänger richten.',
  'With no signal after aiming, turn the two adjusters through a widening square and remember each place.':
    'Ohne Signal nach dem Ausrichten die beiden Schrauben in einem wachsenden Quadrat drehen und jeden Ort merken.',
  'When the square has found nothing, work through the causes, most likely first.':
    'Hat das Quadrat nichts gefunden, die Ursachen durchgehen, die wahrscheinlichste zuerst.',
  'When a turn loses the signal, go back to where it was seen.':
    'Geht das Signal bei einer Drehung verloren, dorthin zurück, wo es zu sehen war.',
  'When the meter is saturated, lower the gain and continue with the same adjuster in the same direction.':
    'Ist das Messgerät übersteuert, Verstärkung senken und mit derselben Schraube in derselben Richtung weitermachen.',
  'A detector that sets its own gain gets time to do so, and is read again.':
    'Ein Melder, der seine Verstärkung selbst einstellt, bekommt Zeit dafür und wird noch einmal abgelesen.',
  'A search that goes on too long without proof, or whose confirmed readings fit no beam, begins again with an aim by eye.':
    'Eine Suche, die zu lange ohne Nachweis dauert oder deren bestätigte Messwerte zu keinem Strahl passen, beginnt neu mit dem Ausrichten nach Augenmaß.',
  'Where the readings fit no beam, go one adjuster at a time, reach every place next to the peak clockwise, and stop between two lower readings.':
    'Passen die Messwerte zu keinem Strahl, eine Schraube nach der anderen, jeden Ort am Maximum im Uhrzeigersinn anfahren und zwischen zwei niedrigeren Messwerten stehen bleiben.',
  'A narrow light found so may be a side lobe: the places around it where the beam can be are read, and anything brighter is taken up.':
    'Ein so gefundenes schmales Licht kann eine Nebenkeule sein: die Orte ringsum, wo der Strahl sein kann, werden abgelesen, und Helleres wird verfolgt.',
  'A search that finds no end is stopped: turns are miscounted, or something moves or stands in the light. Find it first.':
    'Eine Suche, die kein Ende findet, wird angehalten: Drehungen sind falsch gezählt, oder etwas bewegt sich oder steht im Licht. Das erst finden.',
  'If light stays behind the card after two more aims by eye, aiming is not the cure: find where it comes from.':
    'Bleibt nach zwei weiteren Zielversuchen nach Augenmaß Licht hinter der Karte, hilft Zielen nicht: finden, woher es kommt.',
  "A detector that sets its own gain is told to set it at the peak, as its maker's instructions say.":
    'Ein Melder, der seine Verstärkung selbst einstellt, stellt sie am Maximum ein, wie es die Anleitung des Herstellers sagt.',
  'Turn one adjuster a known amount to learn which way the signal rises.':
    'Eine Schraube um ein bekanntes Maß drehen, um zu sehen, in welcher Richtung das Signal steigt.',
  'Keep turning the way the signal rises.': 'In der Richtung weiterdrehen, in der das Signal steigt.',
  'Go past the peak until the reading falls, so that it is bracketed from both sides.':
    'Über das Maximum hinaus, bis der Messwert fällt, damit es von beiden Seiten eingegrenzt ist.',
  'A fall means the peak lies the other way: turn back through it.':
    'Ein Fall heißt, das Maximum liegt in der anderen Richtung: durch es zurückdrehen.',
  'With the peak bracketed, turn straight to where the readings place it.':
    'Ist das Maximum eingegrenzt, direkt dorthin drehen, wo die Messwerte es zeigen.',
  'Light where this beam cannot be comes from a second peak: measure it, and keep the higher one.':
    'Licht, wo dieser Strahl nicht sein kann, kommt von einem zweiten Maximum: messen und das höhere behalten.',
  'A peak far from the aim by eye may be a side lobe: look just as far on the other side of the aim.':
    'Ein Maximum weit weg vom Augenmaß kann eine Nebenkeule sein: ebenso weit auf der anderen Seite suchen.',
  'Set the gain so that the peak reads in the middle of the band.':
    'Verstärkung so einstellen, dass das Maximum in der Mitte des Bandes liegt.',
  'One gain step puts the peak below the band and the next one above it: the gain is not changed any more.':
    'Eine Stufe der Verstärkung legt das Maximum unter das Band und die nächste darüber: die Verstärkung bleibt, wie sie ist.',
  'Both peaks are checked at the final gain: a lower settled reading on each side.':
    'Beide Maxima werden bei der endgültigen Verstärkung geprüft: auf jeder Seite ein niedrigerer beruhigter Messwert.',
  'If light brighter than this peak was read and is gone, the screws are not where the count says: aim again.':
    'Wurde helleres Licht als dieses Maximum abgelesen und ist es weg, stehen die Schrauben nicht dort, wo die Zählung sie hat: neu ausrichten.',
  'After checking a side, turn back to the peak, from the side the search came from.':
    'Nach der Prüfung einer Seite zurück zum Maximum, von der Seite, von der die Suche kam.',
  'A peak that stays below the band at full gain is not accepted: find out why it is weak.':
    'Ein Maximum, das bei maximaler Verstärkung unter dem Band bleibt, wird nicht angenommen: herausfinden, warum es schwach ist.',
  'A peak that saturates the meter at the lowest gain is not accepted: find out why it is strong.':
    'Ein Maximum, das bei kleinster Verstärkung übersteuert, wird nicht angenommen: herausfinden, warum es stark ist.',
  'With an adjuster stuck, the other one is worked on first; then it must be freed, or the work stops with a note.':
    'Klemmt eine Schraube, kommt zuerst die andere; dann muss sie gelöst werden, oder die Arbeit endet mit einer Notiz.',
  'With the peak beyond the end of an adjuster, the screws go back to their middle and the unit is aimed again.':
    'Liegt das Maximum hinter dem Anschlag einer Schraube, gehen die Schrauben zurück zur Mitte, und das Gerät wird neu ausgerichtet.',
  'Before acceptance the direct path is blocked: the reading must go to nothing and come back the same.':
    'Vor der Annahme wird der direkte Weg verdeckt: der Messwert muss auf nichts fallen und gleich wiederkommen.',
  'The final reading must stay within tolerance for the hold time.':
    'Der letzte Messwert muss die Haltezeit über in der Toleranz bleiben.',
  'When all the evidence is there, the crew accepts.': 'Sind alle Nachweise da, nimmt das Team an.',
  'Nobody climbs, and nothing is tested, before the list is answered.':
    'Niemand steigt hinauf, und nichts wird geprüft, bevor die Liste beantwortet ist.',
  'A periodic visit begins with the signal as it is found, before anything is touched.':
    'Ein wiederkehrender Besuch beginnt mit dem Signal, wie es vorgefunden wird, bevor etwas berührt wird.',
  'Dirt takes light away: the windows are cleaned, or the crew says that they were not.':
    'Schmutz nimmt Licht: die Fenster werden gereinigt, oder das Team sagt, dass nicht.',
  'After cleaning the meter is read again: what came back was dirt.':
    'Nach dem Reinigen wird noch einmal abgelesen: was zurückkam, war Schmutz.',
  'Where the signal is less than the last visit left, the cause is looked for; if it stays low, the beam is aligned again.':
    'Ist das Signal kleiner, als der letzte Besuch es hinterließ, wird die Ursache gesucht; bleibt es niedrig, wird neu ausgerichtet.',
  'The signal that is kept must stay within tolerance for the hold time.':
    'Das Signal, das bleibt, muss die Haltezeit über in der Toleranz sein.',
  'Untouched and as bright as the last visit left it, the alignment is kept; the tests follow.':
    'Unberührt und so hell wie beim letzten Besuch verlassen, bleibt die Ausrichtung; die Prüfungen folgen.',
  'A test starts with the panel at normal: only then does what it shows count.':
    'Eine Prüfung beginnt mit normaler Zentrale: nur dann zählt, was sie zeigt.',
  'Before every cover the meter is read with the path clear: what the cover holds back is counted from there.':
    'Vor jeder Abdeckung wird bei freiem Weg abgelesen: von dort zählt, was die Abdeckung zurückhält.',
  'After every cover the meter is read with the path clear: is the beam still what it was?':
    'Nach jeder Abdeckung wird bei freiem Weg abgelesen: ist der Strahl noch, wie er war?',
  'If the reading with the path clear has fallen, the beam was lost or moved: find the cause; if it stays low, align again.':
    'Ist der Messwert bei freiem Weg gefallen, ging der Strahl verloren oder bewegte sich: Ursache suchen; bleibt er niedrig, neu ausrichten.',
  'A loss clearly below the alarm threshold must not give an alarm.':
    'Ein Verlust klar unter der Alarmschwelle darf keinen Alarm geben.',
  'Slowly blocking part of the light must give an alarm after the set delay, and no sooner.':
    'Langsames Abdecken eines Teils des Lichts muss nach der eingestellten Verzögerung Alarm geben, nicht früher.',
  'Blocking all of the light at once must give a fault after the set delay.':
    'Plötzliches Abdecken des ganzen Lichts muss nach der eingestellten Verzögerung eine Störung geben.',
  'A filter this strong may look like a lost beam, and bring a fault: it is used only if there is no weaker one.':
    'Ein so starker Filter kann wie ein verlorener Strahl aussehen und Störung bringen: er wird nur benutzt, wenn es keinen schwächeren gibt.',
  'Where the meter can tell, a test counts only with a reading behind the cover.':
    'Wo das Messgerät es zeigen kann, zählt eine Prüfung nur mit einem Messwert hinter der Abdeckung.',
  'Without a reading before the cover, behind it and after it, the test does not count.':
    'Ohne einen Messwert vor der Abdeckung, dahinter und danach zählt die Prüfung nicht.',
  'The last cover was too near the alarm threshold, or nobody knows which it was: that test does not count.':
    'Die letzte Abdeckung lag zu nahe an der Alarmschwelle, oder niemand weiß, welche es war: diese Prüfung zählt nicht.',
  'Only a cover clearly above the alarm threshold proves the alarm.':
    'Nur eine Abdeckung klar über der Alarmschwelle weist den Alarm nach.',
  'Uncovered and reset, the panel must come back to normal.':
    'Freigegeben und zurückgesetzt muss die Zentrale wieder normal werden.',
  'The panel must show this pair, in its zone, and no other.':
    'Die Zentrale muss dieses Paar in seiner Meldergruppe zeigen und kein anderes.',
  'A broken wire between detector and panel must show as a fault.':
    'Ein Drahtbruch zwischen Melder und Zentrale muss als Störung kommen.',
  'After the tests the reading must be what it was when the alignment was accepted.':
    'Nach den Prüfungen muss der Messwert sein wie bei der Annahme der Ausrichtung.',
  'After a failed test, the cause is fixed and the test is repeated, or somebody answers for it in writing.':
    'Nach einer nicht bestandenen Prüfung wird die Ursache behoben und die Prüfung wiederholt, oder jemand steht schriftlich dafür ein.',
  'Nobody leaves before the protection is back.': 'Niemand geht, bevor der Schutz wieder da ist.',
  'With everything proven and back in service, the record can be signed.':
    'Ist alles geprüft und wieder in Betrieb, kann das Protokoll unterschrieben werden.',
  'Once the record is signed, nothing more is touched.':
    'Ist das Protokoll unterschrieben, wird nichts mehr berührt.',
  'Where no number is read, every turn is judged by whether the light rose, fell or stayed.':
    'Wo keine Zahl abgelesen wird, wird jede Drehung danach beurteilt, ob das Licht stieg, fiel oder blieb.',
  'Where no number is read, the peak is the middle between two places from which the light falls alike.':
    'Wo keine Zahl abgelesen wird, ist das Maximum die Mitte zwischen zwei Stellen, von denen das Licht gleich abfällt.',
};
