import { describe, expect, it } from 'vitest';
import { Door } from '../../server/jobs/door.ts';

/** Draws the marks of a list in turn, the last one for ever. */
const drawing = (...marks: string[]) => {
  const last = marks.at(-1) as string;
  return () => marks.shift() ?? last;
};

describe('R102: the mark of a question', () => {
  it('is drawn again while it is one that a screen may still show', () => {
    const door = new Door('KILO 123', 0);
    expect(door.nextMark(drawing('PAPA 34'))).toBe('PAPA 34');
    expect(door.nextMark(drawing('PAPA 34', 'PAPA 34', 'LIMA 50'))).toBe('LIMA 50');
    expect(door.nextMark(drawing('LIMA 50', 'PAPA 34', 'ECHO 71'))).toBe('ECHO 71');
  });

  it.each([
    [19, 'NEW 10'],
    [20, 'PAPA 34'],
  ])('after %i others: %s', (others, expected) => {
    const door = new Door('KILO 123', 0);
    door.nextMark(drawing('PAPA 34'));
    for (let i = 0; i < others; i++) door.nextMark(drawing(`LIMA ${i + 10}`));
    expect(door.nextMark(drawing('PAPA 34', 'NEW 10'))).toBe(expected);
  });
});
