import { useEffect, useRef } from 'preact/hooks';
import { useLowBattery } from './use-battery.ts';

interface Propped<S, M> {
  /** Tells both phones how this one is; each state once, when it begins. */
  say(state: S | 'ended', more?: M): void;
  lowBattery: boolean;
}

/**
 * A phone that stands by itself and tells what it sees or hears. `isOn`: it does so now; `hidden`: what it is while nobody sees its
 * page, which may stand still then.
 */
export function useProppedPhone<S extends string, M = never>(
  post: (state: S | 'ended' | 'battery-low', more?: M) => void,
  isOn: () => boolean,
  hidden: S,
): Propped<S, M> {
  const said = useRef<S | 'ended'>(undefined);
  const lowBattery = useLowBattery();
  const say = (state: S | 'ended', more?: M) => {
    if (said.current === state) return;
    said.current = state;
    post(state, more);
  };
  useEffect(() => {
    if (lowBattery && isOn()) post('battery-low');
  }, [lowBattery]);
  const leave = useRef(() => {});
  leave.current = () => {
    if (document.hidden && isOn()) say(hidden);
  };
  useEffect(() => {
    const left = () => leave.current();
    document.addEventListener('visibilitychange', left);
    return () => document.removeEventListener('visibilitychange', left);
  }, []);
  return { say, lowBattery };
}
