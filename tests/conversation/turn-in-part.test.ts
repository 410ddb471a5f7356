import { describe, expect, it } from 'vitest';
import type { Fact } from '../../src/model/facts.ts';
import type { TypedLanguage } from '../../src/model/language.ts';
import { TableJob } from './table.ts';

/** A fresh job at its first turn: horizontal, three quarters clockwise. */
function atTurn(): TableJob {
  const job = TableJob.crewed();
  for (let i = 0; i < 6 && job.action?.kind !== 'turn'; i++) {
    if (job.action?.kind === 'gain' || job.action?.kind === 're-aim') job.say('emitter', 'done');
    job.say('panel', '140');
    job.wait(5_000);
  }
  expect(job.action).toMatchObject({ kind: 'turn', axis: 'horizontal', eighths: 6 });
  return job;
}

const WHICH = 'Which adjuster was turned: horizontal or vertical?';
const WAY = 'Which way did you turn the horizontal: clockwise or anticlockwise?';
const VERTICAL_WAY = WAY.replace('horizontal', 'vertical');
const FAR = 'How far did you turn the horizontal?';

/** What the ladder says, one after the other, and at the end of each line what the log then has: a question, or a turn. */
type Line = readonly [words: string, answer: string];

function told(facts: readonly Fact[]): string[] {
  return facts.flatMap((fact) => {
    if (fact.type === 'query') return [fact.text];
    return fact.type === 'move' ? [`${fact.axis} ${fact.eighths}`] : [];
  });
}

function saying(job: TableJob, lines: readonly Line[], language?: TypedLanguage): void {
  for (const [text, answer] of lines) {
    const facts = job.input({
      kind: 'words',
      seat: 'emitter',
      via: 'typed',
      text,
      ...(language && { language }),
    });
    expect([text, told(facts)]).toEqual([text, [answer]]);
  }
}

describe('a turn that is told in part', () => {
  it.each<[string, readonly Line[]]>([
    ['"clockwise" alone is the turn that was asked for', [['clockwise', 'horizontal 6']]],
    [
      'the same in American words',
      [
        ['counterclockwise', WHICH],
        ['horizontal', FAR],
        ['a quarter', 'horizontal -2'],
      ],
    ],
    [
      'against the order it may be the other adjuster',
      [
        ['anticlockwise', WHICH],
        ['vertical', FAR.replace('horizontal', 'vertical')],
        ['half a turn', 'vertical -4'],
      ],
    ],
    [
      '"in" and "out" do not say which way a screw goes',
      [
        ['a quarter in', WAY],
        ['clockwise', 'horizontal 2'],
      ],
    ],
    [
      '"out" neither',
      [
        ['turned it half a turn out', WAY],
        ['counterclockwise', 'horizontal -4'],
      ],
    ],
    [
      '"in" without how far is of the turn that was asked for',
      [
        ['turned it in', WAY],
        ['clockwise', 'horizontal 6'],
      ],
    ],
    [
      'the answer is about the adjuster that was asked about, not that of the order',
      [
        ['vertical a quarter left', VERTICAL_WAY],
        ['clockwise', 'vertical 2'],
      ],
    ],
    [
      'also when something else was said between',
      [
        ['vertical a quarter left', VERTICAL_WAY],
        ['say again', `${VERTICAL_WAY} Or type it, or say "not sure".`],
        ['clockwise', 'vertical 2'],
      ],
    ],
    [
      'a whole report of the other adjuster is one of its own',
      [
        ['a quarter in', WAY],
        ['vertical half a turn clockwise', 'vertical 4'],
      ],
    ],
    [
      'how far may be said again',
      [
        ['a quarter in', WAY],
        ['half a turn clockwise', 'horizontal 4'],
      ],
    ],
  ])('%s', (_, lines) => saying(atTurn(), lines));

  it('"clockwise" where no turn is asked for is asked about to its end', () => {
    const job = atTurn();
    job.say('emitter', 'done', job.turn.seq);
    saying(job, [
      ['clockwise', WHICH],
      ['horizontal', FAR],
      ['a quarter', 'horizontal 2'],
    ]);
  });

  it('"side to side" on a unit on its side needs only the adjuster', () => {
    const job = atTurn();
    job.input({ kind: 'mounted', seat: 'emitter', mounting: 'top-left' });
    saying(job, [
      ['side to side half a turn clockwise', WHICH],
      ['vertical', 'vertical 4'],
    ]);
  });

  it.each<[TypedLanguage, readonly Line[]]>([
    ['es', [['en sentido horario', 'horizontal 6']]],
    [
      'es',
      [
        ['un cuarto hacia dentro', WAY],
        ['horario', 'horizontal 2'],
      ],
    ],
    [
      'es',
      [
        ['media vuelta hacia fuera', WAY],
        ['antihorario', 'horizontal -4'],
      ],
    ],
    [
      'es',
      [
        ['vertical un cuarto a la izquierda', VERTICAL_WAY],
        ['horario', 'vertical 2'],
      ],
    ],
    ['de', [['im Uhrzeigersinn', 'horizontal 6']]],
    [
      'de',
      [
        ['ein Viertel hinein', WAY],
        ['im Uhrzeigersinn', 'horizontal 2'],
      ],
    ],
    [
      'de',
      [
        ['eine halbe Drehung raus', WAY],
        ['gegen den Uhrzeigersinn', 'horizontal -4'],
      ],
    ],
    [
      'de',
      [
        ['gegen den Uhrzeigersinn', WHICH],
        ['horizontal', FAR],
        ['ein Viertel', 'horizontal -2'],
      ],
    ],
    ['fr', [['horaire', 'horizontal 6']]],
    [
      'fr',
      [
        ['un quart vers le dedans', WAY],
        ['horaire', 'horizontal 2'],
      ],
    ],
    [
      'fr',
      [
        ['un demi-tour en dévissant', WAY],
        ['antihoraire', 'horizontal -4'],
      ],
    ],
    [
      'fr',
      [
        ['antihoraire', WHICH],
        ['horizontale', FAR],
        ['un quart', 'horizontal -2'],
      ],
    ],
  ])('in %s: %j', (language, lines) => saying(atTurn(), lines, language));
});
