import { useState } from 'preact/hooks';
import { METRES, type Units } from '../../src/model/units.ts';
import { UNITS_SAVED } from '../../src/phrases/units-chosen.ts';
import { useSend } from '../browser/use-send.ts';
import { UnitsChoice } from '../profiles/units-choice.tsx';
import { chooseUnits } from '../site/requests.ts';
import { Failure } from '../ui/failure.tsx';

interface SiteUnitsProps {
  token: string;
  units: Units | undefined;
  onChosen: () => void;
}

/** The desk chooses what the figures of its site are read and written in. */
export function SiteUnits({ token, units = METRES, onChosen }: SiteUnitsProps) {
  const [chosen, setChosen] = useState(units);
  const { busy, failure, send } = useSend();
  const isNew = chosen.length !== units.length || chosen.loss !== units.loss;
  const submit = async () => {
    if (await send({ units: chosen }, (id, body) => chooseUnits(token, id, body))) onChosen();
  };
  return (
    <details class="more">
      <summary>Metres, feet, percent, dB</summary>
      <UnitsChoice units={chosen} onInput={setChosen} />
      <p class="hint">{UNITS_SAVED}</p>
      <Failure text={failure} />
      <button type="button" class="button" disabled={busy || !isNew} onClick={submit}>
        {busy ? 'Saving' : 'Use these'}
      </button>
    </details>
  );
}
