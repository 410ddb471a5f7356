import type { Page } from 'playwright-core';
import type { Entry } from '../../src/model/entry.ts';
import type { Placed } from '../../src/model/placed.ts';
import type { JobState } from '../../src/visit/state.ts';
import { type Hall, press } from './hall.ts';
import { numberIn } from './rendered-meter.ts';

/** From the first page on: one person opens a job with two phones, and the second one joins. `by`: what the first one follows. */
export async function openWithTwoPhones(
  panel: Page,
  emitter: Page,
  url: string,
  by: 'number' | 'indicator' = 'number',
): Promise<void> {
  await panel.goto(`${url}/`);
  await panel.getByText('I am alone').click();
  await panel.getByText(by === 'number' ? 'Begin with two phones' : 'Begin with a tone or a lamp').click();
  await panel.getByLabel('Site').fill('Quayside Hall 3');
  await panel.getByLabel('Beam pair').fill('B2');
  if (by === 'number') {
    await panel.getByLabel('Meter', { exact: true }).selectOption({ label: '8-bit counts' });
    await panel.getByText('Edit the meter').click();
  }
  await panel.getByLabel('Settles within').fill('0.4');
  await panel.getByLabel('Must stay steady for').fill('1');
  await press(panel, 'Open the job');
  await press(panel, 'Understood');
  const code = await panel.locator('.invite-code').textContent();
  await emitter.goto(`${url}/`);
  await emitter.getByText('At the emitter').click();
  await emitter.getByLabel('Join code').fill(code ?? '');
  await press(emitter, 'Join');
}

interface Box {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** A finger draws the box round the number of a display with so many places. */
export const drawBox = (panel: Page, places: number): Promise<void> => drawBoxRound(panel, numberIn(places));

/** A finger draws the box round this part of the picture, in shares of it. */
export async function drawBoxRound(panel: Page, wanted: Box): Promise<void> {
  const picture = (await panel.locator('.watch-picture').boundingBox()) as Box;
  const at = (x: number, y: number) =>
    [picture.x + x * picture.width, picture.y + y * picture.height] as const;
  const drag = async (corner: string, x: number, y: number) => {
    const handle = await panel.locator(corner).boundingBox();
    if (!handle) throw new Error(`no ${corner}`);
    const box = (await panel.locator('.watch-box').boundingBox()) as Box;
    const [fromX, fromY] = [handle.x + handle.width / 2, handle.y + handle.height / 2];
    const edgeX = corner.includes('left') ? box.x : box.x + box.width;
    const edgeY = corner.includes('upper') ? box.y : box.y + box.height;
    const [toX, toY] = at(x, y);
    await panel.mouse.move(fromX, fromY);
    await panel.mouse.down();
    await panel.mouse.move(fromX + toX - edgeX, fromY + toY - edgeY, { steps: 4 });
    await panel.mouse.up();
  };
  await drag('.watch-corner.upper.left', wanted.x, wanted.y);
  await drag('.watch-corner.lower.right', wanted.x + wanted.width, wanted.y + wanted.height);
}

/** As in `client/seat/use-room.ts`. */
const DOUBLE_TAP_MS = 350;

interface OnePhone {
  phone: Page;
  hall: Hall;
  state(): Promise<JobState>;
  log(): Promise<Entry[]>;
  /** Does what an order to read or to look asks. */
  read(instruction: Placed<'instruction'>): Promise<void>;
  /** Before an order of another kind than the last is answered. */
  onNew(kind: string): Promise<unknown>;
}

/** Does on one page whatever it orders, until it is accepted; after `longestMs` it throws with the end of the log. */
export async function obeyOnOnePhone({ phone, hall, state, log, read, onNew }: OnePhone, longestMs: number) {
  let answered = -1;
  let shown = '';
  for (const end = Date.now() + longestMs; ; ) {
    if (Date.now() > end)
      throw new Error(
        (await log())
          .slice(-8)
          .map((e) => JSON.stringify(e.fact))
          .join('\n'),
      );
    const { instruction, accepted } = await state();
    if (accepted) return;
    if (!instruction || instruction.seq === answered || instruction.advice.action.kind === 'hold') {
      await phone.waitForTimeout(50);
      continue;
    }
    const { action } = instruction.advice;
    await phone.getByRole('heading', { name: instruction.show, exact: true }).waitFor();
    // Sooner it would be the second tap of a double one.
    await phone.waitForTimeout(DOUBLE_TAP_MS + 50);
    if (shown !== action.kind) await onNew(action.kind);
    shown = action.kind;
    answered = instruction.seq;
    if (action.kind === 'offer-accept') await press(phone, 'Accept');
    else if (action.kind === 'read') await read(instruction);
    else await hall.workAt(phone, instruction);
  }
}
