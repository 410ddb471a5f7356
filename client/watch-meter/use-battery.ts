import { useEffect, useState } from 'preact/hooks';
import { LOW_BATTERY } from '../../src/sight/watch.ts';

interface Battery extends EventTarget {
  level: number;
  charging: boolean;
}

/** Whether the battery runs low and is not being charged. False where the browser does not tell. */
export function useLowBattery(): boolean {
  const [low, setLow] = useState(false);
  useEffect(() => {
    let closed = false;
    let battery: Battery | undefined;
    const look = () => setLow(battery !== undefined && !battery.charging && battery.level <= LOW_BATTERY);
    const { getBattery } = navigator as { getBattery?: () => Promise<Battery> };
    getBattery?.call(navigator).then(
      (found) => {
        if (closed) return;
        battery = found;
        for (const change of ['levelchange', 'chargingchange']) found.addEventListener(change, look);
        look();
      },
      // A page may not be allowed to know: then it does not.
      () => undefined,
    );
    return () => {
      closed = true;
      for (const change of ['levelchange', 'chargingchange']) battery?.removeEventListener(change, look);
    };
  }, []);
  return low;
}
