import { LengthUnit, LossUnit, type Units } from '../../src/model/units.ts';
import { LOSS_SIGNS } from '../../src/phrases/units.ts';
import { AS_PLANNED, LENGTH_NAMES } from '../../src/phrases/units-chosen.ts';
import { Choice } from '../ui/field.tsx';

const AS_STATED = 'as stated';

/** What figures are read and written in. */
export const UnitsChoice = ({ units, onInput }: { units: Units; onInput: (units: Units) => void }) => (
  <div class="pairs">
    <Choice
      label="Lengths in"
      value={units.length}
      options={LengthUnit.options.map((value) => ({ value, label: LENGTH_NAMES[value] }))}
      onInput={(length) => onInput({ ...units, length: LengthUnit.parse(length) })}
    />
    <Choice
      label="Loss of light in"
      value={units.loss ?? AS_STATED}
      options={[
        { value: AS_STATED, label: AS_PLANNED },
        ...LossUnit.options.map((value) => ({ value, label: LOSS_SIGNS[value] })),
      ]}
      onInput={(loss) =>
        onInput(loss === AS_STATED ? { length: units.length } : { ...units, loss: LossUnit.parse(loss) })
      }
    />
  </div>
);
