import { useState } from 'react';
import { typedTemperature } from '../model/typed-temperature.js';

/**
 * The air temperature that was typed for a track, °C, on this page or before on this device; null for the usual one. It
 * is never that of another track: a pressure reckoned for it would be wrong here.
 */
export function useTypedTemperature() {
  const [typed, setTyped] = useState<{ readonly trackId: string; readonly celsius: number | null }>();
  return {
    of: (trackId: string | undefined): number | null =>
      typed !== undefined && typed.trackId === trackId
        ? typed.celsius
        : typedTemperature.read(trackId, Date.now()),
    type: (trackId: string | undefined, celsius: number | null) => {
      if (trackId === undefined) return;
      setTyped({ trackId, celsius });
      typedTemperature.write(trackId, celsius, Date.now());
    },
  };
}
