import type { Seat } from '../model/facts.ts';
import type { ClientMessage } from '../protocol/socket.ts';
import type { Input } from './input.ts';

/** The messages that add something to the job. Each is logged under its id. */
export type Report = Extract<
  ClientMessage,
  {
    t:
      | 'say'
      | 'person'
      | 'remark'
      | 'mounted'
      | 'sound'
      | 'correct'
      | 'take-back'
      | 'override'
      | 'camera'
      | 'sensor'
      | 'hand-over'
      | 'practise';
  }
>;

export function toInput(message: Report, seat: Seat): Input {
  switch (message.t) {
    case 'say': {
      const { via, text, language, re, confidence, alternatives, camera, sensor } = message;
      return {
        kind: 'words',
        seat,
        via,
        text,
        ...(language && { language }),
        ...(re !== undefined && { re }),
        ...(confidence !== undefined && { confidence }),
        ...(alternatives && { alternatives }),
        ...(camera && { camera }),
        ...(sensor && { sensor }),
      };
    }
    case 'person':
      return { kind: 'person', seat, person: message.person };
    case 'remark':
      return { kind: 'remark', seat, text: message.text };
    case 'mounted':
      return { kind: 'mounted', seat, mounting: message.mounting };
    case 'sound':
      return { kind: 'sound', seat, days: message.days };
    case 'correct':
      return {
        kind: 'correct',
        seat,
        target: message.target,
        text: message.text,
        ...(message.language && { language: message.language }),
      };
    case 'camera':
      return { kind: 'camera', seat, state: message.state };
    case 'sensor': {
      const { sort, state, taught } = message;
      return { kind: 'sensor', seat, sort, state, ...(taught && { taught }) };
    }
    case 'take-back':
      return { kind: 'take-back', seat, target: message.target };
    case 'override':
      return { kind: 'override', seat, reason: message.reason };
    case 'hand-over':
      return { kind: 'hand-over', by: seat, fact: message.fact };
    case 'practise':
      return { kind: 'practise', seat, act: message.act };
  }
}
